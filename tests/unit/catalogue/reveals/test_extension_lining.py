from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.plan_trims import TRIM_NOT_PLANNED, TrimsPlanned, plan_trims
from longpoint.catalogue.reveals.extension_lining import TRIM
from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind, Piece
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house_file import read_house
from tests.house_documents import defaults, door, house, window

BATH = {
    "mark": "W8",
    "top": 497,
    "bottom": 498,
    "left": 692,
    "right": 693,
    "rising": 851,
    "falling": 853,
    "plane": {"tl": -6, "tr": -6, "br": -6, "bl": -6},
}
"""A window six short of its tiles all round."""

PROFILES = {
    "OG57": {"face": 57, "thickness": 18},
    "SK95": {"face": 95, "thickness": 16},
    "EX18": {"face": 12, "thickness": 18},
    "BD150": {"face": 150, "thickness": 18},
}
SQUARE = {"top": 600, "bottom": 600, "left": 900, "right": 900}


def planned(*openings: dict[str, Any], floor_cover: float = 0, **entry: Any) -> TrimsPlanned:  # noqa: ANN401
    document = house(
        profiles=PROFILES,
        defaults=defaults(floor_cover=floor_cover),
        openings=list(openings),
        trims=[
            {
                "mark": "EX1",
                "kind": "extension-lining",
                "profile": "BD150",
                "openings": [each["mark"] for each in openings],
                **entry,
            }
        ],
    )
    survey = read_house(document, trim_tables((TRIM,)))
    assert survey.house.held == ()
    shapes = Shapes(openings=fit_openings(survey.house)[0])
    return plan_trims(survey.house, shapes, frozenset(), (TRIM,))


