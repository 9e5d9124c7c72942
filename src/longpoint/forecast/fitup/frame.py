"""A set of architraves as it lies on the wall: its joints, its moves, and what it may be out by.

Each piece can slide along its side, shift outwards and turn a little. Gaps, steps and quirks are
linear in these moves and in the errors of the pieces and of the opening; what is left out is of
second order (under 0.1 mm for moves of some millimetres).
"""

from dataclasses import dataclass
from enum import IntEnum, StrEnum
from typing import Final

from longpoint.shape.point import Point, direction
from longpoint.trims.outline import TrimOutline


class Slot(IntEnum):
    """What one side can be out by; a frame of n sides has n times these, side after side."""

    LENGTH_START = 0
    """Piece too long at its first end, at the heel. [mm]"""
    LENGTH_END = 1
    TURN_START = 2
    """First end cut past its angle: its outer edge longer than it should be. [rad]"""
    TURN_END = 3
    WIDTH = 4
    """Face wider than supposed. [mm]"""
    REVEAL_START = 5
    """Reveal further out than supposed at the side's first corner. [mm]"""
    REVEAL_MIDDLE = 6
    REVEAL_END = 7


SLOTS: Final = len(Slot)
MOVES: Final = 3
"""Of each piece: slide along its side [mm], shift outwards [mm], turn anticlockwise [rad]."""


class RowKind(StrEnum):
    """What a row of a frame measures."""

    HEEL_GAP = "heel gap"
    TOE_GAP = "toe gap"
    SIGHT_STEP = "sight-line step"
    """How far the inner edges miss each other, along the joint."""
    TOE_STEP = "toe step"
    """How far the outer corners miss each other, along the joint."""
    QUIRK = "quirk"


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameSide:
    """One piece of a frame, by the line of its inner edge.

    Attributes:
        start: First end of the inner edge, anticlockwise round the opening. [mm]
        end: Its other end.
        width_mm: Face width.
        quirk_in_mm: How far the piece may come inwards of its place: the quirk less the least
            quirk accepted. >= 0.
        quirk_out_mm: How far it may go outwards. >= 0.
    """

    start: Point
    end: Point
    width_mm: float
    quirk_in_mm: float
    quirk_out_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameJoint:
    """A mitre between the end of one side and the start of another.

    Attributes:
        before: Index of the side that ends here.
        after: Index of the side that starts here.
        heel: Inner corner. [mm]
        toe: Outer corner.
    """

    before: int
    after: int
    heel: Point
    toe: Point

    @property
    def length_mm(self) -> float:
        """Length of the joint, heel to toe. [mm]"""
        return self.heel.distance_mm(self.toe)


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """A set of architraves round an opening.

    Attributes:
        sides: Pieces anticlockwise. A closed frame has a joint after the last one too.
        joints: Their mitres, in the same order.
    """

    sides: tuple[FrameSide, ...]
    joints: tuple[FrameJoint, ...]

    @property
    def is_closed(self) -> bool:
        """Tell whether the pieces go all the way round."""
        return len(self.joints) == len(self.sides)


@dataclass(frozen=True, slots=True, kw_only=True)
class FitLimits:
    """What still counts as a fit.

    Attributes:
        gap_mm: Widest open joint. > 0.
        sight_step_mm: Widest step where the inner edges meet; assumed.
        toe_step_mm: Widest step where the outer corners meet; assumed.
    """

    gap_mm: float
    sight_step_mm: float = 0.5
    toe_step_mm: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameRow:
    """One limit: moves . x + errors . e <= r x limit_mm, where r is the fit ratio.

    Attributes:
        kind: What it limits.
        place: Index of its joint, or of its side for a quirk.
        moves: Change per move, (3 n,), slide, shift and turn of each side.
        errors: Change per error, (8 n,), the slots of each side.
        limit_mm: Its limit at a fit ratio of 1; 0: it must hold whatever the ratio (wood can't
            overlap).
    """

    kind: RowKind
    place: int
    moves: tuple[float, ...]
    errors: tuple[float, ...]
    limit_mm: float


