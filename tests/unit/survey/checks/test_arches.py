from dataclasses import replace

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.arches import check_arches
from longpoint.survey.openings import Arch
from tests.drawn_openings import house_of, opening_of

HALL = opening_of("W10", top=914, bottom=915, left=1012, right=1013)


def said(arch: Arch | None) -> dict[str, Finding]:
    return {f.code: f for f in check_arches(house_of(replace(HALL, arch=arch)))}


def test_a_straight_head_is_not_spoken_of() -> None:
    assert said(None) == {}


def test_an_arch_is_held_because_it_is_not_planned() -> None:
    found = said(Arch(rise_mm=286.0))
    assert set(found) == {"shape-not-planned"}
    assert found["shape-not-planned"].severity is Severity.STOP


def test_a_rise_that_agrees_with_the_crown_is_believed() -> None:
    assert "arch-rise" not in said(Arch(rise_mm=286.0, crown_mm=1298.0))


def test_a_rise_with_swapped_digits_is_named_with_what_it_should_be() -> None:
    found = said(Arch(rise_mm=268.0, crown_mm=1298.0))["arch-rise"]
    assert found.severity is Severity.STOP
    assert "286" in found.do
    assert "digits swapped" in found.do


def test_a_rise_that_no_slip_explains_is_held_all_the_same() -> None:
    found = said(Arch(rise_mm=230.0, crown_mm=1298.0))["arch-rise"]
    assert found.severity is Severity.STOP
    assert "is it" not in found.do
