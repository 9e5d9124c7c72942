"""Every pattern that can still matter, and the best plan made of them: a proof, or a better plan.

Let prices of the pieces and the counted sticks give a bound z (`longpoint.sticks.search.pricing`).
In a plan the losses of all sticks, each the cost of its stick less the worth of its pieces and of
the stick itself, add up to its cost less z at most, and none is below nought. So no stick of a plan
that costs `goal` or less loses more than goal - z. Where the sets that lose so little can be
listed, a program in whole numbers over them finds the cheapest plan, or proves that there is none.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.linear.port import LinearStatus
from longpoint.sticks.lay.laying import used_length
from longpoint.sticks.lay.ordering import best_order, looks_at_all_orders
from longpoint.sticks.search.master import Master, Prices, Remaining
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.patterns import Counts, Layout, Pattern
from longpoint.sticks.search.pricing import WORTHWHILE, Priced, whole_steps

MOST_LISTED: Final = 16_000
MOST_CUT: Final = 8_000
_NODES: Final = 100
_KNOWN: Final = 800
_KNOWN_NODES: Final = 60


@dataclass(frozen=True, slots=True)
class Outcome:
    """What all patterns say.

    Attributes:
        floor: No plan costs less. [steps]
        patterns: Patterns of a plan that costs the goal or less; empty where none was found.
    """

    floor: int
    patterns: tuple[Pattern, ...]


def from_every_pattern(
    master: Master,
    least: Needs,
    prices: Prices,
    goal: int,
    enough: int,
    grid: int,
    most: int | None = None,
    remaining: Remaining | None = None,
) -> Outcome | None:
    """Return the best plan that costs `goal` or less, or what any plan costs at least.

    Args:
        master: Costs, the layout in which patterns are tried, and the solver.
        least: Needs that no pattern undercuts.
        prices: Prices that give a good bound.
        goal: Most that the plan may cost, in steps.
        enough: A cost in steps that no plan undercuts.
        grid: Step of the knapsack's lengths. [0.01 mm]
        most: Most patterns that are listed; None: `MOST_LISTED`.
        remaining: What is still to be cut, for that goal; None: everything.

    Returns:
        None where there are too many patterns, or the solver gave up.
    """
    most = MOST_LISTED if most is None else most
    remaining = master.whole if remaining is None else remaining
    listed = Priced(master, least, prices, remaining, grid).losing_least(goal, most)
    if listed is None:
        return None
    sieve = Sieve(master)
    patterns = sieve.kept(listed)
    if len(patterns) > MOST_CUT:
        return None
    if not patterns:
        return Outcome(goal + 1, ())
    solution = master.solve_whole(
        master.numbers_of(patterns),
        remaining,
        enough + master.all_sticks_weigh + WORTHWHILE,
        _NODES,
        goal,
    )
    if solution.status is LinearStatus.INFEASIBLE:
        return Outcome(goal + 1, ())
    floor = min(goal + 1, whole_steps_of(solution.bound - master.all_sticks_weigh))
    chosen = [
        pattern
        for pattern, value in zip(patterns, solution.values, strict=False)
        for _ in range(round(value))
    ]
    cost = sum(master.steps[pattern.bar] for pattern in chosen)
    if not chosen or cost > goal or not sieve.unsure.isdisjoint(chosen):
        return Outcome(floor, ())
    if solution.status is LinearStatus.OPTIMAL:
        floor = max(floor, min(cost, goal + 1))
    return Outcome(floor, _without_surplus(master, remaining, chosen))


def from_known_patterns(
    master: Master,
    numbers: Sequence[int],
    prices: Prices,
    enough: int,
) -> tuple[Pattern, ...]:
    """Return the best plan found of the patterns that lose least; it may cost more than another.

    Args:
        master: Costs, and the solver.
        numbers: Numbers of patterns that can be cut.
        prices: Prices that give a good bound.
        enough: A cost in steps that no plan undercuts.
    """
    ranked = sorted(numbers, key=lambda number: -master.gain(master.patterns[number], prices))
    least = ranked[:_KNOWN]
    solution = master.solve_whole(
        least, master.whole, enough + master.all_sticks_weigh + WORTHWHILE, _KNOWN_NODES
    )
    chosen = [
        master.patterns[number]
        for number, value in zip(least, solution.values, strict=False)
        for _ in range(round(value))
    ]
    return _without_surplus(master, master.whole, chosen)


def whole_steps_of(bound: float) -> int:
    """Return a solver's bound rounded up, less what it may be off by."""
    return max(0, whole_steps(bound - WORTHWHILE)) if bound > 0.0 else 0


