"""What a street's summary says of each house, read from the plan that its sheets were made with."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, Final

from longpoint.errors import Severity
from longpoint.quantities.length import Units
from longpoint.sticks.plan import StickSource

STREET_FORMAT: Final = "longpoint-street/1"

Document = dict[str, Any]


class HouseState(StrEnum):
    """How far a house of the street came."""

    READY = "ready"
    HELD = "held"
    """Planned, but some of its places are held back."""
    REFUSED = "refused"
    """Not planned: its file can't be used."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ProfileRow:
    """What a house, or the street, takes of one profile.

    Attributes:
        profile: Name of the profile.
        unit: "price" or "m": what cost and bound are in.
        pieces: Pieces laid on sticks.
        buys: How many new sticks, by length [mm], the longest first.
        offcuts: Sticks that are on a rack already.
        cost: What the new sticks cost.
        lower_bound: No plan costs less than this, each house by itself.
        houses: How many houses it is of.
        proved: In how many of them no plan costs less.
    """

    profile: str
    unit: str
    pieces: int
    buys: tuple[tuple[float, int], ...]
    offcuts: int
    cost: float
    lower_bound: float
    houses: int = 1
    proved: int

    @property
    def sticks(self) -> int:
        """How many new sticks are bought."""
        return sum(count for _, count in self.buys)


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseRow:
    """One house of a street.

    Attributes:
        file: Name of its file.
        folder: Name of the folder with its sheets.
        house: Its name; empty where the file can't be read.
        state: How far it came.
        units: Unit in which it was read.
        readings_code: Code of the readings that it was planned from; empty where it wasn't.
        pieces: How many pieces it has.
        held: Places that are held back.
        profiles: What it takes of each profile.
        all_fit: Chance that all its openings fit, by the forecast; None: no forecast.
        refusal: The three sentences of a refusal; empty where it was planned.
    """

    file: str
    folder: str
    house: str = ""
    state: HouseState
    units: Units = Units.MM
    readings_code: str = ""
    pieces: int = 0
    held: tuple[str, ...] = ()
    profiles: tuple[ProfileRow, ...] = ()
    all_fit: float | None = None
    refusal: tuple[str, ...] = ()


def refused_row(file: str, folder: str, sentences: Sequence[str]) -> HouseRow:
    """Return the row of a house that couldn't be planned.

    Args:
        file: Name of its file.
        folder: Name of the folder that its sheets would have gone to.
        sentences: What was read, what is wrong, what to do.
    """
    return HouseRow(file=file, folder=folder, state=HouseState.REFUSED, refusal=tuple(sentences))


def house_row(file: str, folder: str, units: Units, plan: Mapping[str, Any]) -> HouseRow:
    """Return the row of a house that was planned.

    Args:
        file: Name of its file.
        folder: Name of the folder with its sheets.
        units: Unit in which it was read.
        plan: The document of `plan.json`.
    """
    stops = [f["place"] for f in plan["findings"] if f["severity"] == Severity.STOP.value]
    held = tuple(dict.fromkeys(stops))
    forecast = plan["forecast"]
    return HouseRow(
        file=file,
        folder=folder,
        house=plan["house"],
        state=HouseState.HELD if held else HouseState.READY,
        units=units,
        readings_code=plan["readings_code"],
        pieces=len(plan["pieces"]),
        held=held,
        profiles=tuple(_profile(proof, plan["sticks"]) for proof in plan["proof"]),
        all_fit=forecast["all_fit"] if forecast else None,
    )


def street_units(houses: Iterable[HouseRow]) -> Units:
    """Return the unit of a street's sheet: inches where every planned house was read in inches."""
    units = {row.units for row in houses if row.state is not HouseState.REFUSED}
    return units.pop() if len(units) == 1 else Units.MM


def profile_totals(houses: Iterable[HouseRow]) -> tuple[ProfileRow, ...]:
    """Return what the street takes of each profile, in the order in which they are met.

    Profiles of one name are taken as one, save that prices and metres aren't added up.
    """
    rows: dict[tuple[str, str], list[ProfileRow]] = {}
    for house in houses:
        for row in house.profiles:
            rows.setdefault((row.profile, row.unit), []).append(row)
    return tuple(_sum(ours) for ours in rows.values())


def longest_first(counted: Mapping[float, int]) -> tuple[tuple[float, int], ...]:
    """Return counted lengths, the longest first.

    Example:
        >>> longest_first({4200.0: 2, 5400.0: 1})
        ((5400.0, 1), (4200.0, 2))
    """
    return tuple(sorted(counted.items(), key=lambda item: -item[0]))


def _profile(proof: Mapping[str, Any], sticks: Sequence[Mapping[str, Any]]) -> ProfileRow:
    ours = [stick for stick in sticks if stick["profile"] == proof["profile"]]
    new = [stick for stick in ours if stick["source"] == StickSource.STOCK.value]
    return ProfileRow(
        profile=proof["profile"],
        unit=proof["unit"],
        pieces=sum(len(stick["laid"]) for stick in ours),
        buys=longest_first(Counter(stick["length_mm"] for stick in new)),
        offcuts=len(ours) - len(new),
        cost=proof["cost"],
        lower_bound=proof["lower_bound"],
        proved=int(proof["optimal"]),
    )


def _sum(rows: Sequence[ProfileRow]) -> ProfileRow:
    buys: Counter[float] = Counter()
    for row in rows:
        buys.update(dict(row.buys))
    return ProfileRow(
        profile=rows[0].profile,
        unit=rows[0].unit,
        pieces=sum(row.pieces for row in rows),
        buys=longest_first(buys),
        offcuts=sum(row.offcuts for row in rows),
        cost=_hundredths(row.cost for row in rows),
        lower_bound=_hundredths(row.lower_bound for row in rows),
        houses=sum(row.houses for row in rows),
        proved=sum(row.proved for row in rows),
    )


def _hundredths(values: Iterable[float]) -> float:
    return round(sum(values), 2) + 0.0
