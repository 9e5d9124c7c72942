import math

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.plan_trims import TrimsPlanned, plan_trims
from longpoint.catalogue.stairs.handrail import TRIM
from longpoint.errors import Severity, held_places
from longpoint.pieces.piece import CutKind, Role
from longpoint.shape.fitted import Shapes
from longpoint.survey.house_file import read_house
from tests.house_documents import house

PROFILES = {
    "SK95": {"face": 95, "thickness": 16},
    "OG57": {"face": 57, "thickness": 18},
    "HR54": {"face": 54, "thickness": 45},
}
RAIL: dict[str, object] = {
    "mark": "HR1",
    "kind": "handrail",
    "room": "Hall",
    "profile": "HR54",
    "risers": 13,
    "total_rise": 2357,
    "going": 232,
    "length": 3640,
    "height": 900,
    "first_stud": 180,
    "stud_spacing": 450,
}
PITCH = math.atan2(2357 / 13, 232)


def planned(**changes: object) -> TrimsPlanned:
    entry = {key: value for key, value in {**RAIL, **changes}.items() if value is not None}
    result = read_house(house(profiles=PROFILES, trims=[entry]), trims=trim_tables((TRIM,)))
    assert [str(f) for f in result.findings if f.severity is Severity.STOP] == []
    return plan_trims(result.house, Shapes(), frozenset(), kinds=(TRIM,))


def lines(plan: TrimsPlanned) -> str:
    return " ".join(plan.trims[0].plan.lines)


def test_a_rail_is_cut_plumb_at_both_ends_with_both_edges_alike() -> None:
    (rail,) = planned().trims[0].plan.pieces
    assert (rail.mark, rail.role) == ("HR1-rail", Role.HANDRAIL)
    assert (rail.left.kind, rail.right.kind) == (CutKind.MITRE, CutKind.MITRE)
    assert rail.left.mitre_deg == pytest.approx(-math.degrees(PITCH))
    assert rail.right.mitre_deg == pytest.approx(math.degrees(PITCH))
    assert rail.inner_mm == rail.outer_mm == 3640


def test_returned_ends_are_mitred_through_the_thickness_and_reach_back_to_the_wall() -> None:
    rail, foot, head = planned(foot="return", head="return", clear=45).trims[0].plan.pieces
    assert (rail.left.bevel_deg, rail.right.bevel_deg) == (-45.0, -45.0)
    assert (rail.inner_mm, rail.back_mm) == (3640, 3640 - 2 * 45)
    assert (foot.mark, head.mark) == ("HR1-return-foot", "HR1-return-head")
    for end in (foot, head):
        assert (end.role, end.inner_mm, end.back_mm) == (Role.RETURN, 90, 45)
    # Facing the wall the foot's return stands at the left: its mitre is its own right end.
    assert (foot.left.kind, foot.right.bevel_deg) == (CutKind.SQUARE, -45.0)
    assert (head.left.bevel_deg, head.right.kind) == (-45.0, CutKind.SQUARE)


def test_one_end_of_each_kind_makes_one_edge_the_longer() -> None:
    rail, _ = planned(head="return", clear=45).trims[0].plan.pieces
    assert rail.inner_mm == 3640
    assert rail.outer_mm == pytest.approx(3640 - 54 * math.tan(PITCH))
    mirrored, _ = planned(head="return", clear=45, climbs="left").trims[0].plan.pieces
    assert mirrored.right.mitre_deg == rail.left.mitre_deg
    upper, _ = planned(foot="return", clear=45).trims[0].plan.pieces
    assert upper.outer_mm == 3640
    assert upper.inner_mm == pytest.approx(3640 - 54 * math.tan(PITCH))


def test_a_return_without_a_clearance_is_held() -> None:
    assert held_places(planned(foot="return").findings) == {"HR1"}


def test_its_line_over_the_nosings_is_told_plumb_and_square() -> None:
    told = lines(planned())
    # 900 cos 38.01 = 709.1; 54 / cos 38.01 = 68.5.
    assert "900 plumb over it (709.1 square to the slope), its underside 831.5 plumb" in told
    assert "stands 68.5 high" in told


def test_a_height_read_from_a_tread_is_refused() -> None:
    (stop,) = planned(read_from="tread").findings
    assert (stop.code, stop.severity) == ("trim-not-planned", Severity.STOP)
    assert "up to 181.3 at its back" in stop.wrong


def test_brackets_go_to_the_studs_along_the_slope() -> None:
    told = lines(planned())
    # 180 / cos 38.01 = 228.4, then 571.1 apart.
    assert "6 brackets, along the rail from its lower end: 228.5, 799.5, 1370.5" in told
    assert "that is 180, 630, 1080" in told


def test_as_few_brackets_as_may_be_stand_near_enough_to_each_other() -> None:
    told = lines(planned(studs=[180, 630, 1080, 1480, 1980, 2430], bracket_apart=1200))
    # Along the slope 228, 800, 1371, 1878, 2513, 3084.
    assert "4 brackets, along the rail from its lower end: 228.5, 1370.5, 2513, 3084." in told


def test_studs_too_far_apart_for_the_brackets_are_refused() -> None:
    (stop,) = planned(bracket_apart=500).findings
    assert stop.severity is Severity.STOP
    assert "571 mm apart" in stop.read


def test_a_rail_without_a_stud_behind_it_is_refused() -> None:
    assert held_places(planned(length=200).findings) == {"HR1"}


def test_without_studs_no_bracket_is_placed_and_that_is_said() -> None:
    assert "none were written" in lines(planned(first_stud=None))


def test_no_limit_is_invented_and_the_local_rules_are_pointed_to() -> None:
    (note,) = planned().findings
    assert (note.code, note.severity) == ("handrail-rules", Severity.NOTE)
    assert "local building code" in note.do


def test_a_gauge_that_differs_from_the_tape_is_told() -> None:
    plan = planned(pitch=[40.0])
    assert [finding.code for finding in plan.findings] == ["pitch-differs", "handrail-rules"]


def test_the_drawing_ticks_every_bracket() -> None:
    (sketch,) = planned().trims[0].plan.sketches
    ticks = [line for line in sketch.lines if line.stroke.value == "cut"]
    assert len(ticks) == 6
    x, y = ticks[0].points[0]
    # Under the rail: on the line 831.5 plumb over the nosings.
    assert y - x * math.tan(PITCH) == pytest.approx(900 - 54 / math.cos(PITCH))
