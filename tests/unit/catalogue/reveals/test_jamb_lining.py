from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.plan_trims import TRIM_NOT_PLANNED, TrimsPlanned, plan_trims
from longpoint.catalogue.reveals.jamb_lining import TRIM
from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind, Piece
from longpoint.shape.fitted import Shapes
from longpoint.survey.house_file import read_house
from tests.house_documents import house

PROFILES = {
    "OG57": {"face": 57, "thickness": 18},
    "SK95": {"face": 95, "thickness": 16},
    "LN": {"face": 140, "thickness": 30},
}
HOLE: dict[str, Any] = {
    "rough_widths": [860, 856, 858],
    "rough_heights": [2100, 2096],
    "depths": {"tl": 118, "tr": 120, "br": 121, "bl": 118},
}


def planned(**entry: Any) -> TrimsPlanned:  # noqa: ANN401
    trim = {"mark": "JL1", "kind": "jamb-lining", "profile": "LN", **HOLE, **entry}
    survey = read_house(house(profiles=PROFILES, trims=[trim]), trim_tables((TRIM,)))
    assert survey.house.held == ()
    return plan_trims(survey.house, Shapes(), frozenset(), (TRIM,))


def pieces(found: TrimsPlanned) -> dict[str, Piece]:
    assert [str(f) for f in found.findings if f.severity is Severity.STOP] == []
    return {piece.mark: piece for piece in found.trims[0].plan.pieces}


def refusal(found: TrimsPlanned) -> str:
    stops = [f for f in found.findings if f.severity is Severity.STOP]
    assert [f.code for f in stops] == [TRIM_NOT_PLANNED]
    return str(stops[0])


def test_the_tightest_place_less_ten_a_side_gives_the_width() -> None:
    made = pieces(planned())
    assert list(made) == ["JL1-left", "JL1-head", "JL1-right"]
    # 856 - 2 x 30 - 2 x 10 = 776 between; the head over the legs is 836.
    assert made["JL1-head"].inner_mm == pytest.approx(836.0)
    assert made["JL1-head"].hand_sum == "between 776 + 30 + 30 = 836"
    # 2096 - 30 - 10.
    assert made["JL1-left"].inner_mm == made["JL1-right"].inner_mm == pytest.approx(2056.0)
    assert {piece.left.kind for piece in made.values()} == {CutKind.SQUARE}


def test_a_width_and_height_asked_for_leave_the_rest_to_packers() -> None:
    found = planned(between=768, under_head=2043, floor_cover=15)
    made = pieces(found)
    assert made["JL1-head"].inner_mm == pytest.approx(828.0)
    assert made["JL1-left"].inner_mm == pytest.approx(2058.0)
    assert "14 mm to pack at each side" in found.trims[0].plan.lines[0]
    assert "8 mm over the head" in found.trims[0].plan.lines[0]


def test_a_lean_takes_room_from_the_packers() -> None:
    found = planned(between=768, under_head=2043, lean=8)
    assert "10 mm to pack at each side" in found.trims[0].plan.lines[0]
    assert not any("taken as plumb" in line for line in found.trims[0].plan.lines)


def test_legs_let_into_the_head_are_longer_and_the_housings_are_given() -> None:
    made = pieces(planned(between=768, under_head=2043, housing=6, horn=25))
    assert made["JL1-left"].inner_mm == pytest.approx(2049.0)
    head = made["JL1-head"]
    assert head.inner_mm == pytest.approx(768 + 60 + 50)
    assert head.notes[1] == "house 6 deep from 25 to 55 and from 823 to 853"


def test_a_window_has_a_sill_piece_and_its_legs_are_let_in_twice() -> None:
    made = pieces(planned(sill=True, rough_heights=[1200, 1200], housing=6))
    assert list(made)[-1] == "JL1-sill"
    # 1200 - 2 x 30 - 10 = 1130 between, and 6 at both ends.
    assert made["JL1-left"].inner_mm == pytest.approx(1142.0)
    assert made["JL1-sill"].inner_mm == made["JL1-head"].inner_mm


def test_each_piece_is_ripped_to_the_wall_at_its_ends_as_it_lies() -> None:
    notes = {mark: piece.notes[0].partition(";")[0] for mark, piece in pieces(planned()).items()}
    assert notes == {
        "JL1-left": "rip to 118 all along",
        "JL1-head": "rip to 118 at the left end, 120 at the right",
        "JL1-right": "rip to 120 at the left end, 121 at the right",
    }


def test_a_hole_read_once_or_uneven_is_told() -> None:
    def codes(**entry: Any) -> list[str]:  # noqa: ANN401
        return [f.code for f in planned(**entry).findings]

    assert codes() == []
    assert codes(rough_widths=[856]) == ["jamb-read-once"]
    assert codes(rough_heights=[2096, 2108]) == ["jamb-spread"]


@pytest.mark.parametrize(
    ("entry", "said"),
    [
        ({"between": 800}, "4 mm too wide"),
        ({"between": 790, "lean": 8}, "2 mm too wide"),
        ({"under_head": 2070}, "4 mm too high"),
        ({"depths": {"tl": 118, "tr": 141, "br": 121, "bl": 118}}, "needs 141 mm"),
        ({"housing": 30}, "Nothing of the head"),
        ({"rough_widths": [75, 75]}, "leaves nothing for it"),
    ],
)
def test_what_does_not_go_in_is_refused(entry: dict[str, Any], said: str) -> None:
    assert said in refusal(planned(**entry))
