"""What is told of handing over: by which guide, what is up, what is wet, who fills, and faults."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class Trade(StrEnum):
    """Who does a piece of work between carpenter and painter."""

    CARPENTER = "carpenter"
    PAINTER = "painter"


class DefectKind(StrEnum):
    """What of a defect a guide may have a figure for."""

    JOINT = "joint"
    SKIRTING = "skirting"
    PLUMB = "plumb"
    FLAT = "flat"


@dataclass(frozen=True, slots=True, kw_only=True)
class Handover:
    """What the house file tells of handing over.

    Attributes:
        place: Whose guides judge ("au-nsw"); empty: those of the dialect's country.
        contract: Day of the contract, which chooses the edition; None: the newest held.
        handed_over: Day of handing over; None: not yet.
        bare_floor: True where floors have no covering.
        fills: Who fills nail holes; None: not agreed.
        caulks: Who caulks; None: not agreed.
        fixed: Marks and rooms that are up.
        wet: Rooms where glue, filler, caulk or paint is wet.
        assumed: True when the file tells nothing of it.
    """

    place: str = ""
    contract: date | None = None
    handed_over: date | None = None
    bare_floor: bool = False
    fills: Trade | None = None
    caulks: Trade | None = None
    fixed: tuple[str, ...] = ()
    wet: tuple[str, ...] = ()
    assumed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Defect:
    """One thing found wrong and written down.

    Attributes:
        place: Mark or room where it is.
        what: What is wrong, as written.
        kind: What of it a guide may have a figure for; None: nothing is judged.
        found_mm: How much it measured; None: not measured.
        height_mm: Height of the wall, where a wall is judged.
        seen: Day it was seen.
        mended: Day it was mended; None: not yet.
    """

    place: str
    what: str
    kind: DefectKind | None = None
    found_mm: float | None = None
    height_mm: float | None = None
    seen: date | None = None
    mended: date | None = None
