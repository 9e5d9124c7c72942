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
            "ADhkmr EH FG BCglnq ADEILQTVbd BFLMTVbcglqw2 BEZdglm2 BCEJKMSZad DLTbgioqswy2 "
            "BERVZcgimwy BELNTUbdgpqsy AFYcgjn3 mpq ADEINTXbcltw gjk DELNTUbgkowy0 hil ADEILNTVbc "
            "DELMTVbimu2 BELNTUbdgqs03 ADFLNTUYbc BEJRXZgkouy2 ADELNTUbckmwy BELNTWbdgnqsy nor "
            "ADFLNQUYdjkx BFJMhis BCEJMZdgqs2 BFJOkpqs BCEKMSVZad BLRbgioqsw02 BCFJKMSUad "
            "AEKNSUafhpvx3 DLTbgimqsu02 AFYcglny1 BFJMRVbcgiqu2 BCFKMSVachrtz ADFLNTVbckmwy "
            "BEJNRUZfo0 ADFINYchrt3 DFLMTVbegw BEZfglm2 BCFJMZdgqs2 AEINQUYfjv BFJMRZimou02 "
            "BCFKMSVadlnxz DELNTVbglmow2 BDEZdor2 BFJTVbcgoqtuy BELNRbdgoswy2 ADEINYchrt3 "
            "BFLMRVbcgkqu2 BEbdglmz2 AFIMQVYhlpv1 DELNTUbdgoqs0 BERVZgmw2 CEKNSUadglnt1 BFLMknqsx "
            "BCFJMgnqs ADFLNRSUYc DELMTVbgmw2 ADFLTVbckmrwy CFKMSVaep1 DELTbdgiosu02 AEIPQXlntvz "
            "BELMRVbgkmqu2 BCEKMSUadlnxz AEKNSUadhrsv3 ADLNTUbhkmswy DFLMTVbeiu AFKOSVYejprxz "
            "ADhkmp ADhkor BEJNRVZgow0 BCEZdglq2 ADFLTUbkmsuy0 ADjkmr BDJORVZhimux2 BELNTUZdmq0 "
            "AIQYhjnpvxz3 "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=1.3,
        letters=(
            "ADEILMQTVb FG EH BCEJKMSZad ADhkmr BCglnq ADFLNTUYbc DFLMTVbcgimwy ADELNTUbckmwy "
            "DELNTUbdgmsz2 BCEJMZdgqs2 ADEILNTVbc BCEKMSVZad BCFJKMSUad BDELNTUZdo03 AFYcgln3 "
            "BFLMTVZcimuwy ACEKNQUYdlntz BFJMkmrs ADFLNRSUac DLTbgioqsw02 BEJMZdgmqs2 ADFINYchrt3 "
            "BDFJMhis ACFIMSVachpt1 BCFKMSVadlnxz ADEKNRSVbc ACEINgjt ADLNTVbckmwy0 BCFJMgnqs "
            "ADELPTUbdmqy ADLNTVbcimqu0 nor DFLMTVbegmtwy BDJNRUZdgkos0 BCEKNSUafjvx ADILQTYb "
            "AFKMSXackmrwz ADELNTUbdkmw0 BCJRZgiqsu02 BFLTUbcinqsuy gjk ADFLTVbckmrwy BCEZdglq2 "
            "BELMTbdgmqsz0 AEIPTaclrtwy1 ADELNTUbdhkmy AKSahjprvw13 hil mpq BCFJMZdgqs2 ADEINhmrt "
            "BDHLMTVbcgiu BLTbgkmqu0 ADFYchkr3 ADEILNTVbe ADFLNTUYbe DELNTUbfo0 BFJOkmrs "
            "BCEZadnqy BJRZiou0 ADGLNTUbckowy DELNTVbgmw2 BCGJNRUZdgqs0 ADFLNTWYbc BCJKRSZa "
            "ADFJNTUZckmuy ADEILPTVbc BFJMTVbcgkuy3 AEINlt BEZfm2 BCFJKOSUad ADhimr BCELMRVbdgqu2 "
            "AFJKNTUachky3 "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=2.5,
        letters=(
            "ADEILMQTVb BCEKMRSVZa FG EH ADFLNTUYbc ADEILNTVbc BCEKMSVZad BCFJKMSUad ADhkmr "
            "BCglnq ADEKNRSVbc ADFLNRSUac ADELNTUbckmwy BCEJMZdgqs2 BFJMkmrs BDELNTUbdkqwy "
            "ADILQTYb ACEINglt ADFLNTWYbc ADEILNTVbe BCJKRSZa ADFINYchrt3 ACFIMSVaenp3 "
            "ADFLNTVbckmwy BCFJKOSUad ADFLNTUYbe BCEKMSVZaf ADEILPTVbc BDFJMTVbciqu2 BCFJMZdgqs2 "
            "BDELNTUZdgos0 ADEINYchrt3 ADEILNQTXb BCFJKMSUaf ADFJNTUYbc BCEKMSXZad BDFLMTXbcglw "
            "BDGZdmr2 ADJKNRSXYc BCFKMSVadlnxz BCEKMSUadlnxz ADEILPTYbc AFIMSVaep1 AEKNSUYdjv "
            "AEJKNRSZac ADEILNRVbc BCEZdglq2 BCFJMgnqs ADFLMTVbckmrw ADEILbdqsxz2 ADEIPRSVbc "
            "BDLRTbimouy2 BCFJKRSWad ADEILNQTVZ ADEKNRSVbe AEKNRSVZac ADEINhmrt ADFJNRSUae "
            "ADFYcnr3 ACGINSUYdltx AFJKNRSUac ADFYchkr3 BCEJKOSZad ADFJKNRUYb ADFJMTVbckmuy "
            "BDEJNTUZdmy2 BCFJMTVbcisw ADEILPTXbc ADFLOTVbcgkw ADFLNTWYbe "
        ),
    ),
    Learned(
        is_closed=True,
        respect="in-plane",
        least=4.5,
        letters=(
            "ADEILMQTVb BCEJKMSZad EH FG ADFJNTUYbc ADFLNRSUac ADEILNTVbc BCEKMSVZad BCFJKMSUad "
            "ADEKNRSVbc ADhkmr ADILQTYb BCglnq BCJKRSZa ADFLNTWYbc BCEJMZdgqs2 ADEILPTVbc "
            "ADFLNTUYbc BCEKMSVZaf ADEILMQVZa BCFJKMSUaf ADEILNTVbe ADELNTUZckmwy ADJNRSUZac "
            "ADFLNTUYbe BCEKMRSXZa ADEILNQTVZ BCFJKOSUad ADEILQTXbd ADFINYchrt3 AFJKNRSUac "
            "ADFJKNRSac ADFLPRSUYc ADFLQTWYbe ADEILNRVbc ADFLNRSUae BCEKMSXZad AFJKNRSZac "
            "BCFKMSVadlnxz AEKNRSVZac BCFJKRSWad ADEIPRSVbc ADEKNRSVbe ADHLTVbckmrwy BDHLMTXbcguw "
            "BCEZdglq2 ADFJNRSUYc BCFJMgnqs AEINlmrt ADFLNTWYbe BEJNRUbfoqsx0 BCFJMTVZciu "
            "ADFJKNTUYb BCFJKOSWad ADELNRUbchkmy AFJKNRSWYc ADEILQTXZc BCEZdmq2 ADFJNTWYbc "
            "BCEKMSXZaf "
        ),
    ),
    Learned(
        is_closed=True,
        respect="gaps",
        least=0.0,
        letters=(
            "ADEILQTVbc BCEKMRSVZa EH FG ADFLNTUYbc ADEILNTVbc BCEKMSVZad BCFJKMSUad ADFLNRSUYc "
            "ADEKNRSVbc ADILQTYb ADFLNTWYbc ADEILPTVbc ADFLNTUYbe BCJKRSZa ADEILNTVbe BCFJKMSUaf "
            "BCEKMSXZad BCEKMSVZaf ADEILQTVZd BCFJKOSUad ADFJNTUYbc ADFLNQTWYb ADEILQTXbd "
            "BCEJKMSZaf ADEILNRVbc ADEKNRSVZe AFJKNRSUac AEKNRSVZac BCEKNRSXZa "
        ),
    ),
    Learned(
        is_closed=True,
        respect="quirk",
        least=0.0,
        letters=(
            "BDFHIKQSUYae ACEGIKOSUYce ORS ILM ADEHIKOSUWce JKN BDFHIKOQUYce PQT ADEHIMOSUYce "
            "BDFHIKOSWYac BDFHIKOSUYae ACEGIKOQWYce BDFHIMOQUYae ADEHIKQSUYce ACEGIKOSUYae "
            "ACEHIMQSUYce ADFHIKQSUWce ACEGIKOSUWce ADFHIKOSUWae ABCFGKQTUYae ADEHIKOSUYae "
            "ACEGIKQSUYce BDFHIKOQWYce ADFHIMOSWYac ADFHIMOSUYce "
        ),
    ),
    Learned(
        is_closed=False,
        respect="in-plane",
        least=0.0,
        letters=(
            "ADEILNRWbh FG EH BCFJKMQSg ADRUWb BCQVXa BDFLMRUch AEINVWbd BFJOUXac BCFJMQXac "
            "ADEINRWbd RSV QTU BFJMRSXac XYb WZa ADEILPRUh BFJMUWbc AEINQTXad DFLORUWbch "
            "CEKPQVXadg BCFJKOQVg DFLMRSWbch ADTUWb BCFJKMQSe ADEILNTWbf ADRUWZ AEIPVXad ADILRUch "
            "ADRUYb BCFJMSXac CEKNQVWbdg BFLMUXach CEKNQTWbdg BCHJMQXac BCQVZa ADRSWb ADEINTWbd "
            "BCQTXa BCSVXa ADEILNRWbf ADEIPRWbd BHJOUWbc BFJOUWbeh ADEILPRWbh BCFJKMQXae BCQVXY "
            "BFJORSWbc ADGINRWbd AGKPVWbdg BCHJKOQSg ADGILPRWbh BCFJOQXac BCJKQVdg DHLORUWbch "
            "AEIPVWbfg AEKNVWbdg BCFJKOSde DFLORUXaeh BCFJKOQUg BCFLMQXach ADEILNRVf BCFJKOScg "
            "BFLMRSXaeh ADGINRVfg ACEINQTfg ADEILPTfh AEKPVWbdg BFLMUXaeh DFLORSWbch ADEKNRWbdg "
            "BHLMUXach BCFJMQZac BCHJOSXac ADEILNRcf BFLOUXach CEKPQTWZdg ADEINRWbfg BCFLMSXach "
            "AGIPVWbd "
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
        letters=("FGJ EHI LMP KNO "),
    ),
)
