"""The port that plans thousands of pieces in parts of sticks, and gives a bound for them."""

from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple, Protocol


@dataclass(frozen=True, slots=True, kw_only=True)
class ManyPieces:
    """What is to be cut, each sequence of pieces as often as wanted, also in parts.

    Ends that lean about alike are of one class. All is measured along the line of the stick on
    which the pieces need most (`sticks/lay/bound`), half the kerf of each end with its piece.
    Needs, gaps and tips are no more than the real ones, rooms no less, so that what is impossible
    here is impossible.

    Attributes:
        needs: What a piece of each group needs. [0.01 mm]
        lefts: Class of its left end.
        rights: Class of its right end.
        can_turn: Whether it may be turned; its ends then change places.
        copies: How many pieces there are of each group.
        gaps: For a right end (row) and the left end that follows it (column), by class: the
            length that is lost between two pieces. [0.01 mm]
        left_tips: What a left end of each class costs at the end of a stick. [0.01 mm]
        right_tips: What a right end does. [0.01 mm]
        rooms: What a stick of each length holds. [0.01 mm]
        costs: Cost of the stick of each length, in whole steps.
        limits: How many sticks there are of each length; None: as many as needed.
    """

    needs: tuple[int, ...]
    lefts: tuple[int, ...]
    rights: tuple[int, ...]
    can_turn: tuple[bool, ...]
    copies: tuple[int, ...]
    gaps: tuple[tuple[int, ...], ...]
    left_tips: tuple[int, ...]
    right_tips: tuple[int, ...]
    rooms: tuple[int, ...]
    costs: tuple[int, ...]
    limits: tuple[int | None, ...]


class Turned(NamedTuple):
    """A piece of a group, and how it lies."""

    group: int
    turned: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A sequence of pieces, and how often it is cut.

    Attributes:
        bar: Number of the stick's length.
        pieces: Its pieces, from left to right.
        count: How often. > 0.
    """

    bar: int
    pieces: tuple[Turned, ...]
    count: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PartPlan:
    """A plan in parts of sticks.

    Attributes:
        floor: No plan costs less. [steps]
        prices: What a piece of each group is worth: no sequence is worth more than its stick
            costs, or hardly more. [steps]
        parts: What is cut. Together they hold about as many pieces of about these lengths as there
            are: between two neighbouring lengths one stands for another.
        solver: Name and version of who solved it.
    """

    floor: Fraction
    prices: tuple[float, ...]
    parts: tuple[Part, ...]
    solver: str


class PartPlanner(Protocol):
    """Plans in parts of sticks; repeats for the same pieces."""

    def __call__(self, many: ManyPieces, *, roughly: bool) -> PartPlan:
        """Return the plan and the bound; roughly: sooner, and the bound is worse."""
        ...
