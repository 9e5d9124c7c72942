"""Column generation: new patterns at the master's prices, until none is worth its stick.

A master's first prices are wild, and patterns found at them are worth little later. So patterns
are looked for at prices between the master's and those that gave the best bound so far, nearer to
the master's whenever that finds nothing.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.search.master import Master, Prices, Remaining
from longpoint.sticks.search.needs import Needs, fits
from longpoint.sticks.search.pricing import NEARLY, WORTHWHILE, Priced, whole_steps

_CALM: Final = 0.9
_BOUND_CALM: Final = 0.5
_CALMER: Final = 0.1
_LEAST_CALM: Final = 0.2
_LITTLE: Final = 0.06
"""In steps: where no more is missing to a goal, the finest grid may reach it."""


@dataclass(slots=True)
class Bound:
    """The best bound so far, in steps of cost, and the prices it came from."""

    steps: int
    exact: float
    prices: Prices


def first_bound(master: Master, least: Needs, grid: int) -> Bound:
    """Return the bound of prices that go by length alone."""
    rate = min(
        (
            step / room
            for step, room in zip(master.steps, least.rooms, strict=True)
            if step > 0 and room > 0
        ),
        default=0.0,
    )
    prices = Prices(tuple(need * rate for need in least.pieces), tuple(0.0 for _ in master.weights))
    found = Priced(master, least, prices, master.whole, grid).bound()
    return Bound(whole_steps(found), float(found), prices)


def generate(
    master: Master,
    numbers: list[int],
    needs: Needs,
    near: Bound,
    rounds: int,
    grid: int,
    room: float = 0.0,
) -> None:
    """Add patterns that can be cut to the master, and to `numbers`.

    Args:
        master: The master.
        numbers: Numbers of the patterns to use; new ones are appended.
        needs: How patterns are looked for.
        near: A bound; the search stays near to its prices, and ends where its cost is reached.
        rounds: Most rounds of master and knapsack.
        grid: Step of the knapsack's lengths. [0.01 mm]
        room: How far below that cost the search goes on, in steps.
    """
    calm, goal = _CALM, near.steps - room
    for _ in range(rounds):
        if master.stop():
            break
        solution = master.solve(numbers, master.whole)
        prices = master.prices(solution)
        if prices is None or master.pure_cost(numbers, solution) <= goal + WORTHWHILE:
            break
        _, new, calm = one_round(master, numbers, needs, prices, near.prices, calm, grid)
        if not new:
            break
        numbers.extend(new)
        calm = min(_CALM, calm + _CALMER)


def better_bound(
    master: Master,
    numbers: list[int],
    least: Needs,
    bound: Bound,
    goal: int,
    rounds: int,
    grid: int,
) -> float:
    """Better the bound, with patterns that needn't be cut, until it reaches the goal or can't.

    Args:
        master: The master.
        numbers: Numbers of the patterns to use; new ones are appended.
        least: Needs that no pattern undercuts.
        bound: Bettered in place.
        goal: A cost in steps at which to stop.
        rounds: Most rounds of master and knapsack.
        grid: Step of the knapsack's lengths. [0.01 mm]

    Returns:
        What the bound can't pass with these needs on this grid, in steps.
    """
    calm, reach = _BOUND_CALM, math.inf
    better(bound, Priced(master, least, bound.prices, master.whole, grid), bound.prices)
    for _ in range(rounds):
        if master.stop():
            break
        solution = master.solve(numbers, master.whole)
        prices = master.prices(solution)
        if prices is None:
            break
        reach = master.pure_cost(numbers, solution)
        if bound.steps >= min(goal, math.ceil(reach - NEARLY)):
            break
        found, new, calm = one_round(master, numbers, least, prices, bound.prices, calm, grid)
        better(bound, found, prices.mixed(bound.prices, calm))
        if not new:
            break
        numbers.extend(new)
        calm = min(_BOUND_CALM, calm + _CALMER)
    return reach


def bound_on_grids(
    master: Master,
    numbers: list[int],
    least: Needs,
    bound: Bound,
    goal: int,
    rounds: int,
    grids: Sequence[int],
    fine: int,
) -> float:
    """Better the bound by and by with a finer grid, to begin with a coarse one: that takes less.

    Args:
        master: The master.
        numbers: Numbers of the patterns to use; new ones are appended.
        least: Needs that no pattern undercuts.
        bound: Bettered in place.
        goal: A cost in steps at which to stop.
        rounds: Most rounds of master and knapsack on each grid.
        grids: Steps of the knapsack's lengths, the coarsest first. [0.01 mm]
        fine: A grid that is fine enough, unless little is missing. [0.01 mm]

    Returns:
        What the bound can't pass with these needs on the last grid, in steps.
    """
    known, reach = len(numbers), math.inf
    for grid in dict.fromkeys(grids):
        reach = better_bound(master, numbers, least, bound, goal, rounds, grid)
        if bound.steps >= goal or (grid <= fine and reach < goal - 1 - _LITTLE):
            break
        numbers[known:] = [n for n in numbers[known:] if fits(least, master.patterns[n])]
    return reach


def one_round(
    master: Master,
    numbers: Sequence[int],
    needs: Needs,
    prices: Prices,
    near: Prices,
    calm: float,
    grid: int,
    remaining: Remaining | None = None,
) -> tuple[Priced, list[int], float]:
    """Look for patterns at prices mixed of the master's and others near which to stay.

    Args:
        master: The master.
        numbers: Numbers of the patterns it has.
        needs: How patterns are looked for.
        prices: The master's prices.
        near: Prices to stay near to.
        calm: Share of those; less and less where nothing is found.
        grid: Step of the knapsack's lengths. [0.01 mm]
        remaining: What is still to be cut; None: everything.

    Returns:
        The last knapsack solved, the new patterns, and the calm at which they were found.
    """
    known, remaining = set(numbers), master.whole if remaining is None else remaining
    while True:
        found = Priced(master, needs, prices.mixed(near, calm), remaining, grid)
        new = [n for n in master.numbers_of(found.patterns(prices)) if n not in known]
        if new or calm == 0.0:
            return found, new, calm
        calm = calm / 2 if calm > _LEAST_CALM else 0.0


def better(bound: Bound, priced: Priced, prices: Prices) -> None:
    """Better a bound in place by that of a knapsack at some prices."""
    found = priced.bound()
    if float(found) > bound.exact:
        bound.exact, bound.prices = float(found), prices
        bound.steps = max(bound.steps, whole_steps(found))
