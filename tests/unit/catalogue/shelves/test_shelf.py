from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.plan_trims import TRIM_NOT_PLANNED, TrimsPlanned, plan_trims
from longpoint.catalogue.shelves.shelf import TRIM
from longpoint.errors import Finding, Severity
from longpoint.pieces.piece import CutKind, Piece, Role
from longpoint.shape.fitted import Shapes
from longpoint.survey.house_file import read_house
from tests.house_documents import house

PROFILES = {"SB250": {"face": 250, "thickness": 22}}


def planned(*shelves: dict[str, Any], **keys: Any) -> TrimsPlanned:  # noqa: ANN401
    entry = {"mark": "SH1", "kind": "shelf", "profile": "SB250", "shelves": list(shelves), **keys}
    profiles = {**house()["profiles"], **PROFILES}
    survey = read_house(house(profiles=profiles, trims=[entry]), trim_tables((TRIM,)))
    assert survey.house.held == (), [str(finding) for finding in survey.findings]
    return plan_trims(survey.house, Shapes(), kinds=(TRIM,))


def pieces(*shelves: dict[str, Any], **keys: Any) -> tuple[Piece, ...]:  # noqa: ANN401
    result = planned(*shelves, **keys)
    assert len(result.trims) == 1, [str(finding) for finding in result.findings]
    return result.trims[0].plan.pieces


def refused(*shelves: dict[str, Any], **keys: Any) -> Finding:  # noqa: ANN401
    result = planned(*shelves, **keys)
    assert result.trims == ()
    (stop,) = result.findings
    assert (stop.code, stop.severity) == (TRIM_NOT_PLANNED, Severity.STOP)
    return stop


def test_each_height_has_a_shelf_of_its_own() -> None:
    first, second = pieces(
        {"height": 450, "back": 900, "front": 912, "left_corner": 91},
        {"height": 800, "back": 897, "front": 905, "left_corner": 90},
    )
    assert (first.mark, second.mark) == ("SH1-1", "SH1-2")
    assert first.role is second.role is Role.SHELF
    # As deep as the board; 1 left open at each end.
    assert (first.inner_mm, first.outer_mm) == pytest.approx((910.0, 898.0))
    assert (second.inner_mm, second.outer_mm) == pytest.approx((903.0, 895.0))
    assert "shelf 1 at 450" in first.notes[0]


def test_an_alcove_that_opens_makes_the_front_edge_the_longer() -> None:
    (shelf,) = pieces({"back": 900, "front": 900 + 2 * 4.3633, "left_corner": 91})
    # 250 tan 1 = 4.3637: both cheeks are 1 out.
    assert shelf.left.mitre_deg == pytest.approx(-1.0, abs=1e-6)
    assert shelf.right.mitre_deg == pytest.approx(-1.0, abs=1e-3)
    assert shelf.left.kind is CutKind.MITRE


def test_a_square_alcove_has_square_ends() -> None:
    (shelf,) = pieces({"back": 900, "front": 900, "left_corner": 90})
    assert shelf.left.kind is shelf.right.kind is CutKind.SQUARE
    assert "left cheek square" in shelf.hand_sum


def test_the_front_read_further_out_than_the_board_is_brought_back_to_it() -> None:
    (shelf,) = pieces({"back": 900, "front": 912, "left_corner": 90}, depth=300, gap=0)
    assert shelf.inner_mm == pytest.approx(900 + 12 * 250 / 300)
    assert "alcove 910 wide 250 from the back" in shelf.hand_sum


def test_one_diagonal_says_which_cheek_is_out() -> None:
    # All 12 on the right: back left to front right is hypot(912, 250).
    (shelf,) = pieces({"back": 900, "front": 912, "from_back_left": 945.65})
    assert shelf.left.mitre_deg == pytest.approx(0.0, abs=0.01)
    assert shelf.right.mitre_deg == pytest.approx(-2.748, abs=0.01)
    (other,) = pieces({"back": 900, "front": 912, "from_back_right": 945.65})
    assert other.left.mitre_deg == pytest.approx(shelf.right.mitre_deg)


def test_without_angle_or_diagonal_the_difference_is_split_and_that_is_said() -> None:
    result = planned({"height": 450, "back": 900, "front": 912})
    (note,) = result.findings
    assert (note.code, note.severity) == ("shelf-split-assumed", Severity.NOTE)
    assert "12 mm" in note.read
    assert "6 mm" in note.wrong
    (shelf,) = result.trims[0].plan.pieces
    assert shelf.left.mitre_deg == shelf.right.mitre_deg


def test_equal_widths_without_an_angle_may_still_lean() -> None:
    (note,) = planned({"back": 900, "front": 900}).findings
    assert "lean the same way" in note.wrong


def test_a_shelf_longer_behind_than_the_alcove_in_front_has_to_be_tipped_in() -> None:
    result = planned({"back": 912, "front": 900, "left_corner": 88.6})
    (warning,) = result.findings
    assert (warning.code, warning.severity) == ("shelf-locked", Severity.WARNING)
    assert "910 mm" in warning.read
    assert "Tip it in" in warning.do


def test_a_wider_front_locks_nothing() -> None:
    assert planned({"back": 900, "front": 901, "left_corner": 90}).findings == ()


def test_a_board_deeper_than_the_alcove_was_read_is_refused() -> None:
    assert "200 mm deep" in refused({"back": 900, "front": 912}, depth=200).read


def test_a_cheek_half_a_right_angle_out_is_refused() -> None:
    assert "out of square" in refused({"back": 900, "front": 1400}).read


def test_a_diagonal_shorter_than_the_depth_is_refused() -> None:
    stop = refused({"back": 900, "front": 912, "from_back_left": 95})
    assert "No diagonal" in stop.wrong


def test_a_diagonal_that_denies_the_angle_is_refused() -> None:
    stop = refused({"back": 900, "front": 912, "left_corner": 94, "from_back_left": 945.65})
    assert "apart at the front" in stop.read


def test_a_gap_as_wide_as_the_alcove_leaves_no_shelf() -> None:
    assert "Less than nothing" in refused({"back": 90, "front": 92}, gap=50).wrong
