"""Sets of rows in letters, as `tests/generators/learn_fit_up_sets.py` printed them."""

from typing import Final, NamedTuple


class Learned(NamedTuple):
    """What was learned about one kind of frame in one respect.

    Attributes:
        is_closed: True for four sides with four joints, False for three sides with two.
        respect: Respect that the rows are counted in.
        least: Least room of a quirk against the gap allowed that it was learned for.
        letters: A word per set, a letter per row.
    """

    is_closed: bool
    respect: str
    least: float
    letters: str


LEARNED: Final = (
    Learned(
        is_closed=True,
        respect="in-plane",
        least=0.0,
        letters=(
            "EH ADhkmr FG BCglnq DELNTUbdgmsz2 ADEILNTVbc DFLMTVbgkmqs2 DELTVbgioswy2 BCEJMZdgqs2 "
            "ADELNTUbckmwy BERVZcgkmwy mpq gjk BEJOZdgmos2 BFLMTVbcilqw2 AEINlnot BCEKRSVZac "
            "BEJRZdgiosw02 DFLMTVbikmu02 AFachkny3 ADFLNTUYbc BELNTUbfgnosy DELNTUbgkow03 "
            "DFLMTVbegqsw2 ADFINYchrt3 hil DELNTUbfkmru2 BFJMRZikoruy2 ACFYcpq3 DELNTVbgmtwy2 "
            "AEISUadhkrsv3 nor BEJNRUbdgos02 DELNTUbginou0 BERXZcgimwy BCEKMSVZad BFJMhinqs "
            "AFKOSVachkrz1 CEKNSUafhx DFLMTVbeimuwy BERVZfkmw02 BFLMTVbdikqs2 BCFKMSVadlnxz "
            "AEIPTUbdhlmty BCELMRUbdgqs2 BFJMRVZimqsu2 AFIMQVYep1 BEZdglor2 BEbdglmz2 ADLTbgkmu0 "
            "AEINQUYfjv BFLMTbgimquy0 BEJNRUZgiowy0 DFLMTVbiosw02 ADEILNQTVb BCFJKMSUad AEINgjnot "
            "BERVZgkmw02 ADFLNTUbckmuy ADhkmp BELMRbdiosw02 DELNTUbfo0 BESUadhkmsx0 BJRZgioqswy2 "
            "AFYcgln3 BGKMSVZgmru12 ADhkor BELNRVbgmosw2 ADFLNRSUac BFLMRVbimqsw2 DELTVbgimquw0 "
            "ADETVbckmrtwy BCFJMgnqs ADHLNTUhkmwy3 BELNRUbgmqsw0 BJRbgimouw02 ADEJNTUZckmwy "
            "AEIMQXbgjrvz2 BFLOTVbdgkqs2 AFKQWachlpv13 BDFJMRXZcitu ADELNTUbdkmw0 BCEJPRUZdgqs0 "
            "DFLMTVbcgkmuy BCglpq DELNTUbgiowy2 DELNTbgimqwy0 DELMTVbgkmou2 CFKMSVacn3 BDHJMhis "
            "CEKNSUadjv BELPTbcgqswy0 BELMRVbgimqu2 BELNRbdgkou02 CFKMSVacgnps1 BFJPRWkmqwy "
            "BHLMknqux DFLMTVbcgw DELNTUbdglo02 BLTVbegkmquy0 ADFLNTUYctwy3 ADEILTVbckmsy "
            "BDFJMRVZcgku BCJNRZbcgiqu0 BCEZdglq2 BFLMknqsx ADEINhmrt BCgjnq ADFLNTUYbmo2 "
            "BHJOTVbikqsu2 BEbdglmz0 ADFYchkr3 ADjkmr AEIPYcgjrvw3 AEIPQYhlprvz1 BEJMTVZcilmwy "
            "BFJMRVZgkmuy2 AGKNlmrtw ADELNTUbckowy DEbfmrz0 DFLMTVbcgiqu2 BCEJMZdgos2 BCEZadgjqy "
            "BELNTUZdmq0 ADFLTUbkmswy2 BEJPTbcgouw02 DELNTXbgmtwy2 ADFLNTWYbc BCFJKMgkw "
            "BFLMTbeiqsuy2 AFJKOSWachpt3 AGKMSXlmpvz2 BELNRVbgoswy2 DEbfilorz2 BFLMTUbdkqux2 "
            "DLTbgimqsw02 AFMTVYegipu13 DELPTWbfqy BFJRZegkquy BFJMRVZilou02 ADhimr BFLMTVbeilqw2 "
            "BGLNRWbdgmqs2 BELNTZdgimow0 CKSahlnrv1 BELNRbcgqswy2 ADLTbikmu0 BEJNRbdgorsw2 "
            "DELNTUbgnqsy3 ADELPTUbckmwy ADEILNTVbe ADFKNSVachrt3 BCLRbgiqsw02 BEJNRUZfo0 "
            "AEKNlmrvw ADEJNTUZcimwy BEJNRbginouy2 DELPTUbglnqwy AFachkny1 AGIPgjort DFLOTVbegku "
            "AEINQadjrtvz3 BELNRXZgjmow2 BFJRWahkqswy3 BJRbgkosw02 DLTbgkmquy2 DELPTUbfo0 "
            "AFKMSVachptz3 ADEJNTUZdkmw0 BLTZgkmquy0 AEJKNSUadhmrt BELPTZcgimqwy AEKNSUadhlrv3 "
            "BCEJMRVZdgqu2 BDFLRTZeiquwy ADELNQTbikmwy ACKSVacjprv12 ADELPTWbgouw0 BEJPRZegkowy2 "
            "BCELMRUbdiqs2 DFLMTXbegw BELMTVZegkmwy BEJRXZimqswy2 DFLMhkmrsx ACFIMQVYcp12 "
            "ADLMTbdgkmsw0 BEJRZfgkoswy2 BCEKMSVZglnz2 BELTVbgkouw02 BCglno ADFLNTUYbe "
            "BFLRbcgiqsuy0 ADEJNTUbckmwy BFJMRVbcilnuz BCEJMZfgqs2 BELNRUbdgoqs0 DFLMTVbegtu "
            "BLTbgimqswz0 AFKMQadhprtx1 ADFLNTUachty3 ADLNTVbcimswy ADILQTYb BGLNRbdgoswy2 "
            "DFLMTVbimqsw2 ADEILNhkx CFKOSXaerz AEINSUadjv ADFLNTUYckwy3 ADGLNTWbckmwy "
            "FMVcgknrtuz1 DELMTbdimu2 BFJOTXbeiu AEIMQYdhlnrv1 BELNTUZdglo0 BFLOknqsx DLTbgkmqsw0 "
            "AEKNSWafhkmrx ADGJNTUZckowy BELNRUbdgmqs2 AEIQVlmrtwz ADEILPTVbc AFYeny1 "
            "BCFLRUbdgkqs0 ADLNTUbdhkosy BCELMRXbdgqu2 ADFJMTZcikmuy AFachkpqy3 BCFLMRVZiqsu2 "
            "BDEJRTVZgmuw2 BLMRbdioqsu02 BLNTUbdgkoqu0 AFJKNSUachpv3 BEJNRUdhox0 BCELMVZadisw "
            "ADELNTbckmrw0 DFLTWbeiquy BELNTbgoqsw02 ADFLTUbkmsuy2 ADEINjmrt ADFINYchpt3 "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=1.0,
        letters=(
            "ADhkmr BCglnq ADEILMQTVb FG EH BCEKMRSVZa DFLMTVbcglqw2 BEJMZdgmos2 ADELNTUbckmwy "
            "ADFINYchrt3 BCEJMZdgqs2 DELMTVbgiouy2 ACEINglt BCFKMSVadlnxz AFYcgln3 ADFLNTUYbc "
            "BDFJMRVZkqsu2 BELNTWbdgnqsy ADEILNTVbc BDJTZimoswy0 BCEKMSVZad BELNTUbdgnosy "
            "DFLOTbcikmquy BCFJKMSUad mpq gjk DELNTVbgmotw0 hil AEKMQadhjnrv1 nor ADFLNRSUYc "
            "BFLMTXbcglqw2 BDELNTUbdkmw2 AFKMSVacmrtwz ADFKMSVYclpv1 ACEINSUadjrv3 BDFJRVZchiquy "
            "BLMTVbcgmqtu2 CEKNSUadglntz BDELNTUZdlox0 ADFLTUbgkmuy0 BLRbgioqswy2 BERVZfkmwy2 "
            "AEIPYchlrt3 BDLMTbdgkouy0 ADGIOQVbemrz BELNTbcgqswy0 BCLRbgiqsu02 BDHLMTVZciuw "
            "ACFIMVYcntwy1 BEJPRZgkoquy2 BCFJMgnqs BDHJMTVZeksu BEJMZdgors2 AEINRUaelvwy1 "
            "BERVZglmwz2 ADEJNTZdgkmw0 CFKSachlpqvx1 BJRZgioqsu02 ADhkor ADFLTVbckmrwy BCFJKMglw "
            "BCEZdglq2 ADhkmp BDFJMhkux ADHLNTUYbkmw2 ADFIOQVYchrt1 BCglno BCglpq BELNRbdgouwy2 "
            "BCEZadnqy BLTbgioquwy0 ADILQTYb ADFKNQVachrt3 ADELNTWbdgos0 ADFLNTUYctwy3 "
            "BCELMRUbdgqs2 BCEJNRUZdgqs0 BEbdglmz2 CEKNSUafjnqsv AEKMSYdhjmrvz DELTVbimqswy0 "
            "BFLMTVbdgkqs2 ADFYchkr3 CFKMSVaen3 ADFLMTVbciuw CEKNSUafhrtx3 ACIQahjptv13 "
            "CEKSXachlprt1 ADFLNTUYbe ADJNTUZckmswy BCEJRZdgkquw0 ADEILNhkx BEJNRZgow0 BCJKRSZa "
            "BCEKMSVbdsxz2 ADELNTUbhkmwy ADEINhmrt AEKNSUYdhlv BCFKMSVaelnx1 BCEKNSUadlnqx "
            "ADLTUbdkmswz0 AFTVackntwy1 ADEILTVbckmsy ACILQYbjntx1 ADFJTYbciruwz BFLRbcgimqsu0 "
            "AEKMQVZachrt3 ADjkmr ADLNTUbckmuy2 AEIPTWacgjty3 BFJMRVZeimtuy BCFJMZdiqs2 "
            "ADEILNTVbe BCJRSZgiqsz2 AFaehkny3 BJRZgimqsuz0 AEKNlmrtw AFKMSVYcnr1 ADELNTUbckowy "
            "BELNRUbgmqsw0 BGbdglmz2 AEIQVYhlnrvw1 ADFLNTWYbc BCFKMSVZajkn3 AEINQUYfjv "
            "BLMTbdgkmqsu0 ADJQTZgkmuwy BCgjnq BCJMRVZgiqu2 DGbfmrz0 BELNRVbgmouw2 BEJNRUbdgosy2 "
            "DELNTUbgotwy2 ADFLTbcikmuy DFLOTVbegkqs2 DFLMTVbeiu ADFYbcnp1 BDFLMTVbioqu0 "
            "CEKSVafhlnrvz AFKNRSaclnxz DELNTbgmqw0 ADEILPTVbc ADELNTVbkmrw0 ADINQUahjrv3 "
            "AKMSVZahnrv3 BCEKMRVZagkw BEJNRUZfkmow0 BCFJKOSUad BFJMRVbimosu2 ADELPTUbckmwy "
            "AFLTVacknqwy3 ADhimr BDELPTWbfqy2 ADFYchkp3 ADFLMTVbcisw AEKQadhjrtxz3 AKSahjnrv1 "
            "ADFLNRUbckmwy BFJOhis DELPTUbfgoqs0 BDHJOhks ADLMTbfikmuy2 ADELNQTbgkmwy "
            "AEIQVacjlprt1 BLTbgioqswy0 BCEKMSXZad ADFLNTUYckwy3 ADFLMQTWYb AEKNSWadhmpsv "
            "ADNUYbjsv BCKMSVadlpvxz ADFINYehrt3 ADFLPRSUYc AFKOSVaekprw1 AEIPQWYfjmrv "
            "BCJRZagnqsw0 BCEKMSVZaf BFLNRWbimqsw0 BLMTVbgkmquw2 ADFLTXbcgltu BDGJNTVbgmuw2 "
            "BCilnq BCELMRUbdios2 ADELNTbckmrwy BEbdglmz0 AFKOQaehpvxz3 BFLOTXbdgkqs2 "
            "ADEINQUYdhjv ACEKSVaclrtvz BCFJMRVZaiqu2 AHKMSVachkmpz ADFLTZckmosuy ADKNTVcmrtw3 "
            "BCEZdglo2 DELNTUbgnqsy3 BCEJRZdgkouw0 BCJMZdgnqs2 BCJRSbgkqsu2 BELMTVZgkmwy2 "
            "BLTWbdgkoqs0 BELNRUbdgoqs0 AEKNSUYfjtx BCFKMRSajlnxz BFLMknqsx AEIPlnqt AFIOQVYep1 "
            "BFJMRVZcgku AEKNQUajntvy3 AEKMQVZadhrv3 BCJPRZcgkqwy0 BEJNTUbdgoqu0 BCFJKMRUdiow0 "
            "BLNTWZiknqwy3 AEKNlmrvw BCFJKMSUaf BEJNRUbdgors2 BCEJOZdgqs2 DFLMTVbcgtu BEJPTbgow0 "
            "ADJMTZbfgkmu0 BCFKMSVacgnsz DELNTVbgkmrw2 BFLMTZcikoquy AFJKNRSUac ADJTZkmrswy0 "
            "BFLNRbcgknquy ADFINYbchrt1 ADEILNTVbsxz2 BDLRbikosuy2 CFKMSVacp1 BDHLMTVZegku "
            "BCFLMgnqsx BEJPTUZdmqtw0 BGPSWdjlmovw0 ADFJNRSWae ADFLNTciswy3 ADEILQTVZ "
            "ADFIMQTVYhrt3 BCEKMRSXZa "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=1.4,
        letters=(
            "ADEILQTVbc EH ADhkmr BCglnq FG BCEKNRSVZa ADELNTUbckmwy BCEJMZdgqs2 DFLMTVbcglqw0 "
            "ADFLNTUYbc BDEJMZdgms2 ADEILNTVbc BCEKMSVZad BCFJKMSUad BELNTUZdgos02 ADFINYchrt3 "
            "BFLMTVZciouwy AEINlmrt AEIMQVadhrtz1 ADELNTUbdgms2 DLTbgkmotuy2 ADFLNRSUYc "
            "BERVZcgkmwy BCFKMSVadlnxz BFLMTVbegquw2 DELNTUbfgmos2 BFJMhinqs ACEIPQUYdjlv "
            "BDEJRUbdgmsz0 ADFLNTUbckmuy BEJNRUZgkowy0 ACFKMSVYcptw1 ADEINgjt ADFLTVbckmrwy "
            "ACGKNQUYdjlt ADILQTYb BCFJMgnqs ADELNTUbdkmw0 BFLMRbciqsuy2 BELMRbdiosw02 BCEZfmq2 "
            "BDHJMhks AFachkny1 ADELNTUbckowy BCJRZgiqux02 ADFJNTUactwy3 ACKNQUYdjpsv1 "
            "BDFLMTVbhiou0 mpq DELNTVbgmosw2 BCEJMZadgqsy AFKOSVacjmrtz BCELMTUbdgqs2 BCFJKMgkw "
            "BCEJMZdgos2 gjk nor ADFLTXbcikmu0 ADFLNTUYbkmw2 ADFYchkr3 ADEINhmrt BDFLOTVbciux "
            "BCEJNRUZdgqs0 BFJMRVbciqsw2 ADFILTVbcksu ADhkmp hil AEINSUadhkxy3 ADFIMQWYhjpx1 "
            "BDELNTbgiowy0 ADELNTUbdhkmy BCEZdglq2 BCJKRSZa BELMRVbgkouy2 BCFKMSVachnt3 "
            "ADFLNTUYbe BCEJMRVZdgqu2 ADEILPTVbc AFYehkn3 BCEKMSVZdsxz2 ADFYchkp3 ADELPQTUbkmwy "
            "CEKMSadjptxz3 BEJPRUZgimqu0 BELNTUbdgosy2 DELNTUbdgoqs0 ACGINglt CEKNSUadgjpvz "
            "BCEKSUadlnqxz BLMTUbdgkmos2 BCFJMZdiqs2 ADEILNQTXb ADFJNRUbckmwy DFLPTbcgiquy0 "
            "BCGJNRUZdlox0 BELNRVZgmqsw0 BHJOkmrs BCglpq BDLTbikoswy0 ADEILNTVbe BCEKMSXZad "
            "ADEJNTUZckmwy BFLMRVbiosuy2 BFLMTVbcilnqw BCFJKOSUad ADFJPRSUac AEKMQVZachrt1 ADhkor "
            "ADFLNTWYbc ADELNTbcikmwy AFIMQXahnrtx1 ADIQTYhmrvx1 BEZfor2 DELNTUbfimrw2 "
            "ADJMTVZadkmuy ADEILNhlx BEbdglmz2 BEJMRZdgkmqu0 BDEJPRUbfoy2 BCglno BELNRVbcglqw2 "
            "AFIOQVYhlprv1 BFLOTVZegkqu2 BCFJMRVZaiqu0 BCFKMSVaglnxz ADHIMQVYchrt1 ADFJNTUYbc "
            "BFJMRVZimrsw2 AFJKMQVahmrt1 BDLTUbdikouy2 ADFLTUbckmswy DFLMTVbegrtw3 BCEJMSUZdqsx2 "
            "BCFJKMRSWa BELNRbdgoswy2 ADFINTVYcrtw3 BCEKOSadjlnvz BCFJRUadkqswy AFJKNRSUac "
            "AFachkny3 ADjkmr BCEJMZadgqs0 BGLNRWbdgmos2 ADFLNTUYckwy3 ADFLNQTWYb AEKNRSVZac "
            "ADFINYehrt3 ADHLTXbcgkquy BCEJNRSUZgqs2 BCEKORSXZa ADLTUZdkmswy0 BCGJOZdgqs2 "
            "ADEILNRVbc ADELNQTbkmrwy ADFINQVachpt3 DELNTUbfo0 BELNTUbdglq03 BCELNRUbdgqs0 "
            "ADEILNQTVb AEKNlmrtw BCHJMgks ADFINYbchrtz ADFLNTWYbe BCgjnq BCEJRTVZiou0 "
            "BCFJRUZgiqsw0 ADEILVbsxz2 CFKMSVaep1 BFJMRVZeiu ADEINTVbcmrtw ADJNTUbhkmuwy "
            "AEKPSUYfjvxz2 ADLTUbdkmruy0 BCEKMSVZdgsz2 BCEZdglo2 BCFLMgnqsx BCJUdnqsx02 "
            "BEJNRUZdgmqs0 ADFINQUYchrv3 ADFJPTUZckmuy BCEKMSVZaf BELNTWZdhqt03 BCFJMinqs "
            "ADFJNTUbdkouy BCEJMZfgqs2 BCFJKMSUaf ADEILMQTVZ ADFJNTUYbgqs2 ADGLNTUbfmr2 ACGKNgjtw "
            "BDFLMTVbcimuy ADELNTbckmrwy ADFLNRSUYe BFLMTVbciqsw2 BELTUbdikoqs0 BFLRbcilqswy0 "
            "AFKOQVahprtx1 DFLTWbikqswy AEKNTaelrvwy3 ADELNRbcikmw0 BCilnq BCEKNSZadhjv "
            "BELNRbcgoqsw0 BCEZafqy2 AFYcglpq3 ADEISVYfjrvz BCJMRVZgkqsu2 BFJTUbioquwy0 "
            "ADFLNTUYchty3 ADELPTUbckmwy ADNTcmrtwy3 AEIMSVZachrt3 BDHLOTVbcgks AGKPlmrtw "
            "ADFYbcglpz DELNTUbdgmqs0 BFJRZeiquy ADhimr BCEKMSVZagiw BCKMSValnvx12 "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=1.9,
        letters=(
            "ADEILQTVbc EH FG BCEJKMSZad ADhkmr BCglnq ADFLNTUYbc ADEILNTVbc BCEKMSVZad "
            "ADFLNRSUac ADELNTUbckmwy BFLMTVbcglqw2 BDEJTXZdkmw02 BCEJMZdgqs2 BCFJKMSUad "
            "ACEINQYdlptxz ADFINYchrt3 BDEJNRUbdkow0 DELNTUbimqu0 ADFLPQWYclnx3 ADILQTYb "
            "BERVZegimwy DELNTUbdglnqy BCFKMSVadlnxz DFLMTVbegiqu2 ACGINQUYdjlv AFKMSVYcp1 "
            "BCFJMgnqs ADFLTVbckmrwy BCJKRSZa BCEJRZdimosw0 ADEINjlvw BCEKPSUadglt BELMRbdgmqsz0 "
            "mpq ADELNTUbdkmw0 BFJMkmrs BCEZdglq2 ADFLNTWYbc ADFYchkr3 AEINQUYjptxz3 "
            "ADELNTUbdhkmy ADFLNTUYctwy3 BCLRbgnqsu02 BCEKMSVZaf BFJMRZgkmuxy2 ADLTbikmu0 "
            "ADEINhmrt ADEILPTVbc ADFLOTVbegtw BCFJKMgw BCELMRUbdgqs2 AFYcny1 BERVZfkmw02 "
            "ADFLPRSUac ADFLNTUYbe ADEJNTUZckowy DFLMTVbimu2 ACFKOSVacglrz ADEILNTVbe "
            "BDELNTWbdo02 BERVZgmw2 gjk nor BCEKMSVbdsxz2 BCFJKOSUad BCEJNRUZdgqs0 BCKSahlnv1 "
            "ACEKNSUadhix ADELPTUbckmwy ADFJNTUYbc BCEKMSXZad BFJORVbegiqu2 ADhkmp AFJKXacirtwy3 "
            "ADEILNQTVZ CEKNSUadgjnqv ADEILTVbcksx BDLMTUbdkosz0 BCEZadqy ADEJNQTbikmwy "
            "DFLMTVbcgku BDJNRZcimou0 ADIQYhjrv1 hil BCFJKMSUaf ADFJNRSUae BCFJMRUbdiqs2 "
            "BCEKSUadlnqxz ADFILPTYbc BELNTWbdgmqs0 CFKMSVachmrtz AFKMSYchlnpx1 ADEILNRVbc "
            "ADEJNTUZckmwy DELNTUbfkmw02 ADEILQTXbd BCEKMRSXZa AEIPlt AFJKNRSUac BJRZgkmqu0 "
            "BDFJMRVbcisu AFYen3 BCFJKRSWad ADILQThky3 DELNTVbgmw2 ADFLNTUbckmuy BCglpq "
            "ADFKNQVachpt3 ADLNRUbckmwy3 ADhkor ADFINYehrt3 AEJKNRSZac BCEJMZdgos2 BCHJMRZciqsuy "
            "ADjkmr ADELNTUbcmtwy BELMTVZcgkmwy ADEILNhkx BCJRSbgnqsu2 ADFLNTUYchky3 BDELNTUbfoy2 "
            "ADhimr BCglno ADFLNTUYbmz2 BELRVbgioquy2 BEJNRZgow0 ACKNQUYdjnv3 BCEJMSUZdqsx2 "
            "ADEILNRSbc ADFYbcpr1 BCELNRUbdgqs0 BCFMSadnqsxz ADJNRUhkoy ADELNQTbkmrwy DEbdmrz0 "
            "BCJRZgiqu0 AKRSahjprtx1 ADFYbcrz ADEILQTVbd "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=2.5,
        letters=(
            "ADEILQTVbc BCEKNRSVZa EH FG ADFLNTUYbc ADFLNRSUac ADhkmr BCEKMSVZad ADEILNTVbc "
            "BCglnq BCFJKMSUad ADELNTUbckmwy BCEJMZdgqs2 BCEZdmq2 ADFINYchrt3 ADILQTYb ADFLNTWYbc "
            "BFJMks ADFLNQUYdhtx ADEILPTVbc BCEKMSXZad AFKMSVYcglrz ADFLNTUYbe BCEKMSVZaf "
            "BCFKMSVaglnxz ADFLNRSUae ADEILNTVbe BELNTUZdo0 ADFLMTVbckmrw BCJKRSZa BCFJKOSUad "
            "ADFJNTUYbc ADELNTUbfm02 BCFJMgnqs ADEILNQTVZ DFLMTVbeiu ADLNTUachkmy3 BCFJKMSUaf "
            "AFJKNRSUac ADFLPRSUac AEINQUYdjv ADFLNQTWYb ACFIMQVacpr1 ADEILNQTXb ADEILNRVbc "
            "DFLMTVbegw AEKNRSVZac ADFYchkr3 ADEINhmrt BCEZdglq2 ADEJNTUbdkmw0 BCEKMSVZdsxz2 "
            "BCFJKRSWac ADELPTUbckmwy ADFLNTUYctwy3 AFKNRSaclnxz CEKNSUadhx ADFLNRSUYc AJKNRSVZac "
            "DELNTUbdmz0 BCEKRSXZac ADEILMSVZa BFLMSVbdhisz2 BCEZdglo2 CEKPSWadjtx BCGLMRUbdgqs2 "
            "ADFLNTWYbe ADJNRSVZac ADFINSVachpt3 ADEILPTXbc BCSUadlnqsx ADFLNRUYckwy3 "
            "AHKOSVachkrz1 DELTXbeiou0 ADLTUbdkmsu0 "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=4.5,
        letters=(
            "ADEILNQTVb BCEKMRSVZa EH FG ADFLNRSUYc ADFLNTUYbc BCEKMSVZad ADEILNTVbc BCFJKMSUad "
            "ADhkmr BCglnq ADILQTYb BCELMRVZdgqs2 BCJKRSZa ADELNTUbckmwy ADEKNRSZac ADFLNRSUYe "
            "ADFYchkr3 ADFLNTWYbc ADEILPTVbc ADFLNTUYbe ADEILVZa BCEKMSVZaf BCEKMSXZad ADFLPRSUac "
            "ADEILNTVbe AFJKSachrtwy3 BCFJKOSUad ADFJNTUYbc ADEILQTXbc BCFJKPRSWa ADFLMQTWYb "
            "AFJKNRSUac ADEILQTVZc ADFLNTUYchky3 DFLMTVbcgw BCFJKMSUaf BCEKNRSXZa ADFJNRSUac "
            "BCFJMgnqs AFKMQVachkp13 AEJKNRSZac ADFLTVbckmrwy ADEILNRVbc BEZdglm2 ADFINYchrt3 "
            "BEJNRUZdo0 BCEKNSUadlnqx ACEKPSUadjnqv BCEZdglq2 AEKNRSVZac ADJNRUhkmy ADEINhmrt "
            "ADEINRSUYc AEINSUadhx ADHLNRSUac BCEKMSVbdglz2 ADFLNTWYbe BFJMRVZeiu ADFLNRSWYc "
        ),
    ),
    Learned(
        is_closed=True,
        respect="gaps",
        least=0.0,
        letters=(
            "ADEILQTVbc FG EH BCEJKMSZad ADFLNTUYbc BCEKMSVZad ADEILNTVbc ADFLNRSUac BCFJKMSUad "
            "ADILQTYb ADFLNTUYbe ADFLNTWYbc ADEILPTVbc BCEKMSXZad BCFJKOSUad AFJKNRSUac "
            "ADEILMRVZa ADFJNTUYbc ADEILNTVbe BCEKMSVZaf ADFLPRSUac ADFLNRSUYe ADINRSUZac "
            "BCJKRSZa ADFLNQTWYb BCFJKMSUaf ADEILNQTXb ADEILNRVbc AEKNRSVZac ADFJNRSUYc "
        ),
    ),
    Learned(
        is_closed=True,
        respect="quirk",
        least=0.0,
        letters=(
            "BDFHIKQSUYae ACEGIKQSUYae ORS ILM ADEHIKQSUYce PQT JKN BDFHIKOSUWce BDFHIKQSUYce "
            "ADEHIKOSUWce BDFHIKOSUYae ACEHIKOQWYce BDFHIMOQUYae ADEHIMOSUYce ABCEGKOQUYce "
            "ACEHIMOSUWae ACEGIKOSUWce ADFHIMQSUYce ADFHIKOSUWae BDFHIKOQWYce ACEGIMOQUYae "
            "ABDEHJKQUYae ADEHIKOSUYae ACEHIMOQUYce ADFHIKOSUYce ABDEHKQSUWce ACEGIKOSUYae "
            "ADFHIMQSWYae ADFGIKQSWYae ABDFHIMQUYac ABCFGIKQUYae ABCDEGKMQWac ADEHIKQSUYae "
            "ACEGIKOSVWae ADFHIMOSUYae BDFHIKOSUWae ADFHIMQSWZce BDFHIKOSUYce ADFHIKQSUYac "
            "ACEGIMOQUYce ABCEHIMQUWce ACEHIMOSUYae ADEHIKOSUWae ADFGIKQSUYae ACEHIKQSUYae "
            "BDFHIMOSUYae BDFHIKQSUWce ACEHIKQSUWae ADFHIMOSWYae ACEHIKOSUYce "
        ),
    ),
    Learned(
        is_closed=False,
        respect="in-plane",
        least=0.0,
        letters=(
            "ADEILNRUh FG EH BCFJKMQVg ADRUWb BCQVXa BDFLMRUch BCFJMQXac AEINVWbd QTU BFJOUXac "
            "ADEINRWbd BFJMRSWbc RSV ADEILPRch WZa XYb AEINQTWbd DFLORUWbch BCFJKOQcg BFJMUWbc "
            "AEIPVWbd BDFLMRUeh BCFJKMQSe ADRUYb CEKNQVWbdg ADILRUch ADEILNRWbf ADRUWZ ADEILNTWbf "
            "BCQVZa BCFJKMQXae BCQVXY ADTUWb ADRSWb BCSVXa CEKNQTXadg BCHJMQXac BCFJMSXac "
            "BFLOUXaeh ADEINTWbd ADEILPRUh BFLMUXach BCQTXa ADGINRWbd CEKPQVXadg BCFJOQXac "
            "ADEIPRWbd BCJKQVdg BFJORSeh BCHJOSUc ADGILPRUh BCFJKOQUg BCHJMQUeh ADEILPTWbf "
            "DHLORUWbch BDHLMRSch BCFJKOSce ADEILNRcf BHLMUXach ADEIPQTd CEKPQVXafg BCFJMQZac "
            "BCFJKMQUe BCFJMSXaeh AEKNVWbdg BCHJKOQWbg BCFLMQXach ADTUWZ ADILRSch BCFJMQXYc "
            "BFLMUXaeh BCFJOSXac ADEILPTXah AEKNQTWbdg ADEIPTWbd ADEINRYbd BCFJOQXaeh AGKNVWbdg "
            "ADEILNRVf "
        ),
    ),
    Learned(
        is_closed=False,
        respect="gaps",
        least=0.0,
        letters=("FG EH "),
    ),
    Learned(
        is_closed=False,
        respect="quirk",
        least=0.0,
        letters=("EHI FGJ LMP KNO "),
    ),
)
