"""Moves that a hand can make: in tenths of a millimetre, and none that isn't worth its blow."""

from collections.abc import Sequence
from itertools import chain, combinations, product
from typing import Final

from longpoint.forecast.tapping.lie import PLACES, LieRow
from longpoint.forecast.tapping.programme import (
    RESERVE,
    UNREAD_CLOSE_MM,
    TapRules,
    neat_mm,
)

TENTH_MM: Final = 0.1
PINCH_MM: Final = 0.02
"""A joint may be planned closer than touching by this much: less than the feeler's step."""
SHUT_AT_LEAST_MM: Final = 0.02
"""An end that wasn't read must close by this much where its pieces move: room for second order."""
BLOW_MM: Final = 0.04
"""A blow more must close the worst joint by this much; assumed."""
_STEPS: Final = (1, -1)
_MOST_ROUNDS: Final = 60


def by_hand(
    lie: Sequence[LieRow], rules: TapRules, moves_mm: tuple[float, ...]
) -> tuple[float, ...]:
    """Return moves in whole tenths near the given ones, as good as can be found.

    Args:
        lie: How the pieces lie.
        rules: What may be tapped.
        moves_mm: By place, (3 n,).

    Returns:
        Moves by place: rounded, then bettered one or two tenths at a time for as long as that
        closes joints without forcing them.
    """
    rooms = [int(rules.room_mm(c // len(PLACES)) / TENTH_MM + 1e-9) for c in range(len(moves_mm))]
    tenths = [round(m / TENTH_MM) for m in moves_mm]
    values = _values(lie, tenths)
    best = _score(lie, values, tenths)
    changes = _changes(rooms)
    for _ in range(_MOST_ROUNDS):
        found = None
        for change in changes:
            if any(abs(tenths[c] + step) > rooms[c] for c, step in change):
                continue
            score = _score(lie, _changed(lie, values, change), _stepped(tenths, change))
            if score < best - 1e-9:
                best, found = score, change
        if found is None:
            break
        tenths = _stepped(tenths, found)
        values = _changed(lie, values, found)
    return tuple(t * TENTH_MM for t in tenths)


_Change = tuple[tuple[int, int], ...]


def _changes(rooms: Sequence[int]) -> tuple[_Change, ...]:
    loose = [column for column, room in enumerate(rooms) if room > 0]
    one = (((column, step),) for column in loose for step in _STEPS)
    two = (
        ((a, step_a), (b, step_b))
        for a, b in combinations(loose, 2)
        for step_a, step_b in product(_STEPS, _STEPS)
    )
    return tuple(chain(one, two))


def _stepped(tenths: list[int], change: _Change) -> list[int]:
    out = list(tenths)
    for column, step in change:
        out[column] += step
    return out


def _values(lie: Sequence[LieRow], tenths: Sequence[int]) -> list[float]:
    moves_mm = tuple(t * TENTH_MM for t in tenths)
    return [row.after_mm(moves_mm) for row in lie]


def _changed(lie: Sequence[LieRow], values: list[float], change: _Change) -> list[float]:
    out = list(values)
    for column, step in change:
        move_mm = step * TENTH_MM
        for index, row in enumerate(lie):
            out[index] += row.taps[column] * move_mm
    return out


def _score(lie: Sequence[LieRow], values: Sequence[float], tenths: Sequence[int]) -> float:
    """Return how bad a lie is: the worst gap, and heavily what must not be; in millimetres."""
    widest_mm, total_mm, breach_mm, excess = 0.0, 0.0, 0.0, 0.0
    now_mm = max((row.now_mm for row in lie if row.is_gap and row.is_read), default=0.0)
    for row, value in zip(lie, values, strict=True):
        if not row.is_gap:
            excess = max(excess, row.ratio(value))
        elif row.is_read:
            widest_mm = max(widest_mm, value)
            total_mm += max(value, 0.0)
            breach_mm += max(0.0, min(0.0, row.now_mm) - PINCH_MM - value)
            breach_mm += 0.3 * max(0.0, -value) + max(0.0, value - now_mm)
        elif abs(change_mm := value - row.now_mm) > 1e-9:
            breach_mm += max(0.0, change_mm + SHUT_AT_LEAST_MM)
            breach_mm += max(0.0, -UNREAD_CLOSE_MM - change_mm)
    blows = sum(t != 0 for t in tenths)
    over = max(0.0, excess - RESERVE)
    return (
        max(widest_mm, neat_mm(lie))
        + 0.03 * total_mm
        + 5.0 * breach_mm
        + 0.5 * over
        + BLOW_MM * blows
    )
