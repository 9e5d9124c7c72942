"""What many sets use at least: the same as the best order of each by itself."""

import random
from dataclasses import replace

import numpy
import pytest

from longpoint.solvers import least_lengths as module
from longpoint.solvers.least_lengths import MOST_PIECES, least_lengths, may_be_cut
from longpoint.sticks.lay.laying import used_length
from longpoint.sticks.lay.ordering import best_order, looks_at_all_orders
from longpoint.sticks.search.master import Master
from longpoint.sticks.search.patterns import Pattern, pattern_list
from tests.random_sticks import house_of, house_pieces
from tests.unit.sticks.nests import nest

_EVERY_ORDER = 10**9


def master_of(*, reversible: bool) -> Master:
    """Return the pieces of seven openings and their sticks."""
    return nest(house_pieces(3, openings=7), house_of(reversible=reversible))[0]


@pytest.mark.parametrize("turns", ["none", "all", "some"])
@pytest.mark.parametrize("size", [1, 2, 3, 4, 5, 6])
def test_each_set_uses_what_its_best_order_does(
    size: int, turns: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "_AT_ONCE", 7)
    work = master_of(reversible=turns != "none").layout.work
    if turns == "some":
        work = replace(work, can_turn=tuple(piece % 2 == 0 for piece in range(len(work.mid))))
    draw = random.Random(size)
    sets = [draw.sample(range(len(work.mid)), size) for _ in range(25)]
    least = least_lengths(work, numpy.array(sets))
    for pieces, found in zip(sets, least.tolist(), strict=True):
        assert looks_at_all_orders(work, pieces, _EVERY_ORDER)
        assert found == used_length(work, best_order(work, pieces, _EVERY_ORDER))


def test_no_sets_use_nothing() -> None:
    work = master_of(reversible=True).layout.work
    assert least_lengths(work, numpy.zeros((0, 3), dtype=int)).tolist() == []


@pytest.mark.parametrize("reversible", [False, True])
def test_only_what_fits_its_stick_may_be_cut(reversible: bool) -> None:
    layout = master_of(reversible=reversible).layout
    draw, patterns = random.Random(1), list[Pattern]()
    while len(patterns) < 120:
        size = draw.randint(1, 4)
        counts = layout.counts(draw.sample(range(len(layout.groups)), size))
        pieces = [layout.groups[group][0] for group, _ in counts]
        used = used_length(layout.work, best_order(layout.work, pieces, _EVERY_ORDER))
        patterns += [
            Pattern(bar, counts)
            for bar, stick in enumerate(layout.bars)
            if abs(used - stick.room) < 15_000
        ]
    may = may_be_cut(pattern_list(patterns), layout).tolist()
    for pattern, said in zip(patterns, may, strict=True):
        room = layout.bars[pattern.bar].room
        assert said == (layout.fitting(pattern.counts, room)[0] == pattern.counts)
    assert set(may) == {True, False}


def test_of_more_pieces_nothing_is_ruled_out() -> None:
    layout = master_of(reversible=True).layout
    long = Pattern(0, tuple((group, 1) for group in range(MOST_PIECES + 1)))
    short = Pattern(0, long.counts[:-1])
    assert may_be_cut(pattern_list((long, short)), layout).tolist() == [True, False]
