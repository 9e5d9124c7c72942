from dataclasses import replace

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.accept import ACCEPTED, accepted
from longpoint.survey.rooms import Room, Run, RunEnd, Wall
from tests.drawn_openings import house_of, opening_of

WINDOW = replace(
    opening_of("W1", top=900, bottom=900, left=600, right=600),
    accept=("misclosure", "sides-apart", "impossible-opening"),
)
ROOM = Room(name="Bath", walls=(Wall(mark="N", length_mm=1500.0),), tape="T1", accept=("wall-sum",))
RUN = Run(
    mark="S1",
    profile="AR57",
    length_mm=900.0,
    left=RunEnd.SQUARE,
    right=RunEnd.SQUARE,
    tape="T1",
    accept=("wall-sum",),
)
HOUSE = replace(house_of(WINDOW), rooms=(ROOM,), runs=(RUN,))


def finding(code: str, place: str, severity: Severity = Severity.STOP) -> Finding:
    return Finding(code=code, severity=severity, place=place, read="R.", wrong="W.", do="D.")


def one(code: str, place: str, severity: Severity = Severity.STOP) -> Finding:
    (found,) = accepted([finding(code, place, severity)], HOUSE)
    return found


def test_an_accepted_stop_becomes_a_warning_that_says_so() -> None:
    found = one("misclosure", "W1")
    assert found.severity is Severity.WARNING
    assert found.do == f"D. {ACCEPTED}"


def test_a_stop_of_another_kind_or_place_stays() -> None:
    assert one("outside-sense", "W1").severity is Severity.STOP
    assert one("misclosure", "W2").severity is Severity.STOP


def test_a_room_accepts_for_its_walls_and_a_run_for_itself() -> None:
    for place in ("Bath", "Bath N", "S1"):
        assert one("wall-sum", place).severity is Severity.WARNING


def test_what_has_no_shape_behind_it_can_not_be_accepted() -> None:
    for code in ("impossible-opening", "no-shape", "no-pieces", "longer-than-stock", "run-held"):
        house = house_of(replace(WINDOW, accept=(code,)))
        (found,) = accepted([finding(code, "W1")], house)
        assert found.severity is Severity.STOP


def test_notes_and_warnings_stay_as_they_are() -> None:
    for severity in (Severity.NOTE, Severity.WARNING):
        assert one("misclosure", "W1", severity) == finding("misclosure", "W1", severity)


def test_accepting_twice_changes_nothing_more() -> None:
    once = accepted([finding("misclosure", "W1")], HOUSE)
    assert accepted(once, HOUSE) == once
