from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.outside_sense import check_outside_sense
from longpoint.survey.openings import Opening, OpeningKind, PerSide
from longpoint.survey.profiles import Profile
from longpoint.survey.readings import AngleReading, Gauge, Plane
from longpoint.survey.rooms import Run, RunEnd
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


def test_a_quirk_over_30_is_a_warning_told_once_where_several_openings_share_it() -> None:
    def with_quirk(mark: str, left_mm: float) -> Opening:
        quirk = PerSide(head=5.0, right=5.0, bottom=5.0, left=left_mm)
        return replace(opening_of(mark, WINDOW), quirk_mm=quirk)

    openings = [with_quirk(m, q) for m, q in (("W1", 30.0), ("W2", 31.0), ("W3", 50.0))]
    found = check_outside_sense(house_of(*openings, with_quirk("W4", 50.0)))
    assert [(f.place, f.code, f.severity) for f in found] == [
        ("W2", "outside-sense", Severity.WARNING),
        ("Drawn House", "outside-sense", Severity.WARNING),
    ]
    assert "W3, W4" in found[1].read
    assert "30 mm; that limit is ours" in found[1].wrong


def test_a_face_over_250_is_a_warning_at_the_house() -> None:
    faces = [Profile(name=n, width_mm=w, thickness_mm=18.0) for n, w in (("A", 250), ("B", 255))]
    (found,) = check_outside_sense(replace(house_of(), profiles=tuple(faces)))
    assert (found.place, found.severity) == ("Drawn House", Severity.WARNING)
    assert "face of B is 255 mm" in found.read


def test_a_run_over_20_metres_is_a_warning() -> None:
    runs = [
        Run(
            mark=mark,
            profile="AR57",
            length_mm=length_mm,
            left=RunEnd.INTERNAL,
            right=RunEnd.INTERNAL,
            tape="T1",
        )
        for mark, length_mm in (("S1", 20_000.0), ("S2", 23_500.0))
    ]
    (found,) = check_outside_sense(replace(house_of(), runs=tuple(runs)))
    assert (found.place, found.severity) == ("S2", Severity.WARNING)
    assert "23500 mm" in found.read
