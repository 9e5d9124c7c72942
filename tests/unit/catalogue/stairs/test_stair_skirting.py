import math
from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.plan_trims import TrimsPlanned, plan_trims
from longpoint.catalogue.stairs.stair_skirting import TRIM
from longpoint.errors import Severity, held_places
from longpoint.pieces.piece import CutKind, Piece, Role
from longpoint.shape.fitted import Shapes
from longpoint.survey.house_file import read_house
from tests.house_documents import house, skirting_run

PROFILES = {
    "SK95": {"face": 95, "thickness": 16},
    "OG57": {"face": 57, "thickness": 18},
    "TO120": {"face": 120, "thickness": 18},
    "TO152": {"face": 152.3, "thickness": 18},
}
COTTAGE: dict[str, object] = {
    "mark": "ST1",
    "kind": "stair-skirting",
    "room": "Hall",
    "profile": "TO120",
    "risers": 13,
    "total_rise": 2357,
    "going": 232,
    "pitch": [38.0, 38.1, 37.9],
    "nosings": [294, 294, 295, 294, 294, 293, 295, 294, 294, 294, 295, 294],
    "string": 42,
    "length": 3826,
}
"""The stair of the cottage; its key: pitch 38.01, 19.00 off square, 152.3 high cut plumb."""


def planned(
    *,
    runs: list[dict[str, Any]] | None = None,
    stock: list[dict[str, Any]] | None = None,
    **changes: object,
) -> TrimsPlanned:
    entry = {key: value for key, value in {**COTTAGE, **changes}.items() if value is not None}
    result = read_house(
        house(profiles=PROFILES, trims=[entry], runs=runs or [], stock=stock or []),
        trims=trim_tables((TRIM,)),
    )
    assert [str(f) for f in result.findings if f.severity is Severity.STOP] == []
    return plan_trims(result.house, Shapes(), frozenset(), kinds=(TRIM,))


def the_piece(plan: TrimsPlanned) -> Piece:
    (piece,) = plan.trims[0].plan.pieces
    return piece


def codes(plan: TrimsPlanned) -> list[str]:
    return [finding.code for finding in plan.findings]


def test_the_cottage_s_stair_meets_level_boards_at_19_off_square() -> None:
    plan = planned()
    piece = the_piece(plan)
    assert (piece.mark, piece.role, piece.trim) == ("ST1-rake", Role.RUN, "ST1")
    assert piece.left.mitre_deg == pytest.approx(-19.00, abs=0.005)
    assert piece.right.mitre_deg == pytest.approx(19.00, abs=0.005)
    assert piece.inner_mm == piece.outer_mm == piece.back_mm == 3826
    assert piece.notes == (
        "the back measures 3826 along the bottom edge, 3826 along the top",
        "the joint at foot and head measures 126.9 from lower to upper edge",
    )
    assert codes(plan) == []
    lines = " ".join(plan.trims[0].plan.lines)
    assert "Pitch 38.0 by tape, 181.3 up on 232; 38.0 by gauge." in lines
    assert "Cut plumb the raked board stands 152.3 high, the level one 120." in lines
    # One going and 42 / sin 38.01 = 68.2 in front of the first nosing.
    assert "300 in front of the first nosing" in lines


def test_a_stair_that_climbs_to_the_left_is_its_mirror() -> None:
    piece = the_piece(planned(climbs="left"))
    assert piece.left.mitre_deg == pytest.approx(19.00, abs=0.005)
    assert piece.right.mitre_deg == pytest.approx(-19.00, abs=0.005)


def test_a_plumb_cut_says_by_how_much_the_tops_step_and_what_closes_them() -> None:
    plan = planned(foot="plumb", head="plumb")
    piece = the_piece(plan)
    assert (piece.left.kind, piece.right.kind) == (CutKind.MITRE, CutKind.MITRE)
    assert piece.left.mitre_deg == pytest.approx(-38.01, abs=0.005)
    assert piece.right.mitre_deg == pytest.approx(38.01, abs=0.005)
    (step,) = plan.findings
    assert (step.code, step.severity, step.place) == ("rake-plumb-step", Severity.WARNING, "ST1")
    assert "152.3 mm high" in step.read
    assert "can't be flush: the tops step by 32.3" in step.wrong
    assert "level skirting 152.3 high" in step.do


def test_level_skirting_of_the_plumb_height_closes_a_plumb_cut() -> None:
    assert codes(planned(foot="plumb", head="plumb", level_profile="TO152")) == []


def test_boards_of_two_heights_get_no_joint_that_halves_the_pitch() -> None:
    plan = planned(level_profile="SK95")
    (stop,) = plan.findings
    assert (stop.code, stop.severity) == ("trim-not-planned", Severity.STOP)
    assert "only between boards of one height" in stop.wrong
    assert "plumb" not in stop.do
    assert plan.trims == ()
    (stop,) = planned(level_profile="TO152").findings
    assert "these two heights meet there" in stop.do


