"""Dives: from the linear solution to whole sticks, with new patterns for what remains.

Sticks that the linear master wants whole are cut; else the one it wants most. Then the master is
solved again for the pieces that remain, with patterns made for them. Where its cost says that the
goal is out of reach, the last choice is taken back and the next one is tried, as often as the
limit allows: deep down, with few pieces left, that costs little.
"""

import math
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.linear.port import LinearSolution
from longpoint.sticks.search.last_sticks import QUICK_LAST, THOROUGH_LAST, LastEffort, last_sticks
from longpoint.sticks.search.master import Master, Remaining, residual_numbers
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.patterns import Pattern
from longpoint.sticks.search.pricing import NEARLY, WORTHWHILE, Priced

_WHOLE: Final = 0.999
_LIKELY: Final = 0.8
_MANY: Final = 3
_REPRICINGS: Final = 40
_LEAST_REPRICINGS: Final = 1
_AFTERWARDS: Final = 30
_SHAKEN: Final = 0.6
_WIDTH: Final = 3
FEW_PIECES: Final = 26
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
    """
    root = _Node(master.whole, (), list(numbers), first.values)
    stack = [_children(master, root, draw)]
    best: tuple[Pattern, ...] | None = None
    while stack and limit.masters > 0 and goal >= enough and not master.stop():
        chosen = next(stack[-1], None)
        if chosen is None:
            stack.pop()
            continue
        found = _followed(master, chosen, needs, least, goal, grid, limit)
        if isinstance(found, tuple):
            best, goal = found, sum(master.steps[pattern.bar] for pattern in found) - 1
            limit.masters = min(limit.masters, _AFTERWARDS)
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
    solution = _repriced(master, numbers, needs, node.remaining, left, fine, limit)
    prices = master.prices(solution)
    if prices is None or master.pure_cost(numbers, solution) > left:
        return None
    if pieces <= FEW_PIECES:
        budget = goal - spent + master.all_sticks_weigh - solution.objective
        rest = last_sticks(master, least, prices, node.remaining, budget, goal - spent, limit.last)
        if rest is not None:
            return (*node.chosen, *rest)
        if pieces <= FEW_PIECES // 2:
            return None
    return _Node(node.remaining, node.chosen, numbers, solution.values)


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
) -> LinearSolution:
    """Solve for what remains, with new patterns, which are appended to `numbers`.

    Patterns are looked for until what remains costs no more than the budget, or can't.
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
            if round_number >= _LEAST_REPRICINGS and not dear:
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
