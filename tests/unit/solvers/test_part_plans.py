from itertools import product

import numpy as np
import pytest
from scipy.optimize import linprog

from longpoint.solvers.part_plans import plan_in_parts
from longpoint.sticks.batch.end_classes import many_pieces
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.laying import Place, Workload, used_length, workload
from tests.random_sticks import house_of, house_pieces

MOST_PIECES = 4


def job(seed: int, *, reversible: bool) -> tuple[Workload, Bars]:
    house = house_of(
        reversible=reversible, lengths_mm=(3000.0, 4200.0), offcuts=((2600.0, 1),) if seed else ()
    )
    pieces = [
        piece for piece in house_pieces(seed, 4) if max(piece.inner_mm, piece.outer_mm) > 1_200
    ]
    demand = profile_demand(pieces, house.profiles[0], house.saw.kerf_mm)
    return workload(demand.demands), bars_of("OG", house.stock, house.offcuts, house.saw)


def cost_in_parts(work: Workload, bars: Bars) -> float:
    """Least cost in parts of sticks, by every sequence of pieces that a stick holds. [steps]"""
    turns = [
        Place(piece, turned)
        for piece in range(len(work.mid))
        for turned in ((False, True) if work.can_turn[piece] else (False,))
    ]
    shortest: dict[tuple[int, ...], int] = {}
    for count in range(1, MOST_PIECES + 1):
        for places in product(turns, repeat=count):
            held = tuple(sorted(place.piece for place in places))
            used = used_length(work, places)
            shortest[held] = min(used, shortest.get(held, used))
    columns = [
        (number, held)
        for held, used in shortest.items()
        for number, bar in enumerate(bars.bars)
        if used <= bar.room
    ]
    assert all(len(held) < MOST_PIECES for _, held in columns)
    counted = [number for number, bar in enumerate(bars.bars) if bar.count is not None]
    holds = np.array([[held.count(piece) for _, held in columns] for piece in range(len(work.mid))])
    taken = np.array([[number == bar for number, _ in columns] for bar in counted])
    found = linprog(
        [bars.bars[number].cost / bars.step for number, _ in columns],
        A_ub=np.vstack([-holds, taken]) if counted else -holds,
        b_ub=[-1.0] * len(work.mid) + [bars.bars[bar].count for bar in counted],
    )
    return float(found.fun)


@pytest.mark.parametrize("reversible", [False, True], ids=["moulded", "reversible"])
@pytest.mark.parametrize("seed", range(4))
def test_the_bound_is_the_cost_in_parts_of_all_sequences(seed: int, *, reversible: bool) -> None:
    work, bars = job(seed, reversible=reversible)
    cost = cost_in_parts(work, bars)
    floor = float(plan_in_parts(many_pieces(work, bars), roughly=False).floor)
    # Lengths are rounded down to a tenth of a millimetre, values to whole numbers.
    assert 0.9999 * cost <= floor <= cost + 1e-6
