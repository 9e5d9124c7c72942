from dataclasses import replace

from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.aims.after_cost import after_cost
from longpoint.sticks.aims.goals import Limits, new_sticks
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Packing, cost_of, filled
from longpoint.sticks.lay.laying import Place, Workload, workload
from longpoint.sticks.search.best_packing import Improved
from tests.random_sticks import architrave_piece, house_of

HOUSE = house_of(lengths_mm=(1800.0, 3600.0), kerf_mm=0.0, end_trim_mm=0.0)


def square(*lengths_mm: float) -> tuple[Workload, Bars]:
    pieces = [architrave_piece(f"W{n}-head", mm, 0, 0) for n, mm in enumerate(lengths_mm)]
    work = workload(profile_demand(pieces, HOUSE.profiles[0], 0.0).demands)
    return work, bars_of("OG", HOUSE.stock, (), HOUSE.saw)


def each_alone(work: Workload) -> Packing:
    return Packing(tuple(filled(work, 0, [Place(n, turned=False)]) for n in range(len(work.mid))))


def test_of_few_pieces_every_plan_is_looked_at_even_without_a_solver() -> None:
    work, bars = square(1700.0, 1600.0)
    after = after_cost(work, bars, Improved(each_alone(work), 2, ""), None, QUICK)
    assert after.limits == Limits(1, 30000)
    assert len(after.packing.sticks) == 1


def test_many_pieces_go_on_fewer_sticks_for_the_same_cost() -> None:
    work, bars = square(*([1700.0] * 5), *([1600.0] * 5))
    alone = each_alone(work)
    after = after_cost(work, bars, Improved(alone, 10, ""), HighsSolver(), QUICK)
    assert after.limits is not None
    assert after.limits.sticks == new_sticks(bars, after.packing) == 5
    assert cost_of(bars.bars, after.packing) == cost_of(bars.bars, alone)


def test_many_pieces_without_a_solver_are_judged_by_sums() -> None:
    work, bars = square(*([1700.0] * 10))
    alone = each_alone(work)
    after = after_cost(work, bars, Improved(alone, 10, ""), None, QUICK)
    assert (after.packing.sticks, after.limits) == (alone.sticks, None)


def test_a_search_that_is_told_to_stop_gives_what_it_has() -> None:
    work, bars = square(*([1700.0] * 5), *([1600.0] * 5))
    stopped = replace(QUICK, stop=lambda: True)
    after = after_cost(work, bars, Improved(each_alone(work), 10, ""), HighsSolver(), stopped)
    assert len(after.packing.sticks) == 10
    assert after.limits is not None
    assert after.limits.sticks <= 5
