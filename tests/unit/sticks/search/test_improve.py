import functools
import itertools
from dataclasses import replace

import pytest

from longpoint.linear.port import LinearProblem, LinearSolution, LinearStatus
from longpoint.pieces.piece import Piece
from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.effort import QUICK, Effort
from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.lay.bound import floor_of, simple_bound
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import cost_of, fit
from longpoint.sticks.lay.laying import workload
from longpoint.sticks.plan import CutPlan
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.sticks.search.improve import improve
from longpoint.survey.house import House
from tests.random_sticks import architrave_piece, house_of, house_pieces

pytestmark = pytest.mark.no_cover


class NoAnswer:
    """A solver that never gets anywhere."""

    def solve(self, problem: LinearProblem) -> LinearSolution:
        assert problem.columns
        return LinearSolution(status=LinearStatus.UNSOLVED, solver="none 0")


@pytest.mark.parametrize("reversible", [False, True])
def test_columns_and_dives_save_metres_and_prove_most_of_it(reversible: bool) -> None:
    house = house_of(reversible=reversible)
    demand = profile_demand(house_pieces(21, openings=14), house.profiles[0], 2.5)
    work = workload(demand.demands)
    bars = bars_of("OG", house.stock, (), house.saw)
    start, floor = fit(work, bars.bars, refills=0), floor_of(work, bars.bars)
    low = simple_bound(floor, bars)
    found = improve(work, bars, start, floor, low, HighsSolver(), Effort())
    cost = cost_of(bars.bars, found.packing)
    assert cost < cost_of(bars.bars, start)
    assert low <= found.bound <= cost
    assert cost - found.bound <= bars.step
    assert found.solved_by.startswith("HiGHS")
    placed = sorted(place.piece for stick in found.packing.sticks for place in stick.places)
    assert placed == list(range(len(work.mid)))
    assert all(stick.used <= bars.bars[stick.bar].room for stick in found.packing.sticks)


def test_a_packing_at_its_bound_is_not_touched() -> None:
    house = house_of(lengths_mm=(2700.0,))
    pieces = [architrave_piece("W1-head", 2000.0, 45, 45)]
    work = workload(profile_demand(pieces, house.profiles[0], 2.5).demands)
    bars = bars_of("OG", house.stock, (), house.saw)
    start, floor = fit(work, bars.bars, refills=0), floor_of(work, bars.bars)
    found = improve(work, bars, start, floor, simple_bound(floor, bars), NoAnswer(), QUICK)
    assert found.packing == start
    assert found.solved_by == ""


def test_a_solver_that_gives_up_leaves_the_packing_and_a_true_bound() -> None:
    house = house_of(reversible=True)
    demand = profile_demand(house_pieces(22, openings=8), house.profiles[0], 2.5)
    work = workload(demand.demands)
    bars = bars_of("OG", house.stock, (), house.saw)
    start, floor = fit(work, bars.bars, refills=0), floor_of(work, bars.bars)
    low = simple_bound(floor, bars)
    found = improve(work, bars, start, floor, low, NoAnswer(), QUICK)
    assert found.packing == start
    assert low <= found.bound <= cost_of(bars.bars, start)


@functools.cache
def planned_whole() -> tuple[House, tuple[Piece, ...], CutPlan]:
    house, pieces = house_of(reversible=True), house_pieces(5, openings=8)
    return house, pieces, plan_sticks(pieces, house, HighsSolver(), QUICK)


@pytest.mark.parametrize("steps", [0, 3, 12])
def test_a_search_that_is_stopped_leaves_a_whole_plan_and_a_true_bound(steps: int) -> None:
    house, pieces, whole = planned_whole()
    asked = itertools.count()
    effort = replace(QUICK, stop=lambda: next(asked) >= steps)
    stopped = plan_sticks(pieces, house, HighsSolver(), effort)
    assert not stopped.unplaced
    assert stopped.proofs[0].lower_bound <= whole.proofs[0].cost <= stopped.proofs[0].cost
    assert next(asked) >= steps


class Counted(HighsSolver):
    """Counts the programs solved: each is a step of a dive, or of looking for patterns."""

    programs = 0

    def solve(self, problem: LinearProblem) -> LinearSolution:
        self.programs += 1
        return super().solve(problem)


class WithoutSets(Counted):
    """As on a phone: no search among sets comes with it."""

    choose_sets = None  # type: ignore[assignment]


@pytest.mark.parametrize("seed", range(4))
def test_a_small_house_with_fine_prices_is_proved_without_long_dives(seed: int) -> None:
    house = house_of(lengths_mm=(2700.0, 4200.0, 5400.0), prices=("7.80", "11.90", "15.20"))
    demand = profile_demand(house_pieces(seed, openings=5), house.profiles[0], 2.5)
    work = workload(demand.demands)
    bars = bars_of("OG", house.stock, (), house.saw)
    start, floor = fit(work, bars.bars, refills=40), floor_of(work, bars.bars)
    low = simple_bound(floor, bars)
    sets, dives = Counted(), WithoutSets()
    found = improve(work, bars, start, floor, low, sets, Effort())
    by_dives = improve(work, bars, start, floor, low, dives, Effort())
    assert found.bound == cost_of(bars.bars, found.packing)
    assert by_dives.bound <= found.bound <= cost_of(bars.bars, by_dives.packing)
    assert sets.programs < dives.programs
