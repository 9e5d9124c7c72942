from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.quantities.length import Units
from longpoint.shape.room_fit import fit_rooms
from longpoint.survey.rooms import Room, Run
from tests.room_builder import a_house, a_room, a_run, a_wall, room_of_plan


def misfit(room: Room, *runs: Run, units: Units = Units.MM) -> Finding:
    _, findings = fit_rooms(a_house(rooms=[room], runs=runs, units=units))
    (finding,) = (f for f in findings if f.code == "room-misclosure")
    return finding


def box(east_mm: float = 2300.0, *, north: float | None = 90.0) -> Room:
    return a_room(
        a_wall("N", 3000, north), a_wall("E", east_mm), a_wall("S", 3000), a_wall("W", 2000)
    )


def test_two_runs_that_each_clear_a_wall_locate_nothing() -> None:
    # E reads 2300 against 2000; runs on both sides claim the other length.
    finding = misfit(box(), a_run("S1", 2000, wall="E"), a_run("S2", 2300, wall="W"))
    assert finding.place == "Den"
    assert "detected, not located" in finding.wrong


@pytest.mark.parametrize(
    "runs",
    [
        [a_run("S1", 2000, wall="E", left="square")],
        [a_run("S1", 2299, wall="E")],
        [a_run("S1", 1000, wall="E"), a_run("S2", 1000, wall="E")],
    ],
    ids=["ends square", "agrees with the wall", "two runs"],
)
def test_a_run_that_is_no_second_reading_of_the_wall_locates_nothing(runs: list[Run]) -> None:
    assert misfit(box(), *runs).place == "Den"


def test_a_slight_misfit_is_a_warning_and_a_gross_one_a_stop() -> None:
    # 115 over is 3.9, 130 over 4.5 of what chance leaves open.
    severities = [misfit(box(2000 + over)).severity for over in (115, 130)]
    assert severities == [Severity.WARNING, Severity.STOP]


def test_suspects_are_named_three_at_most() -> None:
    assert misfit(box()).wrong.count(", or ") <= 2


def test_a_corner_that_was_assumed_is_called_so() -> None:
    # The corners at the right-hand ends of N and E are really 80 and 100.
    read = room_of_plan([(0, 0), (3000, 0), (2650, -2000), (0, -2000)])
    walls = tuple(replace(wall, corner_deg=None) for wall in read.walls)
    finding = misfit(replace(read, walls=walls))
    assert "assumed" in finding.wrong


def test_lengths_are_said_in_the_unit_of_the_house() -> None:
    room = a_room(
        a_wall("N", 3000),
        a_wall("E", 2200),
        a_wall("S", 3000),
        a_wall("W", 2000),
        diagonals=[("W", "E", 3605.55), ("N", "S", 3605.55)],
    )
    assert " in, is about" in misfit(room, units=Units.INCH).wrong
