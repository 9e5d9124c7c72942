"""The shape of an opening that isn't told by four sides and two diagonals."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Across:
    """A length read from corner to corner; corners count from 1 in the order written."""

    start: int
    end: int
    length_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class OutlineReadings:
    """What was read of an opening of another shape; either corners, or sides.

    Attributes:
        corners: Across and up, in order round it, either way. [mm]
        sides_mm: Sides in order round it, anticlockwise from the bottom; side i runs from corner i
            to corner i + 1.
        angles_deg: Corners 2, 3, ... as many as were read: angle i stands between side i and side
            i + 1, inside the opening.
        across: Lengths read from corner to corner.
        tape: Name of the tape that read it.
        by: Who read it; may be empty.
    """

    corners: tuple[tuple[float, float], ...] = ()
    sides_mm: tuple[float, ...] = ()
    angles_deg: tuple[float, ...] = ()
    across: tuple[Across, ...] = ()
    tape: str
    by: str = ""
