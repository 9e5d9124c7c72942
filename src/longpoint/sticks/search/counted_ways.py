"""In how many sets each piece may stand, counted without listing them.

The sets worth at least a charge are the ways down through the tables of the knapsack, from the last
item to none, each step without an item or with it. Ways that come to the same item, in the same
lean state and with the same length left, go on alike but for what the items still to come must be
worth; there they are put together, and the least of these charges goes on. So sets may be counted
that are worth a little less than their charge, and none that is worth it is left out: what is
counted are *at most* so many, and nought and one are certain. A second pass, back up, tells how
many ways lead on from each step; before times after is in how many sets an item is taken. Of
several copies the last is taken first, so the ways with the last copy are all the sets that hold
the number at all.
"""

from collections.abc import Callable, Sequence
from typing import Final

from longpoint.sticks.lay.lean_states import MOVES, State
from longpoint.sticks.search.table_sets import Item, Ways, copy_of_next, first_copy

MANY: Final = 1_000_000
"""No more than so many ways are told apart; products of two stay below 2 ** 53."""

_Step = tuple[bool, State, int]
"""Whether the item before may be taken, the lean state and the length that are left."""
_Moves = list[tuple[_Step, bool, _Step]]
"""From a step, with the item or without it, to a step."""


def count_ways(
    items: Sequence[Item],
    entry: Callable[[int, State, int], int],
    ends: Sequence[tuple[State, int]],
    charges: Sequence[int],
    most: int,
) -> Ways | None:
    """Return in how many sets worth at least their end's charge each number stands at most.

    Args:
        items: In the order in which the tables took them in.
        entry: The largest value of a set of so many items in a state within a length; -1: none.
        ends: (state, length) pairs.
        charges: What a set must be worth at each end.
        most: Most steps that are looked at; None is returned where there are more.
    """
    first = dict[_Step, tuple[int, int]]()
    for (state, length), charge in zip(ends, charges, strict=True):
        if entry(len(items), state, length) >= max(0, charge):
            _put(first, (True, state, length), charge, 1)
    layers, moves, seen = [_capped(first)], list[_Moves](), len(first)
    for index in range(len(items) - 1, -1, -1):
        following = dict[_Step, tuple[int, int]]()
        moves.append(_moved(items, entry, index, layers[-1], following))
        layers.append(_capped(following))
        seen += len(following)
        if seen > most:
            return None
    holding = {item.number: 0 for item in items}
    after = dict.fromkeys(layers[-1], 1)
    for index, (layer, steps) in enumerate(zip(layers[-2::-1], moves[::-1], strict=True)):
        ahead, with_item = dict.fromkeys(layer, 0), 0
        for start, taken, end in steps:
            ahead[start] += after[end]
            with_item += layer[start][1] * after[end] if taken else 0
        after = {step: min(MANY, ways) for step, ways in ahead.items()}
        if not copy_of_next(items, index):
            holding[items[index].number] = min(MANY, with_item)
    total = sum(ways * after[step] for step, (_, ways) in layers[0].items())
    return Ways(min(MANY, total), holding)


def _moved(
    items: Sequence[Item],
    entry: Callable[[int, State, int], int],
    index: int,
    layer: dict[_Step, tuple[int, int]],
    following: dict[_Step, tuple[int, int]],
) -> _Moves:
    """Go on without an item and with it, where enough can still be had; into `following`."""
    item, moves = items[index], _Moves()
    before, sources = first_copy(items, index), dict(MOVES[item.lean])
    is_copy = index > 0 and copy_of_next(items, index - 1)
    for step, (charge, ways) in layer.items():
        eager, state, length = step
        if entry(before, state, length) >= max(0, charge):
            end = (not is_copy, state, length)
            _put(following, end, charge, ways)
            moves.append((step, False, end))
        left, rest = charge - item.value, length - item.need
        for source in sources.get(state, ()) if eager else ():
            if entry(index, source, rest) >= max(0, left):
                end = (True, source, rest)
                _put(following, end, left, ways)
                moves.append((step, True, end))
    return moves


def _put(layer: dict[_Step, tuple[int, int]], step: _Step, charge: int, ways: int) -> None:
    known = layer.get(step)
    layer[step] = (charge, ways) if known is None else (min(known[0], charge), known[1] + ways)


def _capped(layer: dict[_Step, tuple[int, int]]) -> dict[_Step, tuple[int, int]]:
    return {step: (charge, min(MANY, ways)) for step, (charge, ways) in layer.items()}
