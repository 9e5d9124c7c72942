"""Lists of lines of a new frame, weighed and audited; one fit-up by linear programme."""

import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import FitLimits, frame_rows
from longpoint.forecast.fitup.lines import Respect, fit_lines, missing_lines
from longpoint.linear.port import LinearSolver
from longpoint.linear.simplex import SimplexSolver
from longpoint.solvers.highs import HighsSolver
from tests.fit_up_draws import Set, Spreads, drawn_errors

FRAME = Set().frame()
LIMITS = FitLimits(gap_mm=0.5)


@pytest.mark.parametrize("respect", Respect)
def test_the_lines_of_a_window(benchmark: BenchmarkFixture, respect: Respect) -> None:
    assert benchmark(fit_lines, FRAME, LIMITS, respect)


@pytest.mark.parametrize("solver", [HighsSolver(), SimplexSolver()], ids=["highs", "simplex"])
def test_one_fit_up_by_linear_programme(benchmark: BenchmarkFixture, solver: LinearSolver) -> None:
    rows = frame_rows(FRAME, LIMITS)
    errors = drawn_errors(FRAME, Spreads(saw_bias_deg=0.1), 1, np.random.default_rng(1))[0]
    assert benchmark(best_fit_up, rows, tuple(errors), solver).ratio > 0.0


def test_an_audit_with_a_hundred_draws(benchmark: BenchmarkFixture) -> None:
    lines = fit_lines(FRAME, LIMITS, Respect.IN_PLANE)
    pool = drawn_errors(FRAME, Spreads(saw_bias_deg=0.1), 100, np.random.default_rng(1))
    draws = [tuple(errors) for errors in pool]
    benchmark(missing_lines, FRAME, LIMITS, Respect.IN_PLANE, lines, draws, HighsSolver())
