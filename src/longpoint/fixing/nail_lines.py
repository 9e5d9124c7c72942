"""One line of nails through a section: what it goes into, how long it may be, which nail it takes.

The trim's inner edge lies toward the opening. Distances along the face run from the lining's face,
the reveal, outward over lining, packing and stud; depths run from the wall's face inward.

References:
    At least 25 mm into the stud: guides to nails, read. Three times what is held: US Navy manual
    NAVEDTRA 14119, read; it says nothing of boards between, and finish work never keeps it, so it
    is shown beside the others and decides nothing. That a nail in the lining must stay inside it
    even when it turns with the grain, and the distances from edges: common practice, no source.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.fixing.gauges import PIN_GAUGE, thickest_mm, usual_lengths_mm
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.fixing import Nail

INTO_STUD_MM: Final = 25.0
INTO_LINING_MM: Final = 7.9375
"""5/16 in, about 8 mm, so that a nail of whole inches isn't a hair too short. [mm]"""
PUNCHED_MM: Final = 2.0
"""How far a head is punched below the face, so that the tip goes as much deeper."""
END_COVER_MM: Final = 5.0
"""What is left of the stud behind a tip."""
HELD_TIMES: Final = 3.0


class Into(StrEnum):
    """What a line of nails holds in."""

    LINING = "lining"
    STUD = "stud"
    JOIST = "joist"
    """Or plate or backing: what is above a ceiling's edge."""
    UNDER = "the timber under it"


FRAMING: Final = frozenset({Into.STUD, Into.JOIST})
"""What takes a nail of its own thickness, not a brad."""


def into_words(into: Into) -> str:
    """Return what a line holds in, in words.

    Example:
        >>> into_words(Into.JOIST)
        'joist or backing'
    """
    match into:
        case Into.LINING:
            return say("lining")
        case Into.STUD:
            return say("stud")
        case Into.JOIST:
            return say("joist or backing")
        case Into.UNDER:
            return say("lining under the stop")


class Trouble(StrEnum):
    """What is wrong with a nail on a line."""

    TOO_LONG = "too long"
    TOO_SHORT = "too short"


class Standing(StrEnum):
    """Where the nail of a line comes from."""

    HELD = "one that you have"
    OTHER = "none that you have: get this one"
    USUAL = "chosen among the usual lengths"
    NONE = "no nail"


