"""The work of a house, and why there is more of it than the drawing shows."""

from collections.abc import Sequence
from decimal import Decimal

import pytest

from longpoint.pricing.take_off import Limits
from longpoint.pricing.work import Task, WorkKind
from longpoint.quantities.length import Units
from tests.house_documents import door, window
from tests.priced_jobs import as_read, counted

pytestmark = pytest.mark.no_cover

SQUARE = {"top": 900, "bottom": 900, "left": 1200, "right": 1200, "rising": 1500, "falling": 1500}
TAPERED = {**SQUARE, "right": 1194, "rising": 1495.2, "falling": 1500}
"""The right side is 6 shorter, and the diagonals agree with that: the floor side is level."""


def of(tasks: Sequence[Task], kind: WorkKind) -> Decimal:
    return sum((task.quantity for task in tasks if task.kind is kind), Decimal(0))


def whys(tasks: Sequence[Task], kind: WorkKind) -> list[str]:
    return [task.why for task in tasks if task.kind is kind]


def test_counts_become_the_work_that_a_person_would_count() -> None:
    tasks = counted().tasks

    assert of(tasks, WorkKind.WINDOW_FOUR_SIDES) == 3
    assert of(tasks, WorkKind.DOOR_FACE) == 2
    assert of(tasks, WorkKind.INTERNAL_CORNER) == 3
    assert of(tasks, WorkKind.EXTERNAL_CORNER) == 1
    assert of(tasks, WorkKind.SKIRTING) == pytest.approx(Decimal("9.0"), abs=Decimal("0.05"))
    assert of(tasks, WorkKind.ODD_CORNER) == of(tasks, WorkKind.RESET_REVEAL) == 0


def test_sides_that_differ_by_six_mean_a_reveal_to_re_set() -> None:
    tasks = as_read(window(**TAPERED)).tasks

    assert whys(tasks, WorkKind.RESET_REVEAL) == ["sides differ by 6 mm: reveal re-set"]


def test_sides_that_differ_by_five_do_not_until_the_crew_says_so() -> None:
    tapered = window(**{**TAPERED, "right": 1195, "rising": 1496})

    assert not whys(as_read(tapered).tasks, WorkKind.RESET_REVEAL)
    strict = as_read(tapered, limits=Limits(apart_mm=5.0))
    assert whys(strict.tasks, WorkKind.RESET_REVEAL)


def test_in_america_it_is_a_jamb_that_is_re_set() -> None:
    (why,) = whys(as_read(window(**TAPERED), dialect="us").tasks, WorkKind.RESET_REVEAL)

    assert why.endswith("jamb re-set")


def test_legs_of_a_door_differ_by_the_floor_and_cost_nothing() -> None:
    tasks = as_read(door(left=2036, right=2027, rising=2175, falling=2167)).tasks

    assert not whys(tasks, WorkKind.RESET_REVEAL)


def test_a_leaning_window_has_odd_corners() -> None:
    lean = {**SQUARE, "rising": 1485, "falling": 1515}
    (why,) = whys(as_read(window(**lean)).tasks, WorkKind.ODD_CORNER)

    assert of(as_read(window(**lean)).tasks, WorkKind.ODD_CORNER) == 4
    assert "bottom left 91.2" in why


def test_a_proud_corner_is_packed_where_the_house_file_asks_for_it() -> None:
    proud = window(**SQUARE, plane={"tl": 2, "tr": 0, "br": 0, "bl": -1}, lining_edge=19)

    alone = as_read(proud)
    assert not whys(alone.tasks, WorkKind.PACK_CORNER)
    assert alone.left_alone == ("W1",)
    packed = as_read({**proud, "flush": "pack"})
    assert of(packed.tasks, WorkKind.PACK_CORNER) == 2
    (why,) = whys(packed.tasks, WorkKind.PACK_CORNER)
    assert why == "bottom left 1 mm shy, top left 2 mm proud: packed or relieved"


def test_long_sides_count_over_five_feet() -> None:
    wide = {"top": 1525, "bottom": 1525, "left": 1520, "right": 1520}

    tasks = as_read(window(**{**SQUARE, **wide, "rising": 2153, "falling": 2153})).tasks
    assert of(tasks, WorkKind.LONG_SIDE) == 2


def test_a_held_opening_is_counted_and_nothing_is_asked_for_by_its_readings() -> None:
    job = as_read(window(**{**SQUARE, "right": 1191}))

    assert job.held == job.stood_in == ("W1",)
    assert sum(job.estimate.timber.at(0.5).sticks.values()) == 1
    assert of(job.tasks, WorkKind.WINDOW_FOUR_SIDES) == 1
    assert not whys(job.tasks, WorkKind.RESET_REVEAL)


def test_skirting_in_doubt_is_counted_at_the_length_that_was_read() -> None:
    def room(length: object) -> dict[str, object]:
        marks = (("N", length), ("E", 3100), ("S", 4200), ("W", 3100))
        walls = [{"mark": m, "length": mm, "skirting": True, "corner": 90} for m, mm in marks]
        return {"name": "Hall", "walls": walls}

    sound, doubted = (as_read(rooms=[room(each)]) for each in (4200, [4200, 4240]))

    assert set(doubted.held) == {"Hall N", "Hall-N"}
    assert (doubted.stood_in, doubted.uncounted) == (("Hall-N",), ())
    metres = of(doubted.tasks, WorkKind.SKIRTING) - of(sound.tasks, WorkKind.SKIRTING)
    assert metres == Decimal("0.02")
    assert of(doubted.tasks, WorkKind.INTERNAL_CORNER) == 4
    assert doubted.estimate.timber.at(0.5).sticks == sound.estimate.timber.at(0.5).sticks


def test_skirting_of_a_wall_that_was_not_read_is_not_counted_and_named() -> None:
    walls = [{"mark": "N", "length": 4200, "skirting": True}, {"mark": "E", "skirting": True}]
    job = as_read(rooms=[{"name": "Hall", "closed": False, "walls": walls}])

    assert job.uncounted == job.held
    assert any("E" in mark for mark in job.uncounted)


def test_running_work_is_counted_in_feet_for_a_crew_that_charges_by_the_foot() -> None:
    run = {"mark": "S1", "profile": "SK95", "length": 3048, "left": "square", "right": "square"}

    metres = as_read(window(), runs=[run]).tasks
    feet = as_read(window(), runs=[run], running_units=Units.INCH).tasks
    assert of(metres, WorkKind.SKIRTING) == Decimal("3.05")
    assert of(feet, WorkKind.SKIRTING) == Decimal("10.00")


def test_a_return_and_its_board_make_one_external_corner() -> None:
    run = {"mark": "S1", "profile": "SK95", "length": 800, "left": "return", "right": "square"}

    assert of(as_read(window(), runs=[run]).tasks, WorkKind.EXTERNAL_CORNER) == 1


def test_pieces_and_joints_are_counted_for_a_crew_that_prices_by_them() -> None:
    tasks = as_read(window()).tasks

    assert of(tasks, WorkKind.PIECE) == 4
    assert of(tasks, WorkKind.JOINT) == 4


def test_what_is_known_by_its_length_alone_has_no_timber() -> None:
    job = counted(running=[{"kind": "cornice", "length": 4000}])

    assert job.labour_only == (WorkKind.CORNICE,)
    assert counted().labour_only == ()


def test_what_cannot_be_read_at_all_is_named_as_not_counted() -> None:
    job = as_read(window(), window(mark="W2", top="soon"))

    assert job.uncounted == ("W2",)
