from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Packing, cost_of, filled, score
from longpoint.sticks.lay.laying import Place, workload
from longpoint.sticks.lay.tidy import tidied
from tests.random_sticks import architrave_piece, house_of, house_pieces


def test_two_short_rests_become_one_long_offcut() -> None:
    house = house_of(lengths_mm=(3600.0,))
    pieces = [
        architrave_piece(f"W{n}-head", length_mm, 0, 0)
        for n, length_mm in enumerate((1600.0, 1500.0, 700.0, 600.0))
    ]
    work = workload(profile_demand(pieces, house.profiles[0], 2.5).demands)
    bars = bars_of("OG", house.stock, (), house.saw).bars
    spread = Packing(
        (
            filled(work, 0, [Place(0, turned=False), Place(2, turned=False)]),
            filled(work, 0, [Place(1, turned=False), Place(3, turned=False)]),
        )
    )
    found = tidied(work, bars, spread)
    rests = sorted(bars[0].room - stick.used for stick in found.sticks)
    assert len(rests) == 2
    assert rests[1] > 200000
    assert score(work, bars, found) < score(work, bars, spread)


def test_a_stick_emptied_by_tidying_is_not_bought() -> None:
    house = house_of(lengths_mm=(3600.0,))
    pieces = [architrave_piece(f"W{n}-head", 800.0, 0, 0) for n in range(3)]
    work = workload(profile_demand(pieces, house.profiles[0], 2.5).demands)
    bars = bars_of("OG", house.stock, (), house.saw).bars
    spread = Packing(
        (
            filled(work, 0, [Place(0, turned=False), Place(1, turned=False)]),
            filled(work, 0, [Place(2, turned=False)]),
        )
    )
    assert cost_of(bars, tidied(work, bars, spread)) == cost_of(bars, spread) // 2


def test_tidying_never_costs_more_and_keeps_every_piece() -> None:
    house = house_of(reversible=True)
    demand = profile_demand(house_pieces(3), house.profiles[0], 2.5)
    work = workload(demand.demands)
    bars = bars_of("OG", house.stock, (), house.saw).bars
    alone = Packing(tuple(filled(work, 1, [Place(n, turned=False)]) for n in range(len(work.mid))))
    found = tidied(work, bars, alone)
    assert cost_of(bars, found) <= cost_of(bars, alone)
    assert sorted(p.piece for s in found.sticks for p in s.places) == list(range(len(work.mid)))
    assert all(stick.used <= bars[stick.bar].room for stick in found.sticks)
