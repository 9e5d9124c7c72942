"""Thousands of pieces in parts of sticks: column generation over a few hundred price knots.

HiGHS holds the sequences found so far; what they are worth is counted at the knots of `PriceLines`.
Prices that are new are mixed with the best ones so far, which give the best bound: without that
they swing for a long time. Lengths are rounded down to a grid, so the bound is a true one, made
in whole numbers as `sticks/search/pricing` says.
"""

import importlib
import math
import random
from fractions import Fraction
from types import ModuleType
from typing import TYPE_CHECKING, Any, Final, NamedTuple

from longpoint.solvers.items_on_grid import Items, items_on_grid
from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.solvers.price_lines import PriceLines
from longpoint.solvers.sequence_tables import MOST_VALUE, SequenceTables
from longpoint.speech.said import say
from longpoint.sticks.batch.parts_of_sticks import ManyPieces, Part, PartPlan, Turned

if TYPE_CHECKING:
    from numpy.typing import NDArray

_GRID: Final = 50
_FINE: Final = 10
"""Steps of the lengths while prices are sought, and for the last bound. [0.01 mm]"""
_KNOTS: Final = 160
_TURNS: Final = 120
_MIX: Final = 0.7
"""How much of the best prices so far is in the next ones."""
_CLOSE: Final = 3e-5
_ROUGH: Final = 3e-4
"""Part of the cost at which the sequences found are as good as the bound."""
_DEAR: Final = 1.2
_DEARER: Final = 1.2
_DEARER_FROM: Final = 2e-3
"""What a missing piece costs by its length, and where it costs more: near the end, now and then."""
_LEAST: Final = 10_000
"""What stands for one piece too few of a kind costs as much as so much of a stick. [0.01 mm]"""
_WORTHWHILE: Final = 1e-7
_USED: Final = 1e-6
_SEED: Final = 3


def plan_in_parts(many: ManyPieces, *, roughly: bool) -> PartPlan:
    """Return a plan in parts of sticks, and what no plan undercuts."""
    return _Search(many, apart=roughly).run(_ROUGH if roughly else _CLOSE)


class _Found(NamedTuple):
    """What some prices give: a bound, and tables of what stands before and behind a piece.

    Attributes:
        bound: No plan costs less. [steps]
        scale: By how much values in the tables are larger than prices.
        left: What stands before.
        right: What stands behind.
    """

    bound: Fraction
    scale: int
    left: SequenceTables
    right: SequenceTables


