import math
from dataclasses import replace

import pytest

from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind
from longpoint.survey.openings import Joint, Layout, Method
from longpoint.survey.profiles import Profile
from tests.fitted_houses import door, fitted, opening, quad, rectangle
from tests.set_houses import codes, planned, set_house

DOOR = door(rectangle(820.0, 2040.0))
LEANING = quad((0, 0), (820, 0), (840, 2050), (8, 2041))
THICK_HEAD = Profile(name="66.0 wide", width_mm=66.0, thickness_mm=22.0)


def test_a_butt_head_covers_both_legs_and_their_horns_and_the_legs_stay_square() -> None:
    made, _ = planned(set_house(replace(DOOR, joint=Joint.BUTT, head_horn_mm=20.0)))
    head, left, right = made["D1-head"], made["D1-left-leg"], made["D1-right-leg"]
    # 820 + 2 x 5 + 2 x 66 + 2 x 20 = 1002; a leg 2040 + 5 = 2045.
    assert (head.inner_mm, head.outer_mm) == pytest.approx((1002.0, 1002.0))
    assert head.hand_sum == "820 + 2 x 5 + 2 x 66 legs + 2 x 20 horns = 1002"
    for leg in (left, right):
        assert (leg.inner_mm, leg.outer_mm, leg.back_mm) == pytest.approx((2045.0,) * 3)
        assert leg.hand_sum == "2040 + 5 = 2045"
        assert leg.left.kind is leg.right.kind is CutKind.SQUARE
    assert head.left.kind is head.right.kind is CutKind.SQUARE
    assert head.hook_from is None


def test_a_leaning_door_gets_its_corners_at_legs_and_head() -> None:
    leaning = replace(door(LEANING), joint=Joint.BUTT)
    made, _ = planned(set_house(leaning))
    corner = fitted(door(LEANING)).corner_deg
    head, left, right = made["D1-head"], made["D1-left-leg"], made["D1-right-leg"]
    assert right.left.mitre_deg == pytest.approx(90.0 - corner.third)
    assert left.right.mitre_deg == pytest.approx(90.0 - corner.fourth)
    assert head.right.mitre_deg == pytest.approx(90.0 - corner.third)
    assert head.left.mitre_deg == pytest.approx(90.0 - corner.fourth)
    assert left.left.mitre_deg == pytest.approx(90.0 - corner.first)
    assert right.right.mitre_deg == pytest.approx(90.0 - corner.second)
    for piece in made.values():
        tangents = sum(math.tan(math.radians(c.mitre_deg)) for c in (piece.left, piece.right))
        assert piece.outer_mm - piece.inner_mm == pytest.approx(piece.width_mm * tangents)


def test_legs_of_two_widths_are_added_one_by_one() -> None:
    window = opening(rectangle(900.0, 600.0), width_mm=(66.0, 57.0, 66.0, 70.0))
    made, _ = planned(set_house(replace(window, joint=Joint.BUTT)))
    assert made["W1-head"].hand_sum == "900 + 2 x 5 + 57 right leg + 70 left leg = 1037"
    assert made["W1-sill"].inner_mm == pytest.approx(1037.0)


def test_horns_are_the_heads_alone() -> None:
    window = replace(opening(rectangle(900.0, 600.0)), joint=Joint.BUTT, head_horn_mm=15.0)
    made, _ = planned(set_house(window))
    assert made["W1-head"].inner_mm == pytest.approx(made["W1-sill"].inner_mm + 30.0)


def test_a_butted_frame_from_the_bench_is_square_all_round() -> None:
    bench = replace(door(LEANING, method=Method.BENCH), joint=Joint.BUTT)
    made, found = planned(set_house(bench))
    assert made["D1-head"].left.kind is made["D1-head"].right.kind is CutKind.SQUARE
    assert made["D1-left-leg"].right.kind is CutKind.SQUARE
    assert "butt-off-square" not in codes(found)


def test_a_head_as_thick_as_its_legs_is_said() -> None:
    _, flush = planned(set_house(replace(DOOR, joint=Joint.BUTT)))
    assert codes(flush) == ["butt-flush"]
    assert flush[0].severity is Severity.NOTE
    two = replace(
        opening(rectangle(900.0, 600.0), width_mm=(66.0, 57.0, 66.0, 57.0)), joint=Joint.BUTT
    )
    _, thick = planned(set_house(two, profiles=(THICK_HEAD,)))
    assert codes(thick) == []