class Sieve:
    """Keeps the patterns that can be cut and that no other one makes needless.

    Attributes:
        unsure: Those kept for the bound, which nobody knows how to cut.
    """

    def __init__(self, master: Master) -> None:
        self._master = master
        self._bars = sorted(
            range(len(master.steps)), key=lambda bar: (master.steps[bar], -_room(master, bar))
        )
        self.unsure: set[Pattern] = set()

    def kept(self, patterns: Iterable[Pattern]) -> list[Pattern]:
        """Return the patterns worth keeping; of more than can be used only some."""
        by_bar: dict[int, list[Counts]] = {}
        for pattern in patterns:
            by_bar.setdefault(pattern.bar, []).append(pattern.counts)
        kept: list[Pattern] = []
        cheaper: set[Counts] = set()
        for bar in self._bars:
            found = self._kept_of(bar, by_bar.get(bar, ()), cheaper)
            kept += [Pattern(bar, counts) for counts in found]
            if len(kept) > MOST_CUT:
                break
        return kept

    def _kept_of(self, bar: int, sets: Sequence[Counts], cheaper: set[Counts]) -> list[Counts]:
        """Those of one length; larger sets first, so that the smaller ones are needless."""
        kept, within = list[Counts](), set[Counts]()
        endless = self._master.whole.sticks[bar] is None
        for counts in sorted(sets, key=lambda counts: (-sum(n for _, n in counts), counts)):
            if counts in within:
                within.update(_one_less(counts))
                continue
            if counts in cheaper or not self.may_be_cut(Pattern(bar, counts)):
                continue
            kept.append(counts)
            if len(kept) > MOST_CUT:
                break
            within.update(_one_less(counts))
        if endless:
            cheaper.update(within)
            cheaper.update(kept)
        return kept

    def can_be_cut(self, pattern: Pattern) -> bool | None:
        """Tell whether a pattern can be cut; None: nobody knows."""
        if not self.may_be_cut(pattern):
            return False
        return None if pattern in self.unsure else True

    def may_be_cut(self, pattern: Pattern) -> bool:
        """Tell whether an order of its pieces fits the stick, or nobody knows of any."""
        layout, room = self._master.layout, _room(self._master, pattern.bar)
        work = layout.work
        if used_length(work, layout.places(pattern.counts, room)) <= room:
            return True
        pieces = [piece for group, n in pattern.counts for piece in layout.groups[group][:n]]
        places = best_order(work, pieces)
        if used_length(work, places) <= room:
            layout.known(places, room)
            return True
        if looks_at_all_orders(work, pieces):
            return False
        self.unsure.add(pattern)
        return True


def _room(master: Master, bar: int) -> int:
    return master.layout.bars[bar].room


def _one_less(counts: Counts) -> Iterable[Counts]:
    for group, _ in counts:
        yield tuple((g, n - (g == group)) for g, n in counts if n > (g == group))


def _without_surplus(
    master: Master, remaining: Remaining, chosen: Sequence[Pattern]
) -> tuple[Pattern, ...]:
    """The patterns, without the pieces that are cut once too often."""
    left = list(remaining.pieces)
    patterns = []
    for pattern in chosen:
        wanted = tuple((group, min(n, left[group])) for group, n in pattern.counts if left[group])
        for group, n in wanted:
            left[group] -= n
        room = _room(master, pattern.bar)
        if wanted:
            patterns.append(Pattern(pattern.bar, _part(master.layout, pattern, wanted, room)))
    return tuple(patterns)


def _part(layout: Layout, pattern: Pattern, wanted: Counts, room: int) -> Counts:
    """Remember that a part can be cut as the whole is, with gaps where pieces were."""
    if wanted == pattern.counts:
        return wanted
    group_of = {piece: n for n, group in enumerate(layout.groups) for piece in group}
    numbers, places = dict(wanted), []
    for place in layout.places(pattern.counts, room):
        group = group_of[place.piece]
        if numbers.get(group, 0):
            numbers[group] -= 1
            places.append(place)
    return layout.known(places, room)
