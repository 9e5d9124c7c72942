"""Dives: from the linear solution to whole sticks, with new patterns for what remains.

Sticks that the linear master wants whole are cut; else the one it wants most. Then the master is
solved again for the pieces that remain, with patterns made for them. Where its cost says that the
goal is out of reach, the last choice is taken back and the next one is tried, as often as the
limit allows: deep down, with few pieces left, that costs little.

A dive that asks for the least cost often ends a step above it. So where the last pieces can't be
had for the goal, they may be cut for a little more, until a plan one step above the goal is kept.
"""

import math
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.linear.port import LinearSolution
from longpoint.sticks.search.last_sticks import QUICK_LAST, THOROUGH_LAST, LastEffort, last_sticks
from longpoint.sticks.search.master import Master, Prices, Remaining, residual_numbers
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.patterns import Pattern
from longpoint.sticks.search.pricing import NEARLY, WORTHWHILE, Priced

_WHOLE: Final = 0.999
_LIKELY: Final = 0.8
_MANY: Final = 3
_REPRICINGS: Final = 40
_LEAST_REPRICINGS: Final = 1
_LAST_REPRICINGS: Final = 8
"""Of the last pieces, where that costs little and what they lose is weighed."""
_AFTERWARDS: Final = 30
_SHAKEN: Final = 0.6
_WIDTH: Final = 3
_FEWEST: Final = 13
"""Of so few pieces nothing else is tried where no plan was found for them."""
_MORE: Final = (1, 2, 4, 8)
"""Steps above the goal for which the last pieces are tried as well."""
_FINE_BELOW: Final = 40


@dataclass(slots=True)
class Limit:
    """How much a dive may do.

    Attributes:
        masters: How many masters may still be solved; counted down.
        last: How hard each try at the last sticks is.
    """

    masters: int
    last: LastEffort = THOROUGH_LAST


def quick_limit(masters: int) -> Limit:
    """Return a limit for a dive that is to find some good plan soon."""
    return Limit(masters, QUICK_LAST)


@dataclass(slots=True)
class Spare:
    """A plan above the goal, that a dive keeps by the way.

    Attributes:
        under: What a plan must cost less than to be kept, in steps.
        patterns: The cheapest one so far; empty where there is none.
    """

    under: int
    patterns: tuple[Pattern, ...] = ()


@dataclass(frozen=True, slots=True)
class _Node:
    """Where a dive stands: what is chosen, and the linear solution for what remains."""

    remaining: Remaining
    chosen: tuple[Pattern, ...]
    numbers: list[int]
    values: tuple[float, ...]


def dive(
    master: Master,
    numbers: Sequence[int],
    needs: Needs,
    least: Needs,
    first: LinearSolution,
    goal: int,
    enough: int,
    grid: int,
    limit: Limit,
    draw: random.Random | None = None,
    spare: Spare | None = None,
) -> tuple[Pattern, ...] | None:
    """Return patterns that cut everything for `goal` steps or less, or None.

    Args:
        master: The master; patterns found on the way are added to it.
        numbers: Numbers of the patterns that can be cut.
        needs: How patterns are looked for.
        least: Needs that no pattern undercuts.
        first: Linear solution over `numbers`.
        goal: The most that the plan may cost, in steps.
        enough: A cost in steps that no plan undercuts.
        grid: Step of the knapsack's lengths. [0.01 mm]
        limit: Masters that may be solved.
        draw: Shakes what is wanted most, so that another dive goes another way; None: don't.
        spare: Keeps a plan above the goal; None: none is wanted.
    """
    root = _Node(master.whole, (), list(numbers), first.values)
    stack = [_children(master, root, draw)]
    best: tuple[Pattern, ...] | None = None
    while stack and limit.masters > 0 and goal >= enough and not master.stop():
        chosen = next(stack[-1], None)
        if chosen is None:
            stack.pop()
            continue
        found = _followed(master, chosen, needs, least, goal, grid, limit, spare)
        if isinstance(found, tuple):
            best, goal = found, sum(master.steps[pattern.bar] for pattern in found) - 1
            limit.masters = min(limit.masters, _AFTERWARDS)
            if spare is not None:
                spare.under = goal + 1
        elif found is not None:
            stack.append(_children(master, found, draw))
    return best


