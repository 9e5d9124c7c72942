import math
from dataclasses import replace
from typing import Any

from longpoint.errors import Severity
from longpoint.pieces.window_board_findings import below_findings
from longpoint.survey.openings import ApronEnds, BoardFit, Layout, Opening
from longpoint.survey.profiles import Profile
from tests.fitted_houses import opening, rectangle
from tests.set_houses import codes, planned, set_house, set_of

FIT = BoardFit(depth_left_mm=140.0, depth_right_mm=142.0, nosing_mm=46.0)


def window(**changes: Any) -> Opening:  # noqa: ANN401
    """Return a window of 1180 on a 225 board with horns of 25."""
    plain = opening(
        rectangle(1180.0, 620.0), layout=Layout.BOARD_AND_APRON, board="WB225", horn_mm=25.0
    )
    return replace(plain, **changes)


def test_a_board_too_narrow_is_a_stop_and_is_not_told_to_be_ripped() -> None:
    narrow = Profile(name="WB225", width_mm=180.0, thickness_mm=25.0)
    made, found = planned(set_house(window(board_fit=FIT), profiles=(narrow,)))
    assert [(f.code, f.severity) for f in found] == [("board-narrow", Severity.STOP)]
    assert "188 mm" in found[0].wrong
    assert "rip" not in " ".join(made["W1-board"].notes)


def test_a_nosing_less_than_the_legs_is_said_and_none_at_all_is_a_stop() -> None:
    slight = replace(FIT, nosing_mm=10.0)
    _, found = planned(set_house(window(board_fit=slight)))
    assert [(f.code, f.severity) for f in found] == [("board-nosing", Severity.WARNING)]
    _, bare = planned(set_house(window(board_fit=replace(FIT, nosing_mm=0.0))))
    assert [(f.code, f.severity) for f in bare] == [("board-nosing", Severity.STOP)]


def test_linings_far_from_the_openings_bottom_are_doubted() -> None:
    _, found = planned(set_house(window(board_fit=replace(FIT, inside_mm=1160.0))))
    assert codes(found) == ["board-inside"]
    _, near = planned(set_house(window(board_fit=replace(FIT, inside_mm=1176.0))))
    assert codes(near) == []


def test_a_fit_without_a_board_is_said() -> None:
    made, found = planned(set_house(window(board="", board_fit=FIT)))
    assert "W1-board" not in made
    assert codes(found) == ["board-unnamed"]


def test_a_bottom_read_off_level_tells_how_far_the_board_falls() -> None:
    face = set_of(window())
    tilted = replace(face, fitted=replace(face.fitted, level_deg=0.3))
    (said,) = below_findings(tilted)
    assert (said.code, said.severity) == ("board-not-level", Severity.WARNING)
    assert f"{round(1322.0 * math.sin(math.radians(0.3)) * 2) / 2:g} mm to the left" in said.wrong
    slight = replace(face, fitted=replace(face.fitted, level_deg=-0.1))
    assert below_findings(slight) == ()


def test_returns_are_warned_of_once() -> None:
    _, found = planned(set_house(window(apron_ends=ApronEnds.RETURN)))
    assert [(f.code, f.severity, f.place) for f in found] == [
        ("return-small", Severity.WARNING, "W1")
    ]