def test_an_end_at_a_newel_is_cut_plumb_without_a_word_of_steps() -> None:
    plan = planned(foot="newel", head="square")
    piece = the_piece(plan)
    assert piece.left.mitre_deg == pytest.approx(-38.01, abs=0.005)
    assert piece.right.kind is CutKind.SQUARE
    assert codes(plan) == []


def test_a_gauge_that_differs_from_the_tape_is_told_and_the_tape_used() -> None:
    plan = planned(pitch=[38.6, 38.8])
    (differs,) = plan.findings
    assert (differs.code, differs.severity) == ("pitch-differs", Severity.WARNING)
    assert "differ by 0.7" in differs.wrong
    assert the_piece(plan).right.mitre_deg == pytest.approx(19.00, abs=0.005)
    assert codes(planned(pitch=[38.3])) == []


def test_without_rise_and_going_the_gauge_has_to_do_and_that_is_said() -> None:
    plan = planned(risers=None, total_rise=None, going=None, nosings=None)
    assert codes(plan) == ["pitch-by-gauge"]
    assert the_piece(plan).right.mitre_deg == pytest.approx(19.0)


def test_without_any_pitch_nothing_is_cut() -> None:
    plan = planned(risers=None, total_rise=None, going=None, pitch=None)
    assert held_places(plan.findings) == {"ST1"}


def test_a_going_that_was_not_read_follows_from_the_nosings() -> None:
    plan = planned(going=None)
    going_mm = math.sqrt((3530 / 12) ** 2 - (2357 / 13) ** 2)
    pitch_deg = math.degrees(math.atan2(2357 / 13, going_mm))
    assert the_piece(plan).right.mitre_deg == pytest.approx(pitch_deg / 2.0, abs=0.02)


def test_a_length_worked_out_from_the_steps_is_warned_of() -> None:
    plan = planned(length=None)
    (warned,) = plan.findings
    assert warned.code == "rake-length-worked-out"
    # 13 hypot(181.31, 232) = 3827.8; 13 x 3530 / 12 = 3824.2.
    assert "3828 mm" in warned.read
    assert "12 readings from nosing to nosing make it 3824" in warned.read
    assert the_piece(plan).inner_mm == pytest.approx(3827.75, abs=0.01)


def test_a_nosing_out_of_line_is_told() -> None:
    plan = planned(nosings=[294, 294, 299, 290, 294])
    (odd,) = plan.findings
    assert odd.code == "nosing-odd"
    assert "299 at step 3, 290 at step 4" in odd.read


def test_steps_steeper_than_a_stair_are_a_slip() -> None:
    plan = planned(risers=3)
    assert held_places(plan.findings) == {"ST1"}
    assert "ladder" in plan.findings[0].wrong


def test_a_level_run_with_another_rake_than_the_stair_s_pitch_is_told() -> None:
    run = skirting_run(room="Hall", profile="TO120", right="rake", right_rake=42.0)
    plan = planned(runs=[run])
    (differs,) = plan.findings
    assert differs.code == "rake-differs"
    assert "21.0 and 19.0" in differs.wrong
    alike = skirting_run(room="Hall", profile="TO120", right="rake", right_rake=38.0)
    assert codes(planned(runs=[alike])) == []


def test_a_stair_longer_than_any_stick_is_scarfed() -> None:
    plan = planned(stock=[{"profile": "TO120", "length": 3000}])
    pieces = plan.trims[0].plan.pieces
    assert [piece.mark for piece in pieces] == ["ST1-rake-1", "ST1-rake-2"]
    assert pieces[0].right.kind is pieces[1].left.kind is CutKind.SCARF
    assert math.fsum(piece.inner_mm for piece in pieces) == pytest.approx(3826)


def test_the_drawing_shows_the_board_and_both_level_ones() -> None:
    (sketch,) = planned().trims[0].plan.sketches
    timber = [line for line in sketch.lines if line.stroke.value == "timber"]
    assert len(timber) == 3
    foot = timber[0].points
    # The raked board stands 120 square to its slope.
    pitch = math.atan2(2357 / 13, 232)
    assert -foot[3][0] * math.sin(pitch) + foot[3][1] * math.cos(pitch) == pytest.approx(120.0)
    (mirrored,) = planned(climbs="left").trims[0].plan.sketches
    assert [(-x, y) for x, y in mirrored.lines[1].points] == list(sketch.lines[1].points)


def test_a_slope_that_changes_along_the_stair_is_told() -> None:
    plan = planned(pitch=[37.6, 38.0, 38.4])
    (uneven,) = plan.findings
    assert uneven.code == "pitch-uneven"
    assert "from 37.6 to 38.4" in uneven.read


def test_each_end_is_told_as_it_is_cut() -> None:
    lines = " ".join(planned(foot="plumb").trims[0].plan.lines)
    assert "At the foot the raked board is cut plumb" in lines
    assert "At the head level and raked board are each cut 19.0 off square" in lines
    assert "At the foot level" not in lines
    ends = " ".join(planned(foot="newel", head="square").trims[0].plan.lines)
    assert "At the" not in ends
