"""How a set of pieces that may be turned pays for its leans.

Besides its length a set has a *lean state*, where pieces may be turned. Let the leans of all ends
be parted by one gap on the + side and one on the - side of square. Laid on a stick, a set makes a
walk over the leans that starts and ends at square: pieces take it from one of their ends to the
other, joints from the right end of one to the left end of the next, and a joint pays for the way
it goes. Every gap is crossed an even number of times in all, so where the pieces cross it an odd
number of times, a joint crosses it too. And a set of leaning pieces none of which ends at square
must be left and reached from square by joints. So the tables are

    PLAIN   both gaps crossed an even number of times: costs nothing
    LOOSE   the same, pieces lean, but none has one end at square: twice the smaller gap
    BOTH    both crossed an odd number of times: both gaps
    PLUS    only the + gap odd: that gap; MINUS likewise

with pieces in the order: those that don't link square with a lean first, then those that do.

Where no piece may be turned, leans cost what they cost in any order; there the tables may count
instead by how many more left ends than right ends are square, and five more count as none.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import IntEnum, StrEnum
from itertools import pairwise
from typing import Final


class Lean(StrEnum):
    """How a piece changes the lean state of its set."""

    SQUARE = "square"
    """Both ends within the gaps."""
    SAME = "same"
    """Both ends beyond one gap."""
    ACROSS = "across"
    """One end beyond each gap."""
    PLUS = "plus"
    """One end within, one beyond the + gap."""
    MINUS = "minus"
    """One end within, one beyond the - gap."""
    EVEN = "even"
    """Where square ends are counted: both are, or none."""
    OPENS = "opens"
    """Likewise: only the left one is."""
    CLOSES = "closes"
    """Likewise: only the right one is."""


class State(IntEnum):
    """The tables, by number."""

    PLAIN = 0
    LOOSE = 1
    BOTH = 2
    PLUS = 3
    MINUS = 4


MOVES: Final[dict[Lean, tuple[tuple[State, tuple[State, ...]], ...]]] = {
    Lean.SQUARE: (
        (State.PLAIN, (State.PLAIN,)),
        (State.LOOSE, (State.LOOSE,)),
        (State.BOTH, (State.BOTH,)),
    ),
    Lean.SAME: ((State.LOOSE, (State.PLAIN, State.LOOSE)), (State.BOTH, (State.BOTH,))),
    Lean.ACROSS: ((State.BOTH, (State.PLAIN, State.LOOSE)), (State.LOOSE, (State.BOTH,))),
    Lean.PLUS: (
        (State.PLAIN, (State.PLUS,)),
        (State.PLUS, (State.PLAIN, State.LOOSE)),
        (State.MINUS, (State.BOTH,)),
        (State.BOTH, (State.MINUS,)),
    ),
    Lean.MINUS: (
        (State.PLAIN, (State.MINUS,)),
        (State.MINUS, (State.PLAIN, State.LOOSE)),
        (State.PLUS, (State.BOTH,)),
        (State.BOTH, (State.PLUS,)),
    ),
    Lean.EVEN: tuple((state, (state,)) for state in State),
    Lean.OPENS: tuple((state, (State((state - 1) % len(State)),)) for state in State),
    Lean.CLOSES: tuple((state, (State((state + 1) % len(State)),)) for state in State),
}
LINKS: Final = (Lean.PLUS, Lean.MINUS)
COUNTED: Final = (Lean.EVEN, Lean.OPENS, Lean.CLOSES)
TURNED: Final = tuple(lean for lean in Lean if lean not in COUNTED)
"""The pieces of a set are all of the one kind or all of the other."""


def state_of(leans: Iterable[Lean]) -> State:
    """Return the lean state of a set of pieces."""
    leans = tuple(leans)
    if any(lean in COUNTED for lean in leans):
        return _counted(leans.count(Lean.OPENS), leans.count(Lean.CLOSES))
    plus = minus = linked = leaning = False
    for lean in leans:
        plus ^= lean in (Lean.PLUS, Lean.ACROSS)
        minus ^= lean in (Lean.MINUS, Lean.ACROSS)
        linked |= lean in LINKS
        leaning |= lean is not Lean.SQUARE
    if plus and minus:
        return State.BOTH
    if plus or minus:
        return State.PLUS if plus else State.MINUS
    return State.LOOSE if leaning and not linked else State.PLAIN


def _counted(opens: int, closes: int) -> State:
    return State((opens - closes) % len(State))


class LeanBits:
    """Tells the lean state of many sets of the same pieces, each set as bits.

    Args:
        leans: How each piece changes the lean state; the first stands for the lowest bit.
    """

    def __init__(self, leans: Sequence[Lean]) -> None:
        def bits_of(*wanted: Lean) -> int:
            return sum(1 << index for index, lean in enumerate(leans) if lean in wanted)

        self._plus = bits_of(Lean.PLUS, Lean.ACROSS)
        self._minus = bits_of(Lean.MINUS, Lean.ACROSS)
        self._linking = bits_of(*LINKS)
        self._square = bits_of(Lean.SQUARE)
        self._counts = any(lean in COUNTED for lean in leans)
        self._opens, self._closes = bits_of(Lean.OPENS), bits_of(Lean.CLOSES)

    def state(self, bits: int) -> State:
        """Return what `state_of` says of the pieces whose bits are set."""
        if self._counts:
            return _counted((bits & self._opens).bit_count(), (bits & self._closes).bit_count())
        plus = (bits & self._plus).bit_count() & 1
        minus = (bits & self._minus).bit_count() & 1
        if plus and minus:
            return State.BOTH
        if plus or minus:
            return State.PLUS if plus else State.MINUS
        return State.LOOSE if bits & ~self._square and not bits & self._linking else State.PLAIN


@dataclass(frozen=True, slots=True)
class Gaps:
    """The gaps among the leans of all ends. [0.01 mm]

    Attributes:
        plus: (from, to) of the gap on the + side, or None.
        minus: (from, to) of the gap on the - side, sizes taken as positive, or None.
    """

    plus: tuple[int, int] | None
    minus: tuple[int, int] | None

    def lean(self, one: int, other: int) -> Lean:
        """Return how a piece with these two leans changes the state of its set."""
        sides = {self.side(one), self.side(other)}
        if sides == {0}:
            return Lean.SQUARE
        if sides == {-1, 1}:
            return Lean.ACROSS
        if 0 not in sides:
            return Lean.SAME
        return Lean.PLUS if 1 in sides else Lean.MINUS

    def cost(self, state: State) -> int:
        """Return what joints cost at least in this state. [0.01 mm]"""
        plus = self.plus[1] - self.plus[0] if self.plus else 0
        minus = self.minus[1] - self.minus[0] if self.minus else 0
        match state:
            case State.PLAIN:
                return 0
            case State.LOOSE:
                return 2 * min(one for one in (plus, minus) if one) if plus or minus else 0
            case State.BOTH:
                return plus + minus
            case State.PLUS:
                return plus
            case State.MINUS:
                return minus

    def side(self, lean: int) -> int:
        """Return on which side of the gaps a lean lies: -1, 0 within them, 1."""
        if self.plus and lean >= self.plus[1]:
            return 1
        return -1 if self.minus and -lean >= self.minus[1] else 0


def gaps_of(leans: Sequence[int]) -> Gaps:
    """Return the gap on either side of square that costs most if it is crossed once too often."""
    return Gaps(_gap([lean for lean in leans if lean > 0]), _gap([-x for x in leans if x < 0]))


def _gap(sizes: Sequence[int]) -> tuple[int, int] | None:
    ordered = sorted({0, *sizes})
    if len(ordered) == 1:
        return None
    return max(
        pairwise(ordered),
        key=lambda gap: (gap[1] - gap[0]) * sum(size >= gap[1] for size in sizes),
    )
