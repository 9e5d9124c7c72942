from dataclasses import replace
from decimal import Decimal
from itertools import product

from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.bound import Floor, floor_of, possible_costs, simple_bound
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.laying import Place, Workload, used_length, workload
from longpoint.survey.house import House
from longpoint.survey.profiles import Stock
from tests.random_sticks import architrave_piece, house_of


def lay(house: House, *lengths_mm: float) -> tuple[Workload, Bars]:
    pieces = [
        architrave_piece(f"W{number}-head", length_mm, 45, 45)
        for number, length_mm in enumerate(lengths_mm)
    ]
    demand = profile_demand(pieces, house.profiles[0], house.saw.kerf_mm)
    return workload(demand.demands), bars_of("OG", house.stock, house.offcuts, house.saw)


def test_moulded_pieces_are_counted_along_their_outer_edge() -> None:
    work, bars = lay(house_of(reversible=False), 1000.0)
    assert floor_of(work, bars.bars).bases[0] >= 113200 + 350 - 10


def test_pieces_that_may_be_turned_are_counted_along_their_midline() -> None:
    work, bars = lay(house_of(reversible=True), 1000.0)
    assert 106600 < floor_of(work, bars.bars).bases[0] < 107000


def test_bases_of_a_full_stick_never_exceed_what_it_holds() -> None:
    for reversible in (False, True):
        work, bars = lay(house_of(reversible=reversible), 900.0, 800.0, 700.0, 600.0)
        floor = floor_of(work, bars.bars)
        used = used_length(work, [Place(n, reversible and n % 2 == 1) for n in range(4)])
        assert sum(floor.bases) <= used + floor.rooms[0] - bars.bars[0].room


def test_the_sum_bound_finds_the_cheapest_lengths_that_hold_everything() -> None:
    work, bars = lay(house_of(lengths_mm=(3000.0, 5400.0)), *[1000.0] * 5)
    assert simple_bound(floor_of(work, bars.bars), bars) == 600000


def test_two_pieces_longer_than_half_a_stick_need_two_sticks() -> None:
    work, bars = lay(house_of(lengths_mm=(3000.0,)), 1500.0, 1500.0, 1500.0)
    assert simple_bound(floor_of(work, bars.bars), bars) == 900000


def test_offcuts_lower_the_bound() -> None:
    work, bars = lay(house_of(lengths_mm=(3000.0,), offcuts=((2000.0, 1),)), 1500.0, 1500.0)
    assert simple_bound(floor_of(work, bars.bars), bars) == 300000
    work, bars = lay(house_of(lengths_mm=(3000.0,), offcuts=((2000.0, 2),)), 1500.0, 1500.0)
    assert simple_bound(floor_of(work, bars.bars), bars) == 0


def test_very_fine_prices_still_give_a_bound() -> None:
    house = house_of(lengths_mm=(2700.0, 5400.0), prices=("1351.07", "2702.13"))
    work, bars = lay(house, *[1200.0] * 9)
    assert 0 < simple_bound(floor_of(work, bars.bars), bars) <= 3 * 270213


def test_no_pieces_cost_nothing() -> None:
    _, bars = lay(house_of(), 1000.0)
    assert simple_bound(floor_of(workload([]), bars.bars), bars) == 0


def test_possible_costs_are_the_sums_of_prices_with_room_for_all() -> None:
    prices = {5400.0: "15.20", 4200.0: "11.90", 2700.0: "7.80"}
    house = replace(
        house_of(),
        stock=tuple(Stock(profile="OG", length_mm=x, price=Decimal(p)) for x, p in prices.items()),
    )
    work, bars = lay(house, *(1500.0,) * 9)
    floor = floor_of(work, bars.bars)
    steps = [bar.cost // bars.step for bar in bars.bars]
    low, high = 300, 700
    expected = {
        sum(n * s for n, s in zip(counts, steps, strict=True))
        for counts in product(range(10), repeat=3)
        if sum(n * r for n, r in zip(counts, floor.rooms, strict=True)) >= sum(floor.bases)
    }
    found = possible_costs(floor, bars, low, high)
    assert set(found) == {cost for cost in expected if low <= cost < high}
    assert 0 < len(found) < high - low
    assert found[0] == simple_bound(floor, bars) // bars.step


def test_free_sticks_without_end_leave_every_cost_possible() -> None:
    work, bars = lay(house_of(), 1000.0)
    free = replace(bars, bars=tuple(replace(b, cost=0, count=None) for b in bars.bars))
    assert possible_costs(Floor((1,), (1,) * len(free.bars)), free, 2, 5) == range(2, 5)
    assert work.mid


def test_costs_too_many_to_list_are_a_range() -> None:
    """Listed, a thousand million of them would take all memory."""
    work, bars = lay(house_of(), 1000.0)
    floor = floor_of(work, bars.bars)
    assert possible_costs(floor, bars, 7, 10**9) == range(7, 10**9)
