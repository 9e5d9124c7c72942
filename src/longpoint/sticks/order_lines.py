"""What to ask of each supplier: profile by length by count, spares included."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from longpoint.survey.house import House
from longpoint.survey.profiles import Profile, Stock

SAME_MM = 0.01
"""Two lengths that differ by less are one; a plan file keeps hundredths."""

Counts = Mapping[tuple[str, float], int]
"""How many sticks, by name of the profile and length [mm]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderLine:
    """One line of an order.

    Attributes:
        profile: What is ordered.
        length_mm: Length of a stick. > 0. [mm]
        count: How many in all. > 0.
        spares: How many of these are spares. 0 to count.
        supplier: Who sells it; may be empty.
        code: The supplier's own code for it; may be empty.
        price: Price of one stick as the house file has it; None: not known.
    """

    profile: Profile
    length_mm: float
    count: int
    spares: int = 0
    supplier: str = ""
    code: str = ""
    price: Decimal | None = None

    @property
    def running_mm(self) -> float:
        """All its sticks end to end. [mm]"""
        return self.length_mm * self.count

    @property
    def total(self) -> Decimal | None:
        """What they come to; None where the price isn't known."""
        return None if self.price is None else self.price * self.count


def order_lines(house: House, needed: Counts, spares: Counts) -> tuple[OrderLine, ...]:
    """Return the lines of an order, supplier by supplier, the longest stick of a profile first.

    A stick that several sell goes to the one that asks least for it; a counted entry that is used
    up isn't looked at, since a merchant's list is no promise.

    Args:
        house: Its profiles, and its stock with suppliers and prices.
        needed: The sticks that the plan cuts up.
        spares: The sticks on top of these.

    Example:
        >>> from longpoint.survey.house_file import read_house
        >>> stock = [{"profile": "A", "length": 5400, "price": "14.60", "supplier": "Harrow"}]
        >>> house = read_house(
        ...     {
        ...         "format": "longpoint-house/1",
        ...         "name": "Wren House",
        ...         "stock": stock,
        ...         "profiles": {"A": {"face": 57, "thickness": 18}},
        ...     }
        ... ).house
        >>> (line,) = order_lines(house, {("A", 5400.0): 7}, {("A", 5400.0): 1})
        >>> line.supplier, line.count, line.spares, line.total
        ('Harrow', 8, 1, Decimal('116.80'))
    """
    profiles = {profile.name: profile for profile in house.profiles}
    lines = []
    for name, length_mm in dict.fromkeys((*needed, *spares)):
        spare = spares.get((name, length_mm), 0)
        count = needed.get((name, length_mm), 0) + spare
        if not count:
            continue
        entry = cheapest(house, name, length_mm) or Stock(profile=name, length_mm=length_mm)
        lines.append(
            OrderLine(
                profile=profiles[name],
                length_mm=length_mm,
                count=count,
                spares=spare,
                supplier=entry.supplier,
                code=entry.code,
                price=entry.price,
            )
        )
    return tuple(
        sorted(lines, key=lambda line: (line.supplier, line.profile.name, -line.length_mm))
    )


def cheapest(house: House, profile: str, length_mm: float) -> Stock | None:
    """Return the entry of the stock list that gives a stick for the least; None: there is none."""
    found = [
        stock
        for stock in house.stock
        if stock.profile == profile and abs(stock.length_mm - length_mm) < SAME_MM
    ]
    priced = [stock for stock in found if stock.price is not None]
    return min(priced or found, key=lambda stock: stock.price or Decimal(0), default=None)


def by_supplier(lines: tuple[OrderLine, ...]) -> dict[str, tuple[OrderLine, ...]]:
    """Return the lines of each supplier, under its name."""
    found: dict[str, tuple[OrderLine, ...]] = {}
    for line in lines:
        found[line.supplier] = (*found.get(line.supplier, ()), line)
    return found