def test_a_lean_that_opens_a_square_leg_is_said_with_its_gap() -> None:
    worst = max(abs(90.0 - c) for c in fitted(door(LEANING)).corner_deg[2:])
    _, found = planned(set_house(replace(door(LEANING), joint=Joint.BUTT)))
    assert codes(found) == ["butt-flush", "butt-off-square"]
    assert f"{66.0 * math.tan(math.radians(worst)):.1f} mm" in found[1].wrong
    wide = replace(door(LEANING), joint=Joint.BUTT, max_gap_mm=5.0)
    assert codes(planned(set_house(wide))[1]) == ["butt-flush"]


def test_a_butted_set_is_not_told_what_45s_would_do() -> None:
    racked = quad((0, 0), (820, 0), (850, 2040), (30, 2040))
    assert "out-of-square" in codes(planned(set_house(door(racked)))[1])
    _, found = planned(set_house(replace(door(racked), joint=Joint.BUTT)))
    assert "out-of-square" not in codes(found)


def test_each_block_takes_what_it_stands_proud_off_every_end() -> None:
    window = replace(
        opening(rectangle(900.0, 600.0), width_mm=70.0), joint=Joint.BLOCKS, corner_block="CB76"
    )
    made, _ = planned(set_house(window))
    for mark, length_mm in (("W1-head", 904.0), ("W1-sill", 904.0), ("W1-left-leg", 604.0)):
        piece = made[mark]
        assert (piece.inner_mm, piece.outer_mm) == pytest.approx((length_mm, length_mm))
        assert piece.left.kind is piece.right.kind is CutKind.SQUARE
    assert made["W1-head"].hand_sum == "900 + 2 x 5 - 2 x 3 blocks = 904"


def test_a_leg_on_the_floor_has_one_block() -> None:
    blocked = replace(DOOR, joint=Joint.BLOCKS, corner_block="CB76")
    made, _ = planned(set_house(blocked))
    assert made["D1-left-leg"].hand_sum == "2040 + 5 - 5 block = 2040"
    assert made["D1-left-leg"].inner_mm == pytest.approx(2040.0)
    assert made["D1-head"].inner_mm == pytest.approx(820.0)


def test_an_end_is_cut_square_while_its_wedge_is_allowed_and_to_the_block_beyond() -> None:
    leaning = replace(door(LEANING), joint=Joint.BLOCKS, corner_block="CB76")
    corner = fitted(door(LEANING)).corner_deg
    tight, _ = planned(set_house(replace(leaning, max_gap_mm=0.1)))
    head = tight["D1-head"]
    assert head.left.mitre_deg == pytest.approx((90.0 - corner.fourth) / 2.0)
    assert head.right.mitre_deg == pytest.approx((90.0 - corner.third) / 2.0)
    assert tight["D1-left-leg"].right.mitre_deg == pytest.approx(head.left.mitre_deg)
    loose, _ = planned(set_house(replace(leaning, max_gap_mm=2.0)))
    square = loose["D1-head"]
    assert square.left.kind is square.right.kind is CutKind.SQUARE
    # It touches each block at the edge that is the shorter there.
    less_mm = sum(
        min(0.0, 66.0 * math.tan(math.radians(cut.mitre_deg))) for cut in (head.left, head.right)
    )
    assert less_mm < -0.4
    assert square.inner_mm == square.outer_mm == pytest.approx(head.inner_mm + less_mm)


def test_a_set_on_a_board_may_be_butted_or_blocked() -> None:
    window = opening(rectangle(900.0, 600.0), layout=Layout.BOARD_AND_APRON, width_mm=70.0)
    butted, _ = planned(set_house(replace(window, joint=Joint.BUTT)))
    assert butted["W1-apron"].inner_mm == pytest.approx(butted["W1-head"].inner_mm)
    blocked, _ = planned(set_house(replace(window, joint=Joint.BLOCKS, corner_block="CB76")))
    assert {m for m in blocked if m.endswith("block")} == {
        "W1-top-left-block",
        "W1-top-right-block",
    }
