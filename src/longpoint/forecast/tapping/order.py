"""The order of the taps, so that no tap on the way makes the worst joint worse."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import combinations
from typing import Final

from longpoint.forecast.fitup.frame import Frame
from longpoint.forecast.tapping.hand import TENTH_MM
from longpoint.forecast.tapping.lie import PLACES, LieRow, Tap, moves_of

CLEAR_MM: Final = 0.1
"""How far under the worst joint another may open on the way: feeler and second order; chosen so
that no set of true polygons in the tests was ever made worse."""
CLOSING_MM: Final = 0.03
"""An end that closes by more than this on the linear rows closes truly."""
PINCH_ON_THE_WAY_MM: Final = 0.05
PINCH_UNREAD_MM: Final = 0.3
"""How far an end that wasn't read may be pushed shut on the way."""
_MOST_STATES: Final = 3000
_PARTS: Final = (1, 2, 3)


def in_order(frame: Frame, lie: Sequence[LieRow], moves_mm: tuple[float, ...]) -> tuple[Tap, ...]:
    """Return taps in an order in which no step makes the worst gap larger.

    Args:
        frame: The set.
        lie: How the pieces lie.
        moves_mm: In whole tenths, by place, (3 n,).

    Returns:
        The taps: whole if that can be done, else each in halves or thirds, up to as many as there
        are places to tap; then it is time to read again. Where no order leads to the end, the
        taps that lead to the best place on the way; perhaps none.
    """
    count = len(frame.sides)
    best: tuple[Tap, ...] = ()
    for parts in _PARTS:
        search = _Search(frame=frame, lie=lie, shares=_shares(moves_mm, parts))
        found = _gathered(frame, lie, search.run())
        if search.is_finished and len(found) <= len(PLACES) * count:
            return found
        found = _best_start(lie, found, count)
        if _widest(lie, moves_of(count, found)) < _widest(lie, moves_of(count, best)) - 1e-9:
            best = found
        if search.is_finished:
            break
    return best


def _gathered(frame: Frame, lie: Sequence[LieRow], taps: tuple[Tap, ...]) -> tuple[Tap, ...]:
    """Put parts of one tap together again wherever every step stays safe."""
    done = False
    while not done:
        done = True
        for shorter in _with_two_joined(taps):
            if _is_safe_walk(frame, lie, shorter):
                taps, done = shorter, False
                break
    return taps


def _with_two_joined(taps: tuple[Tap, ...]) -> Iterator[tuple[Tap, ...]]:
    for i, j in combinations(range(len(taps)), 2):
        if taps[i].column != taps[j].column:
            continue
        both = replace(taps[i], move_mm=taps[i].move_mm + taps[j].move_mm)
        yield (*taps[:i], both, *taps[i + 1 : j], *taps[j + 1 :])
        yield (*taps[:i], *taps[i + 1 : j], both, *taps[j + 1 :])


def _is_safe_walk(frame: Frame, lie: Sequence[LieRow], taps: tuple[Tap, ...]) -> bool:
    count = len(frame.sides)
    return all(
        is_no_worse(frame, lie, moves_of(count, taps[:length]))
        for length in range(1, len(taps) + 1)
    )


def _best_start(lie: Sequence[LieRow], taps: tuple[Tap, ...], count: int) -> tuple[Tap, ...]:
    """Return the first of the taps, as far as they are best to go and few enough to read."""
    most = len(PLACES) * count
    if len(taps) <= most:
        return taps
    starts = (taps[:length] for length in range(most + 1))
    return min(starts, key=lambda start: _widest(lie, moves_of(count, start)))


