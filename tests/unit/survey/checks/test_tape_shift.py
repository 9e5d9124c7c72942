from dataclasses import replace
from random import Random

import pytest

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.tape_shift import check_tape_shift
from tests.drawn_openings import batch_openings, house_of

pytestmark = pytest.mark.no_cover


def said(shift_mm: float, seed: int = 1, units: int = 12) -> tuple[Finding, ...]:
    drawn = batch_openings(Random(seed), units, shifts_mm={4: shift_mm})
    return check_tape_shift(house_of(*drawn))


def test_a_unit_read_long_is_the_tape_and_not_the_openings() -> None:
    (found,) = said(3.0)
    assert (found.place, found.severity) == ("Unit 4", Severity.WARNING)
    assert "about 3 mm over" in found.read
    assert "tape" in found.wrong


def test_a_unit_read_short_is_told_too() -> None:
    (found,) = said(-3.5)
    assert "under" in found.read


def test_a_sound_tape_is_not_spoken_of() -> None:
    assert not any(said(0.0, seed) for seed in range(20))


def test_one_opening_read_wrong_is_not_the_tape() -> None:
    openings = list(batch_openings(Random(2)))
    unit = [i for i, o in enumerate(openings) if o.room == "Unit 5"]
    other = next(iter(batch_openings(Random(2), 1, shifts_mm={1: 40.0})))
    openings[unit[0]] = other
    assert not check_tape_shift(house_of(*openings))


def test_two_units_are_too_few() -> None:
    assert not said(5.0, units=2)


def test_the_marks_alone_tell_the_unit() -> None:
    drawn = [
        replace(o, room="", batch="", nominal=None)
        for o in batch_openings(Random(1), shifts_mm={4: 3.0})
    ]
    (found,) = check_tape_shift(house_of(*drawn))
    assert found.place == "Unit 4"
