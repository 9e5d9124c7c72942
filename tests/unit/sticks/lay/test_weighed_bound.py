"""Bounds by weighed lengths, against sums, all pairs of lengths and all packings."""

import random
from collections.abc import Sequence
from dataclasses import replace

from longpoint.sticks.lay.bars import Bar, Bars
from longpoint.sticks.lay.bound import Floor, simple_bound
from longpoint.sticks.lay.weighed_bound import counted_in, weighed_bound, without_short
from longpoint.sticks.plan import StickSource

NEVER = 10**9


def sticks(*kinds: tuple[int, int, int | None]) -> Bars:
    """Lengths by (length, cost, count), without trims."""
    bars = (
        Bar(
            length=length,
            length_mm=length / 100,
            trim=0,
            cost=cost,
            count=count,
            source=StickSource.STOCK if cost else StickSource.OFFCUT,
        )
        for length, cost, count in kinds
    )
    return Bars(bars=tuple(bars), unit="m", per_unit=1)


def floor(bars: Bars, *bases: int) -> Floor:
    return Floor(bases, tuple(bar.length for bar in bars.bars))


def fewest(lengths: Sequence[int], room: int) -> int:
    """The fewest sticks, by trying every piece on every stick opened and on a new one."""
    best = len(lengths)

    def laid(number: int, free: tuple[int, ...]) -> None:
        nonlocal best
        if len(free) >= best:
            return
        if number == len(lengths):
            best = len(free)
            return
        for at, left in enumerate(free):
            if left >= lengths[number]:
                laid(number + 1, (*free[:at], left - lengths[number], *free[at + 1 :]))
        laid(number + 1, (*free, room - lengths[number]))

    laid(0, ())
    return best


def test_weights_of_two_lengths_never_exceed_that_of_both() -> None:
    for longest in (23, 24):
        for share in range(1, longest // 2 + 1):
            for weight in (without_short(longest, share), counted_in(longest, share)):
                weights = [weight(length) for length in range(longest + 1)]
                assert weights == sorted(weights)
                assert all(
                    weights[one] + weights[other] <= weights[one + other]
                    for one in range(longest + 1)
                    for other in range(longest + 1 - one)
                )


def test_pieces_of_which_two_and_no_three_share_a_stick_are_seen() -> None:
    bars = sticks((100, 1, None))
    assert simple_bound(floor(bars, *[34] * 5), bars) == 2
    assert weighed_bound(floor(bars, *[34] * 5), bars, NEVER) == 3


def test_short_pieces_that_fit_beside_long_ones_do_not_hide_these() -> None:
    bars = sticks((100, 1, None))
    bases = [80, 80, 45, 45, 45, 15, 15]
    assert simple_bound(floor(bars, *bases), bars) == 4
    assert weighed_bound(floor(bars, 80, 80, 80, 45, 45, 45), bars, NEVER) == 5


def test_offcuts_hold_their_weight_for_nothing() -> None:
    bars = sticks((70, 0, 1), (100, 1, None))
    assert weighed_bound(floor(bars, *[34] * 5), bars, NEVER) == 2
    endless = replace(bars, bars=(replace(bars.bars[0], count=None), bars.bars[1]))
    assert weighed_bound(floor(endless, *[34] * 5), endless, NEVER) == 0


def test_the_cheapest_length_for_its_weight_counts_in_whole_steps() -> None:
    bars = sticks((69, 200, None), (100, 300, None))
    # A stick of 69 or 100 holds two pieces of 34: five take two and a half of the cheaper.
    assert weighed_bound(floor(bars, *[34] * 5), bars, NEVER) == 500


def test_no_pieces_cost_nothing() -> None:
    bars = sticks((100, 1, None))
    assert weighed_bound(floor(bars), bars, NEVER) == 0


def test_no_packing_of_a_few_pieces_takes_fewer_sticks() -> None:
    draw = random.Random(4)
    bars, better = sticks((100, 1, None)), 0
    for _ in range(150):
        bases = [draw.randint(11, 70) for _ in range(draw.randint(1, 9))]
        found = weighed_bound(floor(bars, *bases), bars, NEVER)
        assert found <= fewest(sorted(bases, reverse=True), 100)
        better += found > simple_bound(floor(bars, *bases), bars)
    assert better > 5