def is_no_worse(frame: Frame, lie: Sequence[LieRow], moves_mm: tuple[float, ...]) -> bool:
    """Tell whether a state on the way is safe: no worse joint, none forced, none unread opened."""
    worst_mm = max((row.now_mm for row in lie if row.is_gap and row.is_read), default=0.0)
    for row in lie:
        if not row.is_gap or not _is_touched(frame, row, moves_mm):
            continue
        change_mm = row.change_mm(moves_mm)
        if not row.is_read:
            if not -PINCH_UNREAD_MM <= change_mm <= -CLOSING_MM / 2.0:
                return False
            continue
        value_mm = row.now_mm + change_mm
        # A forced joint may always be eased until it just touches.
        most_mm = max(worst_mm - CLEAR_MM, 1e-6 if row.now_mm < 0.0 else -CLEAR_MM)
        if value_mm > most_mm and change_mm > -CLOSING_MM:
            return False
        if value_mm < min(0.0, row.now_mm) - PINCH_ON_THE_WAY_MM:
            return False
    return True


@dataclass(slots=True)
class _Search:
    """Goes through the states between now and the end, deepest first."""

    frame: Frame
    lie: Sequence[LieRow]
    shares: tuple[tuple[Tap, ...], ...]
    seen: set[tuple[int, ...]] = field(default_factory=set)
    is_finished: bool = False
    best_mm: float = float("inf")
    best: tuple[Tap, ...] = ()

    def run(self) -> tuple[Tap, ...]:
        start = (0,) * len(self.shares)
        stack: list[tuple[tuple[int, ...], tuple[Tap, ...]]] = [(start, ())]
        goal = tuple(len(share) for share in self.shares)
        while stack and len(self.seen) < _MOST_STATES:
            state, taps = stack.pop()
            if state in self.seen:
                continue
            self.seen.add(state)
            widest_mm = _widest(self.lie, moves_of(len(self.frame.sides), taps))
            if widest_mm < self.best_mm - 1e-9:
                self.best_mm, self.best = widest_mm, taps
            if state == goal:
                self.is_finished = True
                return taps
            stack += sorted(self._onwards(state, taps), key=self._badness, reverse=True)
        return self.best

    def _badness(self, entry: tuple[tuple[int, ...], tuple[Tap, ...]]) -> float:
        return _widest(self.lie, moves_of(len(self.frame.sides), entry[1]))

    def _onwards(
        self, state: tuple[int, ...], taps: tuple[Tap, ...]
    ) -> Iterator[tuple[tuple[int, ...], tuple[Tap, ...]]]:
        for index, share in enumerate(self.shares):
            if state[index] == len(share):
                continue
            new = (*state[:index], state[index] + 1, *state[index + 1 :])
            if new in self.seen:
                continue
            longer = (*taps, share[state[index]])
            if is_no_worse(self.frame, self.lie, moves_of(len(self.frame.sides), longer)):
                yield (new, longer)


def _shares(moves_mm: tuple[float, ...], parts: int) -> tuple[tuple[Tap, ...], ...]:
    """Return each tap in up to so many parts, in whole tenths, the larger parts first."""
    out = []
    for column, move_mm in enumerate(moves_mm):
        tenths = round(move_mm / TENTH_MM)
        if tenths == 0:
            continue
        sign, size = (1 if tenths > 0 else -1), abs(tenths)
        count = min(parts, size)
        sizes = [size // count + (i < size % count) for i in range(count)]
        piece, place = divmod(column, len(PLACES))
        out.append(
            tuple(Tap(piece=piece, place=PLACES[place], move_mm=sign * s * TENTH_MM) for s in sizes)
        )
    return tuple(out)


def _is_touched(frame: Frame, row: LieRow, moves_mm: tuple[float, ...]) -> bool:
    joint = frame.joints[row.place]
    of_piece = len(PLACES)
    return any(
        abs(move) > 1e-9
        for piece in (joint.before, joint.after)
        for move in moves_mm[of_piece * piece : of_piece * (piece + 1)]
    )


def _widest(lie: Sequence[LieRow], moves_mm: tuple[float, ...]) -> float:
    """Return the widest gap that was read, and a little of all of them, to part equals."""
    gaps = [row.after_mm(moves_mm) for row in lie if row.is_gap and row.is_read]
    return max(gaps, default=0.0) + 0.01 * sum(max(gap, 0.0) for gap in gaps)
