"""The length that a sequence of pieces really uses on a stick, whole hundredths of a millimetre."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from longpoint.sticks.lay.demand import PER_MM, Demand


class Place(NamedTuple):
    """One piece in a sequence, and how it lies."""

    piece: int
    turned: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Workload:
    """The pieces of one profile by number, their ends unpacked for fast sums.

    Attributes:
        demands: The pieces; a piece's number is its index here.
        mid: Midline lengths. [0.01 mm]
        left_lean: Leans of the left ends. [0.01 mm]
        right_lean: Leans of the right ends. [0.01 mm]
        left_kerf: Cuts of the left ends along the stick. [0.01 mm]
        right_kerf: Cuts of the right ends along the stick. [0.01 mm]
        can_turn: Whether each may be turned.
        alone: What each uses on a stick of its own. [0.01 mm]
        least_more: The least that each adds to what is used: a piece between two ends that lean
            apart may fill their triangle, but no more than its own. [0.01 mm]
        most_lost: More than any piece adds beside its midline: two joints, or a joint and a point.
            [0.01 mm]
        plain_kerf: What every joint takes where all ends are square and cut alike, so that the
            order of the pieces makes no difference; None elsewhere. [0.01 mm]
    """

    demands: tuple[Demand, ...]
    mid: tuple[int, ...]
    left_lean: tuple[int, ...]
    right_lean: tuple[int, ...]
    left_kerf: tuple[int, ...]
    right_kerf: tuple[int, ...]
    can_turn: tuple[bool, ...]
    alone: tuple[int, ...]
    least_more: tuple[int, ...]
    most_lost: int
    plain_kerf: int | None

    def ends(self, place: Place) -> tuple[tuple[int, int], tuple[int, int]]:
        """Return (lean, kerf) of the end that lies left, and of the end that lies right."""
        piece, turned = place
        left = (self.left_lean[piece], self.left_kerf[piece])
        right = (self.right_lean[piece], self.right_kerf[piece])
        return (right, left) if turned else (left, right)


def workload(demands: Sequence[Demand]) -> Workload:
    """Unpack demands for the nester."""
    ends = [end for demand in demands for end in (demand.left, demand.right)]
    kerfs = {end.kerf for end in ends}
    leans = {abs(end.lean) for end in ends}
    return Workload(
        demands=tuple(demands),
        mid=tuple(d.mid for d in demands),
        left_lean=tuple(d.left.lean for d in demands),
        right_lean=tuple(d.right.lean for d in demands),
        left_kerf=tuple(d.left.kerf for d in demands),
        right_kerf=tuple(d.right.kerf for d in demands),
        can_turn=tuple(d.can_turn for d in demands),
        alone=tuple(d.mid + tip(d.left.lean) + tip(d.right.lean) for d in demands),
        least_more=tuple(d.mid - abs(d.left.lean - d.right.lean) - 1 for d in demands),
        most_lost=2 * (max(kerfs, default=0) + 2 * max(leans, default=0) + 1),
        plain_kerf=min(kerfs) if len(kerfs) == 1 and leans == {0} else None,
    )


def tip(lean: int) -> int:
    """Return what a leaning end costs at the end of a stick: its point. [0.01 mm]"""
    return abs(lean) + 1 if lean else 0


def gap(right: tuple[int, int], left: tuple[int, int]) -> int:
    """Return the distance along the midline between two pieces that follow each other.

    Args:
        right: (lean, kerf) of the right end of the first. [0.01 mm]
        left: (lean, kerf) of the left end of the second. [0.01 mm]

    Example:
        Two 45 degree ends of a 66 mm face, kerf 2.5: leaning the same way they share one cut,
        leaning apart they lose the triangle between them too.

        >>> gap((3300, 355), (3300, 355)), gap((3300, 355), (-3300, 355))
        (355, 6955)

    References:
        Each of the two cuts takes kerf x sqrt(1 + s^2) along the stick at every height, beside its
        own piece and off the other; the distance between the two ends changes by |p - q| x depth
        over the depth, so at its narrower edge it is depth / 2 x |p - q| less than at the midline.
    """
    return max(right[1], left[1]) + abs(right[0] - left[0])


def used_length(work: Workload, places: Sequence[Place]) -> int:
    """Return the length from the first point to the last, cuts between included. [0.01 mm]

    End trims aren't in it: they belong to the stick.
    """
    if not places:
        return 0
    used = 0
    last: tuple[int, int] | None = None
    for place in places:
        left, right = work.ends(place)
        used += work.mid[place.piece] + (tip(left[0]) if last is None else gap(last, left))
        last = right
    return used + (tip(last[0]) if last else 0)


def positions_mm(
    work: Workload, places: Sequence[Place], trim: int
) -> tuple[tuple[float, float], ...]:
    """Return the leftmost and rightmost point of every piece, from the stick's left end. [mm]"""
    found: list[tuple[float, float]] = []
    at = trim
    last: tuple[int, int] | None = None
    for place in places:
        left, right = work.ends(place)
        demand = work.demands[place.piece]
        first, second = demand.left.lean_mm, demand.right.lean_mm
        if place.turned:
            first, second = second, first
        at += tip(left[0]) if last is None else gap(last, left)
        start_mm = at / PER_MM - abs(first)
        at += work.mid[place.piece]
        found.append((start_mm, at / PER_MM + abs(second)))
        last = right
    return tuple(found)


def left_over(work: Workload, places: Sequence[Place], room: int) -> int:
    """Return what is left to use behind the last cut and before the far end's trim. [0.01 mm]"""
    if not places:
        return room
    _, (_, kerf) = work.ends(places[-1])
    return max(0, room - used_length(work, places) - kerf)
