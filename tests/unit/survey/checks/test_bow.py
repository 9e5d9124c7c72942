from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.bow import check_bow
from longpoint.survey.openings import Arch, OpeningKind
from tests.drawn_openings import house_of, opening_of, readings_of

WINDOW, DOOR = OpeningKind.WINDOW, OpeningKind.DOOR


def said(kind: OpeningKind = WINDOW, /, **lengths_mm: float) -> tuple[Finding, ...]:
    return check_bow(house_of(opening_of("X", readings_of(**lengths_mm), kind=kind)))


@pytest.mark.parametrize(
    ("middle_mm", "severity"),
    [
        (1185, None),
        (1184.5, Severity.NOTE),
        (1183, Severity.NOTE),
        (1182.5, Severity.WARNING),
        (1188, None),
        (1188.5, Severity.NOTE),
        (1190.5, Severity.WARNING),
    ],
)
def test_a_bow_is_a_note_from_2_and_a_warning_from_4(
    middle_mm: float, severity: Severity | None
) -> None:
    found = said(top=1187, bottom=1186, left=600, right=600, middle_width=middle_mm)
    assert [f.severity for f in found] == ([severity] if severity else [])


def test_a_middle_that_is_less_bows_in_and_the_quirk_is_wider_there() -> None:
    # 1180 between 1187 and 1186: 6.5 less than 1186.5, by hand.
    (found,) = said(top=1187, bottom=1186, left=600, right=600, middle_width=1180)
    assert (found.code, found.place, found.severity) == ("bow", "X", Severity.WARNING)
    assert "6.5 mm less" in found.wrong
    assert "left side, the right or both bow in" in found.wrong
    assert "can't tell which" in found.wrong
    assert "wider" in found.wrong
    assert "our limits" in found.wrong
    assert "plane" in found.do
    assert "slip" not in found.do


def test_a_middle_that_is_more_bows_out_and_eats_the_quirk() -> None:
    (found,) = said(top=900, bottom=904, height=600, middle_width=905)
    assert found.severity is Severity.NOTE
    assert "bow out" in found.wrong
    assert "eaten" in found.wrong
    assert "plane" not in found.do


def test_a_middle_very_far_off_may_be_a_slip() -> None:
    (found,) = said(top=900, bottom=904, height=600, middle_width=912)
    assert "slip" in found.do


def test_a_height_bows_at_the_head_or_what_is_under_it() -> None:
    (found,) = said(width=900, left=600, right=601, middle_height=597)
    assert "the head, the sill or both" in found.wrong
    # The floor rises 12 under this door: half-way between its legs is still where it should be.
    (found,) = said(DOOR, width=760, left=2030, right=2042, middle_height=2032)
    assert "the head, the floor or both" in found.wrong
    assert not said(DOOR, width=760, left=2030, right=2042, middle_height=2036)


def test_sides_in_doubt_or_meant_to_differ_tell_nothing_of_a_bow() -> None:
    assert not said(top=1187, bottom=1178, height=600, middle_width=1178)
    assert not said(top=1480, bottom=1386, left=1124, right=1642, middle_width=1386)
    raked = opening_of("X", width=900, left=600, right=630, middle_height=600)
    assert not check_bow(house_of(replace(raked, raked=True)))
    arched = opening_of("X", width=900, left=600, right=600, middle_height=750)
    assert not check_bow(house_of(replace(arched, arch=Arch(rise_mm=150.0))))


def test_nothing_is_said_without_a_middle_or_its_ends() -> None:
    assert not said(top=900, bottom=900, left=600, right=600)
    assert not said(top=900, left=600, right=600, middle_width=880)
