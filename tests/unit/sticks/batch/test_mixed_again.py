from dataclasses import replace
from functools import cache

import pytest

from longpoint.sticks.batch.mixed_again import bars_without, mixed_again, named, some_of
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Packing, cost_of, filled, fit
from longpoint.sticks.lay.laying import Place, Workload, used_length, workload
from longpoint.sticks.search.patterns import groups_of
from tests.random_sticks import house_of, house_pieces

pytestmark = pytest.mark.no_cover

OFFCUTS = ((1500.0, 3), (2200.0, 1))
SEEDS = pytest.mark.parametrize("seed", range(3))
KINDS = pytest.mark.parametrize("reversible", [False, True], ids=["moulded", "reversible"])


def job(
    seed: int, *, reversible: bool = False, offcuts: tuple[tuple[float, int], ...] = ()
) -> tuple[Workload, Bars]:
    house = house_of(reversible=reversible, offcuts=offcuts)
    pieces = house_pieces(seed, 45, width_mm=66.0)
    demand = profile_demand(pieces, house.profiles[0], house.saw.kerf_mm)
    return workload(demand.demands), bars_of("OG", house.stock, house.offcuts, house.saw)


def alone(work: Workload, bars: Bars) -> Packing:
    """Each piece on a new stick of its own, of the longest length."""
    longest = len(bars.bars) - 1
    pieces = range(len(work.mid))
    return Packing(tuple(filled(work, longest, [Place(piece, turned=False)]) for piece in pieces))


def by_length(work: Workload) -> list[float]:
    return [float(work.mid[group[0]]) for group in groups_of(work)]


def by_fit(work: Workload, bars: Bars) -> Packing:
    return fit(work, bars.bars, refills=0)


@cache
def bettered(seed: int, *, reversible: bool, offcuts: tuple[tuple[float, int], ...]) -> Packing:
    work, bars = job(seed, reversible=reversible, offcuts=offcuts)
    return mixed_again(work, bars, alone(work, bars), by_length(work), by_fit)


def held(packing: Packing) -> list[int]:
    return sorted(place.piece for stick in packing.sticks for place in stick.places)


@SEEDS
@KINDS
def test_each_piece_is_still_cut_once_from_a_stick_that_holds_it_and_all_costs_less(
    seed: int, *, reversible: bool
) -> None:
    work, bars = job(seed, reversible=reversible, offcuts=OFFCUTS)
    found = bettered(seed, reversible=reversible, offcuts=OFFCUTS)
    assert held(found) == list(range(len(work.mid)))
    for stick in found.sticks:
        assert used_length(work, stick.places) == stick.used <= bars.bars[stick.bar].room
    for number, bar in enumerate(bars.bars):
        taken = sum(stick.bar == number for stick in found.sticks)
        assert bar.count is None or taken <= bar.count
    assert cost_of(bars.bars, found) < 0.6 * cost_of(bars.bars, alone(work, bars))


def test_what_is_planned_again_repeats() -> None:
    work, bars = job(0, offcuts=OFFCUTS)
    found = mixed_again(work, bars, alone(work, bars), by_length(work), by_fit)
    assert found == bettered(0, reversible=False, offcuts=OFFCUTS)


@SEEDS
def test_a_plan_gets_no_dearer_whatever_is_made_of_its_sticks(seed: int) -> None:
    work, bars = job(seed)
    good = by_fit(work, bars)
    found = mixed_again(work, bars, good, by_length(work), alone)
    assert sorted(found.sticks, key=hash) == sorted(good.sticks, key=hash)


def test_what_leaves_pieces_over_is_not_taken() -> None:
    work, bars = job(0)
    good = by_fit(work, bars)

    def nothing(some: Workload, _: Bars) -> Packing:
        return Packing((), tuple(range(len(some.mid))))

    found = mixed_again(work, bars, good, by_length(work), nothing)
    assert held(found) == list(range(len(work.mid)))


def test_the_sticks_that_lose_most_are_among_those_planned_again() -> None:
    work, bars = job(1)
    good = by_fit(work, bars)
    apart, *others = good.sticks
    singles = [filled(work, len(bars.bars) - 1, [place]) for place in apart.places]
    seen = list[set[str]]()

    def watched(some: Workload, left: Bars) -> Packing:
        seen.append({demand.mark for demand in some.demands})
        return by_fit(some, left)

    mixed_again(work, bars, Packing((*others, *singles)), by_length(work), watched)
    assert {work.demands[place.piece].mark for place in apart.places} <= seen[0]
    assert len(seen[0]) <= 100


def test_a_search_that_is_stopped_changes_nothing_more() -> None:
    work, bars = job(0, offcuts=OFFCUTS)
    bad, asked = alone(work, bars), []

    def after_two() -> bool:
        asked.append(True)
        return len(asked) > 2

    assert mixed_again(work, bars, bad, by_length(work), by_fit, lambda: True) == bad
    twice = mixed_again(work, bars, bad, by_length(work), by_fit, after_two)
    whole = bettered(0, reversible=False, offcuts=OFFCUTS)
    costs = [cost_of(bars.bars, packing) for packing in (whole, twice, bad)]
    assert costs == sorted(set(costs))


def test_where_pieces_are_unplaced_nothing_is_changed() -> None:
    work, bars = job(0)
    bad = alone(work, bars)
    short = Packing(bad.sticks[:-1], (len(work.mid) - 1,))
    assert mixed_again(work, bars, short, by_length(work), by_fit) == short


def test_some_of_the_pieces_get_their_numbers_back() -> None:
    work, _ = job(0)
    some = some_of(work, (7, 3))
    stick = filled(some, 0, [Place(0, turned=False), Place(1, turned=False)])
    assert [place.piece for place in named(stick, (7, 3)).places] == [7, 3]
    assert used_length(work, named(stick, (7, 3)).places) == stick.used


def test_lengths_that_are_taken_are_not_there_for_others() -> None:
    work, bars = job(0, offcuts=((2600.0, 2),))
    taken = filled(work, 0, [Place(len(work.mid) - 1, turned=False)])
    assert [bar.count for bar in bars_without(bars, [taken]).bars] == [
        1,
        *(bar.count for bar in bars.bars[1:]),
    ]
    assert bars_without(bars, []) == replace(bars)
