"""What sharp prices begin with."""

import random

from longpoint.linear.port import LinearStatus
from longpoint.sticks.search.master import Prices
from longpoint.sticks.search.patterns import Pattern
from longpoint.sticks.search.sharp_prices import first_numbers
from tests.random_sticks import house_of, house_pieces
from tests.unit.sticks.nests import nest


def test_every_piece_stands_in_a_pattern_to_begin_with() -> None:
    """The best patterns of a large house may leave a piece out; then there were no sharp prices."""
    pieces, house = house_pieces(5, openings=6), house_of(offcuts=((2600.0, 1),))
    coarse = nest(pieces, house)[0]
    groups = range(1, len(coarse.whole.pieces))
    endless = max(range(len(coarse.steps)), key=lambda bar: coarse.steps[bar])
    counted = coarse.whole.sticks.index(1)
    draw = random.Random(1)
    good = {tuple(sorted((group, 1) for group in draw.sample(groups, 3))) for _ in range(400)}
    # Of piece 0 there is nothing but a poor pattern, and one on the offcut.
    every = [
        *(Pattern(endless, counts) for counts in sorted(good)),
        Pattern(counted, ((0, 1),)),
        Pattern(endless, ((0, 1),)),
        *(Pattern(endless, ((group, 1),)) for group in groups),
    ]
    near = Prices(tuple(0.0 if group == 0 else 9.0 for group in (0, *groups)), (0.0,) * 6)
    sharp = coarse.sharper()
    known = first_numbers(sharp, every, near, sharp.whole)
    assert len(known) < len(every) - 100
    assert Pattern(endless, ((0, 1),)) in [sharp.patterns[number] for number in known]
    assert sharp.solve(known, sharp.whole).status is LinearStatus.OPTIMAL
