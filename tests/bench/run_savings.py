"""What laying by true leans saves against rectangles over the long points, house by house.

    python -m tests.bench.run_savings [--houses 5]

108 pieces a house, five stock lengths, price = length, kerf 2.5, end trim 10. Mitres are up to 0.4
degrees off 45, as in a real house.
"""

import argparse
import statistics
import sys
from collections.abc import Sequence
from dataclasses import replace

from longpoint.pieces.piece import Piece
from longpoint.solvers.installed import linear_solver
from longpoint.sticks.effort import STANDARD
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from tests.bench.random_houses import skirting_pieces
from tests.bench.rectangles import planned_as_rectangles
from tests.random_sticks import house_of, house_pieces

_PIECES = 108


def main(arguments: Sequence[str]) -> None:
    """Plan what the command line asks for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("--houses", type=int, default=5)
    chosen = parser.parse_args(arguments)
    lines = [
        "| section | saved, least to most | mean | plans = bound | rectangles' bound above our plan"
        " | waste over net length |",
        "|---|---|---|---|---|---|",
    ]
    seeds = range(100, 100 + chosen.houses)
    for width_mm in (66.0, 90.0):
        houses = [_architrave(seed, width_mm, reversible=True) for seed in seeds]
        lines.append(_line(f"reversible, face {width_mm:g}", houses))
    houses = [_architrave(seed, 66.0, reversible=False) for seed in seeds]
    lines.append(_line("moulded casing, face 66", houses))
    houses = [(skirting_pieces(seed, _PIECES), _skirting_house()) for seed in seeds]
    lines.append(_line("moulded skirting, 18 thick", houses))
    print("\n".join(lines))  # noqa: T201


def _architrave(seed: int, width_mm: float, *, reversible: bool) -> tuple[tuple[Piece, ...], House]:
    house = house_of(width_mm=width_mm, reversible=reversible)
    return house_pieces(seed, _PIECES // 3, width_mm=width_mm), house


def _skirting_house() -> House:
    house = house_of(profile="SK")
    return replace(house, profiles=(replace(house.profiles[0], width_mm=95.0),))


def _line(section: str, houses: Sequence[tuple[tuple[Piece, ...], House]]) -> str:
    saved, waste, waste_before = list[float](), list[float](), list[float]()
    proved = above = 0
    for pieces, house in houses:
        solver = linear_solver()
        before = planned_as_rectangles(pieces, house, solver, STANDARD)
        ours = plan_sticks(pieces, house, solver).proofs[0]
        net_m = sum(_net_mm(piece) for piece in pieces) / 1000
        saved.append(100 * (1 - ours.cost / before.cost))
        waste_before.append(100 * (before.cost / net_m - 1))
        waste.append(100 * (ours.cost / net_m - 1))
        proved += ours.optimal and before.optimal
        above += before.lower_bound > ours.cost
        print(  # noqa: T201
            f"{section}: rectangles {before.cost:.1f} >= {before.lower_bound:.1f} m,"
            f" by leans {ours.cost:.1f} >= {ours.lower_bound:.1f} m, net {net_m:.1f} m",
            flush=True,
        )
    return (
        f"| {section} | {min(saved):.1f} to {max(saved):.1f} % | {statistics.mean(saved):.1f} %"
        f" | {proved} of {len(houses)} | {above} of {len(houses)}"
        f" | {statistics.mean(waste_before):.1f} -> {statistics.mean(waste):.1f} % |"
    )


def _net_mm(piece: Piece) -> float:
    """Return the mean of a piece's edges, through its middle. [mm]"""
    return (piece.inner_mm + piece.outer_mm) / 2 + (piece.back_mm - _longer(piece)) / 2


def _longer(piece: Piece) -> float:
    return max(piece.inner_mm, piece.outer_mm)


if __name__ == "__main__":
    main(sys.argv[1:])