def frame_of(
    outline: TrimOutline,
    widths_mm: tuple[float, ...],
    quirk_room_mm: tuple[tuple[float, float], ...],
) -> Frame:
    """Return the frame that a set of trim makes.

    Args:
        outline: Its inner and outer corners.
        widths_mm: Face width along each side, 0 for a bare side, (n,).
        quirk_room_mm: How far each side may come inwards and go outwards, (n,).

    Returns:
        The frame; a bare side has no piece, and the frame is open there.
    """
    count = len(widths_mm)
    bare = [i for i in range(count) if widths_mm[i] == 0.0]
    first = bare[0] + 1 if bare else 0
    kept = [i % count for i in range(first, first + count) if widths_mm[i % count] != 0.0]
    sides = tuple(
        FrameSide(
            start=outline.inner[i],
            end=outline.inner[(i + 1) % count],
            width_mm=widths_mm[i],
            quirk_in_mm=quirk_room_mm[i][0],
            quirk_out_mm=quirk_room_mm[i][1],
        )
        for i in kept
    )
    joints = tuple(
        FrameJoint(
            before=index,
            after=(index + 1) % len(kept),
            heel=outline.inner[(i + 1) % count],
            toe=outline.outer[(i + 1) % count],
        )
        for index, i in enumerate(kept)
        if (i + 1) % count == kept[(index + 1) % len(kept)]
    )
    return Frame(sides=sides, joints=joints)


def frame_rows(frame: Frame, limits: FitLimits) -> tuple[FrameRow, ...]:
    """Return every limit of a frame: gaps, steps and quirks.

    Args:
        frame: The frame.
        limits: What counts as a fit.

    Returns:
        Rows: of each joint heel and toe gap (each not over, and not under 0), sight-line and toe
        step both ways; of each side the quirk at both ends and the middle, both ways.

    References:
        Rigid plane motion of each piece, first order: a point P of a piece goes by
        t d + v o + th (P - C) turned a quarter left; the gap at P is what the two pieces' points
        move apart square to the joint, less what each is too long.
    """
    rows: list[FrameRow] = []
    for index, joint in enumerate(frame.joints):
        heel, toe = _gap(frame, joint, at_toe=False), _gap(frame, joint, at_toe=True)
        for kind, gap in ((RowKind.HEEL_GAP, heel), (RowKind.TOE_GAP, toe)):
            rows.append(gap.row(kind, index, limits.gap_mm))
            rows.append(gap.negated().row(kind, index, 0.0))
        sight = _step(frame, joint, at_toe=False)
        outer = _step(frame, joint, at_toe=True)
        for kind, step, limit_mm in (
            (RowKind.SIGHT_STEP, sight, limits.sight_step_mm),
            (RowKind.TOE_STEP, outer, limits.toe_step_mm),
        ):
            rows.append(step.row(kind, index, limit_mm))
            rows.append(step.negated().row(kind, index, limit_mm))
    for index, side in enumerate(frame.sides):
        for slot in (Slot.REVEAL_START, Slot.REVEAL_MIDDLE, Slot.REVEAL_END):
            quirk = _quirk(frame, index, slot)
            rows.append(quirk.row(RowKind.QUIRK, index, side.quirk_out_mm))
            rows.append(quirk.negated().row(RowKind.QUIRK, index, side.quirk_in_mm))
    return tuple(rows)


