"""Prices to the last digit, and from the middle of all that are best, for what remains to be cut.

The master is solved again without anything beside the cost, until no pattern gains, and then a few
times by interior point, which ends in the middle of all best prices.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.search.generation import Bound, better, one_round
from longpoint.sticks.search.master import Master, Prices, Remaining
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.patterns import Pattern
from longpoint.sticks.search.pricing import Priced, whole_steps

_CALM: Final = 0.5
_CALMER: Final = 0.1
_EXACT: Final = 1e-10
_FIRST: Final = 8
_CENTRAL_ROUNDS: Final = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class SharpAsked:
    """What is asked of sharp prices: whether there is a plan for so much.

    Attributes:
        coarse: A master that has patterns already.
        numbers: Numbers of its patterns that may serve to begin with.
        least: Needs that no pattern undercuts.
        near: A good bound, bettered in place.
        goal: Most that the plan may cost, in steps.
        rounds: Most rounds of master and knapsack.
        grid: Step of the knapsack's lengths. [0.01 mm]
    """

    coarse: Master
    numbers: Sequence[int]
    least: Needs
    near: Bound
    goal: int
    rounds: int
    grid: int

    def sharpened(self) -> tuple[Master, list[int]]:
        """Return a sharp master and its patterns; the bound is bettered until it is sharp too."""
        sharp, near = self.coarse.sharper(), self.near
        every = [self.coarse.patterns[number] for number in self.numbers]
        known = first_numbers(sharp, every, near.prices, sharp.whole)
        sharpen(sharp, known, self.least, near, self.rounds, self.grid, sharp.whole, self.goal)
        return sharp, known


def first_numbers(
    sharp: Master, patterns: Iterable[Pattern], near: Prices, remaining: Remaining
) -> list[int]:
    """Return the numbers of some patterns to begin with, without the pieces that are cut already.

    Those that lose least at some prices, a few for each group that remains; and for each of these
    groups one at least, of a length that isn't counted, where there is one.
    """
    ranked = sorted(patterns, key=lambda pattern: -sharp.gain(pattern, near))
    parts = (part for pattern in ranked if (part := _part(pattern, remaining)) is not None)
    wanted = _FIRST * sum(1 for count in remaining.pieces if count)
    missing = {group for group, count in enumerate(remaining.pieces) if count}
    first = dict[Pattern, None]()
    for part in parts:
        endless = remaining.sticks[part.bar] is None
        held = missing.intersection(group for group, _ in part.counts) if endless else set[int]()
        if len(first) < wanted or held:
            first[part] = None
            missing -= held
        elif not missing:
            break
    return sharp.numbers_of(first)


def sharpen(
    sharp: Master,
    numbers: list[int],
    least: Needs,
    bound: Bound,
    rounds: int,
    grid: int,
    remaining: Remaining,
    goal: int,
) -> None:
    """Add patterns until none gains; the bound is then what the master costs, or above the goal.

    Args:
        sharp: A master that is solved to the last digit.
        numbers: Numbers of the patterns to use; new ones are appended.
        least: Needs that no pattern undercuts.
        bound: Bettered in place.
        rounds: Most rounds of master and knapsack.
        grid: Step of the knapsack's lengths. [0.01 mm]
        remaining: What is still to be cut.
        goal: A cost, in steps; a bound above it is enough.
    """
    calm = _CALM
    for _ in range(rounds):
        if sharp.stop() or bound.steps > goal:
            break
        solution = sharp.solve(numbers, remaining)
        prices = sharp.prices(solution)
        if prices is None or bound.exact >= sharp.pure_cost(numbers, solution) - _EXACT:
            break
        found, new, calm = one_round(
            sharp, numbers, least, prices, bound.prices, calm, grid, remaining
        )
        better(bound, found, prices.mixed(bound.prices, calm))
        if not new:
            break
        numbers.extend(new)
        calm = min(_CALM, calm + _CALMER)


def central(
    sharp: Master,
    numbers: list[int],
    least: Needs,
    bound: Bound,
    grid: int,
    remaining: Remaining,
) -> Prices:
    """Return prices from the middle of all that are best, as far as they are found."""
    known = set(numbers)
    for _ in range(_CENTRAL_ROUNDS):
        if sharp.stop():
            break
        prices = sharp.prices(sharp.solve(numbers, remaining, central=True))
        if prices is None:
            break
        priced = Priced(sharp, least, prices, remaining, grid)
        better(bound, priced, prices)
        new = [n for n in sharp.numbers_of(priced.patterns(prices)) if n not in known]
        if not new:
            return prices
        known.update(new)
        numbers.extend(new)
    return bound.prices


def bound_at(sharp: Master, least: Needs, prices: Prices, grid: int, remaining: Remaining) -> Bound:
    """Return what any plan for what remains costs at least, at some prices."""
    found = Priced(sharp, least, prices, remaining, grid).bound()
    return Bound(whole_steps(found), float(found), prices)


def _part(pattern: Pattern, remaining: Remaining) -> Pattern | None:
    """A pattern without the pieces that are cut already; None where nothing is left of it."""
    if remaining.sticks[pattern.bar] == 0:
        return None
    left = ((group, min(count, remaining.pieces[group])) for group, count in pattern.counts)
    counts = tuple((group, count) for group, count in left if count)
    return Pattern(pattern.bar, counts) if counts else None
