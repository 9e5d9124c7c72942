import math
from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.bays.bay import TRIM
from longpoint.catalogue.plan_trims import TRIM_NOT_PLANNED, TrimsPlanned, plan_trims
from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind, HookEnd, Piece, Role
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house_file import read_house
from tests.house_documents import house, window

PROFILES = {
    "OG57": {"face": 57, "thickness": 18},
    "SK95": {"face": 95, "thickness": 16},
    "WB225": {"face": 225, "thickness": 25},
    "OG90": {"face": 90, "thickness": 20},
    "ST40": {"face": 40, "thickness": 9},
}
LIGHTS = [{"width": 520}, {"width": 1180}, {"width": 520}]
COT = 1.0 / math.tan(math.radians(67.5))
"""Of half a corner of 135."""


def planned(
    *openings: dict[str, Any],
    held: frozenset[str] = frozenset(),
    **entry: Any,  # noqa: ANN401
) -> TrimsPlanned:
    trim = {"mark": "BY1", "kind": "bay", "lights": LIGHTS, "corners": [135, 135], **entry}
    document = house(profiles=PROFILES, openings=list(openings), trims=[trim])
    survey = read_house(document, trim_tables((TRIM,)))
    assert survey.house.held == ()
    shapes = Shapes(openings=fit_openings(survey.house)[0])
    return plan_trims(survey.house, shapes, held, (TRIM,))


def pieces(found: TrimsPlanned) -> dict[str, Piece]:
    assert [str(f) for f in found.findings if f.severity is Severity.STOP] == []
    return {piece.mark: piece for piece in found.trims[0].plan.pieces}


def refusal(found: TrimsPlanned) -> str:
    stops = [f for f in found.findings if f.severity is Severity.STOP]
    assert [f.code for f in stops] == [TRIM_NOT_PLANNED]
    return str(stops[0])


def codes(found: TrimsPlanned) -> list[tuple[str, Severity]]:
    return [(f.code, f.severity) for f in found.findings]


def test_the_board_is_mitred_across_its_face_at_the_corners_and_square_at_the_ends() -> None:
    made = pieces(planned(board="WB225"))
    assert list(made) == ["BY1-board-1", "BY1-board-2", "BY1-board-3"]
    left, middle, right = made.values()
    assert {piece.role for piece in made.values()} == {Role.BOARD}
    assert (left.left.kind, left.right.kind) == (CutKind.SQUARE, CutKind.MITRE)
    assert (middle.left.mitre_deg, middle.right.mitre_deg) == (22.5, 22.5)
    assert right.right.kind is CutKind.SQUARE
    # The edge at the frame is the outer one; the front is shorter by 225 / tan 67.5 a corner.
    assert middle.outer_mm == pytest.approx(1180.0)
    assert middle.inner_mm == pytest.approx(1180.0 - 2 * 225.0 * COT)
    assert left.inner_mm == pytest.approx(520.0 - 225.0 * COT)
    assert middle.hand_sum == "frame 1180 - 93.2 - 93.2 = 993.6"
    assert middle.hook_from is HookEnd.LEFT


def test_a_board_less_deep_than_its_profile_is_ripped_at_the_frame() -> None:
    board = pieces(planned(board="WB225", board_depth=200))["BY1-board-2"]
    assert board.notes == ("rip to 200 first, off the edge at the frame",)
    assert board.width_mm == 200.0
    assert board.inner_mm == pytest.approx(1180.0 - 2 * 200.0 * COT)


def test_ends_off_square_follow_what_the_board_stops_on() -> None:
    made = pieces(planned(board="WB225", end_corners=[80, 112.5]))
    assert made["BY1-board-1"].left.mitre_deg == pytest.approx(10.0)
    assert made["BY1-board-3"].right.mitre_deg == pytest.approx(-22.5)
    assert made["BY1-board-3"].inner_mm == pytest.approx(
        520.0 - 225.0 * COT + 225.0 * math.tan(math.radians(22.5))
    )


def test_head_and_apron_meet_like_skirting_on_the_walls_face() -> None:
    made = pieces(planned(head="OG90", apron="OG90", reveal=100, left_past=62, right_past=-10))
    assert [piece.role for piece in made.values()] == [Role.HEAD, Role.APRON] * 3
    middle, first, last = made["BY1-head-2"], made["BY1-apron-1"], made["BY1-apron-3"]
    assert middle.back_mm == pytest.approx(1180.0 - 2 * 100.0 * COT)
    assert middle.inner_mm == middle.outer_mm == pytest.approx(1180.0 - 2 * 120.0 * COT)
    assert (middle.left.kind, middle.left.bevel_deg) == (CutKind.BEVEL, 22.5)
    assert first.left.kind is CutKind.SQUARE
    assert first.back_mm == pytest.approx(520.0 - 100.0 * COT + 62.0)
    assert last.back_mm == pytest.approx(520.0 - 100.0 * COT - 10.0)
    assert middle.hand_sum == "frame 1180 - 41.4 - 41.4 - 8.3 - 8.3 = 1080.6"


def test_the_outer_end_of_a_head_is_square_where_the_cheek_meets_the_wall() -> None:
    first = pieces(planned(head="OG90", reveal=100, end_corners=[80, 90]))["BY1-head-1"]
    cheek = 100.0 / math.tan(math.radians(80.0))
    assert first.left.kind is CutKind.SQUARE
    assert first.back_mm == pytest.approx(520.0 - cheek - 100.0 * COT)
    assert first.inner_mm == pytest.approx(first.back_mm - 20.0 * COT)


