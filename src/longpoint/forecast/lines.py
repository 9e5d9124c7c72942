"""The port through which draws of a whole house are judged: does each opening fit, how many don't.

Errors are counted in their standard uncertainties. Some are shared by the whole house (the saw's
scale, the tape's hook), some belong to one opening (a reading, a cut). In each respect a set fits
when the largest of its lines is at most 1:

    r_l = offset_l + shared_l . s + private_l . p,    fits when max over l of r_l <= 1

References:
    The least possible worst joint over all ways of fitting up is the value of a linear program
    whose right-hand side alone holds the errors: by duality the maximum of finitely many lines.
"""

from dataclasses import dataclass
from typing import Final, Protocol

from longpoint.forecast.stream import Spread as Spread

SHARED_STREAM: Final = 0
PRIVATE_STREAM: Final = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One way in which errors add up against a limit, as a share of that limit.

    Attributes:
        offset: With no error at all.
        shared: Per standard uncertainty of each error of the house, (s,).
        private: Per standard uncertainty of each error of the opening, (p,).
    """

    offset: float
    shared: tuple[float, ...]
    private: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LineGroup:
    """One respect in which an opening fits or doesn't: it fits where every line is at most 1."""

    name: str
    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LineOpening:
    """The lines of one opening.

    Attributes:
        mark: Its mark.
        groups: Respects in which it must fit.
        private: How its own errors spread, (p,).
    """

    mark: str
    groups: tuple[LineGroup, ...]
    private: tuple[Spread, ...]

    def __post_init__(self) -> None:
        """Check that every line knows every error of the opening."""
        for group in self.groups:
            for line in group.lines:
                if len(line.private) != len(self.private):
                    raise ValueError(f"{self.mark}, {group.name}: {len(line.private)} coefficients")


@dataclass(frozen=True, slots=True, kw_only=True)
class LineHouse:
    """The lines of a whole house, and how often to draw.

    Attributes:
        openings: Its openings.
        shared: How the errors of the house spread, (s,).
        draws: How many houses to imagine. >= 1
        seed: The same seed gives the same errors on every platform.
    """

    openings: tuple[LineOpening, ...]
    shared: tuple[Spread, ...]
    draws: int
    seed: int

    def __post_init__(self) -> None:
        """Check that there is something to draw and that every line knows every shared error."""
        if self.draws < 1:
            raise ValueError(f"{self.draws} draws")
        for opening in self.openings:
            for group in opening.groups:
                if any(len(line.shared) != len(self.shared) for line in group.lines):
                    raise ValueError(f"{opening.mark}, {group.name}: shared coefficients")

    @property
    def pool_rows(self) -> int:
        """How many draws of private errors there are for all openings together."""
        return max(self.draws, len(self.openings))

    def first_row(self, opening: int) -> int:
        """Return which row of the pool an opening takes in the first draw.

        In draw i opening k takes row (i + first_row(k)) mod pool_rows. For two openings of one
        draw these rows differ, as k * stride < pool_rows, and each row is drawn independently of
        every other and of the shared errors. So

        - in any one draw the errors of all openings are independent, as they would be if drawn
          afresh: whatever is counted draw by draw, the number of misfits too, has the right mean;
        - over all draws an opening meets each row at most once: its own figures have the usual
          Monte Carlo error.

        What changes is the Monte Carlo error of figures over several openings, as one row serves
        different openings in different draws: at worst, for like openings without shared errors,
        that of the mean number of misfits is the root of their number times larger, as large as if
        one opening's share was read off and multiplied.
        """
        return opening * max(1, self.pool_rows // max(1, len(self.openings)))


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningTally:
    """In how many draws an opening fits.

    Attributes:
        mark: Its mark.
        fits: In each of its groups, in their order.
        together: In all of them at once.
    """

    mark: str
    fits: tuple[int, ...]
    together: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LineTally:
    """What the draws of a house came to.

    Attributes:
        openings: In the order of the house.
        misfits: Item k: draws in which exactly k openings don't fit; one item more than openings.
        draws: How many there were.
    """

    openings: tuple[OpeningTally, ...]
    misfits: tuple[int, ...]
    draws: int


class LineEngine(Protocol):
    """Draws the errors of a house and judges its openings; holds nothing between two calls."""

    def tally(self, house: LineHouse) -> LineTally:
        """Return in how many draws each opening fits, and how many don't at once."""
        ...
