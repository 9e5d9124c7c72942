"""The best fit-up of a frame, by linear programme: how to shift its pieces to fit at best."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.forecast.fitup.frame import FrameRow
from longpoint.linear.port import (
    LinearColumn,
    LinearProblem,
    LinearRow,
    LinearSolver,
    LinearStatus,
)

_NOUGHT: Final = 1e-12


@dataclass(frozen=True, slots=True, kw_only=True)
class FitUp:
    """The best fit-up for given errors.

    Attributes:
        ratio: Fit ratio: it fits when this is at most 1; 0 when nothing is out at all. Infinite
            where pieces overlap however they are shifted.
        moves: Slide, shift and turn of each piece, (3 n,).
        weights: Weight of each row in the limit that rules, (rows,): >= 0, and with them no move
            changes the sum; nought where the ratio is.
    """

    ratio: float
    moves: tuple[float, ...]
    weights: tuple[float, ...]


def best_fit_up(rows: Sequence[FrameRow], errors: Sequence[float], solver: LinearSolver) -> FitUp:
    """Return the least fit ratio that some shift of the pieces reaches.

    Args:
        rows: Limits of the frame, all of them or those of one respect.
        errors: What the frame is out by, (8 n,).
        solver: Solves the programme.

    Returns:
        The fit-up, exact within the solver's tolerance.

    References:
        Minimise r over the moves with moves . x - r limit <= - errors . e for every row; the duals
        of the rows add up to no move and to a limit of one.
    """
    count = len(rows[0].moves)
    off = [math.fsum(a * e for a, e in zip(row.errors, errors, strict=True)) for row in rows]
    columns = [
        LinearColumn(
            cost=0.0,
            rows=tuple((i, row.moves[k]) for i, row in enumerate(rows) if row.moves[k]),
            lower=-math.inf,
        )
        for k in range(count)
    ]
    ratio = LinearColumn(
        cost=1.0, rows=tuple((i, -row.limit_mm) for i, row in enumerate(rows) if row.limit_mm)
    )
    solved = solver.solve(
        LinearProblem(columns=(*columns, ratio), rows=tuple(LinearRow(upper=-x) for x in off))
    )
    if solved.status is not LinearStatus.OPTIMAL:
        return FitUp(ratio=math.inf, moves=(0.0,) * count, weights=(0.0,) * len(rows))
    rules = solved.values[-1] > _NOUGHT
    return FitUp(
        ratio=solved.values[-1] if rules else 0.0,
        moves=solved.values[:-1],
        weights=tuple(max(0.0, -dual) if rules else 0.0 for dual in solved.duals),
    )
