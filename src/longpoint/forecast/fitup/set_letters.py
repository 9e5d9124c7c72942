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
            "ADhkmr BCglnq FG DELTVbimoswy2 EH BFLMRbdikqsx2 BELMRbdgmqsz2 AKQahjprtxz3 "
            "BLRbgioqsw02 AEINQVlntxz mpq ADELNTUbckmwy gjk AFachkny3 DFLMTVbcgiowy BJRZgioqswy2 "
            "hil DELNTUbgkqwy3 nor BCEJMZdgqs2 ADEILQTVbo0 DELMTVbimuwy2 DELNTUbgkowy0 "
            "BERVZcgkmwy BEJMZdgors2 BLRbgimqsu02 BEJMZdgmqs2 BDFJMRVZkqux2 ADFINYchrt3 "
            "BELNTbcgquwy2 AEKNSUadhrvx3 BDELTVbgiouw0 AEIMQYdhjmrvz BFLMTVbeglow2 DELNTUbfhmt02 "
            "BELNRVbgoswy2 AEIQVYchlprt1 BCFKMSVadlnxz BERVZgkmwy2 BEJNRUZgkowy0 DELNTUbdglq03 "
            "BCHKMSVachkn3 AEINQWagjtvy3 BCFJKMSUad BFLMRVbimqsu2 AFYcny1 BERXZcgkmwy "
            "BEJNRUZgimqu0 ADJTZgkmuwy0 BDEJMZfgms2 DFLMhisx BCELMRUbdgqs2 DFLTWbikoswy0 "
            "ADFLNTUYbc ACFIQVYchnt13 AEIQVYhlprvz3 BELNTUbdoqsx0 BEJRZdgkmouw0 ACEKNSUadjvz2 "
            "DELTVbimouwy2 BLRbgkmqsw02 AEKNlmrtw ADhkmp ADEILNTVbc BFLMTVbcinqsu BFLMRbciqswy2 "
            "CKSahlnrv1 BEbdglmz0 ADEJNTUZckmwy CFacglpqy3 ADLNTUbkmswy0 BFJMRVZimu2 ADhkor "
            "BELRVbgkoquy2 BFLNRbcgkmqu0 APSUadhknqsv ADINQUYclntx3 BELNRUbgoquw0 BELNRVbgmqsw2 "
            "BJRbgioqsu02 CFKMSVachnrt3 BCglpq AEIPlt AEKNQUajnrtv3 DFLMTbgkmquy2 BCFLMgnqsx "
            "AFKOSVachpt13 ADLNTUcmtwy3 DENUbfjkovwy2 BFLMhinqsx ADLTVbckmrwy2 AEIPlmrvw "
            "BCEKMSVZad BELNRbcgqswy2 AFKQachlptvz3 BELNRUbdgmqs0 BELPTUbdglnoy BDELNTUbdkmw2 "
            "BFLMknqsx DELNTbgkmqwy0 ADLNTUbgkmsu0 DELNTVbgouwy2 BHLMknqux ADFLTUbckmsuy "
            "AEKMQVZachrt3 CEKSVacjlmrtz BLRbgimqswy2 BDFJTUbimouw0 ADFYchkr3 BGLMXbdgmosz2 "
            "DFLMTVbgkmuy2 BCglno DELMTVbimsw02 BFLOTbdgkqsx2 BEJRVbgkosw02 CEKPSUafglnqt "
            "BEbfglmz2 ADLNTUhkmtwy3 BFJMTVehipqu1 AKQahjprtv13 ADjkmr DFLOTbhkmuxy0 "
            "BEJNRUZfimow0 AEIMQXlprxz BLMTbdgkoqsw0 BEJRVZgkmquy2 BELPTbcgqswy2 BCLNRUbdgkqs0 "
            "BCMSUadlnqsx BLTbgimqsu02 ADhimr AEKQVachlnrt1 BFJMRVZimosw2 BDEJRUZfkmsz0 "
            "ADELQTVbkmrwy BCEZdglq2 BDFJORVZcitu BFLMRVbcgkqu2 ACFKMSahmpxz1 AIQYhjnrtv13 BCilnq "
            "ADGLNTUbdkmw0 BCEZafqy3 DLTbgkmqswz0 DELNTXbgmquw2 AGKPlmrtw BFJRZcgkmqsw0 "
            "BELNRUbdgmos2 DEbforz2 DFLMTVbcgiqu2 BCMSVbdksxz2 BELPRWbgqswy2 AFKOQVahmrtz3 "
            "BFLMRVbdikqs2 ADFKNQVachrt3 ADJTZgkmuwy2 CEPTUbdjov0 AFachkpqy1 BJRbgkoqsu02 "
            "BLMTVbgkmqsu0 AEKQVadjrtxz1 BCEJRUZdgqs02 DELNTVbgmw2 BDHLNTZciquy2 BCEJMZdgos2 "
            "AEIPgjt BDGLNTUbdmq0 AFYejkpq3 BDHLMTVbegtu DEbdglmrz2 BCLMRVbgiqsu2 BFJOhinqs "
            "BLNTbcgimqsw0 BELNRbdgouw02 BJRbgimoswy2 AEIPQYjprtx13 BGJRXZgiou02 ADLTbkmruwy2 "
            "BEJMTVZgkmwy2 ADLNTUbhkouwy ADHLMTXbcgkw BFLMRbcimqsu0 BELNRUbgmqsw0 BFJTZcimqswy "
            "BETVZegkmtwy BJRZgioqswy0 AFIMQVYcp1 CEKMSadjrvz BEJRVbgiotuy2 BCJMZdgnqs2 "
            "AKQahlnrtx13 BLTbgkoquxy2 BESUZflorsv12 DELPTbcgow0 DELTVbgkmuwz0 BERXZgmw2 "
            "CENUadjqvy ADEINhmrt CEKNSUadhlnvz AEKMQUadhrsv3 BEJNRbgmoswy2 CGKSXahjptx1 "
            "BCELRSVbgqsw2 AFJKNTUaciwy3 ADEINUYhjvy3 ACGIPgjt AFTVaekntwy1 BELMRVZgimqu2 BCgjnq "
            "BEbdglorz2 BFLTUbdgknqsy DFLMTVbcgku AEKNlmrvw BELPTUZfoy2 BCEKRSVZa BCLNRUbcgkqu0 "
            "BEJNRUZdglo0 DELTVbcglmtw0 DLTbgioqswy2 AKOSZadhjnrv1 CFaepqy3 BCFJMZdiqs2 "
            "ADGILTVbcgks DELNTUbimquwy BDLNRbciosw02 BEJPRbdgoswy2 BERVbglmwz2 BCFKMSVaglnxz "
            "BFLNRbcgkquy2 ADFLTUbhkmswy ADFJNTackrwy3 BFLMRVbcgiou2 BLOVbdgkmqsz2 BCLMSUdinqsx2 "
            "BEJPTUZdhknoy ADIQYhjrv1 DELNTWbfgmuz2 AKNSUacjnrtx3 BCLRbgiqswy2 BCJNRUZgiquw0 "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=1.0,
        letters=(
            "ADhkmr BCglnq FG ADEILQTVbd EH ADELNTUbckmwy BCEJMZdgqs2 DELTVbgkouwy2 BCEKNRSVZa "
            "DELNTUbdgmos2 BFLMRVbdgkqs2 AFKQachjptxz3 ADEINhlt ADFINYchrt3 BLRbgimqsu02 "
            "AEIMQVlprxz BEJMZdgmqs2 BCFKMSVadlnxz DELNTUbgiow03 mpq BFLMTVbcglqw2 ADFLNTUYbc "
            "ADEILNTVbc ADEJNTUZckmwy BCFJMhis BFJOknqs BDFLTUbcikquy BFJMRZgkmouy2 CEKNgjnqtw "
            "BEJNRUbdgoqs0 BCEKMSVZad nor DELNTUbfgmqs2 ACFKMSVaepy1 CEKNSUadhjpxz BCFJKMSUad "
            "BCELMRUbdgqs2 gjk DELPTbdgiou02 AEKNSUYdjnqvx BEbdglmz0 ACKMSVaclrtxz BDFJMZdkqs2 "
            "BELNTbcgquwy2 AEINQYhlnpvz1 hil BDFLMRVZcimuy BLRbgioqsw02 ADELNTbikmu02 AEIPQVlntvz "
            "ADFKNQVachrt3 ADFLTVbckmrwy BDEJMZfgms2 CGKPSajlnpvz3 BEJRVZgimqu02 AFachkny1 "
            "BCFJMgnqs BDFJRUbkqsxy2 AFYehkn3 BCEJMZdgos2 ADELNTUbdkmw0 AJKQahjrtv13 ADHLMTXbcgtw "
            "BLRbgimqswy2 ADFJNRSUYc ADhkmp BDELNTWbdoq0 ACINYcjlnt3 ADILQTYb BELNRUbgnqsy2 "
            "BJRbgimosw02 AFIMQVacptw13 ADhkor ADJQTZikmwy3 DFLTbcgioqsw0 BCJRZbgkquw0 "
            "AKRSahlprtx1 ADFLNTUYbkmw2 ADFYchkr3 ADELNTUbdhkmy BEJNRUZgiowy0 BCEKNSUadlnqx "
            "ACFIMQVaeny3 ADFLNTUbckmuy BCEJMZadgqsy AFJKMQachrtw3 ADIQYjlptxz3 DELTVbgimqtu0 "
            "BFLMTVbcgkqu2 ADELNTUbckowy BCEJMRVZgnqu2 BFJMRVZeiu BCEZdglq2 BFLNTbcgkquy2 "
            "ADEINhmrt ADIQYhjrtv13 BCJKRSZa BELNRVbgoswy2 CFKOSaehjnpx1 BELNTbdgmqsw0 "
            "DFLMTVbcgtu ADFINYchpt3 BCEMSbdqsxz2 BELPTbcgqswy2 CEKPSWadhqux2 BCFJKMgw "
            "BCELRSbdgqsu2 BCglno ADILTVbcikqs2 AFKMQVachnpt3 ADJTZkmruwy0 BCglpq ADFLNTWYbc "
            "BFLRbcgiqsuy0 ADhimr AKQahjnrtxz3 BCJRZgiqsw02 ADFJNTUactwy3 ADLQTbgkmuwy "
            "ACGKNSUYdgjt BELNTUbdlqx03 BELRVbdgkouy2 BCELRUbdglos2 ADLTYbgoswz2 AEIQVadhjrvz3 "
            "BDJRZgiosu02 AEKNQachlrtw3 ADjkmr ADEILPTXbc BDHLTUZdkqsxy BELNRbgoqsw02 "
            "BELNTUZdgmqu0 CEKNSUajnptx3 BDFJRVZciqsuy BELNRVbgmqsw2 BCFJMZdiqs2 ADFINQUYchrv3 "
            "AGKNQajprtv13 BCFKMSVacglnz BCJMZdgnqs2 BFLOTVZehisu ADLNTVZcimuwy CEKSVajkptxz3 "
            "BDELNTUbdkow0 ADFINYehrt3 BELPTWbdgnqsy BFLTUbgkmqsu0 AFYcny1 BCilnq BCLRUbdgnqs02 "
            "CEKNSUadhlnov DLTbgkmoswy2 ADFLNTUYbe AEINgjt BEJNRUZfo0 AEKMQVZahrtv3 ADEILNhjx "
            "BFJORVbhiqsu2 BLMTVbdgioqu0 BFLNRVbegqsw2 ADJTZgkmuwy2 BCKMSVZahjnx3 ADELPTUbckmwy "
            "BFLMknqsx BCEJNRSZgqsz2 ADFYbcglrz BCFLMgnqsx BCLRbgkqsuy2 CEKSVaclrtz BCEZdor2 "
            "BEJTZdgkoswy2 ACHacnqy1 BCFKSUajlnvx1 BFLMTVbgkmqu2 ADLTUbdkmruy2 BDGJMZfgms2 "
            "ADFLQTWYb BEJRVbcgkouy2 AFIMQVYep1 AFKMQadhknrx1 BCgjnq BEbfglmz0 DFLOTXbchiosy "
            "BDLMTVZcimsw2 ADFachkry3 ADLNRUbckmtwy BCJKSUadjlty3 ADFKMQVachrt1 ADEILTVbosxz2 "
            "BLMRbdioqswy2 ADLNTUbikmsw0 BEJMRXZimu2 ADKQTahjrtx3 BCFJKOSUad AEINQUYjptvz3 "
            "BLTVbcgkoqu02 BERXZgkmwy2 DFLMTVbeiu BCEKMSXZad AFKMSUahptxz3 AEINQUYfjv "
            "ADELTVZckmrwy BDELTUbdkmsw2 ADENTVcmrtwy3 ADFLTVbcikmuy BCEKSVahlnvz3 BLMRbdgkmqsw2 "
            "ADELNQTbkmrwy BEJNRUZfgosy2 BFJMRZgkmquy2 CFKSaehjnrsv1 ADEILMQTVb ADEKNQUYcjrt3 "
            "BCELMSUbdqsx2 CFacgjpqy3 BCEJNRUZgkqu0 AFKMSYfhlrxz2 BCFJKMSUaf ADFJTUZcikmuy "
            "ADEJNTUZdkmw0 DFLMTVbeilqw2 DHLOTchksvy3 AEKMSVZahrtv1 DELPTUbfmq0 DLTbgimqswy2 "
            "AFIMQYhpx1 ADLNTWbhkoswy BCFJMVZacgku BDFLTVZciquy ADFJNTbckmrwy AGKMQadhlrvz3 "
            "AFachkny3 BDJLRbgiou02 AEINgjvw BLTWbdgkmqsy0 BEKTVZegmptwy ADKMQVadhlrv1 ADEILPTVbc "
            "BCLMRUbdgiqs2 AFJKMQZahmrt3 "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=1.4,
        letters=(
            "ADEILMQTVb ADhkmr BCglnq EH FG BCEKNRSVZa ADELNTUbckmwy BCEJMZdgqs2 ADFINYchrt3 "
            "DELTVbgkmquw0 ADFLNTUYbc BCFKMSVadlnxz DFLMTVbcgkmwy BEJMZdgmqs2 ADEILNTVbc "
            "AEINQVlntxz BCEKMSVZad ACFIPYchnt3 ADFLNRSUac BDJRTbgiouy2 BCFJKMSUad AKQahjprtxz3 "
            "ADELNTUbdgms2 BERVZcgkmwy BCELMRUbdgqs2 BELNTUbdgoqs0 BFLMTVbcgiqu2 AFIMQVacptw13 "
            "BLRbgioqsw02 ADELQTVbikmwy BERXZcgimwy BELPTUbdgnqsy ADILQTYb BCEKNSUalnrt3 "
            "ADELNTYbgiou2 AEINSUadjnvz3 DELNTVbgow0 BCLRbgiqsu02 ACIQahjptv13 ADEJNTUZckmwy "
            "CFKMSVacn3 DELTVbgimswy2 AEIPQYdhlptvz AEIOQVlnrxz DELNTUbiou0 ADFLMTVbckmrw "
            "BCFJMgnqs ADFLMRVbckux BEJTUZdgorsy2 BELNRUbgmqsw0 BCEJNRSUZgqs2 AEINTUbdgjmt0 "
            "ADFLNTUbckmuy ADFINYchpt3 BCJRZioqswy2 ADELNTUbdkmw0 ADEINhmrt BCJKRSZa "
            "BFLMTbciqsuy2 AEKMQVZachrt3 BDGJTZdgmuw02 BCKNSVaclntz3 DFLOTVbegw BCEJRZadgqswy "
            "ACFKSUahlpvz3 ADFLNTUYbe BCELNTUbdgqs0 ADFYchkr3 BCEZdglq2 BLRbgimqswy2 ADEILPTVbc "
            "BCJRZgiqsu02 AFIQYchjptxz3 ADFLNTUYbhkm2 ADFLNTUactwy3 ADFKNQVachrt3 nor "
            "BFLMTVbdikqs2 BEJNRUZfo0 AFJKNTUachky3 AFachkny1 CEKNSUajnv3 DELNTUbdgmqs0 "
            "ADJRZbgkmsu0 BFJORVZeimru ADELPTUZckmwy CFKMSVaep1 AEIMQYdjrvz BCFJKMgw ADFLNTWYbc "
            "ADLNTUbhkmwy3 BCEKSUadlnqxz ADEJLQTZdkmwy ADLNRUbckmwy ACINQVYclptw1 gjk ADhkor "
            "BCglpq BCFJRUdgkqsy2 BDJNTZcioswy0 ADFLPRSUac ACGKNSUYfltw AEIQVlprtvz ADGILTVbcksx "
            "DFLTWbioquy2 BCFJMZdiqs2 AJKQahjrtv13 ADFJNTUYbc BCEKRSXZaf ADFKNQUYhrvx3 "
            "BDFLMTVZcgku ADEILNhx AFJKNRSUac BCEJMZfgqs2 ADFLNQTWYb ADEJQTVZimswy DELNTUbfo0 "
            "BELNRUbfgqsy0 AFIMQVYep1 BDJRZgkoswy2 DFLMTVbeiu ADFIQVYchrt13 DELPTbcioqsw0 "
            "ADJTUZdkmswy0 AEKNSUadjrtx3 BDHLOTVbckmsy BFLMRVbimqsu2 BCFKMSVacglnz BCELMRVbdgqu2 "
            "ADEILNTVbe AEIPSUYfjnvxz BCEJMZdgos2 BCFJKMSUaf ADEINYcjrt3 BCEKMSVZaf BEJRVZcilouw2 "
            "BLTWbdgkmqs0 BCglno ADFLTbcikqswy BCELNRSUbgqs2 ADhimr BCEKMSVZalnx3 ACHIMSVacn3 "
            "ADELNTbckmrwy ADEILQTVbd BCilnq ADELNQTUbkmwy BGLMZfgmosx2 BCLMRUbdgnqs2 "
            "ADFIQTYchrtv3 BELPTUbfgos02 BLTbgkmquwy2 ADEILQTXbd ADEJNTUZcmtwy BCEKMSVZdgsz2 "
            "ADhkmp AFKMSXYcpz3 BFJRZeiquy CKSahjnptx13 BFJMRVZciu ADEJNTUZdkmwy BEJNRZgow0 "
            "BCEKRSVZac DELTVbgkoswy2 BCEJMRVZdgqu2 ADFJMTZackuy3 AEKNQYjnrtv13 AFYeglny1 "
            "AKQahlnrtx13 BCJRUZdgiqs0 BDGLNTbdgiow0 BCFJKOSUad BCEKSVadlntvz ADELPTUbckmwy "
            "AFIQWYhlnpvx1 AEIMQWafhrtx3 ADFYbcprz BCMXZaiu DELPTUbfgmsz0 ADFINYehrt3 "
            "BELMRVbgkouy2 ADFLNRSUYe BCEJMZdiqs2 ADELNTUbckowy ADFKMTVackrw3 BCFKMRSValnxz "
            "ADELNTbcgimwy BCFKMSUadlnxz BCELNRVZgqsw0 BELNRUbdgmqs0 AFKNRSUaclnxz BFJORZciou0 "
            "AEKQVadjnrtx1 BCEKMSXZad AEKNlmrtw AEKSadhlrvxz3 DFLTbciquy ADIQYbhjrsv1 "
            "BEJRXZglmosw2 ADFJMTbckmruy CEKNgjtw BCELMRUbfgqs2 BDELPTWbdkquy BELMRVZgkmqu2 "
            "BELNTbegqswy2 BFLMTZikmquy0 BCFKMSVZgnsz2 ADFJNRSVac BCFJKSUZdo0 BCHLMgnqsx "
            "BEbdglmz2 ADLTUbdkmsw0 ADHJNTbcikmwy BFJMTVbeiu ADjkmr BJTUbdgkmouy0 AFKMQadhrvxz1 "
            "BFLTWZgkqswy0 ADEILNQVbsxz2 BCLRbgkqsuy2 "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=1.9,
        letters=(
            "ADhkmr ADEILMQTVb BCglnq EH FG BCEKNRSVZa ADELNTUbckmwy BCEJMZdgqs2 ADFINYchrt3 "
            "DELNTUbdgquy0 BFLMTVbcgquw2 ADFLNTUYbc AKQahjnrtx13 BDLTbioqswy2 ADEILNTVbc "
            "BCFKMSVadlnxz AEIMQVlprxz BCEKMSVZad BCFJKMSUad ACEINglt ADFLNRSUac BFJMRVZiosuy2 "
            "BFJMkmrs BCELNTUZdo02 ADEJNTUZckmwy BDFLMTVbcisu BEZfgjm2 AEINQWadhjrv3 "
            "ACIQVYchlpt13 BDELTUbdkos02 ADFLTVbckmrwy ADILQTYb BCELNRSUbgqs2 CFKMSVachmrtz "
            "BCFLMgnqsx ADFJNTUactwy3 BEJMZdgmos2 hil mpq ADFKQachrtv13 ADEJNTUZdkmw0 ADEINgjt "
            "DELNTVbgmw2 CFKMSVaep1 ADEINhmrt BCJRZgkouwy0 ADFYchkr3 ADLTbgiosuy2 DFLMTVbcgotuy "
            "BHLMTXbcglwz2 ACFKMSajptxz3 BDELNTUbfmtw2 ADELNQTbkmrwy AEIQVlnrtxz BCEZdglq2 "
            "BCJKRSZa ADJMTVZdikmu0 gjk AEKMQVZachrt3 ADLNTUchkmy3 BCEKNSUadltx ADFLNTWYbc "
            "BLRbgimqswy2 ADhkmp BDELTbfgkouw0 AEIMQYdhjrvz3 BCEJMZdgos2 ADFKNQVachrt3 "
            "BCFKMSVaclnx1 BCEKMRXZcglw ADFLNTUYbe AEIPlt BFJRZcgiqsuy2 nor ACHIMSVacny3 "
            "BCEZadmqy ADFLNTUYbkmw2 ADEILPTVbc BCELMRUbdgqs2 BCglno BEJRVZgmquw2 ADFLNTUbckmuy "
            "BCglpq AJKQahjrtx13 BDFLMTVbcisw ADIMQVYhmrtv1 AFJKNTUachky3 BCJLRZgiquy0 "
            "BFLMRVbdgkqs2 BELNRUbdgmos2 ADEJQTZdikmwy BCFJKMglw ACEKNSUadhjv ADEILNTVbe "
            "BCKNSUadlnqx3 ACIQYhjptxz3 ADFYcnry1 BCEJNRUZdgqs0 DFLMTVbiou0 ADFKNQUYchrv3 "
            "BCEKMSVZaf ADELPTUbckmwy BCKMSVZglnsz2 ADhkor ADFJNTackrwy3 BCEJMRVZdgqu2 "
            "ADFINYbchrtz DELNTUbfjoty0 BCFKMRSalnqxz ADEINYcjrt3 ADLTUZdkmswy0 BCJKSUadlt "
            "AFJKNRSUac AFIMQVYelpxz1 AEIMSadhjnrxz ADFIMQTVYhrt3 BLRbgkmqsw02 BEJNRUZfo0 "
            "BCEKNRSXZa BFJMRVZegiqu2 ADhimr AEIQVYjlpvz1 AEINQUYdhlv ADFIMQVYchrt1 ADFLPRSUYc "
            "BCFJKMRSWa ADLNTVZcimuwy BDJORVbdimuy2 ACHKQYclntxz3 ADELNTUbdkmw0 BCJRZioqswy2 "
            "ADELNTUbckowy BCFJMgnqs BCilnq ADLTbgkmu0 BCEJMSUZdqsx2 AFKMSVachptz3 BCKSahlnv1 "
            "ADJNRUhkmy ADFTVYckrtwy3 ADFLNQTWYb BCFJKOSUad BELNRbgmquw02 ADFYchkp3 BCJRSZgiqsz2 "
            "BCLNRUbdgiqs0 ADEILMQTXb ADILRbkmsuy2 ADIQYhjrvxz3 BFJRbcgiouwy2 DFLMTVbeiu "
            "ADNTcmrtwy3 ADFJNTUYbc ADjkmr BCEKMSXZad AJKQahjrtvz3 ADEILNhx BFLPTbcgkquy2 "
            "ADILQThky3 BCEbdglqz2 AJKNRSVZac BCFJMZdiqs2 ACKSajprtxz1 ADFKNQVaehrt3 ACISYhjpvxz3 "
            "BCHJMTVZaiu BFLRWbdikmqs0 ADFLNRbckmrwy AEINQVlnvwz ADEJPTUZckmwy AEKSYfjlnrtxz "
            "DELNTUbdgors2 AFKMQadhnrtx1 BCJKRSZiou0 AEKNRSVZac ADIQTahlrty3 BCELNRSbgqsu2 "
            "BFJMRVbimqsu2 ADLNTUYchmty3 AEKNSUYfjv ADFJNRSUae BEJNRUbdgmqs0 ADLTbikmswy2 "
            "AFJKQZachjrt3 BDEJNRZbgotw0 ADLTWbdgkos02 ADEILNRVbc BGZfm2 ADFJMTZckmruy "
            "ADGJNRUbcmtwy AFJKNRUackwy3 BCJKRSglz2 ADGINQWYdjpvz BCEKNSUadjtx BCFJKSaclptv1 "
            "BHJOhis ACHacpqy3 AFJKNRSacrz BELPTUZfkowy0 ACGIPglt "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=2.5,
        letters=(
            "ADEILQTVbc BCEKRSVZac EH FG ADhkmr BCglnq ADFLNTUYbc ADELNTUbckmwy ADFJNRSUac "
            "ADEILNTVbc BCEKMSVZad BCEJMZdgqs2 ADFINYchrt3 BCFJKMSUad BCFKMSVadlnxz DELNTUbdglqy0 "
            "DFLMTVbcgkmwy ACEINQUYlrtx3 ADILQTYb ACFKQVYcjnt13 BCJTZioqswy0 ADEJNTUZckmwy "
            "BCJKRSZa ADFLMTVbciqu2 ADEILPTVbc BCFJMgnqs BELNTUZdgoqs0 ADFLNTWYbc AKQahjnrtx13 "
            "BCELMRUbdgqs2 ADFLNTUYbe ADFKNQVachrt3 BEJMZdgmos2 BCFJKOSUad ADFLTVbckmrwy "
            "ADEILNTVbe ADFJNTUYbc BCEKMSXZad ADELNTUbckowy BFLMRVbimosw2 ADFLNRSUae "
            "BDFJOTbdkqsu2 ADFYchkr3 BCEKNSUadlnqx ADLNTUdhkmy3 ADEILQTXbd AEKNQUadhjrv3 "
            "BCEKMSVZaf BCEZdglq2 BCFJKMSUaf ADEILVZa CEKSVaelrtz AFJKMQVachrt1 ADFLPRSUYc "
            "ADFLNQTWYb ADELNQTUbkmwy AFJKNRSUac ADEINhmrt ADLTUbdgkmuy0 BERVZfkmwy2 "
            "BCEKMSVZdsxz2 AEIQVYchlprt1 AEKNRSVZac BCEKMSVadlnvz ACGKNQUYfhlt ACFIOQVaenp3 "
            "DELNTbgkmowy0 ADFLNTUactwy3 BCFJNRZcimquy BCEJNRSUZgqs2 ADEILNRVbc BCLMRVbgiqsu2 "
            "ADEILNQTVb BERVZcgmwy BCEKNRSXZa BLNTUbgkmqsu0 ADFNRSWZac ADFLTUbckmsuy "
            "ADFKNSUYehrt3 DFLOTVbegw ADFIRSVacmrz AEKPSUYhlnpv1 ADELPTUbckmwy BCFKMSVaglnxz "
            "BCGJNRUZdgqs0 ADFLNRUbckmwy BCEJMZdgos2 ADFLNTWYbe AEISVYdjnrvxz BCFJKRSWac "
            "ADEILPTXbc BCEJMZfgqs2 ADFIMQTVYhrt3 ADFLNTUackwy3 ADILQThky3 BEJNRUbdgmqs0 "
            "AEJKNRSZac AEIMQVZachrt3 AJKOSVZachrt3 ADFINQUachrv3 DFLOTbciqswy0 BCEJMTZadkquy "
            "ADEILQTVZc ADLNRVZciosu0 BCglpq BCFKMSVadnsxz BFLMTXZcgku CFKOSXachpt13 BCGJNRWZdo02 "
            "ADFLNRSUYc "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=4.5,
        letters=(
            "ADEILQTVbc BCEKRSVZac EH FG ADFLNRSUac ADhkmr ADFLNTUYbc BCEKMSVZad ADEILNTVbc "
            "BCglnq AEKNRSVZac ADELNTUbckmwy ADFINYchrt3 BCEJMZdgqs2 ADILQTYb BCFKMSVadlnxz "
            "BCJKRSZa ADHLNQUYdhtx ADFLNQTWYb BDEJPTUbdmq2 ADFLPRSUac ADFLNRSUYe BCFJKOSUad "
            "ADEILNTVbe ADFLNTWYbc AFJKNRSUac ADEILNRSUc BDFLOTVbcgmwy BCEJKMSZaf ADFJNTUYbc "
            "ADFLNTUYbe BCEKNRSXZa BDELNTUZdgos0 ADEKNRSZac ADEILNQTVZ ADEILPTVbc ADFLMTVbckmrw "
            "BCFJMgnqs BCEKMSVZaf ADFIMQVacrz3 ADEILNQTXb BCFJKMSUad BCEKMSXZad ADEJNTUZckmwy "
            "ADEINhmrt ADEILNRVbc AEJKNRSZac BCFJKMSUaf ACEINQUYdjlv ADFJNRSUYc ADFYchkr3 "
            "BCELMRUbdgqs2 ADFLNTUYctwy3 AJKNSUadhmrt3 ADFKNQVachrt3 ADNRSZae ADELPTUbckmwy "
            "ADIMQYdhlrv1 ADELNRUbehkmy ADEILPTXbc AEIMSVZachkr3 ADFLNTWYbe BCEZdglq2 "
            "ADHLMTVbcksw ADGKPRSZac ADFLNTUbckmuy ADHLNRSUYc BEJNRVZgimow0 AFJKNTUackwy3 "
            "BCFJKOSWad AFJKNRSWYc ADFINTVYcrtw3 ADFLPTUYchty3 AEIPlt BFLNTZcimqswy ADGLNRUbckmwy "
            "ADFKNQVachpt3 AEKMQVZachrt3 ADJNTUZckoswy ADELNQTUbkmwy ADFLNRSWYc ADEILNRVbe BEZdm2 "
            "ADFIMQTVYhrt3 BCGLNRSWbgqs0 ADFJPRSUae AFJKNRSUYe BCEKMSXZaf ADFJPTUYbc AEJKNRSZae "
        ),
    ),
    Learned(
        is_closed=True,
        respect="gaps",
        least=0.0,
        letters=(
            "ADEILQTVbc EH FG BCEKNRSVZa ADFLNTUYbc ADFLNRSUac BCEKMSVZad ADEILNTVbc BCFJKMSUad "
            "ADILQTYb ADFLNTWYbc ADEILNTVbe ADFLNTUYbe BCEKMSXZad BCFJKOSUad ADEILPTVbc BCJKRSZa "
            "ADFLPRSUac ADFJNTUYbc BCFJKMSUaf AFJKNRSUac ADEILNRSbc ADEILQTXbd BCEKMSVZaf "
            "ADFLNRSUae ADEILPTYbc BCEKRSXZac ADEILNRVbc AEKNRSVZac BCFJKORSWa "
        ),
    ),
    Learned(
        is_closed=True,
        respect="quirk",
        least=0.0,
        letters=(
            "ADEHIKQSUYae BDFHIKQSUYae ACEGIKOSUYce ILM ORS ADEHIKOSUWce BDFHIMOQUYae PQT "
            "ABDFHKQSUYac JKN ADEHIKOSUYae ADEHIKQSUYce BDFHIKOSUWce BDFHIKOSUYae ADEHIMOSUYce "
            "ACEGIKQSUYce ACEGIKOQWYae ADFHIKQSUWce ACEGIKOSUYae ACEHIMQSUYce ADFHIKOSWYae "
            "BDFHIKOQWYce ACEHIMOSUYae ADFHIMQSUYac ADEHIKOSUYce ABCEHIKQUWce ACEGIMOQUYae "
            "ADFHIMOSWYac ABDEGKOSUWae ADFHIKOSUYce ADFHIMOSUWae BDFHIMOSUYae BDFHIKOSWYae "
            "ADFGIKOSUYac BDFHIMOQUYce ADFHIMQSUWce ADFHIKOSWYac ACEGIKOQWYce ABCFGKOQUYae "
            "BDFHIKOSUYce ACEHIKQSUYae ADFHIMOSUYce ADEHIKQSUWce ADFHIKQSWYae ADEHIKOSUWae "
            "BDFHIKOSUYac ACEHIMOQUWce ACEHIKOQUYce ADFHIMQSUYae ABCEGKOQUYae ADEHIMOSUYae "
            "BDFHIKOQUYce ADFGIMOSWYac ADFHIKQSUYce ACEGIKOSWYac ADEHIMQSUYce ACEGIMOQUYce "
            "ACEHIMOQUYae ACEHIMOSWYae ACEGIKOSUWce "
        ),
    ),
    Learned(
        is_closed=False,
        respect="in-plane",
        least=0.0,
        letters=(
            "ADRUWb ADEILNRWbh BCQVXa EH FG BCFJKMQSg BFJMUWbc AEINVWbd ADEINRWbd BCFJMQXac "
            "BDFLMRUch RSV QTU DFLMRSch BFJOUXac AEIPVXad XYb AEINQTXad CEKNQVWbdg WZa ADEILPRUh "
            "BDFLORUch BCFJKOQWbg BFJMRSXac ADEINTWbd CEKPQVWbdg BCFJKOSUe BFLMUXach ADEILNTVf "
            "BCFJMSXac AEKNVWbdg ADEIPRWbd BCFLMQXach ADEILNRWbf ADTUWb ADRUWZ ADRUYb BCHJMQXac "
            "CEKPQTdg BDHJMRUeh BCFJOQXac ADGINRWbd BCQTXa ADRSWb ADILRUch AGIPVWbd BFLOUXach "
            "BCSVXa ADEKNRWbdg BDHJORUc BHLMUXach BCFJKMQXae BCQVZa AEKNVWbfg ADEILPRch BFLMUXaeh "
            "AGKNVWbdg ADEILNRVf BCQVXY BDHLMRUeh BCFJKOQdg BFLMRSXach BFJOUXaeh ACGINQVfg "
            "ADGILPRWbh BCFJKMQSe ADEILPTWbf BCFLMSXach BCFJMQZac BCJKQVdg DHLORUWbch BFLMRSXaeh "
            "CEKNQTdg CGKPQVWbdg BCHJMSXac ADGIPRWbd ACGKPQTdg BCHJKOQVg ADGKPTWbdg BCHLMQXach "
        ),
    ),
    Learned(
        is_closed=False,
        respect="gaps",
        least=0.0,
        letters=("EH FG "),
    ),
    Learned(
        is_closed=False,
        respect="quirk",
        least=0.0,
        letters=("FGJ EHI LMP KNO "),
    ),
)
