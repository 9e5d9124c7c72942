"""Whether forecasts kept their word: of joints called 90 in 100, how many closed.

Joints of one house share a saw and a tape and go right or wrong together. So a count of joints is
no measure of what is known: intervals are widened by how alike the joints of a house were.

References:
    Wilson (1927), interval of a share; Korn and Graubard (1998), intervals of shares from clustered
    surveys: as many joints as are worth the same unclustered, and Student's t in place of the
    normal; Murphy (1973) and Stephenson, Coelho and Jolliffe (2008), parts of the Brier score. All
    from memory.
"""

import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from statistics import NormalDist, fmean
from typing import Final

from longpoint.errors import QuantityError
from longpoint.forecast.learning.belief import USUAL, Interval
from longpoint.forecast.learning.student import t_quantile
from longpoint.speech.said import say

BINS: Final = 10

FEWEST_OUTCOMES: Final = 30
FEWEST_HOUSES: Final = 5
FEWEST_EACH: Final = 3
"""Nothing is judged on fewer outcomes, fewer houses, or fewer that closed or failed than these; our
limits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """A forecast, and what came of it.

    Attributes:
        house: Where; joints of one house go right or wrong together.
        chance: Chance of closing as forecast. 0 to 1.
        closed: True when it closed at the first fit.
    """

    house: str
    chance: float
    closed: bool

    def __post_init__(self) -> None:
        if not 0.0 <= self.chance <= 1.0:
            raise QuantityError(
                say("{house}: a chance of {chance:g}.", house=self.house, chance=self.chance),
                say("A chance lies between 0 and 1."),
                say("Give it as a share, 0.9 for 90 in 100."),
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class ReliabilityRow:
    """Outcomes whose forecasts lay close together.

    Attributes:
        chances: Between which chances the forecasts lie.
        count: How many outcomes.
        houses: Of how many houses.
        called: Their mean chance as forecast.
        closed: Share that closed.
        wilson: Interval of that share if each joint stood for itself.
        clustered: Its interval as joints of one house go together; never narrower.
        is_enough: Whether they are enough to judge by.
    """

    chances: Interval
    count: int
    houses: int
    called: float
    closed: float
    wilson: Interval
    clustered: Interval
    is_enough: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Brier:
    """Mean squared distance of forecasts from what came, and of what it is made.

    score = unreliable - told_apart + uncertain + within

    Attributes:
        score: The mean; 0 is best, 0.25 is what "even chances" always gets.
        unreliable: How far shares lie from what was called; less is better.
        told_apart: How far shares of the rows lie from each other; more is better.
        uncertain: What calling the mean share every time would get.
        within: What comes of chances that differ within a row.
    """

    score: float
    unreliable: float
    told_apart: float
    uncertain: float
    within: float


class Verdict(StrEnum):
    """Whether forecasts kept their word."""

    TOO_FEW = "too few to judge"
    KEPT = "kept their word"
    TOO_HOPEFUL = "promised too much"
    TOO_GLOOMY = "promised too little"


def enough(outcomes: Sequence[Outcome]) -> bool:
    """Tell whether outcomes are enough to judge forecasts by.

    Example:
        >>> enough([Outcome(house="one", chance=0.9, closed=True)] * 1000)
        False
    """
    houses = {x.house for x in outcomes}
    closed = sum(x.closed for x in outcomes)
    return (
        len(outcomes) >= FEWEST_OUTCOMES
        and len(houses) >= FEWEST_HOUSES
        and min(closed, len(outcomes) - closed) >= FEWEST_EACH
    )


def verdict(outcomes: Sequence[Outcome], chance: float = USUAL) -> Verdict:
    """Return whether forecasts kept their word on the whole, or that it can't be told yet.

    References:
        Mean of closed less called, its spread taken between houses, against Student's t with one
        degree less than there are houses.
    """
    if not enough(outcomes):
        return Verdict.TOO_FEW
    off = fmean(x.closed - x.chance for x in outcomes)
    # Houses that happen to go all alike show no spread; the chances themselves say how much to
    # expect at the least.
    expected = fmean(x.chance * (1.0 - x.chance) for x in outcomes) / len(outcomes)
    u = max(_clustered_u(outcomes, lambda x: x.closed - x.chance), math.sqrt(expected))
    houses = len({x.house for x in outcomes})
    reach = t_quantile((1.0 + chance) / 2.0, houses - 1) * u
    if abs(off) <= reach:
        return Verdict.KEPT
    return Verdict.TOO_GLOOMY if off > 0.0 else Verdict.TOO_HOPEFUL


def reliability(outcomes: Iterable[Outcome], chance: float = USUAL) -> tuple[ReliabilityRow, ...]:
    """Return what came of forecasts, tenth by tenth of what was called.

    Args:
        outcomes: Forecasts and what came of them.
        chance: Chance of the intervals.

    Returns:
        A row for each tenth in which there was a forecast, the lowest first.
    """
    return tuple(_row(number, each, chance) for number, each in _by_tenth(outcomes))


def brier(outcomes: Sequence[Outcome]) -> Brier | None:
    """Return the score of forecasts and its parts; None of none.

    Example:
        >>> half = [Outcome(house="H", chance=0.5, closed=closed) for closed in (True, False)]
        >>> brier(half).score
        0.25
    """
    if not outcomes:
        return None
    count = len(outcomes)
    share = fmean(x.closed for x in outcomes)
    unreliable, told_apart, within = [], [], []
    for _, each in _by_tenth(outcomes):
        called, closed = fmean(x.chance for x in each), fmean(x.closed for x in each)
        unreliable.append(len(each) * (called - closed) ** 2)
        told_apart.append(len(each) * (closed - share) ** 2)
        within += [
            (x.chance - called) ** 2 - 2.0 * (x.chance - called) * (x.closed - closed) for x in each
        ]
    return Brier(
        score=fmean((x.chance - x.closed) ** 2 for x in outcomes),
        unreliable=math.fsum(unreliable) / count,
        told_apart=math.fsum(told_apart) / count,
        uncertain=share * (1.0 - share),
        within=math.fsum(within) / count,
    )


def wilson(share: float, count: float, z: float) -> Interval:
    """Return the interval of a share that was counted.

    Args:
        share: Share counted. 0 to 1.
        count: Of how many; need not be whole. > 0.
        z: How many standard uncertainties to either side.

    Example:
        >>> low, high = wilson(0.9, 10, 1.96)
        >>> round(low, 3), round(high, 3)
        (0.596, 0.982)
    """
    widened = 1.0 + z * z / count
    middle = (share + z * z / (2.0 * count)) / widened
    reach = z / widened * math.sqrt(share * (1.0 - share) / count + (z / (2.0 * count)) ** 2)
    return Interval(max(0.0, middle - reach), min(1.0, middle + reach))


def _by_tenth(outcomes: Iterable[Outcome]) -> list[tuple[int, list[Outcome]]]:
    rows: dict[int, list[Outcome]] = defaultdict(list)
    for outcome in outcomes:
        rows[min(BINS - 1, int(outcome.chance * BINS))].append(outcome)
    return sorted(rows.items())


def _row(number: int, outcomes: list[Outcome], chance: float) -> ReliabilityRow:
    share = fmean(x.closed for x in outcomes)
    z = NormalDist().inv_cdf((1.0 + chance) / 2.0)
    return ReliabilityRow(
        chances=Interval(number / BINS, (number + 1) / BINS),
        count=len(outcomes),
        houses=len({x.house for x in outcomes}),
        called=fmean(x.chance for x in outcomes),
        closed=share,
        wilson=wilson(share, len(outcomes), z),
        clustered=_clustered(outcomes, share, chance),
        is_enough=enough(outcomes),
    )


def _clustered(outcomes: list[Outcome], share: float, chance: float) -> Interval:
    """Return the interval of a share, its joints counted as what they are worth."""
    houses = len({x.house for x in outcomes})
    if houses < 2:
        return Interval(0.0, 1.0)
    single = share * (1.0 - share) / len(outcomes)
    if single == 0.0:
        # All went alike, so how alike joints of one house are can't be seen: each house is one.
        worth = float(houses)
    else:
        clustered = _clustered_u(outcomes, lambda x: x.closed) ** 2
        worth = len(outcomes) * (single / clustered if clustered > single else 1.0)
    return wilson(share, worth, t_quantile((1.0 + chance) / 2.0, houses - 1))


def _clustered_u(outcomes: Sequence[Outcome], value: Callable[[Outcome], float]) -> float:
    """Return the standard uncertainty of a mean over outcomes that go together house by house.

    References:
        u^2 = G / (G - 1) sum over G houses of (sum of its values less the mean)^2 / n^2.
    """
    middle = fmean(value(x) for x in outcomes)
    by_house: dict[str, float] = defaultdict(float)
    for outcome in outcomes:
        by_house[outcome.house] += value(outcome) - middle
    houses = len(by_house)
    squares = math.fsum(off * off for off in by_house.values())
    return math.sqrt(houses / (houses - 1) * squares) / len(outcomes)
