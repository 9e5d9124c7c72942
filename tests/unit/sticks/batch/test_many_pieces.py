import random
from dataclasses import replace
from functools import cache

import pytest

from longpoint.linear.simplex import SimplexSolver
from longpoint.solvers.highs import HighsSolver
from longpoint.solvers.part_plans import plan_in_parts
from longpoint.sticks.batch.end_classes import many_pieces
from longpoint.sticks.batch.many_pieces import MANY, part_planner, plan_many
from longpoint.sticks.batch.parts_of_sticks import ManyPieces, PartPlan
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.bound import ROUNDED_UP
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Packing, cost_of, fit
from longpoint.sticks.lay.laying import Place, Workload, used_length, workload
from longpoint.sticks.profile_plan import plan_profile
from longpoint.sticks.search.patterns import groups_of
from tests.random_sticks import house_of, house_pieces

pytestmark = pytest.mark.no_cover

OFFCUTS = ((1500.0, 3), (2200.0, 1))
KINDS = pytest.mark.parametrize("reversible", [False, True], ids=["moulded", "reversible"])


def job(
    openings: int, *, reversible: bool, offcuts: tuple[tuple[float, int], ...] = (), seed: int = 3
) -> tuple[Workload, Bars]:
    house = house_of(reversible=reversible, offcuts=offcuts)
    pieces = tuple(
        replace(piece, profile="OG") for piece in house_pieces(seed, openings, width_mm=66.0)
    )
    demand = profile_demand(pieces, house.profiles[0], house.saw.kerf_mm)
    return workload(demand.demands), bars_of("OG", house.stock, house.offcuts, house.saw)


@cache
def planned(many: ManyPieces, *, roughly: bool) -> PartPlan:
    """The same plans in parts for all tests; that they repeat is a test of its own."""
    return plan_in_parts(many, roughly=roughly)


def by_fit(work: Workload, bars: Bars) -> Packing:
    return fit(work, bars.bars, refills=20)


def at_once(work: Workload, bars: Bars) -> Packing:
    return fit(work, bars.bars, refills=0)


@KINDS
def test_what_is_asked_is_never_more_than_a_real_sequence_uses(*, reversible: bool) -> None:
    work, bars = job(20, reversible=reversible)
    many, groups = many_pieces(work, bars), groups_of(work)
    kind_of = {piece: number for number, group in enumerate(groups) for piece in group}
    draw, tightest = random.Random(1), 1_000
    for _ in range(2_000):
        places = [
            Place(piece, turned=reversible and draw.random() < 0.5)
            for piece in draw.sample(range(len(work.mid)), draw.randint(1, 4))
        ]
        ends = [
            (many.lefts[kind_of[piece]], many.rights[kind_of[piece]])[:: -1 if turned else 1]
            for piece, turned in places
        ]
        asked = sum(many.needs[kind_of[piece]] for piece, _ in places)
        asked += many.left_tips[ends[0][0]] + many.right_tips[ends[-1][1]]
        asked += sum(many.gaps[ends[at][1]][ends[at + 1][0]] for at in range(len(ends) - 1))
        spare = used_length(work, places) - (asked - (many.rooms[0] - bars.bars[0].room))
        assert spare >= 0
        tightest = min(tightest, spare)
    # A kerf's rounding, leans of one class a degree apart at most, and no more.
    assert tightest <= 4 * ROUNDED_UP + 100


@KINDS
def test_all_pieces_are_cut_once_from_sticks_that_hold_them(*, reversible: bool) -> None:
    work, bars = job(44, reversible=reversible, offcuts=OFFCUTS)
    found = plan_many(work, bars, planned, by_fit, at_once)
    assert not found.packing.unplaced
    cut = [place.piece for stick in found.packing.sticks for place in stick.places]
    assert sorted(cut) == list(range(len(work.mid)))
    for stick in found.packing.sticks:
        assert used_length(work, stick.places) == stick.used <= bars.bars[stick.bar].room
    for number, bar in enumerate(bars.bars):
        taken = sum(stick.bar == number for stick in found.packing.sticks)
        assert bar.count is None or taken <= bar.count
    cost = cost_of(bars.bars, found.packing)
    assert found.bound <= cost <= 1.02 * found.bound
    assert cost <= cost_of(bars.bars, by_fit(work, bars))
    assert plan_many(work, bars, planned, by_fit, at_once) == found


@KINDS
@pytest.mark.parametrize("roughly", [False, True], ids=["closely", "roughly"])
def test_a_plan_in_parts_repeats(*, reversible: bool, roughly: bool) -> None:
    many = many_pieces(*job(8, reversible=reversible, offcuts=OFFCUTS))
    assert plan_in_parts(many, roughly=roughly) == plan_in_parts(many, roughly=roughly)


@KINDS
@pytest.mark.parametrize("seed", range(4))
def test_the_bound_is_no_more_than_a_plan_that_is_proved_otherwise(
    seed: int, *, reversible: bool
) -> None:
    offcuts = ((1500.0, 1),) if seed % 2 else ()
    work, bars = job(8, reversible=reversible, offcuts=offcuts, seed=seed)
    plan = plan_profile("OG", work, bars, HighsSolver(), QUICK)
    floor = float(plan_in_parts(many_pieces(work, bars), roughly=False).floor)
    steps_m = bars.step / bars.per_unit
    assert floor * steps_m <= plan.proof.cost + 1e-9
    # A plan in parts of sticks costs less than one in whole sticks, but not much less.
    assert floor * steps_m >= 0.93 * plan.proof.lower_bound


def test_a_house_is_not_planned_in_parts() -> None:
    work, bars = job(36, reversible=False)
    assert len(groups_of(work)) < MANY
    assert part_planner(work, bars, HighsSolver()) is None


def test_without_arrays_nothing_is_planned_in_parts() -> None:
    work, bars = job(160, reversible=False)
    assert part_planner(work, bars, HighsSolver()) is not None
    assert part_planner(work, bars, SimplexSolver()) is None
    assert part_planner(work, bars, None) is None


def test_a_plan_that_is_stopped_at_once_is_that_of_the_rest_with_its_bound() -> None:
    work, bars = job(44, reversible=False, offcuts=OFFCUTS)

    def never_asked(_: Workload, __: Bars) -> Packing:
        raise AssertionError

    found = plan_many(work, bars, planned, at_once, never_asked, lambda: True)
    assert found.packing == at_once(work, bars)
    floor = planned(many_pieces(work, bars), roughly=False).floor
    assert floor * bars.step <= found.bound <= cost_of(bars.bars, found.packing)
