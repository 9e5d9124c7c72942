"""The sticks that are to be bought, counted by profile and length, with their prices."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from longpoint.house_plan import HousePlan
from longpoint.sheets.spare_block import bought_spares
from longpoint.speech.said import say
from longpoint.sticks.order_lines import cheapest
from longpoint.sticks.plan import StickSource
from longpoint.survey.house import House


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """Sticks of one profile and length.

    Attributes:
        each: Price of one of them; None: none was given.
        is_spare: True for sticks bought in case a piece has to be cut again.
    """

    profile: str
    length_mm: float
    count: int
    each: Decimal | None
    is_spare: bool = False

    @property
    def price(self) -> Decimal | None:
        """Price of all of them."""
        return None if self.each is None else self.each * self.count


def bought(plan: HousePlan) -> tuple[Bought, ...]:
    """Return what has to be bought, by profile, spares last, the longest sticks first."""
    counted = Counter(
        (stick.profile, False, stick.length_mm)
        for stick in plan.cut_plan.sticks
        if stick.source is StickSource.STOCK
    )
    for profile, length_mm, count in bought_spares(plan.spares):
        counted[profile, True, length_mm] += count
    return tuple(
        Bought(
            profile=profile,
            length_mm=length_mm,
            count=count,
            each=price_of(plan.house, profile, length_mm),
            is_spare=is_spare,
        )
        for (profile, is_spare, length_mm), count in sorted(
            counted.items(), key=lambda item: (*item[0][:2], -item[0][2])
        )
    )


def price_words(each: Decimal) -> str:
    """Return the price of one stick, to the thousandth where it has one: sums are of that."""
    if each % Decimal("0.01"):
        return say("{each:.3f}", each=each)
    return say("{each:.2f}", each=each)


def money_of(rows: Iterable[Bought]) -> tuple[Decimal, bool]:
    """Return what the priced sticks come to, and whether every stick has a price."""
    prices = [row.price for row in rows]
    known = [price for price in prices if price is not None]
    return sum(known, Decimal(0)), len(known) == len(prices)


def price_of(house: House, profile: str, length_mm: float) -> Decimal | None:
    """Return the price of one stick; None where none was given."""
    found = cheapest(house, profile, length_mm)
    return found.price if found else None
