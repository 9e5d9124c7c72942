import math
from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.plan_trims import TRIM_NOT_PLANNED, TrimsPlanned, plan_trims
from longpoint.catalogue.reveals.splayed_lining import TRIM
from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind, Piece
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house_file import read_house
from tests.house_documents import house, window

PROFILES = {
    "OG57": {"face": 57, "thickness": 18},
    "SK95": {"face": 95, "thickness": 16},
    "BD225": {"face": 225, "thickness": 18},
}
PLAIN: dict[str, Any] = {"width": 900, "height": 1200, "depth": 150}


def planned(*openings: dict[str, Any], **entry: Any) -> TrimsPlanned:  # noqa: ANN401
    trim = {"mark": "SP1", "kind": "splayed-lining", "profile": "BD225", **entry}
    document = house(profiles=PROFILES, openings=list(openings), trims=[trim])
    survey = read_house(document, trim_tables((TRIM,)))
    assert survey.house.held == ()
    shapes = Shapes(openings=fit_openings(survey.house)[0])
    return plan_trims(survey.house, shapes, frozenset(), (TRIM,))


def pieces(found: TrimsPlanned) -> dict[str, Piece]:
    assert [str(f) for f in found.findings if f.severity is Severity.STOP] == []
    return {piece.mark: piece for piece in found.trims[0].plan.pieces}


def refusal(found: TrimsPlanned) -> str:
    stops = [f for f in found.findings if f.severity is Severity.STOP]
    assert [f.code for f in stops] == [TRIM_NOT_PLANNED]
    return str(stops[0])


def splays(found: TrimsPlanned) -> tuple[float, float]:
    """Return the splays of the left and right boards from how wide they are across the face."""
    made = pieces(found)
    # blank = depth / cos s + 18 tan s, solved for s by halving.
    return _splay(made["SP1-left"].width_mm), _splay(made["SP1-right"].width_mm)


def _splay(blank_mm: float) -> float:
    low, high = 0.0, 60.0
    for _ in range(60):
        middle = math.radians((low + high) / 2.0)
        wide = 150.0 / math.cos(middle) + 18.0 * math.tan(middle) > blank_mm
        low, high = (low, (low + high) / 2.0) if wide else ((low + high) / 2.0, high)
    return low


def test_legs_stand_on_the_window_board_and_the_head_is_level_when_nothing_else_is_said() -> None:
    found = planned(**PLAIN, splay_left=12.5, splay_right=12.5)
    made = pieces(found)
    assert list(made) == ["SP1-left", "SP1-head", "SP1-right"]
    left, head = made["SP1-left"], made["SP1-head"]
    assert left.left.kind is CutKind.SQUARE
    assert left.inner_mm == pytest.approx(1200.0)
    assert head.inner_mm == pytest.approx(900.0 - 300.0 * math.tan(math.radians(12.5)))
    assert head.width_mm == pytest.approx(150.0)
    assert any("taken as level through the wall" in line for line in found.trims[0].plan.lines)


def test_the_edges_are_ripped_at_the_splay_and_the_head_square() -> None:
    made = pieces(planned(**PLAIN, splay_left=12.5, splay_right=20))
    assert made["SP1-left"].notes[0] == "rip to 157.5 before its ends are cut"
    assert "rip both edges at 12.5°" in made["SP1-left"].notes[1]
    assert "to 153.5 across the face" in made["SP1-left"].notes[1]
    assert "rip both edges at 20.0°" in made["SP1-right"].notes[1]
    assert made["SP1-head"].notes == ("rip to 150 before its ends are cut",)


def test_left_and_right_are_a_mirror_pair_where_the_splays_are_equal() -> None:
    made = pieces(planned(**PLAIN, splay_left=15, splay_right=15, splay_head=8))
    left, right = made["SP1-left"], made["SP1-right"]
    assert left.right == right.left
    assert left.inner_mm == pytest.approx(right.inner_mm)
    assert left.right.kind is CutKind.COMPOUND
    assert left.right.mitre_deg > 0


def test_widths_at_wall_and_frame_stand_for_two_equal_splays_and_that_is_said() -> None:
    found = planned(**PLAIN, back_width=833.5)
    assert [f.code for f in found.findings] == ["splay-shared"]
    assert splays(found) == pytest.approx((12.5, 12.5), abs=0.02)


