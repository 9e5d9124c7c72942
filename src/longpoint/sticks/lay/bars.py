"""The sticks that can be opened for one profile, in whole hundredths, with whole costs."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from longpoint.sticks.lay.demand import PER_MM, round_down, round_up
from longpoint.sticks.plan import StickSource
from longpoint.survey.instruments import Saw
from longpoint.survey.profiles import Offcut, Stock

PER_METRE: Final = 1000 * PER_MM


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One length that can be taken, once or more often.

    Attributes:
        length: Length of the stick, rounded down. [0.01 mm]
        length_mm: Length as written. [mm]
        trim: Lost at each of its two ends. [0.01 mm]
        cost: Cost of one, in the whole units of `Bars`; 0 for an offcut.
        count: How many there are; None: as many as needed.
        source: New stock or an offcut.
    """

    length: int
    length_mm: float
    trim: int
    cost: int
    count: int | None
    source: StickSource

    @property
    def room(self) -> int:
        """Length between the trims. [0.01 mm]"""
        return self.length - 2 * self.trim


@dataclass(frozen=True, slots=True, kw_only=True)
class Bars:
    """Every length of one profile, offcuts first, shortest first.

    Attributes:
        bars: The lengths.
        unit: "price", or "m" where the price of any length is missing.
        per_unit: Whole cost units in one unit of money or one metre.
    """

    bars: tuple[Bar, ...]
    unit: str
    per_unit: int

    @property
    def step(self) -> int:
        """Every cost is a multiple of this. > 0."""
        return math.gcd(*(bar.cost for bar in self.bars)) or 1

    @property
    def longest_room(self) -> int:
        """The longest length between trims, 0 when there is no stick. [0.01 mm]"""
        return max((bar.room for bar in self.bars), default=0)


def bars_of(profile: str, stock: Sequence[Stock], offcuts: Sequence[Offcut], saw: Saw) -> Bars:
    """Return the sticks of one profile.

    A new stick loses the saw's end trim, and at least one kerf, at both ends; an offcut one kerf
    per end.
    """
    ours = [entry for entry in stock if entry.profile == profile and entry.count != 0]
    prices = [entry.price for entry in ours if entry.price is not None]
    priced = bool(ours) and len(prices) == len(ours)
    per_unit = _decimal_scale(prices) if priced else PER_METRE
    kerf = round_up(saw.kerf_mm)
    new = [
        Bar(
            length=round_down(entry.length_mm),
            length_mm=entry.length_mm,
            trim=max(round_up(saw.end_trim_mm), kerf),
            cost=_whole_cost(entry, per_unit, priced=priced),
            count=entry.count,
            source=StickSource.STOCK,
        )
        for entry in ours
    ]
    kept = [
        Bar(
            length=round_down(entry.length_mm),
            length_mm=entry.length_mm,
            trim=kerf,
            cost=0,
            count=entry.count,
            source=StickSource.OFFCUT,
        )
        for entry in offcuts
        if entry.profile == profile and entry.count > 0
    ]
    return Bars(
        bars=(*sorted(kept, key=_shortest_first), *sorted(new, key=_shortest_first)),
        unit="price" if priced else "m",
        per_unit=per_unit,
    )


def _shortest_first(bar: Bar) -> tuple[int, int, bool, int]:
    return (bar.length, bar.cost, bar.count is None, bar.count or 0)


def _decimal_scale(prices: Sequence[Decimal]) -> int:
    places = [price.as_tuple().exponent for price in prices]
    return int(10 ** max([0, *(-place for place in places if isinstance(place, int))]))


def _whole_cost(entry: Stock, per_unit: int, *, priced: bool) -> int:
    if priced and entry.price is not None:
        return int(entry.price * per_unit)
    return round_up(entry.length_mm)
