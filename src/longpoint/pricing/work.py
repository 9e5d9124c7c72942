"""The kinds of work that are priced, and the hours to start from until the crew has its own."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from typing import Final

from longpoint.pricing.hours import Hours, spread_of
from longpoint.speech.said import say

COST_BOOK: Final = say("US published cost book page, read in part")
CONSTANTS: Final = say("building constants tables, read in part")
COMMON: Final = say("common practice, no source")
CREWS_OWN: Final = say("your rates file")
LONG_SIDE_MM: Final = 1524.0
"""The cost book's hours hold up to five feet a side."""
ALLOWED: Final = "allowed"
"""The place of work that is allowed for before anything is read."""
METRES_IN_A_FOOT: Final = Decimal("0.3048")


class WorkKind(StrEnum):
    """One kind of work; its value is the key of the rates file."""

    SET_UP = "set_up"
    WINDOW_FOUR_SIDES = "window_four_sides"
    WINDOW_THREE_SIDES = "window_three_sides"
    DOOR_FACE = "door_face"
    LONG_SIDE = "long_side"
    ODD_CORNER = "odd_corner"
    ARCH = "arch"
    RESET_REVEAL = "reset_reveal"
    PACK_CORNER = "pack_corner"
    WINDOW_BOARD = "window_board"
    SKIRTING = "skirting"
    INTERNAL_CORNER = "internal_corner"
    EXTERNAL_CORNER = "external_corner"
    FLOOR_SCRIBE = "floor_scribe"
    CORNICE = "cornice"
    HANDRAIL = "handrail"
    SHELF = "shelf"
    OTHER_TRIM = "other_trim"
    PIECE = "piece"
    JOINT = "joint"

    @property
    def is_running(self) -> bool:
        """Tell whether it is counted in metres or feet rather than by number."""
        return self in _RUNNING


_RUNNING: Final = frozenset(
    {
        WorkKind.SKIRTING,
        WorkKind.FLOOR_SCRIBE,
        WorkKind.CORNICE,
        WorkKind.HANDRAIL,
        WorkKind.SHELF,
        WorkKind.OTHER_TRIM,
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rate:
    """Hours for one kind of work, and on whose word.

    Attributes:
        hours: For one, or for one metre. [h]
        source: Where the figures come from, to stand on the sheet.
    """

    hours: Hours
    source: str

    def per_foot(self) -> "Rate":
        """Return a rate by the metre as one by the foot."""
        hours = Hours(
            least=self.hours.least * METRES_IN_A_FOOT,
            likely=self.hours.likely * METRES_IN_A_FOOT,
            most=self.hours.most * METRES_IN_A_FOOT,
        )
        return Rate(hours=hours, source=self.source)


def _one(hours: str, source: str) -> Rate:
    return Rate(
        hours=spread_of(Decimal(hours)),
        source=say(
            "{source}; its spread ours",
            source=source,
        ),
    )


def _band(least: str, most: str, source: str) -> Rate:
    low, high = Decimal(least), Decimal(most)
    middle = (low + high) / 2
    return Rate(
        hours=Hours(least=low, likely=middle, most=high),
        source=say(
            "{source}; its middle taken",
            source=source,
        ),
    )


START_RATES: Final = {
    WorkKind.WINDOW_FOUR_SIDES: _one("0.50", COST_BOOK),
    WorkKind.WINDOW_THREE_SIDES: _one("0.33", COST_BOOK),
    WorkKind.DOOR_FACE: _one("0.45", COMMON),
    WorkKind.LONG_SIDE: _one("0.09", COST_BOOK),
    WorkKind.ODD_CORNER: _one("0.25", COST_BOOK),
    WorkKind.ARCH: _band("0.33", "1.0", COST_BOOK),
    WorkKind.RESET_REVEAL: _one("0.4", COMMON),
    WorkKind.PACK_CORNER: _one("0.15", COMMON),
    WorkKind.SKIRTING: _band("0.08", "0.12", COMMON),
    WorkKind.INTERNAL_CORNER: _one("0.08", COMMON),
    WorkKind.EXTERNAL_CORNER: _one("0.10", COMMON),
    WorkKind.CORNICE: _band("0.16", "0.20", COST_BOOK),
    WorkKind.HANDRAIL: _one("0.45", CONSTANTS),
    WorkKind.SHELF: _one("0.17", CONSTANTS),
}
"""Hours to start from, by the metre where they run. What isn't here has no figure until the crew
gives one: setting up, window boards, scribing to the floor, other trim, single pieces and joints.

References:
    A US published cost book: a prepared window of up to 5 ft a side, three sides 0.33 h, four
    0.50 h; 0.09 h for each longer side, 0.25 h for each corner of an odd shape; a ready-made arch
    0.33 to 1.0 h; crown 0.05 to 0.06 h per ft. Building constants tables: handrail 0.45 h/m, shelf
    0.17 h/m. All else: common practice, no source.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """Some work at one place.

    Attributes:
        kind: What kind.
        quantity: How many, or how many metres (feet). > 0; negative where less is to be done.
        place: Mark of the opening, run or trim.
        room: Its room; may be empty.
        why: What in the readings asks for it; empty where it goes without saying.
    """

    kind: WorkKind
    quantity: Decimal
    place: str
    room: str = ""
    why: str = ""