def test_one_splay_and_the_two_widths_give_the_other_splay() -> None:
    narrower = 150.0 * (math.tan(math.radians(10.0)) + math.tan(math.radians(25.0)))
    back = round(900.0 - narrower, 3)
    assert splays(planned(**PLAIN, back_width=back, splay_left=10)) == pytest.approx(
        (10.0, 25.0), abs=0.01
    )
    assert splays(planned(**PLAIN, back_width=back, splay_right=25)) == pytest.approx(
        (10.0, 25.0), abs=0.01
    )


def test_the_two_heights_give_the_head_its_splay() -> None:
    made = pieces(planned(**PLAIN, splay_left=10, splay_right=10, back_height=1160))
    splay = math.atan2(40.0, 150.0)
    assert made["SP1-head"].width_mm == pytest.approx(
        150.0 / math.cos(splay) + 18.0 * math.tan(splay)
    )


def test_splays_that_the_size_at_the_frame_contradicts_hold_the_reveal() -> None:
    def codes(back_width: float) -> list[str]:
        found = planned(**PLAIN, splay_left=12.5, splay_right=12.5, back_width=back_width)
        return [f.code for f in found.findings]

    assert codes(831.0) == []
    assert codes(828.0) == ["splay-apart"]


def test_an_opening_gives_its_fitted_corners() -> None:
    racked = window(top=902, bottom=900, left=1200, right=1206, rising=1506, falling=1500)
    made = pieces(
        planned(racked, openings=["W1"], depth=150, splay_left=12, splay_right=12, joint="butt")
    )
    assert made["SP1-right"].outer_mm != pytest.approx(made["SP1-left"].outer_mm, abs=2.0)
    assert made["SP1-left"].u_mm > 0


def test_a_sill_board_is_made_when_asked_for() -> None:
    made = pieces(planned(**PLAIN, splay_left=12, splay_right=12, splay_sill=30, sill=True))
    assert list(made)[-1] == "SP1-sill"
    assert made["SP1-sill"].width_mm > 150.0


def test_head_over_legs_is_cut_along_their_backs() -> None:
    butt = pieces(planned(**PLAIN, splay_left=12, splay_right=12, joint="butt"))["SP1-head"]
    mitred = pieces(planned(**PLAIN, splay_left=12, splay_right=12))["SP1-head"]
    thick = 2 * 18.0 / math.cos(math.radians(12))
    assert butt.inner_mm - mitred.inner_mm == pytest.approx(thick)
    assert butt.left.bevel_deg == 0.0
    assert butt.left.mitre_deg == pytest.approx(12.0)


@pytest.mark.parametrize(
    ("entry", "said"),
    [
        ({"depth": 150}, "names no opening"),
        ({**PLAIN}, "without the splay of both its sides"),
        ({**PLAIN, "splay_left": 10}, "without the splay of both its sides"),
        ({**PLAIN, "back_width": 960}, "narrower at the room"),
        ({**PLAIN, "back_width": 100}, "is no reveal"),
        ({**PLAIN, "depth": 240, "splay_left": 5, "splay_right": 5}, "Choose a wider profile"),
        ({**PLAIN, "width": 60, "splay_left": 30, "splay_right": 30}, "no length left"),
    ],
)
def test_what_can_not_be_made_is_refused(entry: dict[str, Any], said: str) -> None:
    assert said in refusal(planned(**entry))


def test_a_size_written_twice_and_two_openings_are_refused() -> None:
    entry = {"depth": 150, "splay_left": 10, "splay_right": 10}
    assert "only come from one" in refusal(planned(window(), openings=["W1"], width=900, **entry))
    assert "2 openings" in refusal(
        planned(window(), window(mark="W2"), openings=["W1", "W2"], **entry)
    )


def test_the_convention_of_the_settings_is_printed_and_drawn() -> None:
    plan = planned(**PLAIN, splay_left=12.5, splay_right=20).trims[0].plan
    assert "+ where the outer edge is the longer" in plan.lines[0]
    texts = {label.text for label in plan.sketches[0].labels}
    assert {"900", "12.5°", "20.0°"} <= texts
