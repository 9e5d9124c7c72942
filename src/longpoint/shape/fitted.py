"""What a fit returns."""

from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

from longpoint.errors import Finding
from longpoint.shape.point import Point


class Four(NamedTuple):
    """Four values anticlockwise, of corners (bl, br, tr, tl) or of sides (bottom, right, ...)."""

    first: float
    second: float
    third: float
    fourth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Residual:
    """What one reading differs by from the fitted shape.

    Attributes:
        name: What was read ("top", "rising", "plumb left", "corner N").
        read: Its value, mm or degrees.
        residual: Reading minus fitted, mm or degrees.
        u: Standard uncertainty the reading was weighted with, mm or degrees.
        over_u: Residual over its own standard uncertainty (0 when nothing checks the reading).
        redundancy: Share of an error of this reading that would show in its residual, 0 to 1.
    """

    name: str
    read: float
    residual: float
    u: float
    over_u: float
    redundancy: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Misclosure:
    """How well the readings of one shape fit together.

    Attributes:
        spare: Readings more than the shape needs (degrees of freedom).
        chi_squared: Sum of squared residuals over u; expected near `spare`.
        normalised: Its size as so many standard uncertainties (of a normal error as unlikely).
        misclosure_mm: With one spare reading: what the last diagonal differs by from the figure
            that the other readings predict. None otherwise.
    """

    spare: int
    chi_squared: float
    normalised: float
    misclosure_mm: float | None = None


class SourceKind(StrEnum):
    """What a part of a shape rests on."""

    TAPE = "tape"
    GAUGE = "gauge"
    ASSUMPTION = "assumption"


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapeSource:
    """One reading or assumption, and how an error of it moves the fitted corners.

    Attributes:
        name: What was read, or what was assumed, in plain words.
        kind: Tape, gauge or assumption.
        read: Its value, mm or degrees.
        u: Standard uncertainty it was weighted with, mm or degrees.
        moves_mm: (x, y) that each corner goes per mm or degree of error, in corner order.
    """

    name: str
    kind: SourceKind
    read: float
    u: float
    moves_mm: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class UnreadSide:
    """A side that wasn't read, where the readings contradict what is assumed of it.

    Attributes:
        place: Which side ("bottom").
        opposite: The one that it was assumed to be as long as.
        over_u: What the two differ by, by the readings, over the standard uncertainty of readings
            and assumption together.
    """

    place: str
    opposite: str
    over_u: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedOpening:
    """The fitted shape of one face of an opening.

    Attributes:
        mark: Mark of the opening.
        face: "a", "b", or "" when one face is trimmed.
        corners: Bottom left, bottom right, top right, top left. [mm]
        corner_deg: Angle at each corner, inside the opening. [deg]
        corner_u_deg: Standard uncertainty of each.
        side_mm: Bottom, right, head, left.
        side_u_mm: Standard uncertainty of each, the tape's shared part included.
        level_deg: Turn of the bottom side off level, anticlockwise; None: no level or plumb read.
        residuals: One for every reading.
        misclosure: None when there is no spare reading.
        assumed: What had to be assumed, in plain words ("square", "top as long as bottom").
        sources: What the corners rest on: each reading and each assumption.
        unread: A side that the readings contradict what is assumed of; the shape then goes by the
            readings alone. None: they don't.
        rise_mm: Rise of an arched head over its springing line, which is then the head's side;
            None for a straight head.
    """

    mark: str
    face: str = ""
    corners: tuple[Point, Point, Point, Point]
    corner_deg: Four
    corner_u_deg: Four
    side_mm: Four
    side_u_mm: Four
    level_deg: float | None = None
    residuals: tuple[Residual, ...] = ()
    misclosure: Misclosure | None = None
    assumed: tuple[str, ...] = ()
    sources: tuple[ShapeSource, ...] = ()
    unread: UnreadSide | None = None
    rise_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedOutline:
    """The fitted shape of one face of an opening that hasn't four sides.

    Attributes:
        mark: Mark of the opening.
        face: "a", "b", or "" when one face is trimmed.
        corners: Anticlockwise from the left end of the bottom side. [mm]
        corner_deg: Angle at each corner, inside the opening. [deg]
        corner_u_deg: Standard uncertainty of each.
        side_mm: Side i from corner i to the next; the first is the bottom.
        side_u_mm: Standard uncertainty of each, the tape's shared part included.
        level_deg: Turn of the bottom side off level, anticlockwise; None: not read.
        written: Number of each corner as it was written, from 1.
        residuals: One for every reading.
        misclosure: None when there is no spare reading.
        assumed: What had to be assumed, in plain words.
    """

    mark: str
    face: str = ""
    corners: tuple[Point, ...]
    corner_deg: tuple[float, ...]
    corner_u_deg: tuple[float, ...]
    side_mm: tuple[float, ...]
    side_u_mm: tuple[float, ...]
    level_deg: float | None = None
    written: tuple[int, ...] = ()
    residuals: tuple[Residual, ...] = ()
    misclosure: Misclosure | None = None
    assumed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedRoom:
    """The fitted plan of a room or chain of walls, seen from above.

    Attributes:
        name: The room's name.
        corners: Left-hand end of each wall in order; a chain has one more. [mm]
        wall_mm: Fitted length of each wall.
        wall_u_mm: Standard uncertainty of each.
        corner_deg: Angle in the room at the right-hand end of each wall (a chain: last is 90).
        corner_u_deg: Standard uncertainty of each.
        residuals: One for every reading.
        misclosure: None when there is no spare reading.
        assumed: What had to be assumed, in plain words.
    """

    name: str
    corners: tuple[Point, ...]
    wall_mm: tuple[float, ...]
    wall_u_mm: tuple[float, ...]
    corner_deg: tuple[float, ...]
    corner_u_deg: tuple[float, ...]
    residuals: tuple[Residual, ...] = ()
    misclosure: Misclosure | None = None
    assumed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Shapes:
    """Every fitted shape of a house, and what is to be said about them."""

    openings: tuple[FittedOpening, ...] = ()
    rooms: tuple[FittedRoom, ...] = ()
    outlines: tuple[FittedOutline, ...] = ()
    findings: tuple[Finding, ...] = ()
