"""A cut plan of one house: 108 pieces of one profile on five lengths; a slower one; the saving."""

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from longpoint.pieces.piece import Piece
from longpoint.solvers.installed import linear_solver
from longpoint.sticks.plan import CutPlan
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from tests.random_sticks import house_of, house_pieces


def of_108_pieces(width_mm: float, reversible: bool) -> tuple[tuple[Piece, ...], House]:
    return house_pieces(100, width_mm=width_mm), house_of(width_mm=width_mm, reversible=reversible)


@pytest.mark.parametrize(
    ("width_mm", "reversible"),
    [
        pytest.param(66.0, False, id="moulded-66", marks=pytest.mark.long),
        pytest.param(66.0, True, id="reversible-66"),
        pytest.param(90.0, True, id="reversible-90", marks=pytest.mark.long),
    ],
)
def test_a_house_of_108_pieces_with_a_solver(
    benchmark: BenchmarkFixture, width_mm: float, reversible: bool
) -> None:
    pieces, house = of_108_pieces(width_mm, reversible)

    def work() -> CutPlan:
        return plan_sticks(pieces, house, linear_solver())

    plan: CutPlan = benchmark.pedantic(work, rounds=2)  # type: ignore[no-untyped-call]
    proof = plan.proofs[0]
    benchmark.extra_info.update(
        bought_m=proof.cost, at_least_m=proof.lower_bound, optimal=proof.optimal
    )
    # Never more than one 300 mm step of the stock above what is needed at least.
    assert proof.cost - proof.lower_bound < 0.3 + 1e-9


def test_a_house_of_108_pieces_without_a_solver(benchmark: BenchmarkFixture) -> None:
    pieces, house = of_108_pieces(66.0, reversible=True)
    plan = benchmark(plan_sticks, pieces, house)
    assert plan.unplaced == ()


@pytest.mark.parametrize(
    ("width_mm", "least"), [pytest.param(66.0, 0.025, marks=pytest.mark.long), (90.0, 0.035)]
)
def test_turning_pieces_of_a_reversible_section_saves_metres(
    benchmark: BenchmarkFixture, width_mm: float, least: float
) -> None:
    """Moulded pieces with mitres at 45 lie as rectangles over their long points."""

    def work() -> tuple[float, float]:
        solver = linear_solver()
        pieces = house_pieces(100, width_mm=width_mm, odd_deg=0.0)
        bought = [
            plan_sticks(pieces, house_of(width_mm=width_mm, reversible=turned), solver)
            for turned in (False, True)
        ]
        return bought[0].proofs[0].cost, bought[1].proofs[0].cost

    bought: tuple[float, float] = benchmark.pedantic(work, rounds=1)  # type: ignore[no-untyped-call]
    rectangles_m, turned_m = bought
    benchmark.extra_info["saved_percent"] = 100.0 * (1.0 - turned_m / rectangles_m)
    assert 1.0 - turned_m / rectangles_m >= least
