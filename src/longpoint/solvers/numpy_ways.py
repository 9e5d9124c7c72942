"""In how many sets each piece may stand, by arrays; see `longpoint.sticks.search.counted_ways`."""

from collections.abc import Callable, Sequence
from types import ModuleType
from typing import TYPE_CHECKING, Any, Final, NamedTuple

from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.sticks.lay.lean_states import MOVES, State
from longpoint.sticks.search.counted_ways import MANY
from longpoint.sticks.search.table_sets import Item, Ways, copy_of_next, first_copy

if TYPE_CHECKING:
    from numpy.typing import NDArray

Reaches = Callable[[int, State, "NDArray[Any]", "NDArray[Any]"], "NDArray[Any]"]
"""Whether so many items, in a state and within each length, are worth each charge."""


_UNMET: Final = 1 << 60


class _Layer(NamedTuple):
    """Steps at one item, no two alike.

    Attributes:
        eager: Whether the item may be taken.
        states: Lean state that the items still to come must give.
        lengths: Length left to those.
        charges: What those must be worth, the least of all ways to this step.
        ways: How many ways lead here.
    """

    eager: "NDArray[Any]"
    states: "NDArray[Any]"
    lengths: "NDArray[Any]"
    charges: "NDArray[Any]"
    ways: "NDArray[Any]"


class _Moves(NamedTuple):
    """From a step of one layer to a step of the next, with the item or without it."""

    starts: "NDArray[Any]"
    taken: "NDArray[Any]"
    ends: "NDArray[Any]"


def count_ways(
    items: Sequence[Item],
    reaches: Reaches,
    ends: Sequence[tuple[State, int]],
    charges: Sequence[int],
    most: int,
) -> Ways | None:
    """Return in how many sets worth at least their end's charge each number stands at most.

    Args:
        items: In the order in which the tables took them in.
        reaches: Looks the tables up.
        ends: (state, length) pairs.
        charges: What a set must be worth at each end.
        most: Most steps that are looked at; None is returned where there are more.
    """
    numpy = numpy_in_one_thread()
    layers, moves = [_first(numpy, len(items), reaches, ends, charges)], list[_Moves]()
    seen = len(layers[0].ways)
    for index in range(len(items) - 1, -1, -1):
        following, steps = _moved(numpy, items, reaches, index, layers[-1])
        layers.append(following)
        moves.append(steps)
        seen += len(following.ways)
        if seen > most:
            return None
    holding = {item.number: 0 for item in items}
    after = numpy.ones(len(layers[-1].ways), dtype=numpy.int64)
    for index, (layer, steps) in enumerate(zip(layers[-2::-1], moves[::-1], strict=True)):
        ahead = numpy.zeros(len(layer.ways), dtype=numpy.int64)
        numpy.add.at(ahead, steps.starts, after[steps.ends])
        if not copy_of_next(items, index):
            with_item = layer.ways[steps.starts] * after[steps.ends] * steps.taken
            holding[items[index].number] = min(MANY, int(with_item.sum()))
        after = numpy.minimum(ahead, MANY)
    return Ways(min(MANY, int((layers[0].ways * after).sum())), holding)


def _first(
    numpy: ModuleType,
    count: int,
    reaches: Reaches,
    ends: Sequence[tuple[State, int]],
    charges: Sequence[int],
) -> _Layer:
    states = numpy.array([int(state) for state, _ in ends], dtype=numpy.int64)
    lengths = numpy.array([length for _, length in ends], dtype=numpy.int64)
    # A charge above all values is never met, however high it is.
    asked = numpy.array([min(charge, _UNMET) for charge in charges], dtype=numpy.int64)
    able = numpy.zeros(len(ends), dtype=bool)
    for state in State:
        here = numpy.flatnonzero(states == state)
        able[here] = reaches(count, state, lengths[here], asked[here])
    ways = numpy.ones(len(ends), dtype=numpy.int64)
    whole = _Layer(numpy.ones(len(ends), dtype=bool), states, lengths, asked, ways)
    return _put_together(numpy, _Layer(*(array[able] for array in whole)))[0]


def _moved(
    numpy: ModuleType, items: Sequence[Item], reaches: Reaches, index: int, layer: _Layer
) -> tuple[_Layer, _Moves]:
    """Go on without an item and with it, where enough can still be had."""
    item, before, moves = items[index], first_copy(items, index), dict(MOVES[items[index].lean])
    is_copy = index > 0 and copy_of_next(items, index - 1)
    parts, starts, taken = list[_Layer](), [], []

    def add(chosen: "NDArray[Any]", state: State, eager: bool, with_item: bool) -> None:
        lengths, charges = layer.lengths[chosen], layer.charges[chosen]
        if with_item:
            lengths, charges = lengths - item.need, charges - item.value
        able = reaches(index if with_item else before, state, lengths, charges)
        left = chosen[able]
        parts.append(
            _Layer(
                numpy.full(len(left), eager),
                numpy.full(len(left), int(state), dtype=numpy.int64),
                lengths[able],
                charges[able],
                layer.ways[left],
            )
        )
        starts.append(left)
        taken.append(numpy.full(len(left), with_item))

    for state in State:
        here = numpy.flatnonzero(layer.states == state)
        if not len(here):
            continue
        add(here, state, not is_copy, with_item=False)
        for source in moves.get(state, ()):
            add(here[layer.eager[here]], source, eager=True, with_item=True)
    if not parts:
        return layer, _Moves(*(numpy.zeros(0, dtype=numpy.int64) for _ in range(3)))
    joined = _Layer(*(numpy.concatenate(arrays) for arrays in zip(*parts, strict=True)))
    following, ends = _put_together(numpy, joined)
    return following, _Moves(numpy.concatenate(starts), numpy.concatenate(taken), ends)


def _put_together(numpy: ModuleType, layer: _Layer) -> tuple[_Layer, "NDArray[Any]"]:
    """Make one of steps that are alike; and tell where each of them went."""
    if not len(layer.ways):
        return layer, numpy.zeros(0, dtype=numpy.int64)
    keys = (layer.lengths * len(State) + layer.states) * 2 + layer.eager
    order = numpy.argsort(keys, kind="stable")
    keys = keys[order]
    is_new = numpy.concatenate(([True], keys[1:] != keys[:-1]))
    firsts = numpy.flatnonzero(is_new)
    places = numpy.empty(len(keys), dtype=numpy.int64)
    places[order] = numpy.cumsum(is_new) - 1
    eager, states, lengths, charges, ways = (array[order] for array in layer)
    ways = numpy.minimum(numpy.add.reduceat(ways, firsts), MANY)
    charges = numpy.minimum.reduceat(charges, firsts)
    return _Layer(eager[firsts], states[firsts], lengths[firsts], charges, ways), places
