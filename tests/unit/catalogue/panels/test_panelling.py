import math

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.panels.panelling import TRIM
from longpoint.catalogue.trim import TrimPlan
from longpoint.pieces.piece import Piece, Role
from longpoint.survey.house_file import read_house
from tests.panel_walls import planned, the_document, the_plan


def one(made: TrimPlan, what: str) -> Piece:
    return next(piece for piece in made.pieces if piece.mark == f"PN1-{what}")


def test_five_frames_and_six_margins_fill_the_wall() -> None:
    made = the_plan(panels=5, margin=90)
    rails = [piece for piece in made.pieces if piece.role is Role.RAIL]
    stiles = [piece for piece in made.pieces if piece.role is Role.STILE]
    assert (len(rails), len(stiles)) == (10, 10)
    # By hand: (4606 - 6 x 90) / 5 = 813.2; 780 - 2 x 90 = 600.
    assert {round(rail.outer_mm, 6) for rail in rails} == {813.2}
    assert {round(stile.outer_mm, 6) for stile in stiles} == {600.0}
    assert {round(rail.inner_mm, 6) for rail in rails} == {757.2}
    assert "4606 - 540 = 4066; margins: 90 x 6; / 5 = 813.2" in rails[0].hand_sum


def test_every_mark_is_its_own_and_every_cut_is_45() -> None:
    made = the_plan(panels=5, margin=90)
    assert len({piece.mark for piece in made.pieces}) == 20
    for piece in made.pieces:
        for end in (piece.left, piece.right):
            assert end.mitre_deg == pytest.approx(45.0, abs=1e-9)
            assert end.bevel_deg == 0.0


def test_opposite_pieces_are_alike_to_the_last_digit() -> None:
    made = the_plan(panels=2, margin=90, pitch=37.3)
    for name, other in (("bottom", "top"), ("left", "right")):
        here, there = one(made, f"1-{name}"), one(made, f"2-{other}")
        assert (here.inner_mm, here.outer_mm) == (there.inner_mm, there.outer_mm)
        assert (here.left, here.right) == (there.left, there.right)


def test_a_wanted_width_chooses_the_number_and_is_met_as_nearly_as_goes() -> None:
    made = the_plan(panel_width=750, margin=90)
    # 5 frames come out 813.2, 6 come out 662.7: 63 off against 87.
    assert len(made.pieces) == 20
    made = the_plan(panel_width=700, margin=90)
    assert len(made.pieces) == 24


def test_number_and_width_leave_the_margin() -> None:
    made = the_plan(panels=5, panel_width=800)
    # (4606 - 5 x 800) / 6 = 101, and so the stile is 780 - 2 x 101.
    assert one(made, "1-top").outer_mm == pytest.approx(800.0)
    assert one(made, "1-left").outer_mm == pytest.approx(578.0)


def test_number_and_margin_go_before_a_wanted_width() -> None:
    made = the_plan(panels=5, margin=90, panel_width=500)
    assert one(made, "1-top").outer_mm == pytest.approx(813.2)


def test_a_stair_has_parallelograms_whose_mitres_halve_both_corners() -> None:
    made = the_plan(length=3520, panels=3, margin=90, pitch=38)
    rail, stile = one(made, "1-bottom"), one(made, "1-left")
    # Corners 52 and 128: saw 90 - 26 = 64 and 90 - 64 = 26.
    assert sorted((rail.left.mitre_deg, rail.right.mitre_deg)) == pytest.approx([26.0, 64.0])
    assert sorted((stile.left.mitre_deg, stile.right.mitre_deg)) == pytest.approx([26.0, 64.0])
    level_mm = (3520 * math.cos(math.radians(38)) - 4 * 90) / 3
    assert rail.outer_mm == pytest.approx(level_mm / math.cos(math.radians(38)))
    assert stile.outer_mm == pytest.approx(780 - 2 * 90 / math.cos(math.radians(38)))
    assert any("64.0" in line and "26.0" in line for line in made.lines)


def test_a_stair_that_climbs_to_the_left_is_the_mirror_of_one_to_the_right() -> None:
    right = one(the_plan(panels=3, margin=60, pitch=38), "1-top")
    left = one(the_plan(panels=3, margin=60, pitch=38, climbs="left"), "1-top")
    assert left.left.mitre_deg == pytest.approx(right.right.mitre_deg)
    assert left.right.mitre_deg == pytest.approx(right.left.mitre_deg)
    # Climbing to the right, a top rail's right-hand corner is the sharp one.
    assert right.right.mitre_deg == pytest.approx(64.0)


def test_a_socket_inside_a_frame_or_in_the_margin_is_no_matter() -> None:
    inside = {"x": 400, "y": 400, "width": 146, "height": 86}
    between = {"x": 910, "y": 400, "width": 75, "height": 86}
    assert planned(panels=5, margin=90, obstacles=[inside, between]).findings == ()


def test_a_socket_that_wants_to_stay_clear_is_grown_by_that() -> None:
    between = {"x": 910, "y": 400, "width": 75, "height": 86}
    (finding,) = planned(panels=5, margin=90, obstacles=[between], clear=10).findings
    assert finding.code == "panel-obstacle"


def test_the_floor_counts_in_an_obstacle_s_height() -> None:
    # Lower rails of the frames lie from 90 to 118 above the field, 210 to 238 above the floor.
    low = {"x": 400, "y": 225, "width": 146, "height": 86}
    assert len(planned(panels=5, margin=90, obstacles=[low]).findings) == 1
    assert planned(panels=5, margin=90, above_floor=0, obstacles=[low]).findings == ()


def test_a_wall_in_doubt_puts_each_frame_in_doubt_by_its_share() -> None:
    few, many = the_plan(panels=2, margin=90), the_plan(panels=8, margin=90)
    assert one(few, "1-top").u_mm == pytest.approx(4 * one(many, "1-top").u_mm)


def test_the_sheet_says_where_the_frames_stand_and_how_to_check_them() -> None:
    made = the_plan(panels=5, margin=90)
    assert any("90, 993, 1896.5, 2799.5, 3703" in line for line in made.lines)
    diagonal_mm = math.hypot(813.2, 600)
    assert any(f"{diagonal_mm:.1f}".removesuffix(".0")[:4] in line for line in made.lines)


def test_no_panels_at_all_are_not_read() -> None:
    survey = read_house(the_document(panels=0, margin=90), trim_tables((TRIM,)))
    assert [held.mark for held in survey.house.held] == ["PN1"]
