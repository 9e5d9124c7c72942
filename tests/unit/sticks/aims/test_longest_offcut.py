import pytest

from longpoint.linear.port import LinearSolver
from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.aims.goal_program import Stock
from longpoint.sticks.aims.goals import longest_left
from longpoint.sticks.aims.longest_offcut import SHOWN, longest_offcut
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.bound import floor_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Packing, filled
from longpoint.sticks.lay.laying import Place, Workload, workload
from longpoint.sticks.search.patterns import Layout, groups_of
from tests.random_sticks import architrave_piece, house_of
from tests.small_plans import patterns_of

HOUSE = house_of(lengths_mm=(1800.0,), kerf_mm=0.0, end_trim_mm=0.0)
SCATTERED = [[0, 4], [1, 5], [2, 6], [3, 7], [8]]
"""Lengths 1000, 990, 980, 970, 700, 710, 720, 730, 500: four sticks with 100 left, one with 1300.

By length alone five sticks of 1800 hold 7300 and leave 1700 in all; a stick holds one long piece.
"""


class SolverAlone(HighsSolver):
    """Solves programs; brings no search among sets, as on a phone."""

    choose_sets = None  # type: ignore[assignment]


def scattered() -> tuple[Workload, Bars, Packing]:
    lengths_mm = (1000.0, 990.0, 980.0, 970.0, 700.0, 710.0, 720.0, 730.0, 500.0)
    pieces = [architrave_piece(f"W{n}-head", mm, 0, 0) for n, mm in enumerate(lengths_mm)]
    work = workload(profile_demand(pieces, HOUSE.profiles[0], 0.0).demands)
    bars = bars_of("OG", HOUSE.stock, (), HOUSE.saw)
    # Pieces are numbered longest first: 730, 720, 710, 700 are 4 to 7.
    return (
        work,
        bars,
        Packing(
            tuple(
                filled(work, 0, [Place(piece, turned=False) for piece in pieces])
                for pieces in SCATTERED
            )
        ),
    )


def stock_of(work: Workload, bars: Bars, solver: LinearSolver) -> Stock:
    layout = Layout(work, bars.bars, groups_of(work))
    return Stock(layout=layout, bars=bars, solver=solver, effort=QUICK)


def test_an_offcut_that_is_the_longest_is_proved() -> None:
    """No four sticks hold 7300 mm, and the smallest piece leaves 1300 of a stick of its own."""
    work, bars, packing = scattered()
    stock = stock_of(work, bars, HighsSolver())
    found = longest_offcut(
        stock, floor_of(work, bars.bars), patterns_of(stock, packing), 130000, (), None
    )
    assert longest_left(work, bars, packing) == 130000
    assert found.patterns == ()
    assert 130000 <= found.limit < 130000 + SHOWN


def spread_out() -> tuple[Workload, Bars, Packing]:
    """The same, but the 500 lies with a 1000, and a 730 alone: it leaves 1070."""
    work, bars, _ = scattered()
    sticks = [[0, 8], [1, 5], [2, 6], [3, 7], [4]]
    return (
        work,
        bars,
        Packing(
            tuple(filled(work, 0, [Place(p, turned=False) for p in pieces]) for pieces in sticks)
        ),
    )


def test_a_longer_offcut_is_found() -> None:
    work, bars, packing = spread_out()
    stock = stock_of(work, bars, HighsSolver())
    assert longest_left(work, bars, packing) == 107000
    found = longest_offcut(
        stock, floor_of(work, bars.bars), patterns_of(stock, packing), 107000, (), None
    )
    packed = stock.layout.packing(found.patterns)
    assert longest_left(work, bars, packed) == 130000
    assert len(packed.sticks) == 5
    assert 130000 <= found.limit < 130000 + SHOWN


@pytest.mark.parametrize("left", [107000, 90000])
def test_a_solver_that_searches_no_sets_still_gives_a_limit(left: int) -> None:
    work, bars, packing = spread_out()
    stock = stock_of(work, bars, SolverAlone())
    found = longest_offcut(
        stock, floor_of(work, bars.bars), patterns_of(stock, packing), left, (), None
    )
    assert found.patterns == ()
    assert 130000 <= found.limit <= 180000
