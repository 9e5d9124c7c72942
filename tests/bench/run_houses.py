"""Plan random houses of 102 to 300 pieces; how many are proved, how far the others are off.

    python -m tests.bench.run_houses [--houses 50] [--first 0] [--metres] [--at-once]
        [--out results.csv]

With `--at-once` the profiles of a house are planned by processes side by side, as `longpoint plan`
does; processor time is then that of this process alone. With `--metres` no stock has a price, so
that what is bought counts by its length. A gap is told as metres of the dearest stock of its
profile: one step of the stock is 0.3 m.
"""

import argparse
import csv
import statistics
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from longpoint.cli.profiles_at_once import at_once
from longpoint.solvers.installed import linear_solver
from longpoint.sticks.effort import QUICK
from longpoint.sticks.plan import Proof
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.sticks.profile_plan import ProfilePlanner, one_by_one
from longpoint.survey.house import House
from tests.bench.random_houses import random_house

_STEP_M: Final = 0.3
_TINY_M: Final = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """What came of one profile of one house.

    Attributes:
        house: Seed of the house.
        profile: Name of the profile.
        pieces: Its pieces.
        reversible: Whether they may be turned.
        cost: What the plan costs.
        bound: What any plan costs at least.
        unit: Unit of both.
        gap_m: What lies between, as metres of stock. [m]
        first_s: Time of the house's first plan, without a solver. [s]
        seconds: Time of its last plan. [s]
        cpu_seconds: The same on the processor. [s]
    """

    house: int
    profile: str
    pieces: int
    reversible: bool
    cost: float
    bound: float
    unit: str
    gap_m: float
    first_s: float
    seconds: float
    cpu_seconds: float


def main(arguments: Sequence[str]) -> None:
    """Plan what the command line asks for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("--houses", type=int, default=50)
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--metres", action="store_true")
    parser.add_argument("--at-once", action="store_true")
    parser.add_argument("--out", type=Path)
    chosen = parser.parse_args(arguments)
    rows = list[Planned]()
    for seed in range(chosen.first, chosen.first + chosen.houses):
        rows += planned_house(seed, chosen.metres, at_once if chosen.at_once else one_by_one)
    if chosen.out:
        with chosen.out.open("w", encoding="utf-8", newline="") as file:
            writer = csv.writer(file)
            writer.writerow(Planned.__slots__)
            writer.writerows([getattr(row, name) for name in Planned.__slots__] for row in rows)
    print("\n".join(summary(rows)))  # noqa: T201


def planned_house(seed: int, by_metres: bool, planner: ProfilePlanner) -> list[Planned]:
    """Plan one house, first in haste and then well."""
    pieces, house = random_house(seed)
    if by_metres:
        house = replace(house, stock=tuple(replace(entry, price=None) for entry in house.stock))
    began = time.perf_counter()
    plan_sticks(pieces, house, None, QUICK)
    first_s = time.perf_counter() - began
    began, cpu_began = time.perf_counter(), time.process_time()
    plan = plan_sticks(pieces, house, linear_solver(), planner=planner)
    took, cpu = time.perf_counter() - began, time.process_time() - cpu_began
    rows = [
        Planned(
            house=seed,
            profile=proof.profile,
            pieces=sum(piece.profile == proof.profile for piece in pieces),
            reversible=house.profile(proof.profile).reversible,
            cost=proof.cost,
            bound=proof.lower_bound,
            unit=proof.unit,
            gap_m=round(_gap_m(proof, house), 3),
            first_s=round(first_s, 3),
            seconds=round(took, 3),
            cpu_seconds=round(cpu, 3),
        )
        for proof in plan.proofs
    ]
    for row in rows:
        print(  # noqa: T201
            f"{row.house:3} {row.profile} {row.pieces:4} pieces"
            f" {'turned' if row.reversible else 'moulded':8}"
            f" {row.cost:9.2f} >= {row.bound:9.2f} {row.unit:5} gap {row.gap_m:.3f} m;"
            f" first {row.first_s:.2f} s, last {row.seconds:.2f} s ({row.cpu_seconds:.2f} s CPU)",
            flush=True,
        )
    return rows


def _gap_m(proof: Proof, house: House) -> float:
    missing = proof.cost - proof.lower_bound
    if proof.unit == "m":
        return missing
    ours = [entry for entry in house.stock if entry.profile == proof.profile]
    return missing / max(float(entry.price or 0) / (entry.length_mm / 1000) for entry in ours)


def summary(rows: Sequence[Planned]) -> list[str]:
    """Return the lines that say what came of all houses."""
    by_house: dict[int, list[Planned]] = {}
    for row in rows:
        by_house.setdefault(row.house, []).append(row)
    took = [house[0].seconds for house in by_house.values()]
    cpu = [house[0].cpu_seconds for house in by_house.values()]
    first = [house[0].first_s for house in by_house.values()]
    proved = sum(all(row.gap_m <= _TINY_M for row in house) for house in by_house.values())
    return [
        f"{len(by_house)} houses, plan = bound in {proved} ({100 * proved / len(by_house):.0f} %)",
        *(
            _of_profiles(kind, those)
            for kind, those in (
                ("profiles", rows),
                ("by metres", [row for row in rows if row.unit == "m"]),
                ("by price", [row for row in rows if row.unit != "m"]),
            )
            if those
        ),
        f"first plan {statistics.median(first):.2f} s median, {max(first):.2f} s worst",
        f"last plan {statistics.median(took):.2f} s median, {max(took):.2f} s worst;"
        f" CPU {statistics.median(cpu):.2f} s median, {max(cpu):.2f} s worst",
    ]


def _of_profiles(kind: str, rows: Sequence[Planned]) -> str:
    """Return how many of some profiles are proved, and how far the others are off."""
    return (
        f"{len(rows)} {kind}, plan = bound in {sum(row.gap_m <= _TINY_M for row in rows)},"
        f" more than one step of 0.3 m above in {sum(r.gap_m > _STEP_M + _TINY_M for r in rows)},"
        f" largest gap {max(row.gap_m for row in rows):.2f} m"
    )


if __name__ == "__main__":
    main(sys.argv[1:])
