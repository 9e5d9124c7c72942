from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.pieces.opening_notes import square_notes
from longpoint.quantities.length import Units
from longpoint.survey.openings import Layout, Method, Opening, OpeningKind
from tests.fitted_houses import Corners, fitted, house, opening, quad, rectangle

HEIGHT_MM = 1050.0


def leaning(lean_mm: float) -> Corners:
    return quad((0, 0), (1200, 0), (1200 + lean_mm, HEIGHT_MM), (lean_mm, HEIGHT_MM))


def notes(one: Opening) -> tuple[Finding, ...]:
    return square_notes(house(one), one, fitted(one))


@pytest.mark.parametrize("lean_mm", [0.0, 1.0, -5.0])
def test_an_opening_near_enough_to_square_is_not_talked_about(lean_mm: float) -> None:
    assert notes(opening(leaning(lean_mm))) == ()


def test_a_lean_is_told_with_both_ways_of_fixing() -> None:
    (note,) = notes(opening(leaning(10.0)))
    assert (note.code, note.severity, note.place) == ("out-of-square", Severity.NOTE, "W1")
    assert "nailed parallel to the reveal" in note.wrong
    assert "tapped to share" in note.wrong


def test_the_open_joint_it_tells_of_is_that_of_two_45s() -> None:
    (note,) = notes(opening(leaning(-1050.0 * 0.0174551)))
    # One degree on a 66 mm face: 66 x root 2 x 0.01745.
    assert "about 1.6 mm" in note.wrong


def test_in_inches_the_open_joint_is_in_sixteenths() -> None:
    one = opening(leaning(-1050.0 * 0.0174551))
    (note,) = square_notes(replace(house(one), units=Units.INCH), one, fitted(one))
    # 66 x root 2 x 0.01745 = 1.63 mm, 0.064 in.
    assert "about 1/16 in" in note.wrong
    assert " mm" not in note.wrong


def test_quirks_outside_the_band_are_said_to_be() -> None:
    inside = notes(opening(leaning(6.0)))[0].wrong
    outside = notes(opening(leaning(20.0)))[0].wrong
    assert "stays within what you accept" in inside
    assert "goes outside what you accept" in outside


def test_a_raked_opening_is_meant_to_be_out_of_square() -> None:
    assert notes(opening(leaning(60.0), raked=True)) == ()


def test_a_bench_frame_is_warned_of_only_when_its_quirks_leave_the_band() -> None:
    assert notes(opening(leaning(6.0), method=Method.BENCH)) == ()
    (found,) = notes(opening(leaning(20.0), method=Method.BENCH))
    assert (found.code, found.severity) == ("quirk-band", Severity.WARNING)
    wide = replace(opening(leaning(18.0), method=Method.BENCH), quirk_band_mm=(0.0, 12.0))
    assert notes(wide) == ()


def test_a_door_is_judged_by_its_two_mitres_and_not_by_the_floor() -> None:
    falling_floor = quad((0, 0), (820, -16), (820, 2040), (0, 2040))
    door = opening(falling_floor, kind=OpeningKind.DOOR, layout=Layout.LEGS_AND_HEAD)
    assert notes(door) == ()
    assert notes(replace(door, layout=Layout.ALL_ROUND)) != ()


def test_the_worst_corner_is_named() -> None:
    pulled = quad((0, 0), (1200, 0), (1200, HEIGHT_MM), (-14, HEIGHT_MM))
    (note,) = notes(opening(pulled, kind=OpeningKind.DOOR, layout=Layout.LEGS_AND_HEAD))
    assert note.read.startswith("The top left corner is 89.2 degrees")


def test_a_true_opening_says_nothing_by_any_method() -> None:
    for method in Method:
        assert notes(opening(rectangle(1180.0, 620.0), method=method)) == ()
