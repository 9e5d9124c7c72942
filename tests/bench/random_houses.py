"""Random houses of the sizes that the nester is measured at; the same for the same seed."""

import random
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.survey.house import House
from longpoint.survey.profiles import Offcut, Profile, Stock
from tests.random_sticks import STOCK_LENGTHS_MM, house_of, house_pieces, skirting_piece

_LEAST_OPENINGS, _MOST_OPENINGS = 34, 100
_BATCH_OPENINGS: Final = 36
_BATCH_RUNS: Final = 92


def random_house(seed: int) -> tuple[tuple[Piece, ...], House]:
    """Return 102 to 300 pieces of two to four profiles, five stock lengths and some offcuts each.

    Two in five profiles are reversible; three in four have prices, the others count metres.
    """
    draw = random.Random(seed)
    parts = _split(draw, draw.randint(_LEAST_OPENINGS, _MOST_OPENINGS), draw.randint(2, 4))
    pieces: list[Piece] = []
    profiles, stock, offcuts = list[Profile](), list[Stock](), list[Offcut]()
    for number, openings in enumerate(parts):
        name, width_mm = f"P{number}", float(draw.choice((57, 66, 90)))
        pieces += _renamed(
            house_pieces(1000 * seed + number, openings, width_mm=width_mm), name, f"{name}W"
        )
        profiles.append(
            Profile(name=name, width_mm=width_mm, thickness_mm=18.0, reversible=draw.random() < 0.4)
        )
        stock += _stock(draw, name, priced=draw.random() < 0.75)
        offcuts += [
            Offcut(profile=name, length_mm=round(draw.uniform(700, 2600)), count=draw.randint(1, 2))
            for _ in range(draw.randint(0, 3))
        ]
    house = replace(
        house_of(), profiles=tuple(profiles), stock=tuple(stock), offcuts=tuple(offcuts)
    )
    return tuple(pieces), house


def batch(houses: int) -> tuple[tuple[Piece, ...], House]:
    """Return a builder's houses planned as one: 200 pieces each, five stock lengths, no offcuts.

    A house has 108 pieces of one of two architraves, moulded 66 or plain (reversible) 90, and 92 of
    a moulded skirting.
    """
    pieces = list[Piece]()
    for seed in range(houses):
        name, width_mm = (("A66", 66.0), ("B90", 90.0))[seed % 2]
        drawn = house_pieces(5000 + seed, _BATCH_OPENINGS, width_mm=width_mm)
        pieces += _renamed(drawn, name, f"H{seed}{name}")
        pieces += _renamed(skirting_pieces(seed, _BATCH_RUNS), "SK", f"H{seed}SK")
    profiles = (
        Profile(name="A66", width_mm=66.0, thickness_mm=18.0, reversible=False),
        Profile(name="B90", width_mm=90.0, thickness_mm=18.0, reversible=True),
        Profile(name="SK", width_mm=95.0, thickness_mm=18.0, reversible=False),
    )
    stock = tuple(
        Stock(profile=profile.name, length_mm=length_mm)
        for profile in profiles
        for length_mm in STOCK_LENGTHS_MM
    )
    return tuple(pieces), replace(house_of(), profiles=profiles, stock=stock)


def skirting_pieces(seed: int, count: int) -> tuple[Piece, ...]:
    """Return runs of skirting, mitred at outer corners, to a square end or an inner corner else."""
    draw = random.Random(f"skirting {seed}")

    def end_deg() -> float:
        square = draw.random() < 0.4
        return 0.0 if square else draw.choice((45.0, -45.0)) + round(draw.uniform(-0.4, 0.4), 2)

    return tuple(
        skirting_piece(f"R{number}", draw.uniform(250.0, 4600.0), end_deg(), end_deg())
        for number in range(count)
    )


def _renamed(pieces: Sequence[Piece], profile: str, place: str) -> list[Piece]:
    return [
        replace(
            piece,
            mark=f"{place}{piece.mark}",
            opening=piece.opening and place,
            run=piece.run and place,
            profile=profile,
        )
        for piece in pieces
    ]


def _split(draw: random.Random, openings: int, parts: int) -> list[int]:
    """Return the openings of each profile, at least two of each."""
    cuts = sorted(draw.sample(range(2, openings - 2, 2), parts - 1))
    return [high - low for low, high in zip((0, *cuts), (*cuts, openings), strict=True)]


def _stock(draw: random.Random, profile: str, *, priced: bool) -> list[Stock]:
    rate = draw.uniform(1.5, 6.0)
    found = list[Stock]()
    for length_mm in STOCK_LENGTHS_MM:
        cents = round(length_mm / 1000 * rate * draw.uniform(0.92, 1.1) * 20) * 5
        price = Decimal(cents) / 100 if priced else None
        found.append(Stock(profile=profile, length_mm=length_mm, price=price, count=None))
    return found
