import random
from collections.abc import Sequence
from dataclasses import replace

import pytest

from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import (
    Packing,
    cost_of,
    downsized,
    filled,
    first_packing,
    fit,
    put_in,
    score,
)
from longpoint.sticks.lay.laying import Place, Workload, used_length, workload
from longpoint.survey.house import House
from tests.random_sticks import architrave_piece, house_of, house_pieces


def lay(house: House, *lengths_mm: float) -> tuple[Workload, Bars]:
    pieces = [
        architrave_piece(f"W{number}-head", length_mm, 45, 45)
        for number, length_mm in enumerate(lengths_mm)
    ]
    demand = profile_demand(pieces, house.profiles[0], house.saw.kerf_mm)
    return workload(demand.demands), bars_of("OG", house.stock, house.offcuts, house.saw)


def test_a_piece_is_put_where_it_costs_least_and_the_length_is_kept_up() -> None:
    work, bars = lay(house_of(reversible=True), 900.0, 800.0, 700.0)
    stick = filled(work, 0, [Place(0, turned=False)])
    for piece in (1, 2):
        longer = put_in(work, stick, piece, bars.longest_room)
        assert longer is not None
        stick = longer
        assert stick.used == used_length(work, stick.places)
    # The middle one is turned and shares both its mitres.
    assert [place.turned for place in stick.places].count(True) in (1, 2)


def test_a_piece_too_long_for_the_rest_of_a_stick_is_not_put_in() -> None:
    work, bars = lay(house_of(lengths_mm=(2700.0,)), 1500.0, 1500.0)
    assert put_in(work, filled(work, 0, [Place(0, turned=False)]), 1, bars.longest_room) is None


def test_a_stick_is_changed_for_the_cheapest_that_holds_its_pieces() -> None:
    work, bars = lay(house_of(lengths_mm=(1500.0, 5400.0)), 1000.0)
    on_long = Packing((filled(work, 1, [Place(0, turned=False)]),))
    assert downsized(work, bars.bars, on_long).sticks[0].bar == 0


def test_offcuts_are_used_before_new_sticks() -> None:
    work, bars = lay(house_of(offcuts=((1310.0, 1),)), 1000.0)
    packing = fit(work, bars.bars, refills=5)
    assert cost_of(bars.bars, packing) == 0
    assert packing.sticks[0].bar == 0


def test_counted_sticks_are_not_taken_more_often_than_they_are_there() -> None:
    house = house_of(lengths_mm=(2700.0,), counts=(2,))
    work, bars = lay(house, *[2000.0] * 3)
    packing = fit(work, bars.bars, refills=5)
    assert len(packing.sticks) == 2
    assert len(packing.unplaced) == 1


def test_refilling_never_makes_a_packing_worse() -> None:
    pieces = house_pieces(11)
    house = house_of(reversible=True)
    demand = profile_demand(pieces, house.profiles[0], 2.5)
    work = workload(demand.demands)
    bars = bars_of("OG", house.stock, (), house.saw).bars
    scores = [score(work, bars, fit(work, bars, refills)) for refills in (0, 20, 200)]
    assert scores == sorted(scores, reverse=True)


def test_a_piece_goes_where_it_leaves_least_or_on_the_first_that_holds_it() -> None:
    """1000 on a stick with 1500 left and on one with 1100 left: the second leaves less."""
    work, bars = lay(house_of(lengths_mm=(2700.0,)), 1400.0, 1000.0, 800.0)
    sticks = [filled(work, 0, [Place(piece, turned=False)]) for piece in (2, 0)]
    for first_fit, stick in ((False, 1), (True, 0)):
        packing = first_packing(work, bars.bars, [1], lambda *_: (), sticks, first_fit=first_fit)
        assert [len(found.places) for found in packing.sticks] == [2 - stick, 1 + stick]


def test_of_equal_rests_the_first_stick_is_taken() -> None:
    work, bars = lay(house_of(lengths_mm=(2700.0,)), 1400.0, 1400.0, 700.0)
    sticks = [filled(work, 0, [Place(piece, turned=False)]) for piece in (0, 1)]
    packing = first_packing(work, bars.bars, [2], lambda *_: (), sticks)
    assert [len(found.places) for found in packing.sticks] == [2, 1]


class CountedDraws(random.Random):
    """Counts how often sticks are drawn."""

    drawn = 0

    def choices(self, *args: object, **more: object) -> Sequence[int]:  # type: ignore[override]
        CountedDraws.drawn += 1
        return super().choices(*args, **more)  # type: ignore[arg-type]


def test_a_stick_that_is_full_to_the_hundredth_is_not_drawn_for_for_ever(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Beside 2 m of waste it is drawn once in 200,000 times."""
    work, bars = lay(house_of(), 2000.0, 500.0)
    whole = used_length(work, [Place(0, turned=False)])
    stock = next(bar for bar in bars.bars if bar.room > whole)
    full = replace(stock, length=whole + 2 * stock.trim, cost=0, count=1)
    monkeypatch.setattr(random, "Random", CountedDraws)
    packing = fit(work, (full, stock), refills=40)
    assert (len(packing.sticks), packing.unplaced) == (2, ())
    assert CountedDraws.drawn < 40 * 200
