"""What the groups need and the sticks hold, as one knapsack sees it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from longpoint.sticks.lay.bound import Floor
from longpoint.sticks.lay.lean_states import Gaps, Lean, State, gaps_of, state_of
from longpoint.sticks.search.patterns import Layout, Pattern


@dataclass(frozen=True, slots=True)
class Needs:
    """What the groups need and the sticks hold, as one knapsack sees it. [0.01 mm]

    Attributes:
        pieces: What a piece of each group needs.
        leans: How a piece of each group changes the lean state of its set.
        rooms: What a stick of each length holds.
        states: What joints cost in each lean state, by its number.
        up: True: needs are rounded up to the grid and patterns are laid out to see that they can
            be cut. False: rounded down, for a bound.
    """

    pieces: tuple[int, ...]
    leans: tuple[Lean, ...]
    rooms: tuple[int, ...]
    states: tuple[int, ...]
    up: bool


def least_needs(layout: Layout, floor: Floor) -> Needs:
    """Return needs that no pattern undercuts.

    A stick gives back half a kerf at each of its two ends. Where pieces may be turned, a set that
    lies square at both ends gives back square kerfs; one that leans there has paid for it with a
    joint more than its state asks for, which is more than the kerf's difference, or its state asks
    for that joint anyway.
    """
    pieces = tuple(floor.bases[group[0]] for group in layout.groups)
    gaps = _gaps(layout)
    leans = tuple(gaps.lean(*_leans(layout, group)) for group in layout.groups)
    square, widest = _kerfs(layout, gaps)
    odd = {State.PLAIN: 0, State.PLUS: 1, State.MINUS: 1}
    spare = widest - square if any(layout.work.can_turn) else 0
    states = tuple(gaps.cost(state) - spare * odd.get(state, 2) // 2 for state in State)
    rooms = tuple(room - spare for room in floor.rooms)
    return Needs(pieces, leans, rooms, tuple(max(0, cost) for cost in states), up=False)


def needs_by_cuts(layout: Layout, least: Needs) -> Needs:
    """Return least needs that also count cuts between a square end and a slanting one.

    Such a cut takes half the difference of the two kerfs more than a base counts, and so does a
    square end at the end of a stick. Where no piece may be turned, there are as many of both
    together, at least, as a set has more square ends on one side than on the other; told apart up
    to two, as three more are two fewer of five. That is five tables instead of one.

    Args:
        layout: The pieces.
        least: Their least needs; returned as they are where pieces may be turned.
    """
    work = layout.work
    kerfs = sorted({*work.left_kerf, *work.right_kerf})
    if any(work.can_turn) or len(kerfs) < 2:
        return least
    more, square = max((high - low, low) for low, high in pairwise(kerfs))
    leans = {(0, 0): Lean.EVEN, (1, 1): Lean.EVEN, (1, 0): Lean.OPENS, (0, 1): Lean.CLOSES}
    states = tuple(min(state, len(State) - state) * (more // 2) for state in State)
    return replace(
        least,
        leans=tuple(
            leans[work.left_kerf[group[0]] <= square, work.right_kerf[group[0]] <= square]
            for group in layout.groups
        ),
        states=states,
    )


def likely_needs(layout: Layout, floor: Floor, share: float) -> Needs:
    """Return needs with which most patterns are not too long.

    Args:
        layout: The pieces.
        floor: Least needs along the line of the bound.
        share: How much of what may be lost is counted: at 1 every joint takes the widest kerf, and
            every leaning end goes to the middle of its side; then hardly a pattern is too long. At
            0 nothing is lost beside what a bound counts.
    """
    work, gaps = layout.work, _gaps(layout)
    _, widest = _kerfs(layout, gaps)
    middles = _middles(layout, gaps)
    pieces, leans = [], []
    for group in layout.groups:
        first = group[0]
        own = (work.left_kerf[first] + work.right_kerf[first]) // 2
        off = sum(min(abs(lean - middle) for middle in middles) for lean in _leans(layout, group))
        lost = widest - own + (off if any(work.can_turn) else 0)
        pieces.append(floor.bases[first] + round(share * lost))
        leans.append(gaps.lean(*_leans(layout, group)))
    wide = Gaps(
        (0, max(middles)) if gaps.plus else None, (0, -min(middles)) if gaps.minus else None
    )
    states = tuple(wide.cost(state) for state in State)
    rooms = tuple(bar.room + widest for bar in layout.bars)
    return Needs(tuple(pieces), tuple(leans), rooms, states, up=True)


def _gaps(layout: Layout) -> Gaps:
    if not any(layout.work.can_turn):
        return Gaps(None, None)
    return gaps_of([lean for group in layout.groups for lean in _leans(layout, group)])


def _leans(layout: Layout, group: Sequence[int]) -> tuple[int, int]:
    return layout.work.left_lean[group[0]], layout.work.right_lean[group[0]]


def _kerfs(layout: Layout, gaps: Gaps) -> tuple[int, int]:
    """The widest cut of an end that is square, or nearly so, and of any end."""
    work = layout.work
    ends = [
        *zip(work.left_lean, work.left_kerf, strict=True),
        *zip(work.right_lean, work.right_kerf, strict=True),
    ]
    square = max((kerf for lean, kerf in ends if gaps.side(lean) == 0), default=0)
    widest = max(kerf for _, kerf in ends)
    return square or widest, widest


def _middles(layout: Layout, gaps: Gaps) -> tuple[int, ...]:
    """The median lean on the - side, square, and the median lean on the + side."""
    leans = sorted(lean for group in layout.groups for lean in _leans(layout, group))
    sides: dict[int, list[int]] = {-1: [], 0: [], 1: []}
    for lean in leans:
        sides[gaps.side(lean)].append(lean)
    medians = (side[len(side) // 2] for side in (sides[-1], sides[1]) if side)
    return (0, *medians)


def fits(needs: Needs, pattern: Pattern) -> bool:
    """Tell whether a pattern keeps within its stick, by needs not rounded to any grid."""
    state = state_of(needs.leans[group] for group, count in pattern.counts for _ in range(count))
    needed = sum(needs.pieces[group] * count for group, count in pattern.counts)
    return needed + needs.states[state] <= needs.rooms[pattern.bar]
