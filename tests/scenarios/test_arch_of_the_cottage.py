"""The arch of the cottage's hall against the key of its scenario.

The key divides the arc of the lining's edge (half angle 64.08) into equal segments; its "longest
edge" is that over the outer points of a segment sawn to the curve. Its mitre at the springing,
12.96 or half the turn from leg to curve, is a rule that the true joint doesn't follow: from corner
to corner the cut is 12.37.
"""

from typing import Any

import pytest

from longpoint.pieces.arched import arched_face
from longpoint.pieces.other_shapes import other_shape
from longpoint.pieces.piece import Role
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house_file import read_house
from longpoint.trims.arch import ArchTrim
from longpoint.trims.arch_segments import segment_sizes
from tests.scenarios.houses import document

OFFSETS = [
    [0, 0],
    [114, 153],
    [228, 232],
    [343, 273],
    [457, 286],
    [571, 273],
    [686, 232],
    [800, 153],
    [914, 0],
]

KEY = {3: (42.72, 21.36, 125, 439), 4: (32.04, 16.02, 110, 333), 5: (25.63, 12.82, 103, 268)}
KEY |= {6: (21.36, 10.68, 99, 224)}
"""Segments: angle of each, end cut, board width, longest edge."""


def cottage(rise: float, **arch: object) -> dict[str, Any]:
    """Return the cottage with a board named to cut the arch from, and its rise as given."""
    found = document("fallow-end")
    found["profiles"]["BD140"] = {"face": 140, "thickness": 20}
    hall = next(entry for entry in found["openings"] if entry["mark"] == "W10")
    hall["arch"] = {**hall["arch"], "rise": rise, "blank": "BD140", **arch}
    return found


def fitted_trim(found: dict[str, Any]) -> tuple[ArchTrim, tuple[Any, ...], dict[str, Any]]:
    house = read_house(found).house
    shapes = Shapes(openings=fit_openings(house)[0])
    hall = next(o for o in house.openings if o.mark == "W10")
    fitted = next(f for f in shapes.openings if f.mark == "W10")
    both = other_shape(house, shapes, hall)
    assert both is not None
    pieces, findings = both
    return arched_face(house, hall, fitted).trim, pieces, {f.code: f for f in findings}


def test_radii_and_half_angle_are_those_of_the_key() -> None:
    trim, _, _ = fitted_trim(cottage(286))
    assert trim.circle.radius_mm == pytest.approx(508.1, abs=0.3)
    assert trim.circle.half_deg == pytest.approx(64.08, abs=0.1)
    assert trim.inner_mm == pytest.approx(513.1, abs=0.3)
    assert trim.outer_mm == pytest.approx(603.1, abs=0.3)
    assert trim.right.break_deg == pytest.approx(25.92, abs=0.15)
    assert trim.left.break_deg == pytest.approx(25.92, abs=0.15)
    assert trim.right.leg_deg == pytest.approx(12.37, abs=0.1)


@pytest.mark.parametrize("count", KEY)
def test_segments_are_those_of_the_key(count: int) -> None:
    angle_deg, saw_deg, board_mm, longest_mm = KEY[count]
    trim, _, _ = fitted_trim(cottage(286))
    sizes = segment_sizes(trim, count)
    assert sizes.angle_deg == pytest.approx(angle_deg, abs=0.05)
    assert sizes.saw_deg == pytest.approx(saw_deg, abs=0.025)
    assert sizes.board_mm == pytest.approx(board_mm, abs=0.8)
    assert sizes.over_points_mm == pytest.approx(longest_mm, abs=0.6)


def test_a_board_of_140_makes_it_of_three_segments() -> None:
    _, pieces, findings = fitted_trim(cottage(286))
    segments = [piece for piece in pieces if piece.role is Role.SEGMENT]
    assert [piece.mark for piece in segments] == [f"W10-segment-{k}" for k in (1, 2, 3)]
    assert segments[1].left.mitre_deg == pytest.approx(21.36, abs=0.025)
    assert {"arch-segments", "arch-springing", "not-forecast"} <= set(findings)
    assert "arch-blank" not in findings


def test_the_offsets_agree_with_the_rise_mended_and_name_the_slip_in_the_rise_written() -> None:
    mended = read_house(cottage(286, offsets=OFFSETS)).house
    fitted, findings = fit_openings(mended)
    assert not any(f.code.startswith("arch") for f in findings)
    hall = next(f for f in fitted if f.mark == "W10")
    assert hall.rise_mm == pytest.approx(286.0, abs=0.5)
    _, findings = fit_openings(read_house(cottage(268, offsets=OFFSETS)).house)
    said = next(f for f in findings if f.code == "arch-offsets")
    assert "286" in said.do
    assert "digits swapped" in said.do
