from collections.abc import Sequence
from dataclasses import replace
from random import Random

import pytest

from longpoint.errors import Severity
from longpoint.survey.checks.batches import batched, check_batches, mark_parts, size_mm, usual_size
from longpoint.survey.openings import Nominal, Opening, OpeningKind
from tests.drawn_openings import batch_openings, house_of, opening_of

UNITS = range(1, 7)


def windows(marks: Sequence[str], width_mm: float = 900, room: str = "") -> list[Opening]:
    return [
        opening_of(m, width=width_mm + i % 3, height=600, room=room) for i, m in enumerate(marks)
    ]


def batches(*openings: Opening) -> set[str]:
    return {o.batch for o in batched(house_of(*openings)).openings}


@pytest.mark.parametrize("mark", ["W1", "12", "Unit 3", "-W1", "1-W", "1-W1a", "BW12"])
def test_a_mark_without_a_unit_in_front_tells_none(mark: str) -> None:
    assert mark_parts(mark) is None


@pytest.mark.parametrize(
    "form", ["{}-W1", "U{}-W1", "K{}/W1", "Unit {} W1", "{}.w1", "{}W1", "U{}_W1", "{} - W1"]
)
def test_six_openings_that_end_alike_are_a_batch_however_the_unit_is_written(form: str) -> None:
    assert batches(*windows([form.format(unit) for unit in UNITS])) == {"W1"}


def test_five_units_are_too_few() -> None:
    openings = windows([f"{unit}-W1" for unit in range(1, 6)])
    assert batches(*openings) == {""}
    assert check_batches(house_of(*openings)) == ()


def test_openings_of_different_sizes_or_kinds_that_end_alike_are_no_batch() -> None:
    rooms = [
        opening_of(f"Bed {unit} W1", width=600 + 150 * unit, height=600 + 90 * unit)
        for unit in UNITS
    ]
    assert batches(*rooms) == {""}
    halves = windows([f"{unit}-W1" for unit in UNITS])
    mixed = [replace(o, kind=OpeningKind.DOOR) if i % 2 else o for i, o in enumerate(halves)]
    assert batches(*mixed) == {""}


def test_a_batch_or_another_drawing_that_is_written_stands() -> None:
    openings = windows([f"{unit}-W1" for unit in UNITS])
    own = replace(opening_of("7-W1", width=901, height=600), batch="show flat")
    assert batches(*openings, own) == {"W1", "show flat"}
    drawn = [
        replace(o, nominal=Nominal(width_mm=900.0 + 4 * (i % 2), height_mm=600.0))
        for i, o in enumerate(openings)
    ]
    assert batches(*drawn) == {""}


def test_a_drawing_written_at_one_holds_for_the_batch() -> None:
    nominal = Nominal(width_mm=900.0, height_mm=600.0)
    first, *rest = windows([f"{unit}-W1" for unit in UNITS])
    house = batched(house_of(replace(first, nominal=nominal), *rest))
    assert {o.nominal for o in house.openings} == {nominal}


def test_the_unit_is_the_room_where_one_room_stands_for_one_unit() -> None:
    openings = windows([f"{unit}-W1" for unit in UNITS])
    assert [o.room for o in batched(house_of(*openings)).openings][:2] == ["Unit 1", "Unit 2"]
    roomed = [replace(o, room=f"Plot {40 + i}") for i, o in enumerate(openings)]
    assert [o.room for o in batched(house_of(*roomed)).openings][:2] == ["Plot 40", "Plot 41"]
    kitchens = windows([f"{unit}-W1" for unit in UNITS], room="Kitchen")
    assert [o.room for o in batched(house_of(*kitchens)).openings][:2] == ["Unit 1", "Unit 2"]


def test_a_unit_of_several_rooms_is_one_unit() -> None:
    one = windows([f"U{unit}-W1" for unit in UNITS], room="Bed")
    other = windows([f"U{unit}-W2" for unit in UNITS], 700, room="Bath")
    rooms = {o.room for o in batched(house_of(*one, *other)).openings}
    assert rooms == {f"U{unit}" for unit in UNITS}


def test_what_was_taken_from_the_marks_is_said_once() -> None:
    drawn = [replace(o, batch="", nominal=None) for o in batch_openings(Random(1))]
    (found,) = check_batches(house_of(*drawn))
    assert (found.code, found.severity, found.place) == (
        "batch-inferred",
        Severity.NOTE,
        "Drawn House",
    )
    assert "D1 (12), D2 (12), W1 (12), W2 (12), W3 (12)" in found.wrong
    assert check_batches(house_of(*batch_openings(Random(1)))) == ()


def test_a_usual_size_needs_six_openings_of_which_two_thirds_are_alike() -> None:
    six = windows([f"{unit}-W1" for unit in UNITS])
    usual = usual_size(six)
    assert usual is not None
    assert (usual.width_mm, usual.height_mm) == (901.0, 600.0)
    assert usual_size(six[:5]) is None
    odd = windows(["7-W1", "8-W1", "9-W1", "10-W1"], 1100)
    assert usual_size([*six, *odd[:3]]) is not None
    assert usual_size([*six, *odd]) is None


def test_a_size_needs_a_width_and_a_height() -> None:
    assert size_mm(opening_of("A", top=900, bottom=902, height=600)) == (901.0, 600.0)
    assert size_mm(opening_of("A", top=900)) is None
