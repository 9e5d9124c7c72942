from dataclasses import replace

import pytest

from longpoint.forecast.lines import Line, LineGroup, LineHouse, LineOpening, Spread
from longpoint.forecast.plain_lines import PlainLines
from longpoint.solvers import numpy_lines
from longpoint.solvers.numpy_lines import NumpyLines
from tests.line_houses import line_house


def near_one(u: float) -> LineHouse:
    """Every draw lies within a few u of 1."""
    line = Line(offset=1.0, shared=(u,), private=(-2.0 * u, u))
    opening = LineOpening(
        mark="W1",
        groups=(LineGroup(name="gaps", lines=(line,)),),
        private=(Spread.NORMAL, Spread.RECTANGULAR),
    )
    return LineHouse(openings=(opening,) * 2, shared=(Spread.NORMAL,), draws=500, seed=3)


def test_numpy_is_installed_where_the_tests_run() -> None:
    assert NumpyLines.is_installed()


@pytest.mark.parametrize("seed", [1, 2])
def test_a_house_of_windows_comes_to_the_same_as_in_plain_python(seed: int) -> None:
    house = line_house(3, 1000, seed=seed)
    tally = NumpyLines().tally(house)
    assert tally == PlainLines().tally(house)
    assert any(0 < opening.together < 1000 for opening in tally.openings)


@pytest.mark.parametrize("block", [1, 7, 64, 1000])
def test_blocks_of_draws_change_nothing(monkeypatch: pytest.MonkeyPatch, block: int) -> None:
    house = line_house(4, 130)
    whole = NumpyLines().tally(house)
    monkeypatch.setattr(numpy_lines, "_BLOCK", block)
    assert NumpyLines().tally(house) == whole


@pytest.mark.parametrize("u", [1e-5, 1e-8, 1e-12])
def test_draws_too_near_to_one_for_single_precision_are_judged_in_double(u: float) -> None:
    tally = NumpyLines().tally(near_one(u))
    assert tally == PlainLines().tally(near_one(u))
    assert 150 < tally.openings[0].together < 350


def test_large_coefficients_widen_what_counts_as_near() -> None:
    line = Line(offset=0.5 - 1e4, shared=(1e4,), private=(1e4, 0.0))
    opening = LineOpening(
        mark="W1",
        groups=(LineGroup(name="gaps", lines=(line,)),),
        private=(Spread.NORMAL, Spread.NORMAL),
    )
    house = LineHouse(openings=(opening,), shared=(Spread.NORMAL,), draws=4000, seed=5)
    tally = NumpyLines().tally(house)
    assert tally == PlainLines().tally(house)
    assert 2800 < tally.openings[0].together < 3300
    judge = NumpyLines()._judge(opening.groups[0], 3)
    assert judge.near > 1e4 * 2.0**-24


def test_windows_and_doors_may_have_errors_of_different_kinds_and_number() -> None:
    house = line_house(2, 300)
    door = LineOpening(
        mark="D1",
        groups=(
            LineGroup(
                name="gaps",
                lines=(Line(offset=0.0, shared=(0.3,) * 8, private=(0.2, -0.5)),),
            ),
        ),
        private=(Spread.RECTANGULAR, Spread.NORMAL),
    )
    house = replace(house, openings=(door, *house.openings))
    assert NumpyLines().tally(house) == PlainLines().tally(house)
