"""Plan again after random accidents at a house of 150 pieces; every result is laid anew.

An opening has three pieces. Good cuts lie between: about as many as accidents.

python -m tests.bench.run_again [--accidents 500] [--openings 50] [--with-solver]
"""

import argparse
import random
import statistics
import sys
import time
from collections.abc import Sequence

from longpoint.solvers.installed import linear_solver
from longpoint.sticks.news.at_the_saw import nothing_cut, told
from longpoint.sticks.news.plan_again import plan_again
from longpoint.sticks.plan_sticks import plan_sticks
from tests.property.test_plan_again import accident, check_lies_right
from tests.random_sticks import house_of, house_pieces

_OPENINGS = 50
_ACCIDENTS_A_HOUSE = 50


def main(arguments: Sequence[str]) -> None:
    """Plan what the command line asks for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("--accidents", type=int, default=500)
    parser.add_argument("--openings", type=int, default=_OPENINGS)
    parser.add_argument("--with-solver", action="store_true")
    chosen = parser.parse_args(arguments)
    took, cpu = list[float](), list[float]()
    new = 0
    each = min(chosen.accidents, _ACCIDENTS_A_HOUSE)
    for seed in range(-(-chosen.accidents // each)):
        draw = random.Random(seed)
        solver = linear_solver() if chosen.with_solver else None
        pieces = house_pieces(seed, openings=chosen.openings)
        house = house_of(reversible=seed % 2 == 0, offcuts=((1500.0, 2),))
        planned = nothing_cut(plan_sticks(pieces, house, linear_solver()))
        by_mark = {piece.mark: piece for piece in pieces}
        state, happened = planned, 0
        while happened < each:
            if not any(stick.next for stick in state.sticks):
                state = planned
            kind, news = accident(draw, state, by_mark)
            after = told(state, news)
            if kind != "cut":
                happened += 1
                began, cpu_began = time.perf_counter(), time.process_time()
                again = plan_again(after, pieces, house, solver)
                took.append(time.perf_counter() - began)
                cpu.append(time.process_time() - cpu_began)
                check_lies_right(again, after, by_mark, house)
                new += len(again.new)
                after = again.state
            state = after
    needed = [seconds for seconds in took if seconds > 0.001]
    print(  # noqa: T201
        f"{len(took)} accidents, {len(needed)} of them needed a plan, {new} sticks more;"
        f" {statistics.median(needed):.3f} s median, {max(took):.3f} s worst;"
        f" CPU {max(cpu):.3f} s worst; {sum(seconds > 1 for seconds in took)} over 1 s;"
        " no cut piece moved"
    )


if __name__ == "__main__":
    main(sys.argv[1:])
