"""Legs and segments of arches, cut as solids from their settings, close.

Circles, springing joints and lines are worked out by shapely (tests/laid_shapes); OpenCascade saws.
Two segments that meet may lie half a millimetre apart along their common cut (an end segment's
board lies lower), and a leg is narrower than a board: what has to agree is the plane of the cut,
and where the trim's inner and outer edges come to lie in it, once sawn to the template.
"""

import math
import random
from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Final

import pytest

from longpoint.pieces.piece import Role
from tests.laid_shapes import Laid, Set, arch_set, drawn_arch
from tests.solids.kernel import JointMeasure, Side, common_volume_mm3, joint
from tests.solids.test_outlines import body
from tests.solids.vectors import Vector

CLOSE_MM: Final = 0.01
FEW, MANY = 10, 200


def drawn_set(draw: random.Random) -> Set:
    corners, rise_mm = drawn_arch(draw)
    count = draw.choice((2, 3, 4, 5, 7))
    return arch_set(corners, rise_mm, draw.uniform(2.0, 10.0), draw.uniform(40.0, 110.0), count)


def round_the_arch(found: Set) -> list[Laid]:
    """Return left leg, segments from left to right, right leg."""
    over = (Role.LEFT_LEG, Role.SEGMENT, Role.RIGHT_LEG)
    return [laid for laid in found.laid if laid.piece.role in over]


def joints_of(found: Set, *, off_deg: float = 0.0) -> Iterator[JointMeasure]:
    bodies = [body(laid, None, off_deg) for laid in round_the_arch(found)]
    for before, after in pairwise(bodies):
        yield joint(before, Side.RIGHT, after, Side.LEFT)


def sill_joints_of(found: Set, *, off_deg: float = 0.0) -> Iterator[JointMeasure]:
    by_role = {laid.piece.role: body(laid, None, off_deg) for laid in found.laid}
    sill = by_role[Role.SILL]
    yield joint(by_role[Role.RIGHT_LEG], Side.RIGHT, sill, Side.LEFT)
    yield joint(sill, Side.RIGHT, by_role[Role.LEFT_LEG], Side.LEFT)


def off_plane_mm(met: JointMeasure) -> float:
    return max(met.gap_mm, met.overlap_mm)


def on_the_cut_mm(found: Set) -> float:
    """Return how far a leg's end face stands past the cut face of the segment it meets.

    The board is wider than the leg and its inner edge no higher, so the leg's corners must lie
    within the segment's face.
    """
    legs_and_segments = round_the_arch(found)
    worst = 0.0
    for leg, segment, ends in (
        (legs_and_segments[0], legs_and_segments[1], (Side.RIGHT, Side.LEFT)),
        (legs_and_segments[-1], legs_and_segments[-2], (Side.LEFT, Side.RIGHT)),
    ):
        corners = body(leg, None, 0.0).end_face(ends[0])
        face = body(segment, None, 0.0).end_face(ends[1])
        low, high = min(face, key=_radial(leg)), max(face, key=_radial(leg))
        length_mm = math.dist(low[:2], high[:2])
        for corner in corners:
            along_mm = (
                (corner[0] - low[0]) * (high[0] - low[0])
                + (corner[1] - low[1]) * (high[1] - low[1])
            ) / length_mm
            worst = max(worst, -along_mm, along_mm - length_mm)
    return worst


def _radial(leg: Laid) -> Callable[[Vector], float]:
    """Return how far across a leg a point lies, from its inner edge outwards."""
    ox, oy = leg.out
    return lambda point: point[0] * ox + point[1] * oy


def check_closed(found: Set) -> None:
    assert all(off_plane_mm(met) < CLOSE_MM for met in joints_of(found))
    assert all(met.worst_mm < CLOSE_MM for met in sill_joints_of(found))
    assert on_the_cut_mm(found) < CLOSE_MM


def test_the_pieces_of_a_random_arch_close() -> None:
    draw = random.Random("arches close")
    for _ in range(FEW):
        check_closed(drawn_set(draw))


@pytest.mark.long
def test_the_pieces_of_two_hundred_random_arches_close() -> None:
    draw = random.Random("two hundred arches")
    for _ in range(MANY):
        check_closed(drawn_set(draw))


def test_no_two_neighbours_want_the_same_room() -> None:
    draw = random.Random("room")
    for _ in range(3):
        bodies = [body(laid, None, 0.0) for laid in round_the_arch(drawn_set(draw))]
        for one, other in pairwise(bodies):
            assert common_volume_mm3(one, other) < CLOSE_MM * 18.0 * 400.0


@pytest.mark.parametrize("off_deg", [0.5, -0.5])
def test_a_saw_half_a_degree_off_leaves_every_joint_open(off_deg: float) -> None:
    draw = random.Random("half a degree")
    for _ in range(4):
        found = drawn_set(draw)
        met = (*joints_of(found, off_deg=off_deg), *sill_joints_of(found, off_deg=off_deg))
        assert min(off_plane_mm(each) for each in met) > 20.0 * CLOSE_MM
