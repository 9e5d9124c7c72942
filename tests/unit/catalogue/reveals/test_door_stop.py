from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.plan_trims import TRIM_NOT_PLANNED, TrimsPlanned, plan_trims
from longpoint.catalogue.reveals.door_stop import TRIM
from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind, Piece
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house_file import read_house
from tests.house_documents import defaults, door, house, window

PROFILES = {
    "OG57": {"face": 57, "thickness": 18},
    "SK95": {"face": 95, "thickness": 16},
    "DS32": {"face": 32, "thickness": 12},
}
TRUE_DOOR = {
    "top": 760,
    "bottom": 760,
    "left": 2000,
    "right": 2000,
    "rising": 2139.533,
    "falling": 2139.533,
}


def planned(*openings: dict[str, Any], floor_cover: float = 0, **entry: Any) -> TrimsPlanned:  # noqa: ANN401
    document = house(
        profiles=PROFILES,
        defaults=defaults(floor_cover=floor_cover),
        openings=list(openings),
        trims=[
            {
                "mark": "DS1",
                "kind": "door-stop",
                "profile": "DS32",
                "openings": [each["mark"] for each in openings],
                **entry,
            }
        ],
    )
    survey = read_house(document, trim_tables((TRIM,)))
    assert survey.house.held == ()
    shapes = Shapes(openings=fit_openings(survey.house)[0])
    return plan_trims(survey.house, shapes, frozenset(), (TRIM,))


def true_door(**changes: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return a door of exactly 760 by 2000."""
    return door(**{**TRUE_DOOR, **changes})


def pieces(found: TrimsPlanned) -> dict[str, Piece]:
    assert [str(f) for f in found.findings if f.severity is Severity.STOP] == []
    return {piece.mark: piece for piece in found.trims[0].plan.pieces}


def refusal(found: TrimsPlanned) -> str:
    stops = [f for f in found.findings if f.severity is Severity.STOP]
    assert [f.code for f in stops] == [TRIM_NOT_PLANNED]
    return str(stops[0])


def test_square_edged_legs_stand_under_a_head_between_the_jambs() -> None:
    made = pieces(planned(true_door()))
    assert list(made) == ["DS1-D1-head", "DS1-D1-left", "DS1-D1-right"]
    lengths = [piece.inner_mm for piece in made.values()]
    assert lengths == pytest.approx([760.0, 1988.0, 1988.0], abs=0.01)
    assert made["DS1-D1-left"].hand_sum == "jamb 2000 - 12 = 1988"
    assert {piece.left.kind for piece in made.values()} == {CutKind.SQUARE}


def test_floor_still_to_be_laid_comes_off_both_legs() -> None:
    found = planned(true_door(), floor_cover=15)
    assert pieces(found)["DS1-D1-right"].inner_mm == pytest.approx(1973.0, abs=0.01)
    assert pieces(found)["DS1-D1-right"].hand_sum == "jamb 2000 - 15 - 12 = 1973"
    assert any("still to be laid" in line for line in found.trims[0].plan.lines)


def test_mitred_stops_are_45_through_the_thickness_with_the_jamb_on_the_back() -> None:
    made = pieces(planned(true_door(), joint="mitre"))
    head, left = made["DS1-D1-head"], made["DS1-D1-left"]
    assert (head.left.bevel_deg, head.right.bevel_deg) == pytest.approx((45.0, 45.0), abs=0.01)
    assert (head.inner_mm, head.back_mm) == pytest.approx((736.0, 760.0), abs=0.01)
    assert (left.inner_mm, left.back_mm) == pytest.approx((1988.0, 2000.0), abs=0.01)
    assert left.left.kind is CutKind.SQUARE


def test_scribed_legs_reach_the_head_lining_on_their_back_and_the_head_stays_square() -> None:
    made = pieces(planned(true_door(), joint="scribe"))
    head, left, right = (made[f"DS1-D1-{side}"] for side in ("head", "left", "right"))
    assert (head.left.kind, head.right.kind) == (CutKind.SQUARE, CutKind.SQUARE)
    assert (left.left.kind, left.right.kind) == (CutKind.SQUARE, CutKind.SCRIBE)
    assert (right.left.kind, right.right.kind) == (CutKind.SCRIBE, CutKind.SQUARE)
    assert left.right.bevel_deg == pytest.approx(45.0, abs=0.01)
    assert left.back_mm == pytest.approx(2000.0, abs=0.01)


def test_a_floor_that_falls_is_cut_on_both_feet_as_a_mirror_pair() -> None:
    falling = true_door(right=2010, rising=2139.533, falling=2148.884)
    made = pieces(planned(falling))
    left, right = made["DS1-D1-left"], made["DS1-D1-right"]
    # The faces stand 12 in from either jamb, where the floor has fallen by less.
    assert right.inner_mm - left.inner_mm == pytest.approx(10.0 * 736 / 760, abs=0.02)
    # Left foot is at the left leg's left end, right foot at the right leg's right end.
    assert left.left.bevel_deg == pytest.approx(-right.right.bevel_deg, abs=0.02)
    assert abs(left.left.bevel_deg) == pytest.approx(0.75, abs=0.02)


def test_two_doors_get_six_pieces_and_rooms_of_their_own() -> None:
    made = pieces(planned(true_door(room="Bed 1"), true_door(mark="D2", room="Bed 2")))
    assert [piece.room for piece in made.values()] == ["Bed 1"] * 3 + ["Bed 2"] * 3


def test_the_line_is_door_and_gap_from_the_jambs_edge() -> None:
    found = planned(true_door(), door_thickness=35, door_back=1, lining_depth=132)
    lines = " ".join(found.trims[0].plan.lines)
    assert "38 mm from the jambs' edge" in lines
    assert "common practice, no source" in lines
    assert len(found.trims[0].plan.sketches) == 2


def test_without_the_doors_thickness_no_line_is_given() -> None:
    plan = planned(true_door()).trims[0].plan
    assert any("no line is given" in line for line in plan.lines)
    assert len(plan.sketches) == 1


def test_the_lock_comes_first() -> None:
    assert "lock is set" in planned(true_door()).trims[0].plan.lines[0]


def test_jambs_too_narrow_for_door_gap_and_stop_are_refused() -> None:
    assert "need 77 mm of the jambs" in refusal(
        planned(true_door(), door_thickness=43, lining_depth=76)
    )


def test_a_window_is_refused() -> None:
    assert "which is a window" in refusal(planned(window()))


def test_jambs_out_of_one_plane_by_more_than_the_gap_are_told() -> None:
    def codes(**plane: float) -> list[str]:
        return [f.code for f in planned(true_door(plane=plane)).findings]

    assert codes(tl=0, tr=3, br=0, bl=0) == ["stop-warped"]
    assert codes(tl=0, tr=2, br=0, bl=0) == []
    # Turned as a whole, however far, the jambs still lie in one plane.
    assert codes(tl=-3, tr=3, br=3, bl=-3) == []
