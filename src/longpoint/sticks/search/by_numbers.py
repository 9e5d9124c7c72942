"""The cheapest plan by numbers of sticks: cheapest first, is there a plan with so many of each?

Where every length has a price of its own, most of what a plan costs more than parts of sticks is
that sticks are whole. So the numbers of sticks that a plan cheaper than the best may have are
listed (`longpoint.sticks.search.stick_numbers`), and looked at in the order of their cost:

1. Parts of sticks (`longpoint.sticks.search.cut_share`): mostly these can't be cut from so many,
   and the knapsack that tells it rules out others as well.
2. Else the same knapsack says how little a stick loses in any plan with exactly these sticks: what
   they hold together more than all pieces are worth. That is a tenth of what a plan may lose that
   is only held to its cost, so that few sets are left, and the solver's search among them finds a
   plan or proves that there is none.

The first plan found is the cheapest, where all numbers before it were ruled out.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.linear.port import LinearSolver
from longpoint.sticks.search.cut_share import ShareProgram, Worth
from longpoint.sticks.search.every_pattern import Outcome, Sieve
from longpoint.sticks.search.master import Master, Prices
from longpoint.sticks.search.needs import Needs, fits
from longpoint.sticks.search.patterns import Pattern, PatternList
from longpoint.sticks.search.sets_to_choose import SetChoice, SetChooser
from longpoint.sticks.search.stick_numbers import (
    Condition,
    Numbers,
    cost_of_numbers,
    possible_numbers,
)

_MOST_NUMBERS: Final = 20_000
"""Numbers that are looked at while they are listed."""
_FEW_NUMBERS: Final = 600
_MANY_PIECES, _FEW_LOOKS = 80, 4_000
"""Of more pieces, numbers are few where no more than so many are looked at to find them: mostly
they are by far too many, and looking takes its time."""
_TIGHT: Final = 1e-5
"""Share of all that pieces are worth: where less is to spare, prices are taken from the middle."""
_MOST_UNSURE: Final = 6
_MOST_LONG_LOOKS: Final = 3
_PARTS: Final = (1, 2, 8)
"""Where sets are too many, those are listed that lose no more than such a part: they may do for a
plan, and say nothing of what there isn't."""
_MOST_ENTRIES: Final = 60_000_000
"""Sets times groups of pieces: the memory that the search may take."""


@dataclass(frozen=True, slots=True)
class LookEffort:
    """How hard the sets for some numbers of sticks are looked at.

    Attributes:
        sets: Most sets that are listed.
        nodes: Most linear solutions that may be branched on.
        work: Most sets that may be priced, each counted as often as it is.
    """

    sets: int
    nodes: int
    work: int


FIRST_LOOK: Final = LookEffort(sets=60_000, nodes=40, work=6_000_000)
LONG_LOOK: Final = LookEffort(sets=400_000, nodes=100, work=30_000_000)


@dataclass(frozen=True, slots=True)
class Asked:
    """What the search is asked.

    Attributes:
        master: Costs, and the layout in which patterns are tried.
        least: Needs that no pattern undercuts.
        solver: Solves the linear programs.
        choose: Chooses among sets.
        prices: Prices that give a good bound.
        grid: Step of the knapsack's lengths. [0.01 mm]
    """

    master: Master
    least: Needs
    solver: LinearSolver
    choose: SetChooser
    prices: Prices
    grid: int


