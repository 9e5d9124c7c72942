from dataclasses import replace

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.jambs import jamb_pulled
from longpoint.survey.readings import Plane
from tests.drawn_openings import house_of, opening_of, readings_of


def said(left: float, right: float, plane: Plane | None) -> Finding | None:
    readings = replace(readings_of(left=left, right=right), plane=plane)
    opening = opening_of("W5", readings)
    return jamb_pulled(house_of(opening), opening, readings)


def test_a_shorter_side_that_sits_shy_was_pulled_by_its_screws() -> None:
    found = said(1012, 1006, Plane(tr_mm=-3.0, br_mm=-1.0))
    assert found is not None
    assert found.severity is Severity.WARNING
    assert "right reveal 3 mm shy at the top" in found.read
    assert "own lengths" in found.do


def test_sides_that_agree_are_no_pulled_jamb() -> None:
    assert said(1012, 1008, Plane(tr_mm=-3.0)) is None


def test_a_reveal_in_plane_is_no_pulled_jamb() -> None:
    assert said(1012, 1006, Plane(tr_mm=-1.0)) is None
    assert said(1012, 1006, None) is None


def test_a_reveal_that_is_shy_all_round_was_set_so() -> None:
    assert said(906, 901, Plane(tl_mm=-2.0, tr_mm=-3.0, br_mm=-3.0, bl_mm=-2.0)) is None


def test_the_left_jamb_is_told_by_its_own_corner() -> None:
    found = said(1000, 1006, Plane(bl_mm=-4.0))
    assert found is not None
    assert "left reveal 4 mm shy at the bottom" in found.read
