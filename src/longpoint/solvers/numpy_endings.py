"""For each item the best set that ends in it, looked up in arrays; see the port of the knapsack."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Final

from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.sticks.lay.lean_states import MOVES, State
from longpoint.sticks.search.table_sets import Ending, Item

if TYPE_CHECKING:
    from numpy.typing import NDArray

_MOST_CHARGE: Final = 1 << 61
"""What is charged more gains nothing either."""

Tables = Sequence["NDArray[Any] | None"]
"""One table for each state; None: no set reaches it."""


def best_endings(
    items: Sequence[Item],
    history: Sequence[Tables],
    ends: Sequence[tuple[State, int]],
    charges: Sequence[int],
) -> tuple[Ending, ...]:
    """Return for each item the set ending in it that gains most over its end's charge.

    Args:
        items: In the order in which the tables took them in.
        history: The tables before each item.
        ends: (state, length) pairs.
        charges: What a set must be worth at each end to gain nothing.
    """
    found = list[Ending]()
    for lean in dict.fromkeys(item.lean for item in items):
        moves = dict(MOVES[lean])
        ways = [
            (end, source) for end, (state, _) in enumerate(ends) for source in moves.get(state, ())
        ]
        places = [place for place, item in enumerate(items) if item.lean is lean]
        if ways:
            lengths = [ends[end][1] for end, _ in ways]
            dear = [min(charges[end], _MOST_CHARGE) for end, _ in ways]
            found += _of_one_lean(items, history, places, ways, lengths, dear)
    return tuple(sorted(found, key=lambda ending: ending.place))


def _of_one_lean(
    items: Sequence[Item],
    history: Sequence[Tables],
    places: Sequence[int],
    ways: Sequence[tuple[int, State]],
    lengths: Sequence[int],
    charges: Sequence[int],
) -> list[Ending]:
    """The best ending of each of these items, by one of some (end, source)."""
    numpy = numpy_in_one_thread()
    needs = numpy.array([items[place].need for place in places], dtype=numpy.int64)
    rests = numpy.array(lengths, dtype=numpy.int64)[None, :] - needs[:, None]
    worth = numpy.full(rests.shape, -1, dtype=numpy.int64)
    for source in {source for _, source in ways}:
        columns = [column for column, (_, other) in enumerate(ways) if other is source]
        rows, held = list[int](), list[Any]()
        inside = numpy.maximum(rests[:, columns], 0)
        for row, place in enumerate(places):
            table = history[place][source]
            if table is not None:
                rows.append(row)
                held.append(table.take(inside[row]))
        if rows:
            worth[numpy.ix_(rows, columns)] = numpy.stack(held)
    worth[rests < 0] = -1
    gains = worth - numpy.array(charges, dtype=numpy.int64)
    gains[worth < 0] = -2 * _MOST_CHARGE
    # Of equal gains the first counts.
    best = gains.argmax(axis=1).tolist()
    return [
        Ending(
            gain=int(gains[row, way]) + items[place].value,
            end=ways[way][0],
            place=place,
            source=ways[way][1],
            rest=int(rests[row, way]),
        )
        for row, (place, way) in enumerate(zip(places, best, strict=True))
        if worth[row, way] >= 0
    ]