class _Search:
    """The sequences known so far, and the best prices."""

    def __init__(self, many: ManyPieces, *, apart: bool) -> None:
        numpy: ModuleType = numpy_in_one_thread()
        self._numpy, self._many = numpy, many
        kinds = list(zip(many.lefts, many.rights, many.can_turn, strict=True))
        knots = min(_KNOTS, len(many.needs))
        self._lines = PriceLines(many.needs, kinds, many.rooms, knots, apart=apart)
        self._counted = [bar for bar, limit in enumerate(many.limits) if limit is not None]
        self._sequences = list[tuple[int, tuple[Turned, ...]]]()
        self._rate = min(
            (cost / room for cost, room in zip(many.costs, many.rooms, strict=True) if cost),
            default=0.0,
        )
        self._draw = random.Random(_SEED)
        self._coarse = items_on_grid(numpy, many, _GRID)
        self._begin()

    def run(self, close: float) -> PartPlan:
        """Better prices and sequences by turns until they say the same."""
        numpy, highs = self._numpy, self._highs
        knots, sticks = self._rate * self._lines.needs, numpy.zeros(len(self._many.costs))
        best, bound = (knots, sticks), self._found(knots, self._coarse).bound
        mix = _MIX
        for turn in range(_TURNS):
            highs.run()
            now, cost, missing = self._prices(), self._cost(), self._missing()
            if not missing.any() and cost - float(bound) <= close * cost:
                break
            if turn % 3 == 0 and cost - float(bound) < _DEARER_FROM * cost:
                self._dearer(missing)
            mixed = (mix * best[0] + (1 - mix) * now[0], mix * best[1] + (1 - mix) * now[1])
            found = self._found(mixed[0], self._coarse)
            if found.bound > bound:
                bound, best = found.bound, mixed
            if not self._take(found, mixed[1], *now):
                if mix == 0.0 and not missing.any():
                    break
                mix = 0.0 if mix else _MIX
        else:
            highs.run()
        if close <= _CLOSE:
            bound = max(bound, self._found(best[0], items_on_grid(numpy, self._many, _FINE)).bound)
        return PartPlan(
            floor=bound,
            prices=tuple(self._lines.prices(best[0]).tolist()),
            parts=self._parts(),
            solver=self._name(),
        )

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
        self._dear = _DEAR * self._rate * self._lines.needs.clip(_LEAST)
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

    def _prices(self) -> tuple["NDArray[Any]", "NDArray[Any]"]:
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

    def _found(self, knots: "NDArray[Any]", items: Items) -> _Found:
        """Price all sequences: see the top of `sticks/search/pricing` for the bound."""
        numpy = self._numpy
        prices, longest = self._lines.prices(knots)[items.groups], max(items.rooms)
        # However dear a missing piece has become: no sequence is worth more than the tables hold.
        most = float((prices / items.needs).max()) * longest
        scale = max(1, int(MOST_VALUE / max(most, 1.0)))
        values = numpy.floor(prices * scale).astype(numpy.int32)
        ends, tips = (items.lefts, items.rights), items.tips
        left = SequenceTables(items.needs, ends, values, items.gaps, tips, longest)
        right = SequenceTables(items.needs, ends[::-1], values, items.gaps.T, tips[::-1], longest)
        worth = [left.value(room) for room in items.rooms]
        # Those that may be turned stand in it twice, the first time as they are.
        whole = values[: len(self._many.needs)]
        return _Found(self._bound(whole, worth, scale), scale, left, right)

    def _bound(self, values: "NDArray[Any]", most: list[int], scale: int) -> Fraction:
        many, theta = self._many, Fraction(1)
        for cost, limit, value in zip(many.costs, many.limits, most, strict=True):
            if limit is None and value > cost * scale:
                theta = min(theta, Fraction(cost * scale, value))
        total: Fraction = theta * sum(
            value * copies for value, copies in zip(values.tolist(), many.copies, strict=True)
        )
        for cost, limit, value in zip(many.costs, many.limits, most, strict=True):
            if limit is not None:
                total += limit * min(Fraction(0), cost * scale - theta * value)
        return max(Fraction(0), total / scale)

    def _take(
        self,
        found: _Found,
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
            bar, pieces = self._best_with(item, found, charges)
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
        numpy, items = self._numpy, self._coarse
        knots = self._lines.lower[items.groups]
        order = numpy.lexsort((self._lines.share[items.groups], items.turned, knots))
        splits = numpy.nonzero(numpy.diff(knots[order]))[0] + 1
        found = []
        for group in numpy.split(order, splits):
            found += [int(group[0]), int(group[self._draw.randrange(len(group))])]
        return found

    def _best_with(
        self, item: int, found: _Found, charges: "NDArray[Any]"
    ) -> tuple[int, tuple[Turned, ...]]:
        """The length and the sequence that gain most with this item."""
        items, best = self._coarse, (-math.inf, 0, 0)
        length = int(items.needs[item])
        before = found.left.before[items.lefts[item]]
        behind = found.right.before[items.rights[item]]
        for bar, room in enumerate(items.rooms):
            rest = room - length
            if rest < 0:
                continue
            worth = before[: rest + 1] + behind[rest::-1]
            at = int(worth.argmax())
            gain = int(worth[at]) - (self._many.costs[bar] - float(charges[bar])) * found.scale
            if gain > best[0]:
                best = (gain, bar, at)
        _, bar, at = best
        numbers = (
            *found.left.sequence(int(items.lefts[item]), at),
            item,
            *reversed(
                found.right.sequence(int(items.rights[item]), items.rooms[bar] - length - at)
            ),
        )
        return bar, tuple(
            Turned(int(items.groups[number]), bool(items.turned[number])) for number in numbers
        )

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
