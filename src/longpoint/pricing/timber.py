"""How many sticks a job will take: nested for houses as they may come out."""

import math
import random
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.pricing.drawn_sizes import SizeDoubt, drawn_pieces
from longpoint.speech.said import say
from longpoint.sticks.effort import QUICK
from longpoint.sticks.plan import StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House

NESTS: Final = 30
"""So many houses are nested; a count of sticks hardly moves with more."""

Stick = tuple[str, float]
"""A profile and the length of a stick of it. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class TimberDraw:
    """What one imagined house takes.

    Attributes:
        sticks: How many of each stick are bought.
        without: Pieces that no stick was found for.
        cost: At the prices of the house; sticks without one count nothing.
    """

    sticks: Mapping[Stick, int]
    without: int
    cost: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Timber:
    """What a job takes, as far as can be told.

    Attributes:
        draws: Imagined houses, the cheapest first; by metres where no stick has a price.
        unpriced: Sticks that some house takes and that have no price.
    """

    draws: tuple[TimberDraw, ...]
    unpriced: tuple[Stick, ...] = ()

    @property
    def is_drawn(self) -> bool:
        """Tell whether the imagined houses differ at all."""
        return any(draw.sticks != self.draws[0].sticks for draw in self.draws)

    def at(self, chance: float) -> TimberDraw:
        """Return the house whose timber is enough with a chance.

        Args:
            chance: Above 0, to 1.
        """
        return self.draws[max(0, math.ceil(chance * len(self.draws)) - 1)]


def imagined_timber(
    pieces: Sequence[Piece],
    house: House,
    doubt: SizeDoubt | None,
    *,
    nests: int = NESTS,
    seed: int = 1,
) -> Timber:
    """Return what a job takes, over houses as they may come out.

    Args:
        pieces: Its pieces as drawn or read.
        house: Its profiles, sticks, offcuts, saw and crew.
        doubt: How far sizes will differ; None: they are read.
        nests: How many houses are nested. > 0
        seed: Of chance; the same gives the same.
    """
    prices = stick_prices(house)
    draws = []
    for number in range(nests):
        dice = random.Random(say("{seed} {number}", seed=seed, number=number))
        draws.append(_nested(drawn_pieces(pieces, house, doubt, dice), house, prices))
    draws.sort(key=lambda draw: (draw.cost, _metres(draw)))
    taken = {stick for draw in draws for stick in draw.sticks}
    return Timber(
        draws=tuple(draws),
        unpriced=tuple(sorted(stick for stick in taken if stick not in prices)),
    )


def stick_prices(house: House) -> Mapping[Stick, Decimal]:
    """Return the price of each stick that has one, the lowest where it stands twice."""
    found: dict[Stick, Decimal] = {}
    for stock in house.stock:
        if stock.price is not None:
            stick = (stock.profile, stock.length_mm)
            found[stick] = min(stock.price, found.get(stick, stock.price))
    return found


def _nested(pieces: tuple[Piece, ...], house: House, prices: Mapping[Stick, Decimal]) -> TimberDraw:
    plan = plan_sticks(pieces, house, effort=QUICK)
    sticks = Counter(
        (stick.profile, stick.length_mm)
        for stick in plan.sticks
        if stick.source is StickSource.STOCK
    )
    cost = sum(
        (prices.get(stick, Decimal(0)) * count for stick, count in sticks.items()), Decimal(0)
    )
    return TimberDraw(sticks=dict(sticks), without=len(plan.unplaced), cost=cost)


def _metres(draw: TimberDraw) -> float:
    return math.fsum(length_mm * count for (_, length_mm), count in draw.sticks.items())