def test_two_strips_meet_in_a_corner_on_their_bevelled_edges() -> None:
    made = pieces(planned(cover="ST40", cover_height=1400))
    assert list(made) == [f"BY1-cover-{n}-{side}" for n in (1, 2) for side in ("left", "right")]
    # 9 thick: 9 x tan 22.5 = 3.7 narrower on the face.
    assert made["BY1-cover-1-left"].notes == (
        "rip the outer edge at 22.5°: 40 on the back, 36.5 on the face",
    )
    assert made["BY1-cover-1-left"].inner_mm == 1400.0


def test_one_strip_across_a_corner_lies_on_both_walls() -> None:
    made = pieces(planned(cover="OG90", cover_height=1400, cover_kind="strip", corners=[90, 120]))
    assert list(made) == ["BY1-cover-1", "BY1-cover-2"]
    # 20 thick at 90: 90 - 2 x 20 x tan 45.
    assert made["BY1-cover-1"].notes[0].startswith("rip both edges 45.0° off square")
    assert made["BY1-cover-1"].notes[0].endswith("90 on the face, 50 on the back")


def test_a_mouth_that_its_lights_and_corners_contradict_holds_the_bay() -> None:
    mouth = 1180.0 + 2 * 520.0 / math.sqrt(2.0)
    assert codes(planned(board="WB225", mouth=round(mouth))) == []
    assert codes(planned(board="WB225", mouth=round(mouth) + 25)) == [("bay-open", Severity.STOP)]


def bay_window(**changes: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return a window 900 by 1400, true."""
    true = {"top": 900, "bottom": 900, "left": 1400, "right": 1400}
    return window(**{**true, "rising": 1664.332, "falling": 1664.332, **changes})


def light_with(wall: float, **changes: Any) -> list[dict[str, Any]]:  # noqa: ANN401
    middle = {"width": 1180, "opening": "W1", "left_wall": wall, "right_wall": wall, **changes}
    return [{"width": 520}, middle, {"width": 520}]


def test_a_wall_read_and_worked_out_have_to_agree() -> None:
    # 1180 - 2 x 100 x cot 67.5 = 1097.2 on the wall; 900 and 2 x 98.6 beside it.
    found = planned(bay_window(), apron="OG90", reveal=100, lights=light_with(98.5))
    assert codes(found) == []
    found = planned(bay_window(), apron="OG90", reveal=100, lights=light_with(102))
    assert codes(found) == [("bay-wall", Severity.STOP)]


def test_a_board_head_or_apron_that_the_opening_has_too_is_told() -> None:
    own = bay_window(trim="board-and-apron", board="WB225", horn=30)
    found = planned(
        own, board="WB225", head="OG90", apron="OG90", reveal=100, lights=light_with(98.6)
    )
    assert codes(found) == [("bay-twice", Severity.WARNING)]
    assert "its own board and head and apron" in found.findings[0].read


def test_legs_that_run_into_each_other_are_told_with_the_room_there_is() -> None:
    lights = [
        {"width": 1180, "opening": "W1", "left_wall": 98, "right_wall": 60},
        {"width": 1180, "opening": "W2", "left_wall": 98, "right_wall": 98},
    ]
    two = (bay_window(), bay_window(mark="W2"))
    found = planned(*two, board="WB225", lights=lights, corners=[135])
    assert codes(found) == [("bay-legs", Severity.WARNING)]
    # 60 less a quirk of 5; 18 x cot 67.5 = 7.5 less on the face.
    assert "W1 right leg 57, room 55 on the wall and 47.5 on the face" in found.findings[0].read
    assert "W2" not in found.findings[0].read


def test_the_openings_of_a_bay_can_be_left_unnamed() -> None:
    plan = planned(board="WB225").trims[0].plan
    assert {label.text for label in plan.sketches[0].labels} >= {"light 1", "1180", "135.0°"}


@pytest.mark.parametrize(
    ("entry", "said"),
    [
        ({"board": "WB225", "corners": [135]}, "3 lights and 1 corners"),
        ({"board": "WB225", "corners": [135, 225]}, "write 135.0"),
        ({"board": "WB225", "corners": [135, 55]}, "no saw bench"),
        ({"board": "WB225", "corners": [60, 60], "lights": [{"width": 380}] * 3}, "no front edge"),
        ({"board": "WB225", "board_depth": 240}, "too narrow"),
        ({"board": "WB225", "end_corners": [90]}, "1 end corners"),
        ({}, "without a board, a head"),
        ({"head": "OG90"}, "without its reveal"),
        ({"cover": "ST40"}, "without cover_height"),
        ({"cover": "OG57", "cover_height": 1400, "cover_kind": "strip"}, "nothing is left"),
        ({"board": "WB225", "lights": [{"width": 500, "opening": "W7"}] * 3}, "the opening W7"),
        ({"board": "NONE"}, "NONE"),
    ],
)
def test_what_can_not_be_made_is_refused(entry: dict[str, Any], said: str) -> None:
    assert said in refusal(planned(**entry))


def test_a_held_opening_holds_the_bay() -> None:
    found = planned(bay_window(), board="WB225", lights=light_with(98), held=frozenset({"W1"}))
    assert "or it is held" in refusal(found)


def test_a_flat_corner_is_cut_square() -> None:
    made = pieces(planned(board="WB225", head="OG90", reveal=100, corners=[180, 135]))
    assert made["BY1-board-1"].right.kind is CutKind.SQUARE
    assert made["BY1-head-2"].left.kind is CutKind.SQUARE


def test_the_convention_and_the_corners_are_printed() -> None:
    lines = " ".join(planned(board="WB225", head="OG90", reveal=80).trims[0].plan.lines)
    for said in ("135.0°, 135.0°", "90 less half its corner", "frame edge the longer", "bevel +"):
        assert said in lines
