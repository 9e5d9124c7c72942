"""Plan random houses of several profiles with mixed prices and offcuts; how many are proved.

python -m tests.bench.run_houses [--houses 50] [--out results.csv]
"""

import argparse
import csv
import random
import statistics
import sys
import time
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

from longpoint.pieces.piece import Piece
from longpoint.solvers import linear_solver
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from longpoint.survey.profiles import Offcut, Profile, Stock
from tests.random_sticks import STOCK_LENGTHS_MM, house_of, house_pieces


def random_house(seed: int) -> tuple[tuple[Piece, ...], House]:
    """Return pieces of two to four profiles, and a house with prices and offcuts for them."""
    draw = random.Random(seed)
    pieces: list[Piece] = []
    profiles, stock, offcuts = list[Profile](), list[Stock](), list[Offcut]()
    for number in range(draw.randint(2, 4)):
        name, width_mm = f"P{number}", float(draw.choice((57, 66, 90)))
        openings = draw.choice((4, 8, 12, 20, 36))
        drawn = house_pieces(1000 * seed + number, openings, width_mm=width_mm)
        pieces += [
            replace(piece, mark=f"{name}{piece.mark}", opening=f"{name}W", profile=name)
            for piece in drawn
        ]
        profiles.append(
            Profile(name=name, width_mm=width_mm, thickness_mm=18.0, reversible=draw.random() < 0.4)
        )
        rate, priced = draw.uniform(1.5, 6.0), draw.random() < 0.75
        lengths_mm = sorted(draw.sample(STOCK_LENGTHS_MM, draw.randint(2, 5)))
        for length_mm in lengths_mm:
            cents = round(length_mm / 1000 * rate * draw.uniform(0.92, 1.1) * 20) * 5
            price = Decimal(cents) / 100 if priced else None
            stock.append(Stock(profile=name, length_mm=length_mm, price=price, count=None))
        offcuts += [
            Offcut(profile=name, length_mm=round(draw.uniform(700, 2600)), count=draw.randint(1, 2))
            for _ in range(draw.randint(0, 3))
        ]
    house = replace(
        house_of(), profiles=tuple(profiles), stock=tuple(stock), offcuts=tuple(offcuts)
    )
    return tuple(pieces), house


def main(arguments: Sequence[str]) -> None:
    """Plan what the command line asks for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("--houses", type=int, default=50)
    parser.add_argument("--out", type=Path)
    chosen = parser.parse_args(arguments)
    took, rows = list[float](), list[tuple[object, ...]]()
    for seed in range(chosen.houses):
        pieces, house = random_house(seed)
        began = time.perf_counter()
        plan = plan_sticks(pieces, house, linear_solver())
        took.append(time.perf_counter() - began)
        for proof in plan.proofs:
            count = sum(piece.profile == proof.profile for piece in pieces)
            rows.append(
                (
                    seed,
                    proof.profile,
                    count,
                    proof.unit,
                    proof.cost,
                    proof.lower_bound,
                    proof.optimal,
                    round(took[-1], 2),
                )
            )
            print(*rows[-1], flush=True)  # noqa: T201
    if chosen.out:
        with chosen.out.open("w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows(rows)
    proved = {row[0] for row in rows} - {row[0] for row in rows if not row[6]}
    gaps = [float(str(row[4])) / float(str(row[5])) - 1.0 for row in rows if not row[6]]
    print(  # noqa: T201
        f"{chosen.houses} houses, {len(proved)} proved; {len(rows)} profiles,"
        f" {len(rows) - len(gaps)} proved, largest gap {100 * max(gaps, default=0.0):.2f} %;"
        f" {statistics.median(took):.2f} s median, {max(took):.2f} s worst"
    )


if __name__ == "__main__":
    main(sys.argv[1:])
