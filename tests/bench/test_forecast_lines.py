"""Draws of a house of 25 openings: drawn, judged with numpy, and judged in plain Python.

A draw looks at 242 lines over 40 errors in each opening.
"""

from pytest_benchmark.fixture import BenchmarkFixture

from longpoint.forecast.lines import LineHouse, LineTally
from longpoint.forecast.plain_lines import PlainLines
from longpoint.solvers.numpy_lines import NumpyLines
from tests.line_houses import line_house

MANY = 100_000
FEW = 2000


def house(draws: int) -> LineHouse:
    return line_house(25, draws)


def test_a_hundred_thousand_houses_drawn_with_numpy(benchmark: BenchmarkFixture) -> None:
    whole, engine = house(MANY), NumpyLines()
    shared, pool = benchmark.pedantic(  # type: ignore[no-untyped-call]
        engine.drawn, args=(whole,), rounds=3
    )
    assert shared.shape == (8, MANY)
    assert len(pool) >= 32


def test_a_hundred_thousand_houses_drawn_and_judged_with_numpy(
    benchmark: BenchmarkFixture,
) -> None:
    whole, engine = house(MANY), NumpyLines()
    tally: LineTally = benchmark.pedantic(  # type: ignore[no-untyped-call]
        engine.tally, args=(whole,), rounds=3
    )
    assert sum(tally.misfits) == MANY


def test_two_thousand_houses_drawn_and_judged_with_numpy(benchmark: BenchmarkFixture) -> None:
    tally = benchmark(NumpyLines().tally, house(FEW))
    assert sum(tally.misfits) == FEW


def test_two_thousand_houses_drawn_and_judged_in_plain_python(
    benchmark: BenchmarkFixture,
) -> None:
    whole = house(FEW)
    tally: LineTally = benchmark.pedantic(  # type: ignore[no-untyped-call]
        PlainLines().tally, args=(whole,), rounds=2
    )
    assert tally == NumpyLines().tally(whole)
