"""The best packing that a search has met so far."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.fit import Packing, cost_of, downsized
from longpoint.sticks.lay.laying import Workload
from longpoint.sticks.search.master import Prices
from longpoint.sticks.search.patterns import Layout, Pattern


@dataclass(slots=True)
class BestPacking:
    """The cheapest packing so far.

    Attributes:
        work: The pieces.
        bars: The lengths.
        layout: Lays patterns on sticks.
        packing: All pieces on their sticks.
    """

    work: Workload
    bars: Bars
    layout: Layout
    packing: Packing

    @property
    def steps(self) -> int:
        """What it costs, in steps of cost."""
        return cost_of(self.bars.bars, self.packing) // self.bars.step

    def patterns(self) -> Iterator[Pattern]:
        """Yield what lies on each stick."""
        for stick in self.packing.sticks:
            room = self.bars.bars[stick.bar].room
            yield Pattern(stick.bar, self.layout.known(stick.places, room))

    def take(self, patterns: Sequence[Pattern]) -> None:
        """Take the packing of these patterns instead, if it is cheaper; of none: keep this one."""
        if not patterns:
            return
        packing = downsized(self.work, self.bars.bars, self.layout.packing(patterns))
        if cost_of(self.bars.bars, packing) < cost_of(self.bars.bars, self.packing):
            self.packing = packing


@dataclass(frozen=True, slots=True)
class Improved:
    """A packing, and what no packing undercuts.

    Attributes:
        packing: The better packing.
        bound: A cost that no plan undercuts, in whole cost units.
        solved_by: Name and version of the solver; empty where it wasn't needed.
        patterns: Patterns that the search knew in the end, for the goals that follow the cost.
        prices: Prices that gave the bound, in steps of cost; None where none were looked for.
    """

    packing: Packing
    bound: int
    solved_by: str
    patterns: tuple[Pattern, ...] = ()
    prices: Prices | None = None
