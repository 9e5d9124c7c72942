import itertools

import pytest

from longpoint.pieces.piece import Piece
from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.search.every_pattern import (
    MOST_LISTED,
    from_every_pattern,
    from_known_patterns,
    whole_steps_of,
)
from longpoint.sticks.search.generation import first_bound, generate
from longpoint.sticks.search.knapsack import PLAIN_TABLES
from longpoint.sticks.search.master import Master, Prices
from longpoint.sticks.search.needs import Needs, fits, least_needs, likely_needs
from longpoint.sticks.search.patterns import Pattern
from longpoint.sticks.search.pricing import Priced
from longpoint.survey.house import House
from tests.random_sticks import architrave_piece, house_of, house_pieces
from tests.unit.sticks.nests import nest

LENGTHS_MM = (1210.0, 1010.0, 830.0, 640.0, 470.0, 330.0)


def few(reversible: bool = False) -> tuple[Master, Needs, Prices]:
    pieces = tuple(
        architrave_piece(f"W{n}-head", length_mm, 45, 45) for n, length_mm in enumerate(LENGTHS_MM)
    )
    return ready(pieces, house_of(lengths_mm=(1800.0, 2400.0), reversible=reversible))


def ready(pieces: tuple[Piece, ...], house: House) -> tuple[Master, Needs, Prices]:
    master, floor, numbers, _ = nest(pieces, house)
    least = least_needs(master.layout, floor)
    generate(
        master,
        numbers,
        likely_needs(master.layout, floor, 0.4),
        first_bound(master, least, 50),
        40,
        50,
    )
    prices = master.prices(master.solve(numbers, master.whole))
    assert prices is not None
    return master, least, prices


def least_steps(master: Master) -> int:
    """The cheapest of all ways to share six pieces out."""

    def cost(part: tuple[int, ...]) -> int:
        counts = master.layout.counts(part)
        return min(
            (
                master.steps[number]
                for number, bar in enumerate(master.layout.bars)
                if master.layout.fitting(counts, bar.room)[0] == counts
            ),
            default=999,
        )

    def best(rest: tuple[int, ...]) -> int:
        if not rest:
            return 0
        return min(
            cost((rest[0], *some)) + best(tuple(g for g in rest[1:] if g not in some))
            for size in range(len(rest))
            for some in itertools.combinations(rest[1:], size)
        )

    return best(tuple(range(len(LENGTHS_MM))))


def cuts_everything(master: Master, patterns: tuple[Pattern, ...]) -> bool:
    remaining = master.whole
    for pattern in patterns:
        assert remaining.holds(pattern)
        room = master.layout.bars[pattern.bar].room
        assert master.layout.fitting(pattern.counts, room)[0] == pattern.counts
        remaining = remaining.less(pattern)
    return not any(remaining.pieces)


@pytest.mark.parametrize("reversible", [False, True])
def test_the_best_of_all_patterns_is_the_best_of_all_plans(reversible: bool) -> None:
    master, least, prices = few(reversible)
    steps = least_steps(master)
    for dearer in (0, 1, 3):
        found = from_every_pattern(master, least, prices, steps + dearer, 0, 50)
        assert found is not None
        assert found.floor == steps
        assert sum(master.steps[pattern.bar] for pattern in found.patterns) == steps
        assert cuts_everything(master, found.patterns)


@pytest.mark.parametrize("reversible", [False, True])
def test_below_the_least_cost_all_patterns_prove_that_there_is_nothing(reversible: bool) -> None:
    master, least, prices = few(reversible)
    steps = least_steps(master)
    found = from_every_pattern(master, least, prices, steps - 1, 0, 50)
    assert found is not None
    assert found.patterns == ()
    assert found.floor == steps


def test_no_pattern_that_a_plan_within_the_goal_needs_is_left_out() -> None:
    """Every plan that is found stays within what is listed for its own cost."""
    master, least, prices = few()
    steps = least_steps(master)
    for goal in (steps, steps + 2):
        listed = Priced(master, least, prices, master.whole, 50).losing_least(goal, MOST_LISTED)
        assert listed is not None
        found = from_every_pattern(master, least, prices, goal, 0, 50)
        assert found is not None
        assert set(found.patterns) <= set(filter(lambda pattern: fits(least, pattern), listed))


def test_too_many_patterns_are_not_listed() -> None:
    master, least, prices = ready(house_pieces(3, openings=12), house_of())
    priced = Priced(master, least, prices, master.whole, 50)
    assert priced.losing_least(10_000, 100) is None


def test_counted_sticks_are_not_used_up_twice() -> None:
    pieces = tuple(architrave_piece(f"W{n}-head", 1000.0 + n, 45, 45) for n in range(3))
    master, least, prices = ready(pieces, house_of(lengths_mm=(1800.0, 2700.0), counts=(3, 1)))
    found = from_every_pattern(master, least, prices, 20, 0, 50)
    assert found is not None
    assert [pattern.bar for pattern in found.patterns].count(1) <= 1
    assert cuts_everything(master, found.patterns)


def test_the_patterns_known_give_a_plan_that_can_be_cut() -> None:
    master, _, prices = ready(house_pieces(5, openings=6), house_of(reversible=True))
    found = from_known_patterns(master, range(len(master.patterns)), prices, 0)
    assert cuts_everything(master, found)


def test_a_solvers_bound_is_rounded_up_with_care() -> None:
    assert [whole_steps_of(bound) for bound in (-1.0, 2.0000001, 2.1)] == [0, 2, 3]


def test_the_tables_of_the_solver_and_those_in_whole_numbers_prove_the_same() -> None:
    master, least, prices = few()
    assert master.tables is HighsSolver.tables
    goal = least_steps(master) + 1
    by_numpy = Priced(master, least, prices, master.whole, 50).losing_least(goal, MOST_LISTED)
    master.tables = PLAIN_TABLES
    plain = Priced(master, least, prices, master.whole, 50).losing_least(goal, MOST_LISTED)
    assert by_numpy is not None
    assert plain is not None
    # Coarser values lose a little, so that a pattern or two more may be listed, and none fewer.
    assert {p for p in by_numpy if master.gain(p, prices) > -0.5} <= set(plain)
