"""The pieces of an opening on one stick, where that costs nothing: for timber that stays visible.

A piece goes to the stick where more of its opening lie, alone or in exchange for one of another
opening, while no stick is opened for it, none gets too full, and the longest offcut stays as long.
"""

from collections.abc import Iterator, Sequence
from typing import Final

from longpoint.sticks.lay.bars import Bar
from longpoint.sticks.lay.fit import Filled, Packing
from longpoint.sticks.lay.laying import Workload, left_over, used_length
from longpoint.sticks.lay.ordering import best_order

_MOST_EXCHANGES: Final = 200

_Spread = tuple[int, int]
"""Openings that come from more than one stick; sticks beyond the first, of all openings."""


def gathered(
    work: Workload, bars: Sequence[Bar], openings: Sequence[str], packing: Packing
) -> Packing:
    """Return a packing that costs the same and leaves as long an offcut, with openings together.

    Args:
        work: The pieces.
        bars: The lengths.
        openings: The opening or run of each piece.
        packing: The pieces on their sticks.
    """
    sticks = list(packing.sticks)
    for _ in range(_MOST_EXCHANGES):
        changed = _one_exchange(work, bars, openings, sticks)
        if changed is None:
            break
        for number, stick in changed.items():
            sticks[number] = stick
    return Packing(tuple(sticks), packing.unplaced)


def spread(openings: Sequence[str], sticks: Sequence[Filled]) -> _Spread:
    """Return how many openings come from more than one stick, and from how many too many."""
    seen: dict[str, set[int]] = {}
    for number, stick in enumerate(sticks):
        for place in stick.places:
            seen.setdefault(openings[place.piece], set()).add(number)
    extra = [len(numbers) - 1 for numbers in seen.values()]
    return sum(many > 0 for many in extra), sum(extra)


def _one_exchange(
    work: Workload, bars: Sequence[Bar], openings: Sequence[str], sticks: Sequence[Filled]
) -> dict[int, Filled] | None:
    """Two sticks after an exchange that brings openings nearer together; None: there is none."""
    now, longest = spread(openings, sticks), _longest_left(work, bars, sticks)
    for home, away, swapped in _exchanges(work, bars, openings, sticks):
        changed = list(sticks)
        changed[home], changed[away] = (
            _with_pieces(work, sticks[number], pieces)
            for number, pieces in zip((home, away), swapped, strict=True)
        )
        if all(changed[number].used <= bars[changed[number].bar].room for number in (home, away)):
            nearer = spread(openings, changed) < now
            if nearer and _longest_left(work, bars, changed) >= longest:
                return {number: changed[number] for number in (home, away)}
    return None


def _exchanges(
    work: Workload, bars: Sequence[Bar], openings: Sequence[str], sticks: Sequence[Filled]
) -> Iterator[tuple[int, int, tuple[list[int], list[int]]]]:
    """Yield two sticks and the pieces they would have, where lengths alone don't rule it out."""
    pieces = [[place.piece for place in stick.places] for stick in sticks]
    for home, at_home in enumerate(pieces):
        living = {openings[piece] for piece in at_home}
        spare = bars[sticks[home].bar].room - sticks[home].used
        for away, elsewhere in enumerate(pieces):
            for piece in elsewhere if away != home else ():
                if openings[piece] not in living:
                    continue
                for other in (None, *at_home):
                    if other is not None and openings[other] == openings[piece]:
                        continue
                    longer = work.mid[piece] - (0 if other is None else work.mid[other])
                    slack = bars[sticks[away].bar].room - sticks[away].used
                    if longer > spare + _most_saved(work) or -longer > slack + _most_saved(work):
                        continue
                    if other is None and len(elsewhere) == 1:
                        continue
                    yield home, away, _swapped(at_home, elsewhere, piece, other)


def _swapped(
    at_home: Sequence[int], elsewhere: Sequence[int], piece: int, other: int | None
) -> tuple[list[int], list[int]]:
    home = [one for one in at_home if one != other] + [piece]
    away = [one for one in elsewhere if one != piece] + ([] if other is None else [other])
    return home, away


def _with_pieces(work: Workload, stick: Filled, pieces: Sequence[int]) -> Filled:
    places = best_order(work, pieces)
    return Filled(stick.bar, places, used_length(work, places))


def _most_saved(work: Workload) -> int:
    """More than what another order of a stick's ends can save. [0.01 mm]"""
    return 4 * max(map(abs, (*work.left_lean, *work.right_lean)))


def _longest_left(work: Workload, bars: Sequence[Bar], sticks: Sequence[Filled]) -> int:
    left = (left_over(work, stick.places, bars[stick.bar].room) for stick in sticks)
    return max(left, default=0)
