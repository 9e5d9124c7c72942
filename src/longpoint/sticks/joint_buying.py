"""Sticks for several houses bought together: what that saves, at most and at least.

Pieces of different houses may lie on one stick, so fewer ends are left over. It is a comparison:
what each house buys by itself is planned already, and put together that is a plan for all of them
as well. So buying together never costs more, and where the search finds nothing better, it says so.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.linear.port import LinearSolver
from longpoint.pieces.piece import Piece
from longpoint.speech.said import joined, say
from longpoint.sticks.effort import STANDARD, Effort
from longpoint.sticks.plan import CutStick, StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from longpoint.survey.profiles import Profile

MOST_PIECES: Final = 300
"""Houses are put together while they have no more pieces of a profile: a few seconds of search.
Of 450 it took six times as long."""

_TINY: Final = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Alone:
    """What a house buys of one profile by itself.

    Attributes:
        cost: What it costs.
        unit: "price" or "m".
        buys: How many new sticks, by length [mm].
    """

    cost: float
    unit: str
    buys: Mapping[float, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchHouse:
    """One house of a delivery batch.

    Attributes:
        name: Its name in front of its pieces' marks; no other house has it.
        house: The house, for its profiles, stock, offcuts and saw.
        pieces: The pieces that lie on sticks in its own plan.
        alone: What it buys by itself, by profile.
    """

    name: str
    house: House
    pieces: tuple[Piece, ...]
    alone: Mapping[str, Alone]


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """Houses that can be bought for together: one section, one list of stock, one saw's losses.

    Attributes:
        profile: The section.
        house: A house of that name's stock and saw, with the offcuts of all.
        names: Names of the houses.
        pieces: Their pieces, each mark with its house's name in front.
        apart: What they cost, each by itself.
        unit: "price" or "m".
        buys_apart: How many new sticks they buy, each by itself, by length [mm].
    """

    profile: str
    house: House
    names: tuple[str, ...]
    pieces: tuple[Piece, ...]
    apart: float
    unit: str
    buys_apart: Mapping[float, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """What buying together comes to.

    Attributes:
        profile: Name of the profile.
        names: Names of the houses.
        pieces: How many pieces they have of it.
        unit: "price" or "m".
        apart: What they cost, each by itself.
        buys_apart: How many new sticks that is, by length [mm].
        together: What they cost together; never more than apart.
        buys: How many new sticks that is, by length [mm].
        lower_bound: No plan for all of them costs less.
        sticks: The sticks, their pieces named with their house; empty where nothing is saved.
        left_out: Why nothing was compared; empty where it was.
    """

    profile: str
    names: tuple[str, ...]
    pieces: int
    unit: str
    apart: float
    buys_apart: Mapping[float, int]
    together: float
    buys: Mapping[float, int]
    lower_bound: float
    sticks: tuple[CutStick, ...] = ()
    left_out: str = ""

    @property
    def saves(self) -> float:
        """What is saved, in its unit. >= 0."""
        return self.apart - self.together

    @property
    def is_proved(self) -> bool:
        """True when no plan for all of them costs less."""
        return not self.left_out and self.together <= self.lower_bound + _TINY


def batches(houses: Sequence[BatchHouse]) -> tuple[Batch, ...]:
    """Return which houses are bought for together, profile by profile; two at least.

    Houses go together whose section is the same to the last figure, with the same stock at the
    same prices, and whose saw takes as much off; in their order, while they have no more than
    `MOST_PIECES` pieces. Offcuts are taken as different ones in each house.

    Args:
        houses: The houses of a street, names unique.
    """
    groups: dict[tuple[object, ...], list[BatchHouse]] = {}
    for house in houses:
        for name in house.alone:
            profile = house.house.profile(name)
            groups.setdefault(_kind(profile, house.house), []).append(house)
    return tuple(
        _batch(kind[0].name, load)
        for kind, ours in groups.items()
        if isinstance(kind[0], Profile)
        for load in _loads(kind[0].name, ours)
        if len(load) > 1
    )


def buy_together(
    batch: Batch, solver: LinearSolver | None = None, effort: Effort = STANDARD
) -> Joint:
    """Return what the houses of a batch buy together, beside what each buys by itself.

    Args:
        batch: The houses.
        solver: Solves the programmes of the search; None: the built-in search alone.
        effort: Limits of the search, as counts.
    """
    if any(entry.count is not None for entry in batch.house.stock):
        return left_out(
            batch,
            say(
                "its stock is counted, and a house file doesn't say whether the houses "
                "share the count"
            ),
        )
    plan = plan_sticks(batch.pieces, batch.house, solver, effort)
    if plan.unplaced:
        return left_out(
            batch,
            say(
                "no stick was found for {unplaced}",
                unplaced=joined(", ", plan.unplaced),
            ),
        )
    (proof,) = plan.proofs
    apart = left_out(batch, "")
    if proof.cost > batch.apart - _TINY:
        return replace(apart, lower_bound=min(proof.lower_bound, batch.apart))
    return replace(
        apart,
        together=proof.cost,
        buys=Counter(s.length_mm for s in plan.sticks if s.source is StickSource.STOCK),
        lower_bound=proof.lower_bound,
        sticks=plan.sticks,
    )


def left_out(batch: Batch, reason: str) -> Joint:
    """Return that a batch is bought house by house, and why; no reason: nothing is saved.

    Args:
        batch: The houses.
        reason: Words that follow "since".
    """
    return Joint(
        profile=batch.profile,
        names=batch.names,
        pieces=len(batch.pieces),
        unit=batch.unit,
        apart=batch.apart,
        buys_apart=batch.buys_apart,
        together=batch.apart,
        buys=batch.buys_apart,
        lower_bound=0.0,
        left_out=reason,
    )


def _loads(profile: str, houses: Sequence[BatchHouse]) -> list[list[BatchHouse]]:
    """Return the houses in their order, as many together as are searched in good time."""
    loads: list[list[BatchHouse]] = []
    room = 0
    for house in houses:
        pieces = sum(piece.profile == profile for piece in house.pieces)
        if not loads or pieces > room:
            loads.append([])
            room = MOST_PIECES
        loads[-1].append(house)
        room -= pieces
    return loads


def _kind(profile: Profile, house: House) -> tuple[object, ...]:
    stock = [(s.length_mm, s.price, s.count) for s in house.stock if s.profile == profile.name]
    ordered = tuple(sorted(stock, key=str))
    return (profile, ordered, house.saw.kerf_mm, house.saw.end_trim_mm)


def _batch(profile: str, ours: Sequence[BatchHouse]) -> Batch:
    first = ours[0].house
    house = replace(
        first,
        name=profile,
        profiles=(first.profile(profile),),
        stock=tuple(s for s in first.stock if s.profile == profile),
        offcuts=tuple(o for each in ours for o in each.house.offcuts if o.profile == profile),
        openings=(),
        rooms=(),
        runs=(),
        trims=(),
        held=(),
    )
    alone = [each.alone[profile] for each in ours]
    buys: Counter[float] = Counter()
    for one in alone:
        buys.update(one.buys)
    return Batch(
        profile=profile,
        house=house,
        names=tuple(each.name for each in ours),
        pieces=tuple(
            _named(piece, each.name)
            for each in ours
            for piece in each.pieces
            if piece.profile == profile
        ),
        apart=round(sum(one.cost for one in alone), 2),
        unit=alone[0].unit,
        buys_apart=buys,
    )


def _named(piece: Piece, house: str) -> Piece:
    """Return a piece under its house's name, its opening or run as well."""
    return replace(
        piece,
        mark=f"{house}/{piece.mark}",
        opening=f"{house}/{piece.place}",
        run=None,
        trim=None,
    )
