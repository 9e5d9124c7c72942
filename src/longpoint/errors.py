"""Everything that can go wrong, on one screen.

::

    LongpointError              three sentences: what was read, what is wrong, what to do
      QuantityError             a length or angle that can't be read
      SurveyError               a house file that can't be used as a whole
      ShapeError                readings that describe no shape at all
      PieceError                a shape that no set of pieces fits
      StockError                pieces that no stick in the list can give
      PricingError              rates, money or a tax that no price can be made with
      SheetError                a sheet that can't be made
      ExchangeError             a file that can't be read or written
      StoreError                a store of houses that can't be read or written

An error is raised only for what makes a step meaningless. Trouble in one opening, room or run is
a `Finding`: a step returns its result and a tuple of them, and the rest of the house goes on.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from longpoint.speech.said import joined, say


class Severity(StrEnum):
    """How far a finding reaches."""

    NOTE = "note"
    """Said so that nothing is silent: an assumption, or a fact worth knowing."""
    WARNING = "warning"
    """Look at it before cutting; lengths are still given."""
    STOP = "stop"
    """The place is held: no length is printed for it until it is read again or accepted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing the carpenter must know, tied to the place where it stands.

    Attributes:
        code: Short stable name, one of those in docs/reference/findings.md.
        severity: How far it reaches.
        place: Mark of the opening, run or wall; the house's name for the whole house.
        read: First sentence: what was read.
        wrong: Second sentence: what is wrong with it, or what was assumed.
        do: Third sentence: what to do.
    """

    code: str
    severity: Severity
    place: str
    read: str
    wrong: str
    do: str

    def __str__(self) -> str:
        """Return the three sentences as one paragraph."""
        return say(
            "{place}: {read} {wrong} {do}",
            place=self.place,
            read=self.read,
            wrong=self.wrong,
            do=self.do,
        )


class LongpointError(Exception):
    """Base of every error of this package; carries three sentences.

    Args:
        read: What was read.
        wrong: What is wrong with it.
        do: What to do about it.
    """

    def __init__(self, read: str, wrong: str, do: str) -> None:
        super().__init__(joined(" ", (read, wrong, do)))
        self.read = read
        self.wrong = wrong
        self.do = do


class QuantityError(LongpointError):
    """A length, angle or number that can't be read as it is written."""


class SurveyError(LongpointError):
    """A house file that can't be used as a whole."""


class ShapeError(LongpointError):
    """Readings that describe no shape at all."""


class PieceError(LongpointError):
    """A shape that no set of pieces fits."""


class StockError(LongpointError):
    """Pieces that no stick in the list can give."""


class PricingError(LongpointError):
    """Rates, money or a tax that no price can be made with."""


class SheetError(LongpointError):
    """A sheet that can't be made."""


class ExchangeError(LongpointError):
    """A file that can't be read or written."""


class StoreError(LongpointError):
    """A store of houses that can't be read or written."""


def held_places(findings: Iterable[Finding]) -> frozenset[str]:
    """Return the marks of all places that a finding holds.

    Example:
        >>> stop = Finding(code="x", severity=Severity.STOP, place="W1", read="", wrong="", do="")
        >>> sorted(held_places([stop]))
        ['W1']
    """
    return frozenset(f.place for f in findings if f.severity is Severity.STOP)
