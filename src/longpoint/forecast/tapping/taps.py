"""The taps that help, in their order, and what they leave."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.forecast.fitup.frame import FitLimits, Frame, RowKind
from longpoint.forecast.tapping.hand import by_hand
from longpoint.forecast.tapping.lie import LieRow, Tap, lie_of, moves_of
from longpoint.forecast.tapping.order import in_order
from longpoint.forecast.tapping.programme import TapRules, best_moves
from longpoint.forecast.tapping.seen import SeenFrame, check_seen
from longpoint.linear.port import LinearSolver

WORTH_MM: Final = 0.1
"""Taps that don't close the worst joint by this much are not worth the risk; assumed."""
_WORTH_RATIO: Final = 0.1
"""Nor those that bring steps and quirks no nearer than this part of what is allowed."""
_NEVER_WORSE_MM: Final = 1e-9


class Cannot(StrEnum):
    """What the taps don't do."""

    NOTHING_READ = "nothing read"
    """No joint end was read, so no tap can be given."""
    PART_READ = "part read"
    """Some joint ends were not read; the taps don't open them."""
    NO_BETTER = "no better"
    """No tap within what may be tapped makes it better by an amount that a hand can make."""
    GAP_LEFT = "gap left"
    """A joint stays open wider than allowed."""
    FORCED_LEFT = "forced left"
    """A joint stays forced."""
    STEP_LEFT = "step left"
    """Inner edges stay out of line by more than allowed."""
    QUIRK_LEFT = "quirk left"
    """A quirk stays further off than allowed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftJoint:
    """What is expected at one joint after the taps; None: not read before."""

    heel_mm: float | None
    toe_mm: float | None
    step_mm: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class TapPlan:
    """What to tap, and what to expect.

    Attributes:
        taps: In their order; empty: leave it.
        before_worst_mm: Widest joint as read; None: nothing read.
        after_worst_mm: Widest joint of those read, after the taps.
        joints: What is left at each joint.
        quirks_mm: How far each side's quirk is then off at start, middle and end; None: not read.
        cannot: What the taps don't do.
    """

    taps: tuple[Tap, ...]
    before_worst_mm: float | None
    after_worst_mm: float | None
    joints: tuple[LeftJoint, ...]
    quirks_mm: tuple[tuple[float | None, float | None, float | None], ...]
    cannot: tuple[Cannot, ...]


def plan_taps(
    frame: Frame,
    seen: SeenFrame,
    limits: FitLimits,
    solver: LinearSolver,
    rules: TapRules | None = None,
) -> TapPlan:
    """Return what to tap, how far and in which order.

    Args:
        frame: The set as it was meant.
        seen: What is read on the wall.
        limits: What counts as a fit.
        solver: Solves linear programs.
        rules: What may be tapped; None: every piece is on one nail at each end.

    Returns:
        The plan. On the linear rows no step of it makes the worst gap larger or forces a joint,
        and no joint end that wasn't read is opened.

    Raises:
        ShapeError: The readings belong to another set.

    References:
        Gaps, steps and quirks are linear in the moves: three linear programs, rounded to tenths
        by trying, ordered by searching the states between.
    """
    check_seen(frame, seen)
    lie = lie_of(frame, seen, limits)
    nothing = moves_of(len(frame.sides), ())
    if seen.worst_gap_mm is None:
        return _plan(frame, seen, lie, (), (Cannot.NOTHING_READ,))
    rules = rules or TapRules()
    wanted = best_moves(lie, rules, solver)
    taps: tuple[Tap, ...] = ()
    if wanted is not None:
        taps = in_order(frame, lie, by_hand(lie, rules, wanted))
    if not _is_worth(lie, nothing, moves_of(len(frame.sides), taps)):
        taps = ()
    cannot = [] if taps else [Cannot.NO_BETTER]
    if None in seen.gaps_mm:
        cannot.append(Cannot.PART_READ)
    return _plan(frame, seen, lie, taps, tuple(cannot))


def _is_worth(lie: Sequence[LieRow], now: tuple[float, ...], then: tuple[float, ...]) -> bool:
    """Tell whether moves better what was read by more than nothing, and make no gap worse."""
    worst_now, worst_then = _widest_mm(lie, now), _widest_mm(lie, then)
    if worst_then > worst_now + _NEVER_WORSE_MM:
        return False
    if worst_now - worst_then >= WORTH_MM:
        return True
    if _tightest_mm(lie, then) - min(_tightest_mm(lie, now), 0.0) >= WORTH_MM:
        return _tightest_mm(lie, now) < 0.0
    return _ratio(lie, now) > 1.0 and _ratio(lie, now) - _ratio(lie, then) > _WORTH_RATIO


def _widest_mm(lie: Sequence[LieRow], moves_mm: tuple[float, ...]) -> float:
    return max(row.after_mm(moves_mm) for row in lie if row.is_gap and row.is_read)


def _tightest_mm(lie: Sequence[LieRow], moves_mm: tuple[float, ...]) -> float:
    return min(row.after_mm(moves_mm) for row in lie if row.is_gap and row.is_read)


def _ratio(lie: Sequence[LieRow], moves_mm: tuple[float, ...]) -> float:
    """Return the worst step or quirk over what is allowed of it."""
    return max(row.ratio(row.after_mm(moves_mm)) for row in lie if not row.is_gap)


def _plan(
    frame: Frame,
    seen: SeenFrame,
    lie: Sequence[LieRow],
    taps: tuple[Tap, ...],
    cannot: tuple[Cannot, ...],
) -> TapPlan:
    moves_mm = moves_of(len(frame.sides), taps)
    after = [row.after_mm(moves_mm) if row.is_read else None for row in lie]
    count = len(frame.joints)
    quirks = after[4 * count :]
    return TapPlan(
        taps=taps,
        before_worst_mm=seen.worst_gap_mm,
        after_worst_mm=None if seen.worst_gap_mm is None else _widest_mm(lie, moves_mm),
        joints=tuple(
            LeftJoint(heel_mm=after[4 * i], toe_mm=after[4 * i + 1], step_mm=after[4 * i + 2])
            for i in range(count)
        ),
        quirks_mm=tuple(
            (quirks[3 * i], quirks[3 * i + 1], quirks[3 * i + 2]) for i in range(len(frame.sides))
        ),
        cannot=(*cannot, *_left(lie, moves_mm, seen.feeler_mm)),
    )


def _left(
    lie: Sequence[LieRow], moves_mm: tuple[float, ...], feeler_mm: float
) -> tuple[Cannot, ...]:
    """Return what stays beyond what is allowed, of what was read."""
    left: set[Cannot] = set()
    for row in lie:
        value_mm = row.after_mm(moves_mm)
        if not row.is_read:
            continue
        if row.is_gap and value_mm < -feeler_mm:
            left.add(Cannot.FORCED_LEFT)
        # A reading of a limit as it is printed must not fail by its last bit.
        elif row.ratio(value_mm) > 1.0 + 1e-6 or _is_off_nothing(row, value_mm):
            left.add(_KIND_LEFT[row.kind])
    return tuple(kind for kind in Cannot if kind in left)


def _is_off_nothing(row: LieRow, value_mm: float) -> bool:
    """Tell whether a quirk that has no room at all is off by more than can be read."""
    allowed_mm = row.high_mm if value_mm > 0.0 else row.low_mm
    return not row.is_gap and allowed_mm == 0.0 and not math.isclose(value_mm, 0.0, abs_tol=0.05)


_KIND_LEFT: Final = {
    RowKind.HEEL_GAP: Cannot.GAP_LEFT,
    RowKind.TOE_GAP: Cannot.GAP_LEFT,
    RowKind.SIGHT_STEP: Cannot.STEP_LEFT,
    RowKind.TOE_STEP: Cannot.STEP_LEFT,
    RowKind.QUIRK: Cannot.QUIRK_LEFT,
}
