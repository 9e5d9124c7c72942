"""What is believed of an error that stays the same, and how every finished frame changes it.

The belief is about two things at once: how far out the saw (or tape) is on the mean, and how much
that differs from frame to frame. With few frames it leans on what saws are usually out by; with
many on the crew's own work.

References:
    The conjugate normal-inverse-gamma belief (any textbook of Bayesian statistics, from memory):
    spread^2 ~ inverse gamma (a, b), mean given the spread ~ normal (mean, spread^2 / k).
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, NamedTuple

from longpoint.errors import QuantityError
from longpoint.forecast.learning.student import t_quantile
from longpoint.speech.said import say

PRIOR_A: Final = 2.5
PRIOR_WIDENING: Final = 1.3
"""Wide on purpose: with a = 3 and b matched to the mean spread, intervals meant to hold 90 times in
100 held 85 after one frame of drawn crews. Ours."""

USUAL: Final = 0.9
"""Chance to which intervals are given where none is named."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Prior:
    """What is believed before the first frame.

    Attributes:
        mean_sd: How far out crews usually are on the mean. > 0.
        spread: How much it usually differs from frame to frame. > 0.
        mean: Where it lies on the mean.
    """

    mean_sd: float
    spread: float
    mean: float = 0.0

    def __post_init__(self) -> None:
        sizes = (self.mean_sd, self.spread)
        if not (all(0.0 < x < math.inf for x in sizes) and math.isfinite(self.mean)):
            raise QuantityError(
                say(
                    "A usual error of {mean_sd:g} that differs by {spread:g}.",
                    mean_sd=self.mean_sd,
                    spread=self.spread,
                ),
                say("Both must be more than 0."),
                say("Leave them out for the usual figures."),
            )


class Weighed(NamedTuple):
    """One frame's value, and how much it counts: 1 for a full frame, less where less was read."""

    value: float
    weight: float = 1.0


class Interval(NamedTuple):
    """Between which values something lies, with a given chance."""

    lowest: float
    highest: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Belief:
    """What is believed of one error.

    Attributes:
        mean: Its likeliest size.
        k: How many frames the mean is worth.
        a: Half the degrees of freedom of the spread.
        b: Half the sum of squares behind the spread.
    """

    mean: float
    k: float
    a: float
    b: float

    @property
    def dof(self) -> float:
        """Degrees of freedom of both Student t's."""
        return 2.0 * self.a

    @property
    def mean_scale(self) -> float:
        """Scale of the Student t of the mean."""
        return math.sqrt(self.b / (self.a * self.k))

    @property
    def mean_u(self) -> float:
        """Standard uncertainty of the mean."""
        return math.sqrt(self.b / ((self.a - 1.0) * self.k))

    @property
    def spread(self) -> float:
        """How much frames differ from each other, root of the mean square."""
        return math.sqrt(self.b / (self.a - 1.0))

    @property
    def next_scale(self) -> float:
        """Scale of the Student t of the next frame."""
        return math.sqrt(self.b * (self.k + 1.0) / (self.a * self.k))

    def mean_within(self, chance: float = USUAL) -> Interval:
        """Return between which values the mean lies with a given chance."""
        return self._within(self.mean_scale, chance)

    def next_within(self, chance: float = USUAL) -> Interval:
        """Return between which values the next frame lies with a given chance.

        Example:
            >>> start = belief_of(Prior(mean_sd=0.1, spread=0.02))
            >>> start.next_within(0.9)
            Interval(lowest=-0.23, highest=0.23)
        """
        return self._within(self.next_scale, chance)

    def updated(self, values: Iterable[Weighed]) -> "Belief":
        """Return what is believed after one more frame or many.

        All at once or one after the other, in any order, comes to the same.

        Example:
            >>> start = belief_of(Prior(mean_sd=0.1, spread=0.1))  # worth one frame at 0
            >>> round(start.updated([Weighed(0.12)]).mean, 3)
            0.06
        """
        seen = tuple(values)
        weight = math.fsum(x.weight for x in seen)
        if weight == 0.0:
            return self
        middle = math.fsum(x.weight * x.value for x in seen) / weight
        inside = math.fsum(x.weight * (x.value - middle) ** 2 for x in seen)
        between = self.k * weight / (self.k + weight) * (middle - self.mean) ** 2
        return Belief(
            mean=(self.k * self.mean + weight * middle) / (self.k + weight),
            k=self.k + weight,
            a=self.a + len(seen) / 2.0,
            b=self.b + (inside + between) / 2.0,
        )

    def _within(self, scale: float, chance: float) -> Interval:
        reach = scale * t_quantile((1.0 + chance) / 2.0, self.dof)
        return Interval(self.mean - reach, self.mean + reach)


def belief_of(prior: Prior) -> Belief:
    """Return what is believed before the first frame.

    Example:
        >>> start = belief_of(Prior(mean_sd=0.1, spread=0.02))
        >>> round(start.k, 4), start.a, round(start.b, 4)
        (0.04, 2.5, 0.0013)

    References:
        k = (spread / mean_sd)^2 frames are worth the same as what is known of the mean beforehand.
    """
    return Belief(
        mean=prior.mean,
        k=(prior.spread / prior.mean_sd) ** 2,
        a=PRIOR_A,
        b=PRIOR_WIDENING * PRIOR_A * prior.spread**2,
    )
