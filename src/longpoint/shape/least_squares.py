"""Weighted least squares on a handful of unknowns, standard library only.

References:
    Gauss-Newton on readings over their uncertainty; covariance C = (J'PJ)^-1, redundancy
    r_i = 1 - (J C J')_ii / u_i^2, as in any text on the adjustment of observations.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import NormalDist
from typing import Final

from longpoint.errors import ShapeError
from longpoint.speech.said import say

Row = tuple[float, ...]
Model = Callable[[Row], tuple[Row, tuple[Row, ...]]]
"""From the unknowns to (what each reading should show, its gradient)."""

MOST_STEPS: Final = 60
SMALL_STEP: Final = 1e-8
_SINGULAR: Final = 1e-9
_SMALLEST_TAIL: Final = 1e-300


@dataclass(frozen=True, slots=True, kw_only=True)
class Adjustment:
    """The best fit of a set of readings.

    Attributes:
        unknowns: Their fitted values, (n,).
        covariance: Of the unknowns, from the readings' private uncertainties, (n, n).
        residuals: Reading minus fitted, (m,).
        redundancy: Share of an error of each reading that shows in its residual, 0 to 1, (m,).
        influence: Change of each unknown per unit change of each reading, (n, m).
        chi_squared: Sum of squared residuals over u.
    """

    unknowns: Row
    covariance: tuple[Row, ...]
    residuals: Row
    redundancy: Row
    influence: tuple[Row, ...]
    chi_squared: float


def adjust(model: Model, start: Row, readings: Row, u: Row) -> Adjustment:
    """Fit the unknowns of a model to readings.

    Args:
        model: From unknowns to predictions (m,) and their gradients (m, n).
        start: First guess, (n,).
        readings: What was read, (m,).
        u: Standard uncertainty of each reading, > 0, (m,).

    Returns:
        The fit.

    Raises:
        ShapeError: The readings don't determine the unknowns, or nothing fits them.
    """
    unknowns = start
    predicted, gradients = model(unknowns)
    misfit = _misfit(readings, predicted, u)
    for _ in range(MOST_STEPS):
        weighted = _weighted(gradients, u)
        right = tuple(
            math.fsum(
                row[k] * (read - fit) / s
                for row, read, fit, s in zip(weighted, readings, predicted, u, strict=True)
            )
            for k in range(len(unknowns))
        )
        step = solve(_normal(weighted), right)
        unknowns, predicted, gradients, misfit, size = _stride(
            model, unknowns, step, readings, u, misfit
        )
        if size < SMALL_STEP:
            break
    else:
        raise _nothing_fits()
    return _finished(unknowns, predicted, gradients, readings, u)


def rank(rows: Sequence[Row]) -> int:
    """Return how many of the rows are independent (modified Gram-Schmidt).

    Example:
        >>> rank([(1.0, 0.0), (0.0, 2.0), (1.0, 1.0)])
        2
    """
    basis: list[Row] = []
    for row in rows:
        size = math.hypot(*row)
        left = row
        for unit in basis:
            along = math.fsum(a * b for a, b in zip(left, unit, strict=True))
            left = tuple(a - along * b for a, b in zip(left, unit, strict=True))
        rest = math.hypot(*left)
        if rest > 1e-6 * max(size, 1e-12):
            basis.append(tuple(a / rest for a in left))
    return len(basis)


def solve(matrix: Sequence[Row], right: Row) -> Row:
    """Solve a small symmetric positive definite system by Cholesky's method.

    Raises:
        ShapeError: The matrix is singular: the readings don't determine the unknowns.

    Example:
        >>> solve([(4.0, 2.0), (2.0, 3.0)], (8.0, 7.0))
        (1.25, 1.5)
    """
    lower = _cholesky(matrix)
    size = len(right)
    half: list[float] = []
    for i in range(size):
        done = math.fsum(lower[i][k] * half[k] for k in range(i))
        half.append((right[i] - done) / lower[i][i])
    out = [0.0] * size
    for i in reversed(range(size)):
        done = math.fsum(lower[k][i] * out[k] for k in range(i + 1, size))
        out[i] = (half[i] - done) / lower[i][i]
    return tuple(out)


def chi_squared_tail(value: float, freedom: int) -> float:
    """Return the chance that chi-squared with whole `freedom` exceeds a value.

    Example:
        >>> round(chi_squared_tail(9.0, 1), 4), round(chi_squared_tail(5.991, 2), 3)
        (0.0027, 0.05)
    """
    half = value / 2.0
    if freedom % 2:
        total = math.erfc(math.sqrt(half))
        term = math.exp(-half) * math.sqrt(half) / math.gamma(1.5)
        start = 1.5
    else:
        total, term, start = 0.0, math.exp(-half), 1.0
    for k in range(freedom // 2):
        total += term
        term *= half / (start + k)
    return min(1.0, total)


def as_normal(chi_squared: float, freedom: int) -> float:
    """Return the number of standard uncertainties of a normal error that is as unlikely.

    Example:
        >>> round(as_normal(9.0, 1), 3), round(as_normal(11.83, 2), 2)
        (3.0, 3.0)
    """
    if freedom == 1:
        return math.sqrt(chi_squared)
    tail = chi_squared_tail(chi_squared, freedom)
    if tail < _SMALLEST_TAIL:
        return math.sqrt(max(chi_squared - freedom + 1.0, 0.0))
    # From the lower end: 1 - tail / 2 would lose a small tail altogether.
    return max(0.0, -NormalDist().inv_cdf(tail / 2.0))


def _stride(
    model: Model, unknowns: Row, step: Row, readings: Row, u: Row, misfit: float
) -> tuple[Row, Row, tuple[Row, ...], float, float]:
    """Take the step, halved until it makes the fit no worse."""
    share = 1.0
    for _ in range(40):
        moved = tuple(x + share * dx for x, dx in zip(unknowns, step, strict=True))
        predicted, gradients = model(moved)
        new = _misfit(readings, predicted, u)
        size = share * max((abs(dx) for dx in step), default=0.0)
        if new <= misfit * (1 + 1e-9) + 1e-12 or size < SMALL_STEP:
            return moved, predicted, gradients, new, size
        share /= 2.0
    raise _nothing_fits()


def _finished(
    unknowns: Row, predicted: Row, gradients: tuple[Row, ...], readings: Row, u: Row
) -> Adjustment:
    weighted = _weighted(gradients, u)
    normal = _normal(weighted)
    count = len(unknowns)
    covariance = tuple(
        solve(normal, tuple(1.0 if i == j else 0.0 for j in range(count))) for i in range(count)
    )
    spread = tuple(
        tuple(math.fsum(c * g for c, g in zip(line, row, strict=True)) for row in weighted)
        for line in covariance
    )
    leverage = tuple(
        math.fsum(spread[k][i] * row[k] for k in range(count)) for i, row in enumerate(weighted)
    )
    residuals = tuple(read - fit for read, fit in zip(readings, predicted, strict=True))
    return Adjustment(
        unknowns=unknowns,
        covariance=covariance,
        residuals=residuals,
        redundancy=tuple(min(1.0, max(0.0, 1.0 - share)) for share in leverage),
        influence=tuple(tuple(a / s for a, s in zip(line, u, strict=True)) for line in spread),
        chi_squared=_misfit(readings, predicted, u),
    )


def _weighted(gradients: tuple[Row, ...], u: Row) -> tuple[Row, ...]:
    return tuple(tuple(g / s for g in row) for row, s in zip(gradients, u, strict=True))


def _normal(weighted: tuple[Row, ...]) -> tuple[Row, ...]:
    count = len(weighted[0]) if weighted else 0
    return tuple(
        tuple(math.fsum(row[i] * row[j] for row in weighted) for j in range(count))
        for i in range(count)
    )


def _misfit(readings: Row, predicted: Row, u: Row) -> float:
    return math.fsum(
        ((read - fit) / s) ** 2 for read, fit, s in zip(readings, predicted, u, strict=True)
    )


def _cholesky(matrix: Sequence[Row]) -> list[list[float]]:
    size = len(matrix)
    lower = [[0.0] * size for _ in range(size)]
    for i in range(size):
        for j in range(i + 1):
            rest = matrix[i][j] - math.fsum(lower[i][k] * lower[j][k] for k in range(j))
            if i == j:
                if not rest > _SINGULAR * max(matrix[i][i], 1e-300):
                    raise ShapeError(
                        say("The readings of one shape were put together."),
                        say("They leave part of the shape open."),
                        say("Read the missing sides or a diagonal."),
                    )
                lower[i][i] = math.sqrt(rest)
            else:
                lower[i][j] = rest / lower[j][j]
    return lower


def _nothing_fits() -> ShapeError:
    return ShapeError(
        say("The readings of one shape were put together."),
        say("No flat shape comes near all of them."),
        say("Read the sides and the diagonals again."),
    )
