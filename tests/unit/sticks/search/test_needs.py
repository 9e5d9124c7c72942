import random
from dataclasses import replace

import pytest

from longpoint.sticks.lay.bound import ROUNDED_UP
from longpoint.sticks.lay.laying import used_length
from longpoint.sticks.lay.lean_states import state_of
from longpoint.sticks.lay.ordering import best_order
from longpoint.sticks.search.needs import fits, least_needs, likely_needs, needs_by_cuts
from tests.bench.random_houses import skirting_pieces
from tests.random_sticks import architrave_piece, house_of, house_pieces
from tests.unit.sticks.nests import nest


@pytest.mark.parametrize("kind", ["turned", "moulded", "counted"])
@pytest.mark.parametrize("odd_deg", [0.0, 0.4])
def test_every_set_that_can_be_cut_keeps_within_the_least_needs(kind: str, odd_deg: float) -> None:
    house = house_of(reversible=kind == "turned")
    master, floor, _, _ = nest(house_pieces(4, openings=12, odd_deg=odd_deg), house)
    least = least_needs(master.layout, floor)
    if kind == "counted":
        least = needs_by_cuts(master.layout, least)
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


def test_square_ends_on_one_side_only_take_half_a_kerfs_difference_each() -> None:
    house = house_of(reversible=False)
    master, floor, _, _ = nest(house_pieces(4, openings=12, odd_deg=0.0), house)
    work, least = master.layout.work, least_needs(master.layout, floor)
    needs = needs_by_cuts(master.layout, least)
    half = (max(work.left_kerf) - min(work.left_kerf)) // 2
    assert needs.states == (0, half, 2 * half, 2 * half, half)
    draw = random.Random(3)
    closer = 0
    for _ in range(300):
        groups = draw.sample(range(len(master.whole.pieces)), draw.randint(1, 5))
        pieces = [master.layout.groups[group][0] for group in groups]
        opens = sum(work.left_lean[piece] == 0 for piece in pieces)
        closes = sum(work.right_lean[piece] == 0 for piece in pieces)
        more = abs(opens - closes)
        used = used_length(work, best_order(work, pieces))
        told = sum(needs.pieces[group] for group in groups)
        told += needs.states[state_of(needs.leans[group] for group in groups)]
        # What is left are hundredths that were rounded, and square ends beyond two.
        off = used + max(work.left_kerf) - told
        assert 0 <= off <= 7 * (len(pieces) + 1) + (5 * half if more > 2 else 0)
        closer += more in (1, 2)
    assert closer > 100


def test_runs_mitred_one_way_or_the_other_keep_within_them_too() -> None:
    runs = [replace(piece, profile="OG") for piece in skirting_pieces(4, 40)]
    master, floor, _, _ = nest(tuple(runs), house_of(reversible=False))
    work = master.layout.work
    needs = needs_by_cuts(master.layout, least_needs(master.layout, floor))
    kerf, draw = max((*work.left_kerf, *work.right_kerf)), random.Random(4)
    assert max(needs.states) > 0
    for _ in range(600):
        groups = draw.sample(range(len(master.whole.pieces)), draw.randint(1, 5))
        used = used_length(work, best_order(work, [master.layout.groups[g][0] for g in groups]))
        told = sum(needs.pieces[group] for group in groups)
        told += needs.states[state_of(needs.leans[group] for group in groups)]
        assert told <= used + kerf + ROUNDED_UP


def test_where_pieces_may_be_turned_or_all_cuts_are_alike_nothing_is_counted() -> None:
    for reversible, square in ((True, False), (False, True)):
        pieces = (
            tuple(architrave_piece(f"W{n}-head", 700.0 + n, 0, 0) for n in range(9))
            if square
            else house_pieces(4, openings=5)
        )
        master, floor, _, _ = nest(pieces, house_of(reversible=reversible))
        least = least_needs(master.layout, floor)
        assert needs_by_cuts(master.layout, least) is least
