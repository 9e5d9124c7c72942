"""Readings to pieces, and the whole command from a cold start; see docs/reference/speed.md."""

import subprocess
import sys
from pathlib import Path

from pytest_benchmark.fixture import BenchmarkFixture

from longpoint.pieces.openings import plan_openings
from longpoint.pipeline import check_house, plan_house
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house_file import read_house
from tests.scenarios.houses import document

ROOT = Path(__file__).parents[2]


def of_25_openings() -> dict[str, object]:
    found = document("series-k", mended=True)
    found["openings"] = found["openings"][:25]
    return found


def test_25_openings_read_fitted_and_turned_into_pieces(benchmark: BenchmarkFixture) -> None:
    written = of_25_openings()

    def work() -> int:
        house = read_house(written).house
        openings, _ = fit_openings(house)
        pieces, _ = plan_openings(house, Shapes(openings=openings), frozenset())
        return len(pieces)

    assert benchmark(work) == 15 * 4 + 10 * 3


def test_25_openings_checked(benchmark: BenchmarkFixture) -> None:
    survey = read_house(of_25_openings())
    shapes, _ = benchmark(check_house, survey)
    assert len(shapes.openings) == 25


def test_a_cabin_planned_by_the_built_in_search(benchmark: BenchmarkFixture) -> None:
    survey = read_house(document("pipit"))
    plan = benchmark(plan_house, survey)
    assert plan.cut_plan.sticks


def test_help_from_a_cold_start(benchmark: BenchmarkFixture) -> None:
    benchmark.pedantic(  # type: ignore[no-untyped-call]
        cold, args=(["--help"],), rounds=5
    )


def test_a_cabin_from_file_to_sheets_from_a_cold_start(
    benchmark: BenchmarkFixture, tmp_path: Path
) -> None:
    house = ROOT / "tests" / "scenarios" / "pipit.toml"
    words = ["plan", str(house), "--out", str(tmp_path / "sheets")]
    benchmark.pedantic(  # type: ignore[no-untyped-call]
        cold, args=(words,), rounds=3
    )
    if benchmark.enabled:
        benchmark.extra_info["peak_mb"] = peak_mb(words)
    assert (tmp_path / "sheets" / "sheets.pdf").stat().st_size > 10_000


def test_the_book_of_the_cottage_from_a_cold_start(
    benchmark: BenchmarkFixture, tmp_path: Path
) -> None:
    house = ROOT / "tests" / "scenarios" / "fallow-end.toml"
    words = ["book", str(house), "--out", str(tmp_path)]
    benchmark.pedantic(  # type: ignore[no-untyped-call]
        cold, args=(words,), rounds=3
    )
    if benchmark.enabled:
        benchmark.extra_info["peak_mb"] = peak_mb(words)
    assert (tmp_path / "book.pdf").stat().st_size > 100_000


def cold(words: list[str]) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "longpoint.cli.main", *words], check=False, capture_output=True
    )
    assert done.returncode in (0, 1), done.stderr


def peak_mb(words: list[str]) -> float:
    """Return the most memory the command held, as it reports of itself."""
    script = (
        "import resource, sys, runpy\n"
        f"sys.argv = ['longpoint', *{words!r}]\n"
        "try:\n    runpy.run_module('longpoint.cli.main', run_name='__main__')\n"
        "except SystemExit:\n    pass\n"
        "print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], check=True, capture_output=True, text=True
    )
    return float(done.stdout.splitlines()[-1])