class ByNumbers:
    """Looks for plans by their numbers of sticks.

    Args:
        asked: What is asked.
        patterns: Patterns to begin with; those that needs undercut are left out.
    """

    def __init__(self, asked: Asked, patterns: Iterable[Pattern]) -> None:
        self._asked, self._steps = asked, asked.master.steps
        self._program = ShareProgram(asked.master, asked.least, asked.solver, asked.grid)
        self._program.add(pattern for pattern in patterns if fits(asked.least, pattern))
        self._sieve = Sieve(asked.master)
        self._high = 0
        self._plan: tuple[Pattern, ...] = ()
        worths = [self._program.worth(p) for p in (asked.least.pieces, asked.prices.pieces)]
        self._first = [self._program.priced(worth).condition() for worth in worths]
        self._near = worths[-1]

    def are_few(self, low: int, high: int) -> bool:
        """Tell whether not too many numbers of sticks come to a cost from `low` to below `high`."""
        pieces = sum(self._asked.master.whole.pieces)
        looks = _FEW_LOOKS if pieces > _MANY_PIECES else _MOST_NUMBERS
        listed = self._listed(low, high, looks)
        return listed is not None and len(listed) <= _FEW_NUMBERS

    def best(self, low: int, high: int, *, is_long: bool = True) -> Outcome | None:
        """Return the best plan found that is cheaper, and what any plan costs at least.

        Args:
            low: A cost that no plan undercuts, in steps.
            high: Cost of the best plan known, in steps.
            is_long: Whether numbers of which nobody knows are looked at once more, for long; not
                where something else may find a plan sooner.

        Returns:
            None where there are too many numbers of sticks to list.
        """
        listed = self._listed(low, high, _MOST_NUMBERS)
        if listed is None:
            return None
        self._high, self._plan = high, ()
        unsure, left = self._looked_at(listed), list[int]()
        for tried, (numbers, worth) in enumerate(unsure):
            cost = self._cost(numbers)
            if cost >= self._high:
                break
            is_tried = is_long and tried < _MOST_LONG_LOOKS and not self._asked.master.stop()
            if not is_tried or not self._settles(numbers, worth, LONG_LOOK):
                left.append(cost)
        return Outcome(min([self._high, *left]), self._plan)

    def _listed(self, low: int, high: int, looks: int) -> list[Numbers] | None:
        counts = self._asked.master.whole.sticks
        return possible_numbers(self._steps, counts, self._first, low, high, looks)

    def _looked_at(self, listed: Sequence[Numbers]) -> list[tuple[Numbers, Worth]]:
        """Look at numbers in their order; return those of which nobody knows, in theirs."""
        conditions, unsure = list[Condition](), list[tuple[Numbers, Worth]]()
        near = self._near
        for numbers in listed:
            if self._cost(numbers) >= self._high:
                break
            if not all(condition.keeps(numbers) for condition in conditions):
                continue
            if len(unsure) >= _MOST_UNSURE or self._asked.master.stop():
                unsure.append((numbers, near))
                break
            told = self._program.share(numbers, near)
            conditions += told.conditions
            near = told.worth
            if told.is_short:
                continue
            worth = near
            if told.conditions[-1].spare(numbers) < _TIGHT * told.conditions[-1].pieces:
                worth = self._program.from_the_middle(numbers, near)
            if not self._settles(numbers, worth, FIRST_LOOK):
                unsure.append((numbers, worth))
        return unsure

    def _settles(self, numbers: Numbers, worth: Worth, effort: LookEffort) -> bool:
        """Tell whether there is a plan with so many sticks, which is then kept, or surely none."""
        asked, pieces = self._asked, self._asked.master.whole.pieces
        priced = self._program.priced(worth, numbers)
        spare = priced.condition().spare(numbers)
        most = min(effort.sets, _MOST_ENTRIES // len(pieces))
        for part in _PARTS:
            sets = priced.losing(max(0, spare) // part, most)
            if sets is not None:
                break
        else:
            return False
        cost = self._cost(numbers)
        found = asked.choose(
            SetChoice(
                patterns=sets,
                costs=self._steps,
                pieces=pieces,
                limits=numbers,
                able=(cost,),
                prices=worth.pieces,
                can_be_cut=self._tells(sets),
                nodes=effort.nodes,
                work=effort.work,
                stop=asked.master.stop,
            )
        )
        if found.numbers:
            self._plan = tuple(sets.pattern(number) for number in found.numbers)
            self._high = sum(self._steps[pattern.bar] for pattern in self._plan)
            return True
        return part == 1 and found.floor > cost

    def _tells(self, sets: PatternList) -> Callable[[int], bool | None]:
        return lambda number: self._sieve.can_be_cut(sets.pattern(number))

    def _cost(self, numbers: Numbers) -> int:
        return cost_of_numbers(self._steps, numbers)
