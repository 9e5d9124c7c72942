from longpoint.sticks.bars import Bars, bars_of
from longpoint.sticks.bound import floor_of, simple_bound
from longpoint.sticks.demand import profile_demand
from longpoint.sticks.laying import Place, Workload, used_length, workload
from longpoint.survey.house import House
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
