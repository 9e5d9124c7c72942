"""The best order and turns of the pieces of one stick.

Among orders that use equally little of the stick: long pieces first, so that a spoiled one can
still become a shorter one, with pieces of about one length (the two legs of an opening) next to
each other; then few changes of the saw's setting.

Exact while the number of different sub-sets is small, which it is for every stick of a house:
pieces with the same two ends count as one kind, and of one kind the longest is always taken first.
Beyond that, insertion and single moves.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.lay.demand import PER_MM
from longpoint.sticks.lay.laying import Place, Workload, gap, tip, used_length

MOST_STATES: Final = 2000
"""Sub-sets up to which the order is exact: seven pieces with ends all different, many more else."""

_ABOUT_EQUAL: Final = 10 * PER_MM
_SHORTNESS: Final = 1 << 40
_SWING: Final = 1 << 8

_End = tuple[int, int]


@dataclass(frozen=True, slots=True)
class _Kind:
    pieces: tuple[int, ...]
    ways: tuple[tuple[bool, _End, _End], ...]


def best_order(
    work: Workload, pieces: Iterable[int], most_states: int = MOST_STATES
) -> tuple[Place, ...]:
    """Return the pieces of one stick in the best order found, with their turns.

    Args:
        work: The pieces of the profile.
        pieces: Numbers of the pieces that go on the stick.
        most_states: Sub-sets up to which every order is looked at.
    """
    kinds = _kinds(work, pieces)
    if len(kinds) == 1 and len(kinds[0].ways) == 1:
        return tuple(Place(piece, turned=False) for piece in kinds[0].pieces)
    if _state_count(kinds) <= most_states:
        return _exact(work, kinds)
    return improved(work, inserted(work, (), _long_first(work, pieces)))


def looks_at_all_orders(
    work: Workload, pieces: Iterable[int], most_states: int = MOST_STATES
) -> bool:
    """Tell whether `best_order` finds the shortest order for certain."""
    return _state_count(_kinds(work, pieces)) <= most_states


def inserted(work: Workload, places: Sequence[Place], pieces: Iterable[int]) -> tuple[Place, ...]:
    """Return the sequence with every piece put, one after the other, where it costs least."""
    current = tuple(places)
    for piece in pieces:
        turns = (False, True) if work.can_turn[piece] else (False,)
        current = min(
            (
                (*current[:at], Place(piece, turned), *current[at:])
                for at in range(len(current), -1, -1)
                for turned in turns
            ),
            key=lambda tried: used_length(work, tried),
        )
    return current


def improved(work: Workload, places: Sequence[Place]) -> tuple[Place, ...]:
    """Return the sequence after moving and turning single pieces while that makes it better."""
    best = tuple(places)
    worth = _worth(work, best)
    moved = True
    while moved:
        moved = False
        for tried in _one_move(work, best):
            tried_worth = _worth(work, tried)
            if tried_worth < worth:
                best, worth, moved = tried, tried_worth, True
                break
    return best


def _one_move(work: Workload, places: tuple[Place, ...]) -> Iterable[tuple[Place, ...]]:
    for index, place in enumerate(places):
        rest = places[:index] + places[index + 1 :]
        turns = (False, True) if work.can_turn[place.piece] else (False,)
        for at in range(len(places)):
            for turned in turns:
                if at != index or turned != place.turned:
                    yield (*rest[:at], Place(place.piece, turned), *rest[at:])


def _worth(work: Workload, places: Sequence[Place]) -> int:
    total = used_length(work, places) * _SHORTNESS
    last: _End | None = None
    for index, place in enumerate(places):
        left, right = work.ends(place)
        total += index * _about(work, place.piece) * _SWING
        total += _swings(last, left, right)
        last = right
    return total


def _about(work: Workload, piece: int) -> int:
    return work.mid[piece] // _ABOUT_EQUAL


def _swings(last: _End | None, left: _End, right: _End) -> int:
    return (last is not None and last[0] != left[0]) + (left[0] != right[0])


def _long_first(work: Workload, pieces: Iterable[int]) -> list[int]:
    return sorted(pieces, key=lambda piece: (-work.mid[piece], piece))


def _kinds(work: Workload, pieces: Iterable[int]) -> tuple[_Kind, ...]:
    by_ends: dict[tuple[int, int, int, int, bool], list[int]] = {}
    for piece in _long_first(work, pieces):
        left, right = work.ends(Place(piece, turned=False))
        turns = work.can_turn[piece] and left != right
        by_ends.setdefault((*left, *right, turns), []).append(piece)
    kinds = []
    for (left_lean, left_kerf, right_lean, right_kerf, turns), members in by_ends.items():
        left, right = (left_lean, left_kerf), (right_lean, right_kerf)
        ways = ((False, left, right), (True, right, left)) if turns else ((False, left, right),)
        kinds.append(_Kind(tuple(members), ways))
    return tuple(kinds)


def _state_count(kinds: Sequence[_Kind]) -> int:
    count = 1
    for kind in kinds:
        count *= len(kind.pieces) + 1
    return count * sum(len(kind.ways) for kind in kinds)


def _exact(work: Workload, kinds: Sequence[_Kind]) -> tuple[Place, ...]:
    """Shortest way through all sub-sets; a state is what was taken and the end it stops at."""
    start: tuple[int, ...] = (0,) * len(kinds)
    layer: dict[tuple[tuple[int, ...], _End | None], tuple[int, tuple[Place, ...]]] = {
        (start, None): (0, ())
    }
    for index in range(sum(len(kind.pieces) for kind in kinds)):
        following: dict[tuple[tuple[int, ...], _End | None], tuple[int, tuple[Place, ...]]] = {}
        for (taken, last), (worth, places) in layer.items():
            for number, kind in enumerate(kinds):
                if taken[number] == len(kind.pieces):
                    continue
                piece = kind.pieces[taken[number]]
                now = (*taken[:number], taken[number] + 1, *taken[number + 1 :])
                late = worth + index * _about(work, piece) * _SWING
                for turned, left, right in kind.ways:
                    lost = tip(left[0]) if last is None else gap(last, left)
                    total = late + lost * _SHORTNESS + _swings(last, left, right)
                    known = following.get((now, right))
                    if known is None or total < known[0]:
                        following[now, right] = (total, (*places, Place(piece, turned)))
        layer = following
    ends = (
        (worth + (tip(last[0]) if last else 0) * _SHORTNESS, places)
        for (_, last), (worth, places) in layer.items()
    )
    return min(ends, key=lambda entry: entry[0])[1]