def square(**changes: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return a window of exactly 600 by 900."""
    diagonals = {"rising": 1081.665, "falling": 1081.665}
    return window(**{**SQUARE, **diagonals, **changes})


def pieces(found: TrimsPlanned) -> dict[str, Piece]:
    assert [str(f) for f in found.findings if f.severity is Severity.STOP] == []
    return {piece.mark: piece for piece in found.trims[0].plan.pieces}


def refusal(found: TrimsPlanned) -> str:
    stops = [f for f in found.findings if f.severity is Severity.STOP]
    assert [f.code for f in stops] == [TRIM_NOT_PLANNED]
    assert found.trims == ()
    return str(stops[0])


def test_a_window_six_shy_gets_four_pieces_6_by_18() -> None:
    made = pieces(planned(window(**BATH), profile="EX18"))
    assert list(made) == ["EX1-W8-left", "EX1-W8-head", "EX1-W8-right", "EX1-W8-sill"]
    assert {(p.width_mm, p.thickness_mm) for p in made.values()} == {(6.0, 18.0)}
    assert {p.notes for p in made.values()} == {("rip to 6 all along; ripped edge to the lining",)}
    lengths = [round(p.inner_mm) for p in made.values()]
    assert lengths == [692, 497 + 36, 693, 498 + 36]


def test_a_strip_as_thin_as_six_is_nailed_and_one_of_five_is_glued() -> None:
    def found(shy: float) -> list[str]:
        plane = dict.fromkeys(("tl", "tr", "br", "bl"), -shy)
        return [f.code for f in planned(square(plane=plane)).findings]

    assert found(6) == []
    assert found(5) == ["extension-thin"]


def test_depths_that_differ_are_ripped_to_a_taper_each_end_named_as_the_piece_lies() -> None:
    depths = {"tl": 92, "tr": 95.5, "br": 97, "bl": 92}
    made = pieces(planned(square(), depths=depths, joint="mitre"))
    notes = {mark: piece.notes[0].partition(";")[0] for mark, piece in made.items()}
    assert notes == {
        "EX1-W1-left": "rip to 92 all along",
        "EX1-W1-head": "rip to 92 at the left end, 95.5 at the right",
        "EX1-W1-right": "rip to 95.5 at the left end, 97 at the right",
        "EX1-W1-sill": "rip to 97 at the left end, 92 at the right",
    }


def test_a_head_over_the_legs_is_ripped_for_what_it_reaches_past_the_corners() -> None:
    depths = {"tl": 60, "tr": 120, "br": 120, "bl": 60}
    made = pieces(planned(square(), depths=depths))
    # 60 in 600 is 1 in 10: 18 past the corner at either end is 1.8 less and 1.8 more.
    assert made["EX1-W1-head"].notes[0].startswith("rip to 58 at the left end, 122 at the right")
    assert made["EX1-W1-head"].inner_mm == pytest.approx(636.0)
    assert made["EX1-W1-left"].inner_mm == pytest.approx(900.0, abs=0.01)


def test_a_step_moves_every_face_back_and_is_taken_from_the_quirk() -> None:
    depths = dict.fromkeys(("tl", "tr", "br", "bl"), 50)
    found = planned(square(), depths=depths, step=2, joint="mitre")
    made = pieces(found)
    assert made["EX1-W1-head"].inner_mm == pytest.approx(604.0, abs=0.01)
    assert made["EX1-W1-left"].inner_mm == pytest.approx(904.0, abs=0.01)
    assert made["EX1-W1-head"].hand_sum == "reveal 600 + 2 + 2 = 604"
    assert any("quirk is taken from the new edge: 3 mm" in t for t in found.trims[0].plan.lines)


def test_a_step_larger_than_the_quirk_is_refused() -> None:
    depths = dict.fromkeys(("tl", "tr", "br", "bl"), 50)
    assert "stand out past the new face" in refusal(planned(square(), depths=depths, step=6))


def test_a_mitred_piece_has_its_face_shorter_than_its_back() -> None:
    depths = dict.fromkeys(("tl", "tr", "br", "bl"), 50)
    head = pieces(planned(square(), depths=depths, joint="mitre"))["EX1-W1-head"]
    assert (head.left.kind, head.right.kind) == (CutKind.BEVEL, CutKind.BEVEL)
    assert head.left.bevel_deg == pytest.approx(45.0, abs=0.01)
    assert head.inner_mm == pytest.approx(600.0, abs=0.01)
    assert head.back_mm == pytest.approx(636.0, abs=0.02)


def test_a_door_has_no_sill_piece_and_its_legs_stop_at_the_floor_to_come() -> None:
    depths = {"tl": 30, "tr": 30, "br": 30, "bl": 30}
    made = pieces(planned(door(), depths=depths, floor_cover=14))
    assert [mark.rpartition("-")[2] for mark in made] == ["left", "head", "right"]
    assert made["EX1-D1-left"].inner_mm == pytest.approx(2030 - 14, abs=0.5)
    assert "- 14" in made["EX1-D1-left"].hand_sum


def test_legs_of_an_opening_off_square_are_cut_to_their_head() -> None:
    racked = window(
        top=602, bottom=600, left=900, right=909, rising=1088.0, falling=1082.0, mark="W2"
    )
    made = pieces(planned(racked, depths=dict.fromkeys(("tl", "tr", "br", "bl"), 50)))
    left, right = made["EX1-W2-left"], made["EX1-W2-right"]
    assert left.right.bevel_deg != 0.0
    # Right end of the left leg and left end of the right leg both lie under the head.
    assert left.right.bevel_deg * right.left.bevel_deg < 0


def test_a_side_level_with_the_wall_gets_no_board_and_its_neighbours_end_on_it() -> None:
    plane = {"tl": 0, "tr": -8, "br": -8, "bl": 0}
    found = planned(square(plane=plane))
    made = pieces(found)
    assert [mark.rpartition("-")[2] for mark in made] == ["head", "right", "sill"]
    assert {f.code for f in found.findings} == {"extension-left-out", "extension-thin"}
    assert made["EX1-W1-head"].inner_mm == pytest.approx(618.0, abs=0.01)


def test_a_proud_corner_is_refused() -> None:
    plane = {"tl": -6, "tr": 2, "br": -6, "bl": -6}
    assert "2 mm proud of the wall at the top right" in refusal(planned(square(plane=plane)))


def test_a_profile_narrower_than_the_deepest_corner_is_refused() -> None:
    depths = {"tl": 92, "tr": 151, "br": 92, "bl": 92}
    assert "151 mm at W1" in refusal(planned(square(), depths=depths))


def test_without_depths_or_a_plane_nothing_is_made() -> None:
    assert "Neither its depths nor the plane" in refusal(planned(square()))


def test_depths_belong_to_one_opening_alone() -> None:
    depths = dict.fromkeys(("tl", "tr", "br", "bl"), 50)
    assert "2 openings" in refusal(planned(square(), square(mark="W2"), depths=depths))


def test_depths_that_the_plane_contradicts_hold_the_entry() -> None:
    plane = {"tl": -92, "tr": -92, "br": -92, "bl": -92}
    depths = {"tl": 92, "tr": 95, "br": 92, "bl": 92.5}
    stops = [f for f in planned(square(plane=plane), depths=depths).findings]
    assert [(f.code, f.severity) for f in stops] == [("extension-depths", Severity.STOP)]
    assert "top right: 95 deep as written here, 92 shy" in stops[0].read
    within = {"tl": 92, "tr": 93, "br": 91, "bl": 92.5}
    assert planned(square(plane=plane), depths=within).findings == ()


def test_an_arched_opening_and_a_missing_face_are_refused() -> None:
    depths = dict.fromkeys(("tl", "tr", "br", "bl"), 50)
    arched = square(arch={"rise": 150, "blank": "BD150"})
    assert "four straight sides" in refusal(planned(arched, depths=depths))
    assert "with one face" in refusal(planned(square(), depths=depths, face="b"))


def test_the_second_face_is_the_mirror_of_the_first() -> None:
    depths = dict.fromkeys(("tl", "tr", "br", "bl"), 50)
    both = door(left=2020, right=2030, faces=2)
    seen = {
        face: pieces(planned(both, depths=depths, face=face))["EX1-D1-left"].inner_mm
        for face in ("a", "b")
    }
    assert seen["b"] - seen["a"] == pytest.approx(10.0, abs=0.2)


def test_the_drawings_have_the_taper_the_right_way_round() -> None:
    depths = {"tl": 92, "tr": 95.5, "br": 95.5, "bl": 92}
    plan = planned(square(), depths=depths, joint="mitre").trims[0].plan
    section, board = plan.sketches
    assert "95.5 deep" in {label.text for label in section.labels}
    texts = {label.text: label.x_mm for label in board.labels}
    assert texts["92"] < 0 < texts["95.5"]
    (_, _), (_, _), (_, right_low), (_, left_low) = board.lines[0].points
    assert right_low < left_low
