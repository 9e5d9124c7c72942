import math
from dataclasses import replace

import pytest

from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind, Role
from longpoint.quantities.length import Units
from longpoint.survey.openings import Joint, Method
from longpoint.survey.profiles import Profile
from tests.fitted_houses import door, fitted, opening, quad, rectangle
from tests.set_houses import codes, planned, set_house

WINDOW = replace(
    opening(rectangle(900.0, 600.0), width_mm=70.0), joint=Joint.BLOCKS, corner_block="CB76"
)
LEANING = quad((0, 0), (820, 0), (850, 2050), (8, 2041))


def test_a_window_gets_four_square_blocks_as_long_as_wide() -> None:
    made, found = planned(set_house(WINDOW))
    blocks = [piece for piece in made.values() if piece.role is Role.CORNER_BLOCK]
    assert [block.mark for block in blocks] == [
        "W1-bottom-left-block",
        "W1-top-left-block",
        "W1-top-right-block",
        "W1-bottom-right-block",
    ]
    for block in blocks:
        assert block.inner_mm == block.outer_mm == block.back_mm == block.width_mm == 76.0
        assert block.left.kind is block.right.kind is CutKind.SQUARE
        assert (block.profile, block.thickness_mm) == ("CB76", 25.0)
    assert found == ()


def test_a_door_gets_two() -> None:
    blocked = replace(
        door(rectangle(820.0, 2040.0), faces=2), joint=Joint.BLOCKS, corner_block="CB76"
    )
    made, _ = planned(set_house(blocked))
    assert {m for m in made if "block" in m} == {
        f"D1{face}-top-{side}-block" for face in "ab" for side in ("left", "right")
    }


def test_a_block_no_wider_or_no_thicker_than_the_trim_is_said() -> None:
    same = Profile(name="CB76", width_mm=70.0, thickness_mm=18.0)
    _, found = planned(set_house(WINDOW, profiles=(same,)))
    assert [(f.code, f.severity) for f in found] == [
        ("block-narrow", Severity.WARNING),
        ("block-thin", Severity.NOTE),
    ]
    assert "3 to 6 mm" in found[0].do
    _, in_inches = planned(set_house(WINDOW, profiles=(same,), units=Units.INCH))
    assert "1/8 to 1/4 in" in in_inches[0].do


def test_a_corner_off_square_is_said_with_its_gap_and_the_angle_to_cut() -> None:
    leaning = replace(door(LEANING), joint=Joint.BLOCKS, corner_block="CB76", max_gap_mm=0.1)
    corner = fitted(door(LEANING)).corner_deg
    _, found = planned(set_house(leaning))
    worst = max((corner.third, corner.fourth), key=lambda deg: abs(deg - 90.0))
    off_deg = abs(worst - 90.0) / 2.0
    (said,) = [f for f in found if f.code == "block-off-square"]
    for deg in (corner.third, corner.fourth):
        assert f"{deg:.1f}" in said.read
    assert f"open about {66.0 * math.tan(math.radians(off_deg)):.1f} mm" in said.wrong
    assert f"{76.0 * math.sin(math.radians(off_deg)):.1f} mm out of line" in said.wrong
    edge = "inner" if worst > 90.0 else "outer"
    assert f"{off_deg:.1f} off square, {edge} edge the longer" in said.do


def test_within_the_crews_gap_nothing_is_said() -> None:
    leaning = replace(door(LEANING), joint=Joint.BLOCKS, corner_block="CB76", max_gap_mm=3.0)
    assert codes(planned(set_house(leaning))[1]) == []


def test_a_frame_from_the_bench_has_square_blocks() -> None:
    bench = replace(door(LEANING, method=Method.BENCH), joint=Joint.BLOCKS, corner_block="CB76")
    made, found = planned(set_house(bench))
    assert made["D1-head"].left.kind is CutKind.SQUARE
    assert "block-off-square" not in codes(found)


@pytest.mark.parametrize("joint", [Joint.MITRE, Joint.BUTT])
def test_a_block_that_no_joint_asks_for_is_not_cut(joint: Joint) -> None:
    made, _ = planned(set_house(replace(WINDOW, joint=joint)))
    assert not [m for m in made if "block" in m]