class _Sum:
    """A linear sum over the moves and errors of a frame, while it is put together."""

    def __init__(self, count: int) -> None:
        self.moves = [0.0] * (MOVES * count)
        self.errors = [0.0] * (SLOTS * count)

    def point(self, side: FrameSide, index: int, at: Point, along: tuple[float, float]) -> None:
        """Add how far a point of a piece goes in a direction, by the moves of the piece."""
        dx, dy = direction(side.start, side.end)
        ax, ay = along
        arm_x = at.x_mm - (side.start.x_mm + side.end.x_mm) / 2.0
        arm_y = at.y_mm - (side.start.y_mm + side.end.y_mm) / 2.0
        self.moves[MOVES * index] += dx * ax + dy * ay
        self.moves[MOVES * index + 1] += dy * ax - dx * ay
        self.moves[MOVES * index + 2] += arm_x * ay - arm_y * ax

    def error(self, index: int, slot: Slot, change: float) -> None:
        self.errors[SLOTS * index + slot] += change

    def negated(self) -> "_Sum":
        out = _Sum(0)
        out.moves = [-x for x in self.moves]
        out.errors = [-x for x in self.errors]
        return out

    def row(self, kind: RowKind, place: int, limit_mm: float) -> FrameRow:
        return FrameRow(
            kind=kind,
            place=place,
            moves=tuple(self.moves),
            errors=tuple(self.errors),
            limit_mm=limit_mm,
        )


def _gap(frame: Frame, joint: FrameJoint, *, at_toe: bool) -> _Sum:
    """Return the gap at one end of a joint, square to it."""
    before, after = frame.sides[joint.before], frame.sides[joint.after]
    ux, uy = direction(joint.heel, joint.toe)
    square = (-uy, ux)
    away = (uy, -ux)
    at = joint.toe if at_toe else joint.heel
    total = _Sum(len(frame.sides))
    total.point(after, joint.after, at, square)
    total.point(before, joint.before, at, away)
    end_x, end_y = direction(before.start, before.end)
    start_x, start_y = direction(after.start, after.end)
    total.error(joint.before, Slot.LENGTH_END, -(end_x * square[0] + end_y * square[1]))
    total.error(joint.after, Slot.LENGTH_START, -(start_x * square[0] + start_y * square[1]))
    if at_toe:
        total.error(joint.before, Slot.TURN_END, -joint.length_mm)
        total.error(joint.after, Slot.TURN_START, -joint.length_mm)
    return total


def _step(frame: Frame, joint: FrameJoint, *, at_toe: bool) -> _Sum:
    """Return how far the edge of the piece before passes that of the piece after, outwards."""
    before, after = frame.sides[joint.before], frame.sides[joint.after]
    along = direction(joint.heel, joint.toe)
    back = (-along[0], -along[1])
    at = joint.toe if at_toe else joint.heel
    total = _Sum(len(frame.sides))
    total.point(before, joint.before, at, along)
    total.point(after, joint.after, at, back)
    ends = (
        (joint.before, before, Slot.LENGTH_END, Slot.TURN_END, 1.0),
        (joint.after, after, Slot.LENGTH_START, Slot.TURN_START, -1.0),
    )
    for index, side, length, turn, sign in ends:
        dx, dy = direction(side.start, side.end)
        sine = sign * (dx * along[0] + dy * along[1])
        total.error(index, length, sign * sine)
        if at_toe:
            total.error(index, turn, sign * sine * joint.length_mm**2 / side.width_mm)
            total.error(index, Slot.WIDTH, sign * joint.length_mm / side.width_mm)
    return total


def _quirk(frame: Frame, index: int, slot: Slot) -> _Sum:
    """Return how far a side stands outside its place against the true reveal."""
    side = frame.sides[index]
    dx, dy = direction(side.start, side.end)
    middle = Point((side.start.x_mm + side.end.x_mm) / 2.0, (side.start.y_mm + side.end.y_mm) / 2.0)
    at = {
        Slot.REVEAL_START: side.start,
        Slot.REVEAL_MIDDLE: middle,
        Slot.REVEAL_END: side.end,
    }[slot]
    total = _Sum(len(frame.sides))
    total.point(side, index, at, (dy, -dx))
    total.error(index, slot, -1.0)
    return total
