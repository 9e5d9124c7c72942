"""What is said to be saved against plans by long points: no such plan, of all there are, does it.

The plans by long points are tried one and all, by sums of the test's own.
"""

import math
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import pairwise, permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.pieces.piece import Piece
from longpoint.solvers.installed import linear_solver
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.sticks.saved import long_point_bound
from longpoint.survey.house import House
from tests.random_sticks import architrave_piece, house_of, house_pieces

MITRES_DEG = st.one_of(
    st.sampled_from([0.0, 45.0, 22.5, -45.0]), st.floats(44.0, 46.0).map(lambda deg: round(deg, 2))
)


@st.composite
def few_pieces(draw: st.DrawFn, mitres: st.SearchStrategy[float]) -> tuple[Piece, ...]:
    lengths_mm = draw(st.lists(st.floats(200.0, 1300.0), min_size=1, max_size=5))
    return tuple(
        architrave_piece(f"W{n}-head", round(length_mm, 1), draw(mitres), draw(mitres))
        for n, length_mm in enumerate(lengths_mm)
    )


def groupings(pieces: Sequence[int]) -> Iterator[list[list[int]]]:
    """All ways to share pieces out over sticks that look alike."""
    if not pieces:
        yield []
        return
    first, *others = pieces
    for shared in groupings(others):
        yield [[first], *shared]
        for n, group in enumerate(shared):
            yield [*shared[:n], [first, *group], *shared[n + 1 :]]


def rectangle_mm(pieces: Sequence[Piece], kerf_mm: float) -> float:
    """Shortest row of rectangles: a joint takes the longer cut of its two ends."""

    def cut_mm(deg: float) -> float:
        return kerf_mm / math.cos(math.radians(deg))

    def row_mm(order: Sequence[Piece]) -> float:
        joints = pairwise(order)
        return sum(max(p.inner_mm, p.outer_mm) for p in order) + sum(
            max(cut_mm(a.right.mitre_deg), cut_mm(b.left.mitre_deg)) for a, b in joints
        )

    return min(map(row_mm, permutations(pieces)))


def least_metres_by_long_points(pieces: Sequence[Piece], house: House) -> float:
    trims_mm = 2 * house.saw.end_trim_mm
    lengths_mm = sorted(stock.length_mm for stock in house.stock)

    @cache
    def stick_mm(group: tuple[int, ...]) -> float:
        needed_mm = trims_mm + rectangle_mm([pieces[n] for n in group], house.saw.kerf_mm)
        return next((mm for mm in lengths_mm if mm >= needed_mm), math.inf)

    return min(
        sum(stick_mm(tuple(sorted(group))) for group in shared) / 1000
        for shared in groupings(range(len(pieces)))
    )


@given(few_pieces(MITRES_DEG), st.sampled_from([1.8, 2.5, 3.2]))
def test_no_plan_by_long_points_does_with_less_than_is_claimed(
    pieces: tuple[Piece, ...], kerf_mm: float
) -> None:
    house = house_of(reversible=True, kerf_mm=kerf_mm, lengths_mm=(1700.0, 2100.0, 3000.0))
    (saved,) = plan_sticks(pieces, house, effort=QUICK).savings
    least_m = least_metres_by_long_points(pieces, house)
    assert saved.long_point_bound <= least_m + 1e-9
    assert saved.at_least <= max(0.0, least_m - saved.cost) + 1e-9


@given(few_pieces(st.just(45.0)))
def test_for_moulded_pieces_with_equal_angles_the_bound_is_never_above_the_plan(
    pieces: tuple[Piece, ...],
) -> None:
    """Their joints are all the same lost triangle, and rectangles are exact."""
    house = house_of(reversible=False, lengths_mm=(1700.0, 2100.0, 3000.0))
    plan = plan_sticks(pieces, house, effort=QUICK)
    demands = profile_demand(pieces, house.profiles[0], house.saw.kerf_mm).demands
    bars = bars_of("OG", house.stock, house.offcuts, house.saw)
    assert long_point_bound(demands, bars) / bars.per_unit <= plan.proofs[0].cost + 1e-9
    assert (plan.savings[0].can_turn, plan.savings[0].at_least) == (False, 0.0)


def test_eighteen_short_mitred_pieces_are_proved_to_save_a_stick() -> None:
    """Face 66, 200 inside and 332 outside, kerf 2.5, sticks of 1710 with 1690 between the trims.

    By long points a piece and its cut take 335.54, and a stick gives one cut back: five go on one,
    and three sticks' 3 x 1693.54 = 5080.6 are less than 18 x 335.54 = 6039.6. Turned, six take
    6 x 266 + 5 x 3.54 + 66 = 1679.7, and three sticks do.
    """
    pieces = tuple(architrave_piece(f"W{n}-head", 200.0, 45, 45) for n in range(18))
    house = house_of(reversible=True, lengths_mm=(1710.0,))
    (saved,) = plan_sticks(pieces, house).savings
    assert saved.cost == pytest.approx(3 * 1.71)
    assert saved.long_point_bound == pytest.approx(4 * 1.71)
    assert saved.at_least == pytest.approx(1.71)


@pytest.mark.skipif(linear_solver() is None, reason="asks HiGHS")
@pytest.mark.parametrize("seed", [1, 2])
def test_a_small_house_of_reversible_casing_is_proved_to_save_a_fiftieth(seed: int) -> None:
    """30 pieces, face 90. By best fit alone less is proved, or nothing: that plan buys more."""
    pieces = house_pieces(seed, openings=10, width_mm=90.0, odd_deg=0.0)
    house = house_of(reversible=True, width_mm=90.0)
    (saved,) = plan_sticks(pieces, house, linear_solver(), QUICK).savings
    assert saved.at_least > 0.02 * saved.cost