@dataclass(frozen=True, slots=True, kw_only=True)
class Bed:
    """What a line of nails passes through and holds in.

    Attributes:
        into: What holds.
        through_mm: Thickest that it passes before the timber that holds: trim, and board. [mm]
        thin_mm: Thinnest that it passes, which lets a tip go deepest. [mm]
        least_hold_mm: Least that it must be in the timber that holds. [mm]
        cover_mm: Timber from the line to where a tip would come out: sideways to the reveal's face
            in a lining, ahead in a stud. [mm]
        is_sideways: True when the nail's own half thickness comes off that cover.
        trim_mm: Thickness of the trim at its thickest. [mm]
        board_mm: Board between trim and stud; 0 where there is none. [mm]
    """

    into: Into
    through_mm: float
    thin_mm: float
    least_hold_mm: float
    cover_mm: float
    is_sideways: bool
    trim_mm: float
    board_mm: float = 0.0

    @property
    def least_mm(self) -> float:
        """Shortest nail that holds. [mm]"""
        return self.through_mm + self.least_hold_mm

    def most_mm(self, diameter_mm: float) -> float:
        """Return the longest nail of a diameter that can't come out. [mm]"""
        beside_mm = diameter_mm / 2.0 if self.is_sideways else 0.0
        return self.thin_mm - PUNCHED_MM + max(0.0, self.cover_mm - beside_mm)

    def trouble_of(self, nail: Nail) -> Trouble | None:
        """Return what is wrong with a nail here; None: it does."""
        if nail.length_mm > self.most_mm(thickest_mm(nail)) + 1e-9:
            return Trouble.TOO_LONG
        if nail.length_mm < self.least_mm - 1e-9:
            return Trouble.TOO_SHORT
        return None

    def hold_mm(self, nail: Nail) -> float:
        """Return how much of a nail is in the timber that holds, its head at the face. [mm]

        Example:
            >>> stud = Bed(
            ...     into=Into.STUD,
            ...     through_mm=28,
            ...     thin_mm=28,
            ...     least_hold_mm=25,
            ...     cover_mm=80,
            ...     is_sideways=False,
            ...     trim_mm=18,
            ...     board_mm=10,
            ... )
            >>> stud.hold_mm(Nail(gauge=16, length_mm=50))
            22
        """
        return max(0.0, nail.length_mm - self.through_mm)

    def tip_mm(self, nail: Nail) -> float:
        """Return how deep a tip lies below the wall's face, the head punched. [mm]"""
        trim_mm = self.thin_mm - self.board_mm
        return max(0.0, nail.length_mm + PUNCHED_MM - trim_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class NailLine:
    """One line of nails with its nail.

    Attributes:
        bed: What it passes and holds in.
        from_edge_mm: From the piece's inner edge (of skirting: its lower edge). [mm]
        nail: Which nail; None where none does.
        standing: Where that nail comes from.
        wrong: Nails that the crew has and that don't do here, with why.
        why_none: Why no nail does; empty where one does.
    """

    bed: Bed
    from_edge_mm: float
    nail: Nail | None
    standing: Standing
    wrong: tuple[tuple[Nail, Trouble], ...] = ()
    why_none: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Nails:
    """Nails to choose from.

    Attributes:
        held: Those that the crew has; none: the usual lengths are taken.
        units: In which the usual lengths are sold.
    """

    held: tuple[Nail, ...] = ()
    units: Units = Units.MM


def nail_line(bed: Bed, from_edge_mm: float, nails: Nails) -> NailLine:
    """Return the line with the shortest nail that holds and can't come out.

    Args:
        bed: What it passes and holds in.
        from_edge_mm: From the piece's inner edge. [mm]
        nails: What there is to choose from.

    Example:
        >>> lining = Bed(
        ...     into=Into.LINING,
        ...     through_mm=18,
        ...     thin_mm=18,
        ...     least_hold_mm=8,
        ...     cover_mm=15,
        ...     is_sideways=True,
        ...     trim_mm=18,
        ... )
        >>> nail_line(lining, 10, Nails(held=(Nail(gauge=16, length_mm=50),))).nail
        Nail(gauge=18, length_mm=30.0, diameter_mm=None)
    """
    have = [nail for nail in nails.held if nail.gauge < PIN_GAUGE]
    wrong = tuple((nail, said) for nail in have if (said := bed.trouble_of(nail)) is not None)
    fitting = [nail for nail in have if bed.trouble_of(nail) is None]
    if fitting:
        nail, standing = _best(fitting, bed.into), Standing.HELD
    else:
        usual = [nail for nail in _usual(bed.into, nails.units) if bed.trouble_of(nail) is None]
        if not usual:
            return no_nail(bed, from_edge_mm, wrong, _why_none(bed, nails.units))
        # A nailer takes one gauge, so another length for one at hand comes before another gauge.
        same = {nail.gauge for nail in have}
        nail = min(usual, key=lambda each: (each.gauge not in same, each.length_mm))
        standing = Standing.OTHER if have else Standing.USUAL
    return NailLine(bed=bed, from_edge_mm=from_edge_mm, nail=nail, standing=standing, wrong=wrong)


def no_nail(
    bed: Bed, from_edge_mm: float, wrong: tuple[tuple[Nail, Trouble], ...], why: str
) -> NailLine:
    """Return a line on which no nail does."""
    return NailLine(
        bed=bed,
        from_edge_mm=from_edge_mm,
        nail=None,
        standing=Standing.NONE,
        wrong=wrong,
        why_none=why,
    )


def _why_none(bed: Bed, units: Units) -> str:
    thinnest_mm = min(thickest_mm(nail) for nail in _usual(bed.into, units))
    if bed.least_mm > bed.most_mm(thinnest_mm):
        return say("what is long enough to hold may come out")
    return say("none of the usual lengths lies between too short and too long")


def _best(nails: Iterable[Nail], into: Into) -> Nail:
    """Return the shortest; of equals the thinner one for an edge, the thicker one for a stud."""
    way = 1.0 if into in FRAMING else -1.0
    return min(nails, key=lambda nail: (nail.length_mm, way * nail.gauge))


def _usual(into: Into, units: Units) -> list[Nail]:
    """Return what is usually sold, the usual gauge first; into studs nothing as thin as 18."""
    gauges = (16, 15) if into in FRAMING else (18, 16)
    return [Nail(gauge=g, length_mm=mm) for g in gauges for mm in usual_lengths_mm(g, units)]
