"""Plan a builder's batch as one: 100 houses of 200 pieces, three profiles, five stock lengths.

    python -m tests.bench.run_batch [--houses 100] [--without-solver] [--profile]

`--profile` says in which functions the time goes.
"""

import argparse
import cProfile
import pstats
import resource
import sys
import time
from collections.abc import Sequence

from longpoint.pieces.piece import Piece
from longpoint.solvers.installed import linear_solver
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from tests.bench.random_houses import batch


def main(arguments: Sequence[str]) -> None:
    """Plan what the command line asks for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("--houses", type=int, default=100)
    parser.add_argument("--without-solver", action="store_true")
    parser.add_argument("--profile", action="store_true")
    chosen = parser.parse_args(arguments)
    pieces, house = batch(chosen.houses)
    print(f"{chosen.houses} houses, {len(pieces)} pieces", flush=True)  # noqa: T201
    watch = cProfile.Profile() if chosen.profile else None
    if watch:
        watch.enable()
    for profile in house.profiles:
        ours = tuple(piece for piece in pieces if piece.profile == profile.name)
        if ours:
            _plan(profile.name, ours, house, with_solver=not chosen.without_solver)
    if watch:
        watch.disable()
        pstats.Stats(watch).sort_stats("tottime").print_stats(25)


def _plan(name: str, pieces: tuple[Piece, ...], house: House, *, with_solver: bool) -> None:
    began, cpu_began = time.perf_counter(), time.process_time()
    plan = plan_sticks(pieces, house, linear_solver() if with_solver else None)
    took, cpu = time.perf_counter() - began, time.process_time() - cpu_began
    proof = plan.proofs[0]
    gap_m = proof.cost - proof.lower_bound
    peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(  # noqa: T201
        f"{name}: {len(pieces)} pieces on {len(plan.sticks)} sticks,"
        f" {proof.cost:.1f} >= {proof.lower_bound:.1f} m,"
        f" gap {gap_m:.1f} m ({100 * gap_m / proof.lower_bound:.3f} %);"
        f" {took:.1f} s ({cpu:.1f} s CPU), {peak_mb:.0f} MB so far",
        flush=True,
    )


if __name__ == "__main__":
    main(sys.argv[1:])
