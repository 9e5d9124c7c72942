"""Small cutting-stock instances without waste, and all their plans by trying."""

import random
from collections.abc import Iterator
from typing import NamedTuple

from longpoint.linear.port import LinearProblem, LinearSolution, LinearSolver
from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.lay.bound import floor_of
from longpoint.sticks.lay.fit import fit
from longpoint.sticks.search.every_pattern import Outcome
from longpoint.sticks.search.generation import Bound, first_bound
from longpoint.sticks.search.master import Master, Remaining
from longpoint.sticks.search.needs import Needs, least_needs
from longpoint.sticks.search.patterns import Layout, Pattern, groups_of
from longpoint.sticks.search.sharp_prices import SharpAsked
from tests.bench.cutting_stock import CuttingStock, work_and_bars

STICK = 60


class PlainTables:
    """Solves as HiGHS does, and brings no tables of its own: those in whole numbers serve."""

    def __init__(self) -> None:
        self._solver = HighsSolver()

    def solve(self, problem: LinearProblem) -> LinearSolution:
        return self._solver.solve(problem)


class Stage(NamedTuple):
    """What a search for the last stick begins with."""

    master: Master
    numbers: list[int]
    least: Needs
    bound: Bound

    def asked(self, goal: int) -> SharpAsked:
        """Return the question whether there is a plan of so many sticks."""
        return SharpAsked(
            coarse=self.master,
            numbers=self.numbers,
            least=self.least,
            near=self.bound,
            goal=goal,
            rounds=100,
            grid=1,
        )

    def is_settled(self, found: Outcome | None, goal: int, *, is_able: bool) -> None:
        """Hold an answer to what is so: a plan of so many sticks, or one stick more at least."""
        assert found is not None
        if not is_able:
            assert (found.floor, found.patterns) == (goal + 1, ())
            return
        assert found.floor <= goal
        assert len(found.patterns) == goal
        cut = [piece for pattern in found.patterns for piece in pattern.counts]
        for group, copies in enumerate(self.master.whole.pieces):
            assert sum(count for number, count in cut if number == group) == copies


def tight(seed: int, sticks: int = 3, pieces: int = 9) -> CuttingStock:
    """Pieces that together are as long as some sticks, so that a plan of so many has no waste."""
    draw = random.Random(seed)
    while True:
        lengths = [draw.randint(11, 40) for _ in range(pieces - 1)]
        last = sticks * STICK - sum(lengths)
        if 5 <= last <= 40:
            break
    lengths.append(last)
    counts = {length: lengths.count(length) for length in sorted(lengths, reverse=True)}
    return CuttingStock(name=f"tight-{seed}", stick=STICK, lengths=tuple(counts.items()))


def stage(instance: CuttingStock, solver: LinearSolver | None = None) -> Stage:
    """Return a master with the patterns of a first packing, and a bound by lengths."""
    work, bars = work_and_bars(instance)
    layout = Layout(work, bars.bars, groups_of(work))
    master = Master(layout, bars, solver or HighsSolver())
    room = bars.bars[0].room
    packed = fit(work, bars.bars, refills=0).sticks
    numbers = master.numbers_of(Pattern(0, layout.known(stick.places, room)) for stick in packed)
    least = least_needs(layout, floor_of(work, bars.bars))
    return Stage(master, list(dict.fromkeys(numbers)), least, first_bound(master, least, 1))


def fill_sticks(lengths: tuple[int, ...]) -> bool:
    """Tell whether some pieces can be parted into full sticks, by trying."""
    if not lengths:
        return True
    first, *others = lengths
    return any(
        fill_sticks(tuple(length for n, length in enumerate(others) if not mask >> n & 1))
        for mask in range(1 << len(others))
        if first + sum(length for n, length in enumerate(others) if mask >> n & 1) == STICK
    )


def every_cover(master: Master, goal: int) -> Iterator[tuple[Pattern, ...]]:
    """Yield every way to cut all pieces, each once, for so many steps, by trying."""
    yield from _covers(master, master.whole, goal)


def _covers(master: Master, left: Remaining, goal: int) -> Iterator[tuple[Pattern, ...]]:
    if not any(left.pieces):
        yield ()
        return
    first = next(group for group, count in enumerate(left.pieces) if count)
    for counts in _sets(left.pieces, first):
        for number, bar in enumerate(master.layout.bars):
            pattern, step = Pattern(number, counts), master.steps[number]
            if (
                step <= goal
                and left.sticks[number] != 0
                and master.layout.fitting(counts, bar.room)[0] == counts
            ):
                for rest in _covers(master, left.less(pattern), goal - step):
                    yield (pattern, *rest)


def _sets(left: tuple[int, ...], first: int) -> Iterator[tuple[tuple[int, int], ...]]:
    """Every set of the pieces that are left that holds one of the first."""

    def chosen(group: int) -> Iterator[tuple[tuple[int, int], ...]]:
        if group == len(left):
            yield ()
            return
        for count in range(group == first, left[group] + 1):
            for others in chosen(group + 1):
                yield ((group, count), *others) if count else others

    yield from chosen(first)
