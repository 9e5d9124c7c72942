"""Thousands of pieces in parts of sticks: column generation over a few hundred price knots.

HiGHS holds the sequences found so far; what they are worth is counted at the knots of `PriceLines`.
Prices that are new are mixed with the best ones so far, which give the best bound: without that
they swing for a long time. Lengths are rounded down to a grid, so the bound is a true one, made
in whole numbers as `sticks/search/pricing` says.
"""

import importlib
import random
from collections.abc import Sequence
from fractions import Fraction
from types import ModuleType
from typing import TYPE_CHECKING, Any, Final, NamedTuple

from longpoint.solvers.items_on_grid import Items, items_on_grid
from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.solvers.price_lines import PriceLines
from longpoint.solvers.priced_sequences import PricedSequences
from longpoint.speech.said import say
from longpoint.sticks.batch.parts_of_sticks import ManyPieces, Part, PartPlan, Turned

if TYPE_CHECKING:
    from numpy.typing import NDArray

_TURNS: Final = 120
_MIX: Final = 0.7
"""How much of the best prices so far is in the next ones."""
_KEPT: Final = 5e-4
"""Part of its cost that a sequence may lose to be kept when all begins anew, finer."""
_DEAR: Final = 1.2
_DEARER: Final = 1.2
_DEARER_FROM: Final = 2e-3
"""What a missing piece costs by its length, and where it costs more: near the end, now and then."""
_LEAST: Final = 10_000
"""What stands for one piece too few of a kind costs as much as so much of a stick. [0.01 mm]"""
_WORTHWHILE: Final = 1e-7
_USED: Final = 1e-6
_SEED: Final = 3


class _Stage(NamedTuple):
    """How fine things are taken for a while.

    Attributes:
        knots: About so many knots.
        grid: Step of the lengths. [0.01 mm]
        close: Part of the cost at which the sequences found are as good as the bound.
    """

    knots: int
    grid: int
    close: float


_CLOSELY: Final = (_Stage(80, 25, 4e-4), _Stage(160, 25, 2e-4), _Stage(320, 10, 3.5e-5))
_ROUGHLY: Final = (_Stage(160, 50, 3e-4),)
"""On half a millimetre two or three pieces fit that are a millimetre too long together, and prices
at which such sequences gain nothing are too low: so in the end a finer grid, and more knots."""

_Sequence = tuple[int, tuple[Turned, ...]]
_Prices = tuple["NDArray[Any]", "NDArray[Any]"]
"""At the knots, and of the sticks. [steps]"""


def plan_in_parts(many: ManyPieces, *, roughly: bool) -> PartPlan:
    """Return a plan in parts of sticks, and what no plan undercuts."""
    return _Search(many, apart=roughly).run(_ROUGHLY if roughly else _CLOSELY)