def _followed(
    master: Master,
    node: _Node,
    needs: Needs,
    least: Needs,
    goal: int,
    grid: int,
    limit: Limit,
    spare: Spare | None,
) -> _Node | tuple[Pattern, ...] | None:
    """The finished plan, or the node with its linear solution, or None if it leads nowhere."""
    spent = sum(master.steps[pattern.bar] for pattern in node.chosen)
    if spent > goal:
        return None
    pieces = sum(node.remaining.pieces)
    if pieces == 0:
        return node.chosen
    numbers = residual_numbers(master, node.numbers, node.remaining)
    fine = grid if pieces > _FINE_BELOW else max(1, grid // 2)
    left = goal - spent + NEARLY
    is_last = pieces <= limit.last.pieces
    rounds = _LAST_REPRICINGS if is_last and spare is not None else _LEAST_REPRICINGS
    solution = _repriced(master, numbers, needs, node.remaining, left, fine, limit, rounds)
    prices = master.prices(solution)
    if prices is None:
        return None
    is_dear = master.pure_cost(numbers, solution) > left
    if is_last:
        ask = _Last(master, least, prices, node.remaining, solution.objective, limit.last)
        rest = None if is_dear else ask.sticks(goal - spent)
        if rest is not None:
            return (*node.chosen, *rest)
        if spare is not None:
            _keep(spare, ask, node.chosen, spent, goal)
        if pieces <= _FEWEST:
            return None
    return None if is_dear else _Node(node.remaining, node.chosen, numbers, solution.values)


@dataclass(frozen=True, slots=True)
class _Last:
    """The last pieces of a dive, and what a linear master says of them."""

    master: Master
    least: Needs
    prices: Prices
    remaining: Remaining
    objective: float
    effort: LastEffort

    def sticks(self, spend: int) -> tuple[Pattern, ...] | None:
        """Return patterns that cut them for so much, or None."""
        weigh = self.master.most_weight(spend, sum(self.remaining.pieces))
        budget = spend + weigh - self.objective
        return last_sticks(
            self.master, self.least, self.prices, self.remaining, budget, spend, self.effort
        )


def _keep(spare: Spare, ask: _Last, chosen: tuple[Pattern, ...], spent: int, goal: int) -> None:
    """Keep a plan above the goal, if there is one that is cheaper than the one kept."""
    for more in _MORE:
        cost = goal + more
        if cost >= spare.under:
            break
        rest = ask.sticks(cost - spent)
        if rest is not None:
            spare.patterns = (*chosen, *rest)
            spare.under = sum(ask.master.steps[pattern.bar] for pattern in spare.patterns)
            break


def _children(master: Master, node: _Node, draw: random.Random | None) -> Iterator[_Node]:
    """Ways to go on: all sticks wanted nearly whole and the most wanted; then fewer, then others.

    What is wanted whole is cut in each of them: that never makes what remains dearer.
    """
    remaining, whole = node.remaining, list[Pattern]()
    wanted = list[tuple[float, int]]()
    for value, number in zip(node.values, node.numbers, strict=True):
        pattern = master.patterns[number]
        for _ in range(math.floor(value + 1.0 - _WHOLE)):
            if remaining.holds(pattern):
                whole.append(pattern)
                remaining = remaining.less(pattern)
        part = value - math.floor(value + 1.0 - _WHOLE)
        if part > WORTHWHILE:
            wanted.append((part if draw is None else part * draw.uniform(_SHAKEN, 1.0), number))
    wanted.sort(key=lambda entry: (-entry[0], entry[1]))
    likely = [number for part, number in wanted if part >= _LIKELY]
    tries = [likely] if len(likely) > 1 else []
    if len(likely) > _MANY:
        tries.append(likely[: len(likely) // 2])
    tries += [[number] for _, number in wanted[:_WIDTH]]
    for numbers in tries or [[]]:
        picked, rest = list(whole), remaining
        for pattern in (master.patterns[number] for number in numbers):
            if rest.holds(pattern):
                picked.append(pattern)
                rest = rest.less(pattern)
        if picked:
            yield _Node(rest, (*node.chosen, *picked), node.numbers, ())


def _repriced(
    master: Master,
    numbers: list[int],
    needs: Needs,
    remaining: Remaining,
    budget: float,
    grid: int,
    limit: Limit,
    least_rounds: int,
) -> LinearSolution:
    """Solve for what remains, with new patterns, which are appended to `numbers`.

    Patterns are looked for until what remains costs no more than the budget, or can't, but for so
    many rounds at least.
    """
    known = set(numbers)
    solution = master.solve(numbers, remaining)
    limit.masters -= 1
    for round_number in range(_REPRICINGS):
        prices = master.prices(solution)
        if prices is None:
            found = _one_each(master, remaining)
        else:
            dear = master.pure_cost(numbers, solution) > budget
            if round_number >= least_rounds and not dear:
                break
            priced = Priced(master, needs, prices, remaining, grid)
            if dear and priced.bound() > budget:
                break
            found = priced.patterns(prices)
        new = [number for number in master.numbers_of(found) if number not in known]
        if not new:
            break
        numbers.extend(new)
        known.update(new)
        solution = master.solve(numbers, remaining)
        limit.masters -= 1
    return solution


def _one_each(master: Master, remaining: Remaining) -> list[Pattern]:
    """One pattern for each group alone, on every length that holds it."""
    layout = master.layout
    patterns = []
    for group, count in enumerate(remaining.pieces):
        for number, bar in enumerate(layout.bars):
            pattern = Pattern(number, ((group, 1),))
            if count and remaining.holds(pattern) and layout.fitting(pattern.counts, bar.room)[0]:
                patterns.append(pattern)
    return patterns
