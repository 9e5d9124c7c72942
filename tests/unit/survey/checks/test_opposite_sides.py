from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.opposite_sides import check_opposite_sides, may_be_raked
from longpoint.survey.openings import OpeningKind
from longpoint.survey.readings import Plane
from tests.drawn_openings import house_of, opening_of, readings_of

WINDOW, DOOR = OpeningKind.WINDOW, OpeningKind.DOOR


def said(kind: OpeningKind = WINDOW, /, **lengths_mm: float) -> dict[str, Finding]:
    found = check_opposite_sides(house_of(opening_of("X", readings_of(**lengths_mm), kind=kind)))
    return {f.code: f for f in found}


def test_five_apart_is_silent_on_a_window_and_six_is_not() -> None:
    assert not said(top=886, bottom=881)
    assert said(top=886, bottom=880)["sides-apart"].severity is Severity.WARNING


def test_a_swap_that_makes_them_agree_holds_the_opening_and_is_proposed() -> None:
    found = said(top=1187, bottom=1178)["sides-apart"]
    assert found.severity is Severity.STOP
    assert "top 1178 mm (digits swapped)" in found.do


def test_the_diagonals_tell_which_of_the_two_slipped() -> None:
    window = {"left": 598, "right": 599, "rising": 1322, "falling": 1322}
    do = said(top=1187, bottom=1178, **window)["sides-apart"].do
    assert "top 1178" in do
    assert "bottom" not in do


def test_a_real_taper_is_a_warning_where_the_diagonals_speak_for_it() -> None:
    # A lining 812 at the head and 820 at the floor: 820 could be a slip of 810, but then the
    # diagonals would miss by more.
    door = {"left": 2024, "right": 2017, "rising": 2184, "falling": 2173}
    found = said(DOOR, top=812, bottom=820, **door)["sides-apart"]
    assert found.severity is Severity.WARNING


def test_legs_that_differ_with_the_floor_are_a_note_and_no_alarm() -> None:
    found = said(DOOR, top=819, bottom=819, left=2034, right=2026)
    assert set(found) == {"floor-falls"}
    assert found["floor-falls"].severity is Severity.NOTE
    assert "left to right" in found["floor-falls"].wrong


@pytest.mark.parametrize(("left", "right"), [(1985, 1996), (2024, 2017), (2030, 2042)])
def test_a_floor_up_to_20_in_a_metre_is_believed(left: float, right: float) -> None:
    found = said(DOOR, top=760, bottom=760, left=left, right=right)
    assert {f.severity for f in found.values()} == {Severity.NOTE}


def test_a_floor_that_nobody_believes_is_a_stop_with_the_slip_that_mends_it() -> None:
    found = said(DOOR, top=709, bottom=712, left=1981, right=1947)["floor-slope"]
    assert found.severity is Severity.STOP
    assert "right 1974 mm (digits swapped)" in found.do


def test_a_steep_floor_that_no_slip_explains_is_held_all_the_same() -> None:
    found = said(DOOR, top=700, bottom=700, left=1985, right=1943)["floor-slope"]
    assert found.severity is Severity.STOP
    assert "level" in found.do


def test_a_raked_opening_that_says_so_is_not_compared() -> None:
    opening = replace(opening_of("W9", left=1124, right=1642), raked=True)
    assert check_opposite_sides(house_of(opening)) == ()


def test_a_raked_head_is_left_to_its_diagonals() -> None:
    raked = {"bottom": 1386, "left": 1124, "right": 1642, "top": 1480}
    assert not said(**raked, rising=2149, falling=1784)
    assert "sides-apart" in said(**raked)
    assert may_be_raked(readings_of(**raked))
    assert not may_be_raked(readings_of(left=1124, right=1100))


def test_a_jamb_pulled_back_is_told_instead_of_sides_apart() -> None:
    readings = replace(readings_of(left=1012, right=1006), plane=Plane(tr_mm=-3.0))
    found = check_opposite_sides(house_of(opening_of("W5", readings)))
    assert [f.code for f in found] == ["jamb-pulled"]


def test_one_width_alone_has_no_opposite() -> None:
    assert not said(width=900, height=600)
