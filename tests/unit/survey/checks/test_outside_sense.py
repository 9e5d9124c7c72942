from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.outside_sense import check_outside_sense
from longpoint.survey.openings import OpeningKind
from longpoint.survey.readings import AngleReading, Gauge, Plane
from tests.drawn_openings import house_of, opening_of, readings_of

WINDOW = readings_of(top=900, bottom=900, left=600, right=600, rising=1082, falling=1082)


def said(kind: OpeningKind, **lengths_mm: float) -> tuple[Finding, ...]:
    return check_outside_sense(house_of(opening_of("X", readings_of(**lengths_mm), kind=kind)))


def test_ordinary_windows_and_doors_pass() -> None:
    assert not said(OpeningKind.WINDOW, top=400, left=450, rising=602)
    assert not said(OpeningKind.DOOR, top=610, left=1702, right=1702)


@pytest.mark.parametrize(
    ("kind", "place", "value"),
    [
        (OpeningKind.WINDOW, "top", 60),
        (OpeningKind.WINDOW, "left", 6100),
        (OpeningKind.DOOR, "left", 1020),
        (OpeningKind.DOOR, "top", 82),
    ],
)
def test_a_length_outside_all_sense_is_stopped_and_the_limit_said_to_be_ours(
    kind: OpeningKind, place: str, value: float
) -> None:
    (found,) = said(kind, **{place: value})
    assert found.severity is Severity.STOP
    assert "ours" in found.wrong
    assert f"{value}" in found.read


def test_a_plane_reading_over_30_is_stopped() -> None:
    readings = replace(WINDOW, plane=Plane(tl_mm=-31.0, br_mm=30.0))
    (found,) = check_outside_sense(house_of(opening_of("W1", readings)))
    assert "top left" in found.read


def test_a_bevel_is_judged_from_90_and_a_plumb_from_0() -> None:
    angles = (
        AngleReading(gauge=Gauge.BEVEL_BL, value_deg=60.0, u_deg=0.25),
        AngleReading(gauge=Gauge.PLUMB_LEFT, value_deg=60.0, u_deg=0.1),
        AngleReading(gauge=Gauge.BEVEL_TR, value_deg=0.5, u_deg=0.25),
    )
    found = check_outside_sense(house_of(opening_of("W1", replace(WINDOW, angles=angles))))
    assert ["plumb left" in f.read or "bevel tr" in f.read for f in found] == [True, True]


def test_the_second_face_is_looked_at_too() -> None:
    opening = replace(opening_of("D1", WINDOW), faces=2, readings_b=readings_of(top=9))
    assert len(check_outside_sense(house_of(opening))) == 1
