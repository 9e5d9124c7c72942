"""Pieces round shapes of any number of sides, cut as solids from their settings, close.

The lines that the pieces lie on are worked out by shapely (tests/laid_shapes); OpenCascade saws.
"""

import random
from dataclasses import dataclass
from itertools import combinations
from typing import Final

import pytest

from tests.laid_shapes import Laid, Set, drawn_polygon, polygon_set
from tests.solids.kernel import Body, Section, Side, common_volume_mm3, cut_piece, joint, moulded

CLOSE_MM: Final = 0.01
FEW, MANY = 10, 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A set as laid, anticlockwise from the bottom, and its moulding."""

    found: Set
    width_mm: float
    section: Section


def drawn_case(draw: random.Random) -> Case:
    width_mm = draw.uniform(30.0, 130.0)
    found = polygon_set(drawn_polygon(draw), draw.uniform(2.0, 12.0), width_mm)
    return Case(found=found, width_mm=width_mm, section=moulded(width_mm, 18.0))


def body(laid: Laid, section: Section | None, off_deg: float) -> Body:
    (ux, uy), (vx, vy) = laid.along, laid.out
    sawn = cut_piece(laid.piece, section, off_deg=off_deg)
    at = (laid.at.x_mm, laid.at.y_mm, 0.0)
    return sawn.placed(at, (ux, uy, 0.0), (vx, vy, 0.0), (0.0, 0.0, 1.0))


def worst_mm(case: Case, *, off_deg: float = 0.0) -> list[float]:
    """Return gap, overlap or slip of each mitre, whichever is worst."""
    bodies = [body(laid, case.section, off_deg) for laid in case.found.laid]
    return [
        joint(before, Side.LEFT, bodies[(side + 1) % len(bodies)], Side.RIGHT).worst_mm
        for side, before in enumerate(bodies)
    ]


def check_closed(case: Case) -> None:
    assert max(worst_mm(case)) < CLOSE_MM


def test_the_pieces_of_a_random_shape_close() -> None:
    draw = random.Random("shapes close")
    for _ in range(FEW):
        check_closed(drawn_case(draw))


@pytest.mark.long
def test_the_pieces_of_two_hundred_random_shapes_close() -> None:
    draw = random.Random("two hundred shapes")
    for _ in range(MANY):
        check_closed(drawn_case(draw))


def test_no_two_pieces_want_the_same_room() -> None:
    draw = random.Random("room")
    for _ in range(3):
        case = drawn_case(draw)
        bodies = [body(laid, case.section, 0.0) for laid in case.found.laid]
        for one, other in combinations(bodies, 2):
            assert common_volume_mm3(one, other) < CLOSE_MM * 18.0 * 300.0


@pytest.mark.parametrize("off_deg", [0.5, -0.5])
def test_a_saw_half_a_degree_off_leaves_every_mitre_open(off_deg: float) -> None:
    draw = random.Random("half a degree")
    for _ in range(4):
        assert min(worst_mm(drawn_case(draw), off_deg=off_deg)) > 20.0 * CLOSE_MM
