import random

import pytest

from longpoint.sticks.lay.laying import used_length
from longpoint.sticks.lay.ordering import best_order
from longpoint.sticks.search.needs import fits, least_needs, likely_needs
from tests.random_sticks import house_of, house_pieces
from tests.unit.sticks.nests import nest


@pytest.mark.parametrize("reversible", [False, True])
@pytest.mark.parametrize("odd_deg", [0.0, 0.4])
def test_every_set_that_can_be_cut_keeps_within_the_least_needs(
    reversible: bool, odd_deg: float
) -> None:
    house = house_of(reversible=reversible)
    master, floor, _, _ = nest(house_pieces(4, openings=12, odd_deg=odd_deg), house)
    least = least_needs(master.layout, floor)
    draw = random.Random(1)
    tried = 0
    for _ in range(400):
        groups = draw.sample(range(len(master.whole.pieces)), draw.randint(1, 5))
        counts = master.layout.counts(groups)
        work = master.layout.work
        pieces = [master.layout.groups[group][0] for group in groups]
        used = used_length(work, best_order(work, pieces))
        for bar in range(len(master.layout.bars)):
            pattern = type(master.patterns[0])(bar, counts)
            if used <= master.layout.bars[bar].room:
                tried += 1
                assert fits(least, pattern)
    assert tried > 100


def test_the_surest_needs_are_never_too_short_for_moulded_pieces() -> None:
    master, floor, _, _ = nest(house_pieces(6, openings=10), house_of(reversible=False))
    sure = likely_needs(master.layout, floor, 1.0)
    draw = random.Random(2)
    work = master.layout.work
    for _ in range(200):
        groups = draw.sample(range(len(master.whole.pieces)), 3)
        pattern = type(master.patterns[0])(4, master.layout.counts(groups))
        if fits(sure, pattern):
            pieces = [master.layout.groups[group][0] for group in groups]
            # The bases are rounded down by a few hundredths for the bound's sake.
            used = used_length(work, best_order(work, pieces))
            assert used <= master.layout.bars[4].room + 20
