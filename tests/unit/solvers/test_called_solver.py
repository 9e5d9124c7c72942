"""Beside the contract of the linear port, in test_highs: what the page may answer."""

import json

import pytest

from longpoint.linear.port import LinearColumn, LinearProblem, LinearRow, LinearStatus
from longpoint.solvers.called_solver import CalledSolver

PROBLEM = LinearProblem(
    columns=(LinearColumn(cost=1.0, rows=((0, 1.0),)),), rows=(LinearRow(lower=2.0),)
)


@pytest.mark.parametrize("status", ["unsolved", "infeasible"])
def test_no_solution_has_no_values_and_no_bound(status: str) -> None:
    said = {"status": status, "values": [], "duals": [], "objective": 0, "bound": None}
    found = CalledSolver(lambda *_: json.dumps(said | {"solver": "page 1.0"})).solve(PROBLEM)
    assert found.status is LinearStatus(status)
    assert found.values == ()
    assert (found.objective, found.bound) == (float("inf"), float("-inf"))
    assert found.solver == "page 1.0"


def test_a_bound_that_nobody_knows_is_minus_infinity() -> None:
    said = {"status": "feasible", "values": [3], "duals": [], "objective": 3, "bound": None}
    found = CalledSolver(lambda *_: json.dumps(said | {"solver": "page 1.0"})).solve(PROBLEM)
    assert found.values == (3.0,)
    assert found.bound == float("-inf")
