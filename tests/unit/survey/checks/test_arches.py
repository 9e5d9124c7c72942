from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.quantities.length import Units
from longpoint.survey.checks.arches import check_arches, rise_slip
from longpoint.survey.openings import Arch
from tests.drawn_openings import house_of, opening_of

HALL = opening_of("W10", top=914, bottom=915, left=1012, right=1013)


def said(arch: Arch | None) -> dict[str, Finding]:
    return {f.code: f for f in check_arches(house_of(replace(HALL, arch=arch)))}


def test_a_straight_head_is_not_spoken_of() -> None:
    assert said(None) == {}


@pytest.mark.parametrize("crown_mm", [None, 1298.0, 1302.0])
def test_a_rise_alone_or_one_that_agrees_with_the_crown_is_believed(crown_mm: float | None) -> None:
    assert said(Arch(rise_mm=286.0, crown_mm=crown_mm)) == {}


def test_a_rise_with_swapped_digits_is_named_with_what_it_should_be() -> None:
    found = said(Arch(rise_mm=268.0, crown_mm=1298.0))["arch-rise"]
    assert found.severity is Severity.STOP
    assert "286" in found.do
    assert "digits swapped" in found.do


def test_a_rise_that_no_slip_explains_is_held_all_the_same() -> None:
    found = said(Arch(rise_mm=230.0, crown_mm=1298.0))["arch-rise"]
    assert found.severity is Severity.STOP
    assert "is it" not in found.do


def test_a_slip_is_told_only_where_it_mends_the_rise() -> None:
    slip = rise_slip(268.0, 286.0, Units.MM)
    assert slip is not None
    assert "286" in slip
    assert rise_slip(268.0, 251.0, Units.MM) is None
