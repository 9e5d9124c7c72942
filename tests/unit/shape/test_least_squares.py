import math
from itertools import pairwise
from random import Random

import numpy as np
import pytest
from scipy import stats

from longpoint.errors import ShapeError
from longpoint.shape.least_squares import Row, adjust, as_normal, chi_squared_tail, rank, solve


def line(unknowns: Row) -> tuple[Row, tuple[Row, ...]]:
    """Return a straight line at x = 0, 1, 2, 3, and its gradients."""
    a, b = unknowns
    return tuple(a + b * x for x in range(4)), tuple((1.0, float(x)) for x in range(4))


def circle(unknowns: Row) -> tuple[Row, tuple[Row, ...]]:
    """Return distances from a point to three others: not linear at all."""
    x, y = unknowns
    spots = ((0.0, 0.0), (1000.0, 0.0), (0.0, 1000.0))
    found = [math.hypot(x - sx, y - sy) for sx, sy in spots]
    rows = tuple(((x - sx) / d, (y - sy) / d) for (sx, sy), d in zip(spots, found, strict=True))
    return tuple(found), rows


READ = (1.0, 3.1, 4.9, 7.2)
U = (0.1, 0.2, 0.1, 0.4)


def test_a_weighted_line_agrees_with_the_normal_equations_of_numpy() -> None:
    fit = adjust(line, (0.0, 0.0), READ, U)
    jacobian = np.array([[1.0, x] for x in range(4)]) / np.array(U)[:, None]
    read = np.array(READ) / np.array(U)
    expected, *_ = np.linalg.lstsq(jacobian, read, rcond=None)
    covariance = np.linalg.inv(jacobian.T @ jacobian)
    assert fit.unknowns == pytest.approx(expected)
    assert np.allclose(fit.covariance, covariance)
    hat = jacobian @ covariance @ jacobian.T
    assert fit.redundancy == pytest.approx(1.0 - np.diag(hat))
    assert fit.chi_squared == pytest.approx(float(((read - jacobian @ expected) ** 2).sum()))


def test_redundancies_add_up_to_the_readings_to_spare() -> None:
    assert math.fsum(adjust(line, (0.0, 0.0), READ, U).redundancy) == pytest.approx(2.0)


def test_the_influence_is_what_moving_a_reading_does() -> None:
    fit = adjust(line, (0.0, 0.0), READ, U)
    moved = adjust(line, (0.0, 0.0), (READ[0], READ[1] + 1.0, *READ[2:]), U)
    for k in range(2):
        assert moved.unknowns[k] - fit.unknowns[k] == pytest.approx(fit.influence[k][1])


def test_a_curved_model_is_fitted_from_a_poor_guess() -> None:
    fit = adjust(circle, (700.0, 100.0), (500.0, 854.4, 854.4), (1.0, 1.0, 1.0))
    assert fit.unknowns == pytest.approx((353.55, 353.55), abs=60.0)
    predicted, rows = circle(fit.unknowns)
    for k in range(2):
        # At the best fit the residuals stand square to every gradient.
        slope = math.fsum(r[k] * v for r, v in zip(rows, fit.residuals, strict=True))
        assert slope == pytest.approx(0.0, abs=1e-4)
    assert len(predicted) == 3


def test_unknowns_that_nothing_reads_are_refused() -> None:
    def blind(unknowns: Row) -> tuple[Row, tuple[Row, ...]]:
        return (unknowns[0],), ((1.0, 0.0),)

    with pytest.raises(ShapeError):
        adjust(blind, (0.0, 0.0), (1.0,), (1.0,))


@pytest.mark.parametrize("size", [1, 2, 5, 8])
def test_systems_are_solved_as_numpy_solves_them(size: int) -> None:
    rng = np.random.default_rng(size)
    root = rng.normal(size=(size, size))
    matrix = root @ root.T + 0.1 * np.eye(size)
    right = rng.normal(size=size)
    found = solve([tuple(float(x) for x in row) for row in matrix], tuple(map(float, right)))
    assert found == pytest.approx(np.linalg.solve(matrix, right), rel=1e-8)


def test_a_system_without_one_answer_is_refused() -> None:
    with pytest.raises(ShapeError):
        solve([(1.0, 1.0), (1.0, 1.0)], (1.0, 1.0))


def test_rank_counts_rows_as_numpy_does() -> None:
    rng = Random(5)
    for _ in range(50):
        rows = [tuple(rng.gauss(0, 1) for _ in range(5)) for _ in range(3)]
        mixed = tuple(a + 2 * b for a, b in zip(rows[0], rows[1], strict=True))
        assert rank([*rows, mixed]) == np.linalg.matrix_rank(np.array([*rows, mixed])) == 3


@pytest.mark.parametrize("freedom", [1, 2, 3, 4, 7, 12])
@pytest.mark.parametrize("value", [0.1, 1.0, 6.0, 25.0, 80.0])
def test_the_tail_of_chi_squared_agrees_with_scipy(value: float, freedom: int) -> None:
    assert chi_squared_tail(value, freedom) == pytest.approx(
        float(stats.chi2.sf(value, freedom)), rel=1e-9
    )


@pytest.mark.parametrize("freedom", [1, 2, 5])
def test_a_chi_squared_is_as_unlikely_as_its_normal(freedom: int) -> None:
    for value in (4.0, 12.0, 30.0):
        normal = as_normal(value, freedom)
        assert 2 * stats.norm.sf(normal) == pytest.approx(stats.chi2.sf(value, freedom), rel=1e-6)


def test_the_size_of_a_misclosure_grows_without_a_jump_where_the_tail_ends() -> None:
    # Far out the tail can't be turned back into a normal; what stands in must go on growing.
    for freedom in (2, 3, 5):
        sizes = [as_normal(value / 4.0, freedom) for value in range(200, 8000)]
        assert all(b > a for a, b in pairwise(sizes))
