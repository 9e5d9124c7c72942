"""Hours, timber and money of a job, as a range that says where it comes from."""

import math
import random
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from statistics import NormalDist
from typing import Final

from longpoint.pricing.rates import Rates, start_rate
from longpoint.pricing.rates import Timber as WhoBuys
from longpoint.pricing.timber import Timber
from longpoint.pricing.work import ALLOWED, Rate, Task, WorkKind
from longpoint.quantities.length import Units
from longpoint.speech.said import say

JOBS: Final = 10_000
"""So many jobs are imagined for the range of hours."""
LOW, MIDDLE, HIGH = 0.1, 0.5, 0.9
"""The range that is shown: nine jobs in ten take more than its low end, one in ten more than its
high end."""
SHARED: Final = 0.5
"""How much of what makes a job slow or quick all its kinds of work share, 0 to 1; ours, no source.
None of it would make the range of a large job too narrow, all of it too wide."""
_SETTLED: Final = Decimal("0.0001")


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """Low, middle and high end of what may come: exceeded by nine, five and one job in ten."""

    low: float
    middle: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkLine:
    """All work of one kind.

    Attributes:
        kind: Its kind.
        quantity: How many, or how many metres or feet.
        rate: Hours for one.
        whys: What in the readings asks for it, each with its place.
    """

    kind: WorkKind
    quantity: Decimal
    rate: Rate
    whys: tuple[str, ...] = ()

    @property
    def mean_hours(self) -> Fraction:
        """Return the hours that are to be expected. [h]"""
        return Fraction(self.quantity) * self.rate.hours.mean


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """What a job will take.

    Attributes:
        lines: Work that has hours, in the order of its kinds.
        without_rate: Kinds of work that have none, with how much of it there is.
        hours: Range of all hours. [h]
        sure_hours: Hours that are enough with the chance on which the quote is made. [h]
        ready: What each expected hour is multiplied with so that they come to that.
        timber: The sticks.
        cost: Range of hours and timber at the crew's prices, before margin and tax; None without
            rates.
    """

    lines: tuple[WorkLine, ...]
    without_rate: tuple[tuple[WorkKind, Decimal], ...]
    hours: Range
    sure_hours: float
    ready: Decimal
    timber: Timber
    cost: Range | None

    @property
    def mean_hours(self) -> Fraction:
        """Return all hours that are to be expected. [h]"""
        return sum((line.mean_hours for line in self.lines), Fraction(0))


def make_estimate(
    tasks: Iterable[Task],
    timber: Timber,
    rates: Rates | None,
    sure: float,
    units: Units = Units.MM,
    *,
    jobs: int = JOBS,
    seed: int = 1,
) -> Estimate:
    """Return what a job will take.

    What a crew takes for one kind of work on one job is drawn once for the job, from the triangle
    of its three figures, so the range does not shrink with the count. Kinds of work go slow
    together in part: the same people, the same house.

    Args:
        tasks: The work.
        timber: The sticks, over imagined houses.
        rates: The crew's rates; None: the hours to start from, and no money.
        sure: Chance with which the hours of the quote are enough. 0 < sure < 1
        units: Of running work where there are no rates.
        jobs: How many jobs are imagined. > 0
        seed: Of chance; the same gives the same.
    """
    quantities, whys = _gathered(tasks)
    lines: list[WorkLine] = []
    without: list[tuple[WorkKind, Decimal]] = []
    for kind in WorkKind:
        rate = start_rate(kind, units) if rates is None else rates.rate(kind)
        quantity = quantities.get(kind, Decimal(0))
        if kind is WorkKind.SET_UP:
            quantity = Decimal(1)
        if quantity and rate is not None:
            told = tuple(whys.get(kind, ()))
            lines.append(WorkLine(kind=kind, quantity=quantity, rate=rate, whys=told))
        elif quantity and kind not in (WorkKind.PIECE, WorkKind.JOINT):
            without.append((kind, quantity))
    drawn = imagined_hours(lines, jobs, seed)
    ordered = sorted(drawn)
    mean = math.fsum(float(line.mean_hours) for line in lines)
    sure_hours = quantile(ordered, sure)
    ready = Decimal(sure_hours / mean if mean else 1.0).quantize(_SETTLED, ROUND_HALF_UP)
    return Estimate(
        lines=tuple(lines),
        without_rate=tuple(without),
        hours=_range(ordered),
        sure_hours=sure_hours,
        ready=ready,
        timber=timber,
        cost=None if rates is None else _cost(drawn, timber, rates, seed),
    )


def imagined_hours(
    lines: Sequence[WorkLine], jobs: int, seed: int, shared: float = SHARED
) -> list[float]:
    """Return the hours of imagined jobs, in the order in which they were drawn. [h]

    Each kind of work draws from a stream of its own, so that one more kind leaves the others as
    they were.

    Args:
        lines: The work.
        jobs: How many jobs are imagined. > 0
        seed: Of chance.
        shared: How much of what makes a job slow all its kinds share. 0 to 1

    References:
        One-factor normal copula: chance of a kind = Phi(sqrt(shared) job + sqrt(1 - shared) own).
    """
    normal = NormalDist()
    dice = random.Random(say("{seed} jobs", seed=seed))
    together = [math.sqrt(shared) * dice.gauss(0.0, 1.0) for _ in range(jobs)]
    own = math.sqrt(1.0 - shared)
    hours = [0.0] * jobs
    for line in lines:
        dice = random.Random(say("{seed} {kind}", seed=seed, kind=line.kind.value))
        quantity, three = float(line.quantity), line.rate.hours
        for job in range(jobs):
            chance = normal.cdf(together[job] + own * dice.gauss(0.0, 1.0))
            hours[job] += quantity * three.drawn(chance)
    return hours


def quantile(ordered: Sequence[float], chance: float) -> float:
    """Return the value that is enough with a chance.

    Args:
        ordered: Values in rising order, at least one.
        chance: Above 0, to 1.

    Example:
        >>> quantile([1.0, 2.0, 3.0, 4.0], 0.5)
        2.0
    """
    return ordered[max(0, math.ceil(chance * len(ordered) - 1e-9) - 1)]


def _range(ordered: Sequence[float]) -> Range:
    low, middle, high = (quantile(ordered, chance) for chance in (LOW, MIDDLE, HIGH))
    return Range(low=low, middle=middle, high=high)


def _cost(hours: Sequence[float], timber: Timber, rates: Rates, seed: int) -> Range:
    """Pair each imagined job with an imagined house, by chance.

    How fast work goes and how sizes come out have nothing to do with each other.
    """
    dice = random.Random(say("{seed} together", seed=seed))
    hour = float(rates.hour.amount)
    is_ours = rates.timber is WhoBuys.OURS
    costs = [float(draw.cost) if is_ours else 0.0 for draw in timber.draws]
    return _range(sorted(each * hour + dice.choice(costs) for each in hours))


def _gathered(
    tasks: Iterable[Task],
) -> tuple[Mapping[WorkKind, Decimal], Mapping[WorkKind, list[str]]]:
    quantities: dict[WorkKind, Decimal] = {}
    whys: dict[WorkKind, list[str]] = {}
    for task in tasks:
        quantities[task.kind] = quantities.get(task.kind, Decimal(0)) + task.quantity
        if task.why:
            whys.setdefault(task.kind, []).append(
                task.why
                if task.place == ALLOWED
                else say(
                    "{place}: {why}",
                    place=task.place,
                    why=task.why,
                )
            )
    return quantities, whys
