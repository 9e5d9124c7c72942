"""The best shifting of the pieces that hang, as linear programs."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.forecast.tapping.lie import PLACES, LieRow
from longpoint.linear.port import (
    LinearColumn,
    LinearProblem,
    LinearRow,
    LinearSolver,
    LinearStatus,
)

TAP_ROOM_MM: Final = 1.0
"""How far a piece on one nail at each end lets itself be tapped; assumed."""
FREE_ROOM_MM: Final = 5.0
"""How far a piece that isn't nailed is moved at once; beyond it the linear rows wear thin."""
RESERVE: Final = 0.8
"""Steps and quirks may take this part of what is allowed for the sake of the joints; assumed."""
UNREAD_CLOSE_MM: Final = 0.1
"""A joint end that wasn't read may close by this much, and never opens."""
NEAT: Final = 0.3
"""Joints closed to this part of the gap allowed are closed well enough: fewer taps; assumed."""
_SLACK_MM: Final = 0.01


@dataclass(frozen=True, slots=True, kw_only=True)
class TapRules:
    """What may be tapped.

    Attributes:
        free: Pieces not nailed yet.
        fixed: Pieces nailed along, which don't move.
        tap_room_mm: How far the others go, at each end and along. > 0.
        free_room_mm: How far the free ones go.
    """

    free: frozenset[int] = frozenset()
    fixed: frozenset[int] = frozenset()
    tap_room_mm: float = TAP_ROOM_MM
    free_room_mm: float = FREE_ROOM_MM

    def room_mm(self, piece: int) -> float:
        """Return how far a piece goes. [mm]"""
        if piece in self.fixed:
            return 0.0
        return self.free_room_mm if piece in self.free else self.tap_room_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bound:
    """What a row must stay under: taps . x - share x worst <= limit."""

    taps: tuple[float, ...]
    share: float
    limit: float


def best_moves(
    lie: Sequence[LieRow], rules: TapRules, solver: LinearSolver
) -> tuple[float, ...] | None:
    """Return how far to tap each place, unrounded.

    Args:
        lie: How the pieces lie.
        rules: What may be tapped.
        solver: Solves linear programs.

    Returns:
        Moves by place, (3 n,): first the worst of gap, step and quirk over what is allowed is
        made least, then the worst gap within that, then the tapping for joints that are closed
        as far as can be or neatly, whichever is less work. No gap goes under 0 where
        that can be helped, none over the worst of now, and no end that wasn't read opens. None
        when no moves are found.
    """
    for floor_mm in (0.0, None):
        ratio = _least(lie, rules, solver, floor_mm, held=None)
        if ratio is None:
            continue
        held = max(ratio[-1], RESERVE) + 1e-6
        gap = _least(lie, rules, solver, floor_mm, held=held)
        if gap is None:
            continue
        target_mm = max(gap[-1] + _SLACK_MM, neat_mm(lie))
        return _least_tapping(lie, rules, solver, floor_mm, held, target_mm)
    return None


def neat_mm(lie: Sequence[LieRow]) -> float:
    """Return how wide a joint may stay that counts as closed neatly. [mm]"""
    return NEAT * min(row.high_mm for row in lie if row.is_gap)


def _least(
    lie: Sequence[LieRow],
    rules: TapRules,
    solver: LinearSolver,
    floor_mm: float | None,
    *,
    held: float | None,
) -> tuple[float, ...] | None:
    """Return moves and, last, the least worst ratio; with `held`, the least worst gap."""
    bounds = [bound for row in lie for bound in _limits(row, lie, floor_mm, held)]
    columns = [(room, 0.0) for room in _rooms(lie, rules)]
    return _solved(bounds, columns, 1.0, solver)


def _least_tapping(
    lie: Sequence[LieRow],
    rules: TapRules,
    solver: LinearSolver,
    floor_mm: float | None,
    held: float,
    gap_mm: float,
) -> tuple[float, ...] | None:
    bounds = [
        _Bound(taps=b.taps, share=0.0, limit=b.limit + b.share * gap_mm)
        for row in lie
        for b in _limits(row, lie, floor_mm, held)
    ]
    columns = [(room, 1.0) for room in _rooms(lie, rules)]
    found = _solved(bounds, columns, 0.0, solver)
    return None if found is None else found[:-1]


def _limits(
    row: LieRow, lie: Sequence[LieRow], floor_mm: float | None, held: float | None
) -> list[_Bound]:
    """Return the bounds of one row; those with a share give way with the worst."""
    back = tuple(-a for a in row.taps)
    if row.is_gap and not row.is_read:
        return [
            _Bound(taps=row.taps, share=0.0, limit=0.0),
            _Bound(taps=back, share=0.0, limit=UNREAD_CLOSE_MM),
        ]
    if row.is_gap:
        floor = min(0.0, row.now_mm) if floor_mm is None else floor_mm
        share = row.high_mm if held is None else 1.0
        return [
            _Bound(taps=row.taps, share=share, limit=-row.now_mm),
            _Bound(taps=row.taps, share=0.0, limit=_worst_mm(lie) - row.now_mm),
            _Bound(taps=back, share=0.0, limit=row.now_mm - floor),
        ]
    out = []
    for taps, now_mm, allowed_mm in (
        (row.taps, row.now_mm, row.high_mm),
        (back, -row.now_mm, row.low_mm),
    ):
        if allowed_mm == 0.0:
            out.append(_Bound(taps=taps, share=0.0, limit=max(0.0, -now_mm)))
        elif held is None:
            out.append(_Bound(taps=taps, share=allowed_mm, limit=-now_mm))
        else:
            out.append(_Bound(taps=taps, share=0.0, limit=held * allowed_mm - now_mm))
    return out


def _worst_mm(lie: Sequence[LieRow]) -> float:
    return max((row.now_mm for row in lie if row.is_gap and row.is_read), default=0.0)


def _rooms(lie: Sequence[LieRow], rules: TapRules) -> list[float]:
    return [rules.room_mm(column // len(PLACES)) for column in range(len(lie[0].taps))]


def _solved(
    bounds: Sequence[_Bound],
    columns: Sequence[tuple[float, float]],
    worst_cost: float,
    solver: LinearSolver,
) -> tuple[float, ...] | None:
    """Return signed moves and the worst; each move is a way out less a way back, both >= 0."""
    unknowns = []
    for index, (room_mm, cost) in enumerate(columns):
        for sign in (1.0, -1.0):
            entries = ((r, sign * b.taps[index]) for r, b in enumerate(bounds))
            rows = tuple((r, a) for r, a in entries if abs(a) > 1e-12)
            unknowns.append(LinearColumn(cost=cost, rows=rows, upper=room_mm))
    shares = tuple((r, -b.share) for r, b in enumerate(bounds) if b.share)
    unknowns.append(LinearColumn(cost=worst_cost, rows=shares))
    solution = solver.solve(
        LinearProblem(
            columns=tuple(unknowns),
            rows=tuple(LinearRow(upper=b.limit) for b in bounds),
        )
    )
    if solution.status is not LinearStatus.OPTIMAL:
        return None
    values = solution.values
    moves = (values[2 * i] - values[2 * i + 1] for i in range(len(columns)))
    return (*moves, values[-1])
