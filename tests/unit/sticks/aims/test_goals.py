from dataclasses import replace

from longpoint.sticks.aims.goals import order_goals, packing_goals, together_goal
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.bound import floor_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Filled, Packing, filled
from longpoint.sticks.lay.laying import Place, Workload, workload
from longpoint.sticks.lay.together import gathered
from longpoint.sticks.order.saw_order import saw_steps
from longpoint.sticks.plan import CutStick, Goal, Laid, Reached, StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from tests.random_sticks import architrave_piece, house_of

HOUSE = house_of(lengths_mm=(1800.0, 3600.0), kerf_mm=0.0, end_trim_mm=0.0)


def square(*lengths_mm: float) -> tuple[Workload, Bars]:
    pieces = [architrave_piece(f"W{n}-head", mm, 0, 0) for n, mm in enumerate(lengths_mm)]
    work = workload(profile_demand(pieces, HOUSE.profiles[0], 0.0).demands)
    return work, bars_of("OG", HOUSE.stock, (), HOUSE.saw)


def on(work: Workload, bar: int, *pieces: int) -> Filled:
    return filled(work, bar, [Place(piece, turned=False) for piece in pieces])


def test_two_short_sticks_for_the_price_of_a_long_one_are_one_too_many() -> None:
    work, bars = square(1700.0, 1600.0)
    two = Packing((on(work, 0, 0), on(work, 0, 1)))
    sticks, offcut = packing_goals("OG", work, bars, floor_of(work, bars.bars), two)
    assert (sticks.value, sticks.limit, sticks.is_proved) == (2, 1, False)
    assert (offcut.value, offcut.limit, offcut.is_proved) == (200.0, 300.0, False)
    one = Packing((on(work, 1, 0, 1),))
    sticks, offcut = packing_goals("OG", work, bars, floor_of(work, bars.bars), one)
    assert (sticks.value, sticks.limit, sticks.is_proved) == (1, 1, True)
    assert (offcut.value, offcut.limit, offcut.is_proved) == (300.0, 300.0, True)


def test_costs_of_many_small_steps_give_weaker_limits_not_wrong_ones() -> None:
    work, bars = square(1700.0, 1600.0)
    fine = tuple(
        replace(bar, cost=bar.cost * 1000 + number) for number, bar in enumerate(bars.bars)
    )
    one = Packing((on(work, 1, 0, 1),))
    floor = floor_of(work, bars.bars)
    sticks, offcut = packing_goals("OG", work, replace(bars, bars=fine), floor, one)
    assert (sticks.value, sticks.limit) == (1, 1)
    assert offcut.limit >= offcut.value == 300.0


def test_a_plan_that_lacks_sticks_has_no_goals() -> None:
    work, bars = square(1700.0)
    assert packing_goals("OG", work, bars, floor_of(work, bars.bars), Packing((), (0,))) == ()


def test_alike_pieces_change_places_until_each_opening_comes_from_one_stick() -> None:
    work, bars = square(900.0, 900.0, 900.0, 900.0)
    openings = ("W1", "W2", "W2", "W1")
    mixed = Packing((on(work, 0, 0, 1), on(work, 0, 2, 3)))
    floor = floor_of(work, bars.bars)
    before = together_goal("OG", floor, openings, mixed)
    assert (before.value, before.limit, before.is_proved) == (2, 0, False)
    found = gathered(work, bars.bars, openings, mixed)
    after = together_goal("OG", floor, openings, found)
    assert (after.value, after.limit, after.is_proved) == (0, 0, True)


def test_an_opening_longer_than_any_stick_needs_more_than_one() -> None:
    work, bars = square(1900.0, 1900.0)
    apart = Packing((on(work, 1, 0), on(work, 1, 1)))
    goal = together_goal("OG", floor_of(work, bars.bars), ("W1", "W1"), apart)
    assert (goal.value, goal.limit, goal.is_proved) == (1, 1, True)


def test_a_piece_alone_on_its_stick_does_not_leave_it_empty() -> None:
    work, bars = square(900.0, 800.0)
    apart = Packing((on(work, 0, 0), on(work, 0, 1)))
    assert gathered(work, bars.bars, ("W1", "W1"), apart) == apart


def stick(name: str, length_mm: float) -> CutStick:
    return CutStick(
        name=name,
        profile="OG",
        length_mm=3600.0,
        source=StickSource.STOCK,
        laid=(Laid(piece=name, start_mm=0.0, end_mm=length_mm),),
        used_mm=length_mm,
        left_mm=0.0,
    )


def test_a_stick_before_one_with_a_much_bigger_piece_is_out_of_turn() -> None:
    pieces = (architrave_piece("W1-head", 900.0, 45, 45), architrave_piece("W2-head", 1500.0, 0, 0))
    plan = plan_sticks(pieces, HOUSE)
    steps = saw_steps(plan, pieces, HOUSE.saw)
    wrong = order_goals((stick("a", 900.0), stick("b", 1500.0)), steps)
    about_as_long = order_goals((stick("a", 1400.0), stick("b", 1500.0)), steps)
    assert [one.value for one in wrong if one.goal is Goal.BIG_FIRST] == [1]
    assert [one.value for one in about_as_long if one.goal is Goal.BIG_FIRST] == [0]


def test_a_saw_set_once_for_each_setting_can_not_be_set_less_often() -> None:
    pieces = (architrave_piece("W1-head", 900.0, 0, 0), architrave_piece("W2-head", 800.0, 0, 0))
    plan = plan_sticks(pieces, HOUSE)
    found = order_goals(plan.sticks, saw_steps(plan, pieces, HOUSE.saw))
    settings = Reached(goal=Goal.FEW_SETTINGS, value=0, limit=0)
    assert settings in found
    assert settings.is_proved
    assert order_goals((), ()) == ()