class _Search:
    """The sequences known so far, and the best prices."""

    def __init__(self, many: ManyPieces, *, apart: bool) -> None:
        numpy: ModuleType = numpy_in_one_thread()
        self._numpy, self._many, self._apart = numpy, many, apart
        self._counted = [bar for bar, limit in enumerate(many.limits) if limit is not None]
        self._sequences = list[_Sequence]()
        self._rate = min(
            (cost / room for cost, room in zip(many.costs, many.rooms, strict=True) if cost),
            default=0.0,
        )
        self._draw = random.Random(_SEED)

    def run(self, stages: Sequence[_Stage]) -> PartPlan:
        """Better prices and sequences by turns until they say the same; then the same, finer."""
        bound, best = Fraction(0), self._first(stages[0])
        for number, stage in enumerate(stages):
            if number:
                best = self._finer(stage, best)
            bound, best = self._bettered(bound, best, stage.close)
        return PartPlan(
            floor=bound,
            prices=tuple(self._lines.prices(best[0]).tolist()),
            parts=self._parts(),
            solver=self._name(),
        )

    def _first(self, stage: _Stage) -> _Prices:
        """Begin with prices by length alone."""
        self._lines, self._items = self._lines_of(stage), self._items_of(stage)
        self._dear = _DEAR * self._rate * self._lines.needs.clip(_LEAST)
        self._begin()
        return self._rate * self._lines.needs, self._numpy.zeros(len(self._many.costs))

    def _finer(self, stage: _Stage, best: _Prices) -> _Prices:
        """Begin anew with the best prices, and with those sequences that lose little at them."""
        before, prices = self._lines, self._lines.prices(best[0])
        self._lines, self._items = self._lines_of(stage), self._items_of(stage)
        self._dear = before.carried(self._dear, self._lines)
        known, self._sequences = self._sequences, []
        self._begin()
        for bar, pieces in known:
            cost = self._many.costs[bar]
            worth = float(prices[[piece.group for piece in pieces]].sum() + best[1][bar])
            if cost - worth < _KEPT * cost and self._items.holds(bar, pieces):
                self._add(bar, pieces)
        return before.carried(best[0], self._lines), best[1]

    def _lines_of(self, stage: _Stage) -> PriceLines:
        many = self._many
        kinds = list(zip(many.lefts, many.rights, many.can_turn, strict=True))
        knots = min(stage.knots, len(many.needs))
        return PriceLines(many.needs, kinds, many.rooms, knots, apart=self._apart)

    def _items_of(self, stage: _Stage) -> Items:
        return items_on_grid(self._numpy, self._many, stage.grid)

    def _bettered(self, bound: Fraction, best: _Prices, close: float) -> tuple[Fraction, _Prices]:
        """The best bound, and the prices that gave it, from those of a coarser grid."""
        bound, mix = max(bound, self._priced(best[0]).bound), _MIX
        for turn in range(_TURNS):
            self._highs.run()
            now, cost, missing = self._prices(), self._cost(), self._missing()
            if not missing.any() and cost - float(bound) <= close * cost:
                break
            if turn % 3 == 0 and cost - float(bound) < _DEARER_FROM * cost:
                self._dearer(missing)
            mixed = (mix * best[0] + (1 - mix) * now[0], mix * best[1] + (1 - mix) * now[1])
            found = self._priced(mixed[0])
            if found.bound > bound:
                bound, best = found.bound, mixed
            if not self._take(found, mixed[1], *now):
                if mix == 0.0 and not missing.any():
                    break
                mix = 0.0 if mix else _MIX
        else:
            self._highs.run()
        return bound, best

    def _begin(self) -> None:
        numpy, many = self._numpy, self._many
        self._highspy: ModuleType = importlib.import_module("highspy")
        self._infinity = self._highspy.kHighsInf
        self._highs = self._highspy.highs._Highs()
        for option, value in (
            ("output_flag", False),
            ("threads", 1),
            ("random_seed", 0),
            ("simplex_strategy", 4),
        ):
            self._highs.setOptionValue(option, value)
        none = (0, numpy.zeros(0, dtype=numpy.int32), numpy.zeros(0))
        wanted = self._lines.sums(range(len(many.needs)), many.copies)
        for count in wanted:
            self._highs.addRow(float(count), self._infinity, *none)
        for bar in self._counted:
            self._highs.addRow(-self._infinity, float(many.limits[bar] or 0), *none)
        for knot, dear in enumerate(self._dear):
            self._column(float(dear), [knot], [1.0])

    def _column(self, cost: float, rows: list[int], values: list[float]) -> None:
        numpy = self._numpy
        self._highs.addCol(
            cost,
            0.0,
            self._infinity,
            len(rows),
            numpy.array(rows, dtype=numpy.int32),
            numpy.array(values, dtype=numpy.double),
        )

    def _prices(self) -> _Prices:
        """What the linear program says: at the knots, and of the sticks."""
        numpy = self._numpy
        duals = numpy.array(self._highs.getSolution().row_dual)
        knots, sticks = len(self._dear), numpy.zeros(len(self._many.costs))
        sticks[self._counted] = numpy.minimum(0.0, duals[knots:])
        return numpy.maximum(0.0, duals[:knots]), sticks

    def _cost(self) -> float:
        return float(self._highs.getInfo().objective_function_value)

    def _missing(self) -> "NDArray[Any]":
        """Knots at which something is still missing."""
        values = self._numpy.array(self._highs.getSolution().col_value)
        found: NDArray[Any] = values[: len(self._dear)] > _USED
        return found

    def _dearer(self, missing: "NDArray[Any]") -> None:
        self._dear[missing] *= _DEARER
        for knot in self._numpy.nonzero(missing)[0]:
            self._highs.changeColCost(int(knot), float(self._dear[knot]))

    def _priced(self, knots: "NDArray[Any]") -> PricedSequences:
        return PricedSequences(self._numpy, self._many, self._items, self._lines.prices(knots))

    def _take(
        self,
        found: PricedSequences,
        charges: "NDArray[Any]",
        knots: "NDArray[Any]",
        sticks: "NDArray[Any]",
    ) -> int:
        """Add the best sequence with a piece at each knot, and with one somewhere behind it.

        Args:
            found: Tables at the prices that were mixed.
            charges: What sticks are worth there.
            knots: The linear program's own prices, at which a sequence must gain.
            sticks: Its own prices of the sticks.
        """
        prices, known, count = self._lines.prices(knots), set[tuple[int, tuple[Turned, ...]]](), 0
        for item in self._tried():
            bar, pieces = found.best_with(item, charges)
            if (bar, pieces) in known:
                continue
            known.add((bar, pieces))
            cost = self._many.costs[bar] - float(sticks[bar])
            if float(prices[[piece.group for piece in pieces]].sum()) - cost > _WORTHWHILE:
                self._add(bar, pieces)
                count += 1
        return count

    def _tried(self) -> list[int]:
        """Items, two between any two knots: the first, and one drawn."""
        numpy, items = self._numpy, self._items
        knots = self._lines.lower[items.groups]
        order = numpy.lexsort((self._lines.share[items.groups], items.turned, knots))
        splits = numpy.nonzero(numpy.diff(knots[order]))[0] + 1
        found = []
        for group in numpy.split(order, splits):
            found += [int(group[0]), int(group[self._draw.randrange(len(group))])]
        return found

    def _add(self, bar: int, pieces: tuple[Turned, ...]) -> None:
        sums = self._lines.sums([piece.group for piece in pieces], [1.0] * len(pieces))
        rows = [int(knot) for knot in self._numpy.nonzero(sums)[0]]
        values = [float(sums[knot]) for knot in rows]
        if bar in self._counted:
            rows.append(len(self._dear) + self._counted.index(bar))
            values.append(1.0)
        self._column(float(self._many.costs[bar]), rows, values)
        self._sequences.append((bar, pieces))

    def _parts(self) -> tuple[Part, ...]:
        values = list(self._highs.getSolution().col_value)[len(self._dear) :]
        return tuple(
            Part(bar=bar, pieces=pieces, count=value)
            for (bar, pieces), value in zip(self._sequences, values, strict=True)
            if value > _USED
        )

    def _name(self) -> str:
        return say("HiGHS {version}", version=self._highs.version())
