"""The plan of an alcove at one height, and the shelf that fills it.

Seen from above: the back wall runs along y = 0 from the back left corner at x = 0; y grows towards
the room. The front is read on a line along the back wall, a known depth in front of it.
"""

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.errors import PieceError
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.shape.point import Point
from longpoint.speech.said import say

MOST_OUT_DEG: Final = 30.0
"""A cheek further out of square than this is a slip, or no alcove: our limit, no source."""

GAUGE_U_DEG: Final = 0.5
"""Standard uncertainty of one reading by bevel gauge; assumed, as for the corners of a room."""

_SURE: Final = 3.0
"""So many standard uncertainties make a slip; as usual for the readings of openings."""


class Split(StrEnum):
    """How the difference between front and back was shared between the two cheeks."""

    READ = "read"
    """By an angle or a diagonal."""
    EVENLY = "evenly"
    """Assumed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AlcoveReadings:
    """What was read of an alcove at one height.

    Attributes:
        back_mm: Along the back wall.
        front_mm: Along the front line.
        depth_mm: From the back wall to the front line, square to the back. > 0.
        left_corner_deg: Angle in the back left corner; None: not read.
        right_corner_deg: Angle in the back right corner; None: not read.
        from_back_left_mm: Back left corner to the front line's right end; None: not read.
        from_back_right_mm: Back right corner to the front line's left end; None: not read.
        u_mm: Standard uncertainty of one of these lengths.
        units: Unit in which they are said.
    """

    back_mm: float
    front_mm: float
    depth_mm: float
    left_corner_deg: float | None = None
    right_corner_deg: float | None = None
    from_back_left_mm: float | None = None
    from_back_right_mm: float | None = None
    u_mm: float
    units: Units = Units.MM


@dataclass(frozen=True, slots=True, kw_only=True)
class Alcove:
    """The plan of an alcove at one height.

    Attributes:
        back_mm: Along the back wall.
        depth_mm: From the back wall to the front line.
        left_out_mm: How far the left cheek runs outwards from back to front; negative inwards.
        right_out_mm: The same of the right cheek.
        split: Whether these two were read apart.
    """

    back_mm: float
    depth_mm: float
    left_out_mm: float
    right_out_mm: float
    split: Split

    @property
    def left_deg(self) -> float:
        """How far the left cheek is out of square, positive where it opens to the front."""
        return math.degrees(math.atan2(self.left_out_mm, self.depth_mm))

    @property
    def right_deg(self) -> float:
        """The same of the right cheek."""
        return math.degrees(math.atan2(self.right_out_mm, self.depth_mm))

    def width_mm(self, depth_mm: float) -> float:
        """Return how wide it is at a depth in front of the back wall."""
        return self.back_mm + (self.left_out_mm + self.right_out_mm) * depth_mm / self.depth_mm

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """Front left, front right, back right, back left."""
        return (
            Point(-self.left_out_mm, self.depth_mm),
            Point(self.back_mm + self.right_out_mm, self.depth_mm),
            Point(self.back_mm, 0.0),
            Point(0.0, 0.0),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfCut:
    """A shelf, its underside on the saw's table and its back edge away from you.

    Attributes:
        front_mm: Length of its front edge.
        back_mm: Length of its back edge.
        left_deg: Cut of its left end, positive where the back edge is the longer there.
        right_deg: Cut of its right end.
    """

    front_mm: float
    back_mm: float
    left_deg: float
    right_deg: float


def fit_alcove(read: AlcoveReadings) -> Alcove:
    """Return the plan of an alcove that its readings give.

    Args:
        read: Both widths and the depth; angles and diagonals as far as read.

    Returns:
        The plan. The two widths are kept; each angle or diagonal says how far one cheek is out,
        and their mean, weighted by their doubts, splits the difference of the widths.

    Raises:
        PieceError: A diagonal is shorter than the alcove is deep, the angles and diagonals don't
            agree, or a cheek is further out of square than any alcove's.

    Example:
        >>> plan = fit_alcove(
        ...     AlcoveReadings(
        ...         back_mm=900, front_mm=912, depth_mm=300, left_corner_deg=91.0, u_mm=0.6
        ...     )
        ... )
        >>> round(plan.left_out_mm, 1), round(plan.right_out_mm, 1)
        (5.2, 6.8)

    References:
        Cheek from the back corner: out = -depth cot(corner). Diagonal from the back left corner:
        (back + right out)^2 + depth^2.
    """
    both_mm = read.front_mm - read.back_mm
    said = _left_outs(read, both_mm)
    left_mm = both_mm / 2.0
    if said:
        weights = [1.0 / (u_mm * u_mm) for _, u_mm in said]
        left_mm = math.fsum(
            out_mm * weight for (out_mm, _), weight in zip(said, weights, strict=True)
        ) / math.fsum(weights)
        _check_agreement(said, read.units)
    alcove = Alcove(
        back_mm=read.back_mm,
        depth_mm=read.depth_mm,
        left_out_mm=left_mm,
        right_out_mm=both_mm - left_mm,
        split=Split.READ if said else Split.EVENLY,
    )
    worst_deg = max(abs(alcove.left_deg), abs(alcove.right_deg))
    if worst_deg > MOST_OUT_DEG:
        raise PieceError(
            say(
                "Back {back}, front {front} and depth {depth} put a cheek "
                "{worst_deg:.0f} degrees out of square.",
                back=format_length(read.back_mm, read.units),
                front=format_length(read.front_mm, read.units),
                depth=format_with_unit(read.depth_mm, read.units),
                worst_deg=worst_deg,
            ),
            say(
                "We take no alcove for more than {most_out_deg:.0f} out.",
                most_out_deg=MOST_OUT_DEG,
            ),
            say("Read both widths, the depth and the diagonal again."),
        )
    return alcove


def fit_shelf(alcove: Alcove, board_mm: float, gap_mm: float, units: Units = Units.MM) -> ShelfCut:
    """Return the shelf that stands against the back wall and leaves a gap at each cheek.

    Args:
        alcove: The alcove at the shelf's height.
        board_mm: Width of the board, from back to front. > 0.
        gap_mm: Left open at each end, along the shelf. >= 0.
        units: Unit in which a refusal is said.

    Raises:
        PieceError: The board is deeper than the alcove was read, or nothing is left of it.

    Example:
        >>> plan = Alcove(
        ...     back_mm=900, depth_mm=300, left_out_mm=6, right_out_mm=6, split=Split.READ
        ... )
        >>> shelf = fit_shelf(plan, 250, 1)
        >>> round(shelf.front_mm, 6), shelf.back_mm, round(shelf.left_deg, 2)
        (908.0, 898.0, -1.15)
    """
    if board_mm > alcove.depth_mm:
        raise PieceError(
            say(
                "The board is {board} deep; the alcove was read {depth} deep.",
                board=format_with_unit(board_mm, units),
                depth=format_with_unit(alcove.depth_mm, units),
            ),
            say("Past the front line nothing is known of the cheeks."),
            say("Read the front where the board's front edge will be, and write that depth."),
        )
    front_mm = alcove.width_mm(board_mm) - 2.0 * gap_mm
    back_mm = alcove.back_mm - 2.0 * gap_mm
    if min(front_mm, back_mm) <= 0:
        raise PieceError(
            say(
                "The alcove is {back} wide at the back.",
                back=format_with_unit(alcove.back_mm, units),
            ),
            say("Less than nothing is left of the shelf."),
            say("Read the widths again, or look at the gap."),
        )
    return ShelfCut(
        front_mm=front_mm,
        back_mm=back_mm,
        left_deg=-alcove.left_deg,
        right_deg=-alcove.right_deg,
    )


def headroom_mm(back_mm: float, front_mm: float, thickness_mm: float) -> float | None:
    """Return how much room above it a shelf needs to be tipped in past a narrower front.

    Args:
        back_mm: Its longest edge.
        front_mm: Width of the alcove where it is narrowest.
        thickness_mm: Its thickness.

    Returns:
        Height of the tipped board; None when it goes in level, or can't be tipped in at all.

    Example:
        >>> headroom_mm(900.0, 912.0, 22.0) is None, round(headroom_mm(900.0, 890.0, 22.0))
        (True, 179)

    References:
        Tipped by f a board of length b and thickness t is b cos f + t sin f wide and
        b sin f + t cos f high; the width falls to the front's at f = atan(t/b) + acos(front/hyp).
    """
    if back_mm <= front_mm:
        return None
    corner_mm = math.hypot(back_mm, thickness_mm)
    tipped = math.atan2(thickness_mm, back_mm) + math.acos(front_mm / corner_mm)
    if tipped >= math.pi / 2.0:
        return None
    return back_mm * math.sin(tipped) + thickness_mm * math.cos(tipped)


def _left_outs(read: AlcoveReadings, both_mm: float) -> list[tuple[float, float]]:
    """Return what each angle and diagonal says of the left cheek, with its doubt."""
    said: list[tuple[float, float]] = []
    gauge_u_mm = read.depth_mm * math.radians(GAUGE_U_DEG)
    width_u_mm = math.sqrt(2.0) * read.u_mm
    if read.left_corner_deg is not None:
        said.append((_out_mm(read.left_corner_deg, read.depth_mm), gauge_u_mm))
    if read.right_corner_deg is not None:
        right_mm = _out_mm(read.right_corner_deg, read.depth_mm)
        said.append((both_mm - right_mm, math.hypot(gauge_u_mm, width_u_mm)))
    if read.from_back_right_mm is not None:
        out_mm = _along_mm(read, read.from_back_right_mm) - read.back_mm
        said.append((out_mm, width_u_mm))
    if read.from_back_left_mm is not None:
        right_mm = _along_mm(read, read.from_back_left_mm) - read.back_mm
        said.append((both_mm - right_mm, width_u_mm))
    return said


def _out_mm(corner_deg: float, depth_mm: float) -> float:
    return depth_mm * math.tan(math.radians(corner_deg - 90.0))


def _along_mm(read: AlcoveReadings, diagonal_mm: float) -> float:
    depth_mm = read.depth_mm
    if diagonal_mm <= depth_mm:
        raise PieceError(
            say(
                "A diagonal reads {diagonal} in an alcove {depth} deep.",
                diagonal=format_length(diagonal_mm, read.units),
                depth=format_with_unit(depth_mm, read.units),
            ),
            say("No diagonal is shorter than that."),
            say("Read it again, from the back corner to the far end of the front line."),
        )
    return math.sqrt(diagonal_mm * diagonal_mm - depth_mm * depth_mm)


def _check_agreement(said: list[tuple[float, float]], units: Units) -> None:
    """Raise where two angles or diagonals put the left cheek in different places."""
    for index, (one_mm, one_u_mm) in enumerate(said):
        for other_mm, other_u_mm in said[index + 1 :]:
            if abs(one_mm - other_mm) > _SURE * math.hypot(one_u_mm, other_u_mm):
                raise PieceError(
                    say(
                        "Two of the angles and diagonals put the left cheek {one} "
                        "apart at the front.",
                        one=format_with_unit(abs(one_mm - other_mm), units),
                    ),
                    say("One of them, or one of the two widths, is wrong."),
                    say("Read the diagonals and both widths again."),
                )
