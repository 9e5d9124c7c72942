"""One piece to be cut."""

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.survey.openings import Method

LEAST_HOOK_DEG: Final = 1.0
"""An end must be cut at least this far off square before a tape hook finds its long point.

A foot cut half a degree off square for a falling floor has a longer edge, but no point to hook.
"""


LEAST_WALL_HOOK_DEG: Final = 5.0
"""The same for a piece along a wall: a leaning corner takes it a degree or two off square, and it
still goes by its back and its face; only a rake is hooked."""


class Role(StrEnum):
    """What a piece is in its place."""

    HEAD = "head"
    LEFT_LEG = "left-leg"
    RIGHT_LEG = "right-leg"
    SILL = "sill"
    APRON = "apron"
    BOARD = "board"
    RUN = "run"
    RETURN = "return"
    SIDE = "side"
    """Along a side of an opening that hasn't four."""
    SEGMENT = "segment"
    """One of the straight-grained pieces of an arch."""
    PLINTH_BLOCK = "plinth-block"
    CORNER_BLOCK = "corner-block"
    BACK_BAND = "back-band"
    STOP = "stop"
    LINING = "lining"
    WEDGE = "wedge"
    RAIL = "rail"
    STILE = "stile"
    """Upright of a panelling frame."""
    BEAD = "bead"
    CORNICE = "cornice"
    SHELF = "shelf"
    HANDRAIL = "handrail"


ALONG_WALLS: Final = frozenset({Role.RUN, Role.RETURN, Role.BEAD, Role.RAIL})
"""Roles of pieces that run along a wall, their corners cut through the thickness; a rail of a
panelling frame, which is mitred across its face, is none of them."""


class CutKind(StrEnum):
    """How an end is cut."""

    SQUARE = "square"
    MITRE = "mitre"
    BEVEL = "bevel"
    COMPOUND = "compound"
    SCRIBE = "scribe"
    SCARF = "scarf"


@dataclass(frozen=True, slots=True, kw_only=True)
class EndCut:
    """The cut of one end, for the piece lying on its back, face up.

    Attributes:
        kind: How it is cut.
        mitre_deg: Off square across the face, positive when the outer edge is the longer there.
        bevel_deg: Off square through the thickness, negative when the back is relieved (the face
            longer than the back).
    """

    kind: CutKind
    mitre_deg: float = 0.0
    bevel_deg: float = 0.0


SQUARE_CUT: Final = EndCut(kind=CutKind.SQUARE)


class HookEnd(StrEnum):
    """The end whose long point the tape is hooked on."""

    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One piece, as it lies at the saw: on its back, face up, outer edge away from you.

    Attributes:
        mark: Its mark, unique in the house, e.g. "W1-head".
        role: What it is in its place.
        opening: Mark of its opening; None for a piece of a run or of other trim.
        run: Mark of its run; None for any other piece.
        trim: Mark of the other trim it belongs to (rail, cornice, ...); None for any other piece.
        room: Room it goes to; may be empty.
        face: "a" or "b" where both faces of an opening are trimmed, else "".
        profile: Name of its profile.
        width_mm: Face width of the profile.
        thickness_mm: Thickness of the profile.
        inner_mm: Length along the inner edge (skirting: bottom edge), at the face.
        outer_mm: Length along the outer edge (skirting: top edge), at the face.
        back_mm: Longest length along the back, what a tape along the wall shows.
        left: Cut of the left end.
        right: Cut of the right end.
        u_mm: Standard uncertainty of the inner edge's length, from the readings.
        method: The way of fixing that the lengths suppose; None for a run.
        hand_sum: The sum a carpenter can follow, e.g. "1187 + 2 x 5 + 57 + 1.3 slant = 1255.3".
        notes: What else is to be done to it, one plain line each, e.g. "rip to 92 at the left".
    """

    mark: str
    role: Role
    opening: str | None = None
    run: str | None = None
    trim: str | None = None
    room: str = ""
    face: str = ""
    profile: str
    width_mm: float
    thickness_mm: float
    inner_mm: float
    outer_mm: float
    back_mm: float
    left: EndCut
    right: EndCut
    u_mm: float = 0.0
    method: Method | None = None
    hand_sum: str = ""
    notes: tuple[str, ...] = ()

    @property
    def place(self) -> str:
        """Mark of the opening, run or other trim it belongs to; its own where it has none."""
        return self.opening or self.run or self.trim or self.mark

    @property
    def is_along_wall(self) -> bool:
        """Tell whether it is cut as skirting is: along a wall, by its back and its face."""
        return self.role in ALONG_WALLS and (self.role is not Role.RAIL or self.hook_from is None)

    @property
    def short_mm(self) -> float:
        """The smaller of the two edges. [mm]"""
        return min(self.inner_mm, self.outer_mm)

    @property
    def long_mm(self) -> float:
        """The larger of the two edges. [mm]"""
        return max(self.inner_mm, self.outer_mm)

    @property
    def hook_from(self) -> HookEnd | None:
        """The end to hook on: the left if it has a long point, else the right, else None."""
        least_deg = LEAST_WALL_HOOK_DEG if self.role in ALONG_WALLS else LEAST_HOOK_DEG
        if self.left.mitre_deg >= least_deg:
            return HookEnd.LEFT
        if self.right.mitre_deg >= least_deg:
            return HookEnd.RIGHT
        return None

    @property
    def hook_mm(self) -> float | None:
        """Tape from the long point hooked on, on the slant, to the inner edge of the other end.

        None when there is no long point to hook on. [mm]
        """
        match self.hook_from:
            case HookEnd.LEFT:
                return self.hook_reading_mm(self.left.mitre_deg)
            case HookEnd.RIGHT:
                return self.hook_reading_mm(self.right.mitre_deg)
            case None:
                return None

    def hook_reading_mm(self, mitre_deg: float) -> float:
        """Return the slanted tape reading from the long point of an end mitred by `mitre_deg`.

        References:
            Right triangle: along = inner edge + width x tan(mitre), across = width.
        """
        along_mm = self.inner_mm + self.width_mm * math.tan(math.radians(mitre_deg))
        return math.hypot(along_mm, self.width_mm)
