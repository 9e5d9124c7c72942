"""Plain cutting stock by the published recipes, proved; the public sets have a runner beside."""

from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from longpoint.solvers.installed import linear_solver
from longpoint.sticks.effort import STANDARD
from longpoint.sticks.profile_plan import ProfilePlan
from tests.bench.cutting_stock import CuttingStock, check, planned, read_cutting_stock
from tests.bench.recipes import triplets, uniform


@pytest.mark.parametrize(
    "instance", [uniform(1, 120), uniform(2, 500), triplets(1, 60), triplets(2, 120)]
)
def test_uniform_lengths_and_triplets(benchmark: BenchmarkFixture, instance: CuttingStock) -> None:
    def work() -> ProfilePlan:
        return planned(instance, linear_solver(), STANDARD)

    plan: ProfilePlan = benchmark.pedantic(work, rounds=1)  # type: ignore[no-untyped-call]
    check(instance, plan)
    assert plan.proof.optimal
    if instance.stick == 1000:
        assert plan.proof.cost == sum(demand for _, demand in instance.lengths) / 3


def test_a_file_of_the_public_format_is_read(tmp_path: Path) -> None:
    path = tmp_path / "three.txt"
    path.write_text("2\n10\n6 2\n4\t3\n", encoding="ascii")
    assert read_cutting_stock(path) == CuttingStock(
        name="three", stick=10, lengths=((6, 2), (4, 3))
    )
    plan = planned(read_cutting_stock(path), linear_solver(), STANDARD)
    check(read_cutting_stock(path), plan)
    assert plan.proof.cost == 3


def test_a_file_that_ends_early_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "short.txt"
    path.write_text("2\n10\n6 2\n", encoding="ascii")
    with pytest.raises(ValueError, match="announced"):
        read_cutting_stock(path)
