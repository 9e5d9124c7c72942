"""What a crew works with, and what comes of a rule of thumb with it."""

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import Final, NamedTuple

from longpoint.errors import QuantityError
from longpoint.speech.said import say
from longpoint.trims.tilt import MOST_TILT_DEG

_LEAST_SIZE_MM: Final = 100.0


class Rule(StrEnum):
    """A rule that crews go by."""

    ADD_ON = "add-on"
    """Hook reading = opening, two quirks, a face and a little."""
    TAPE_ALONG = "tape-along"
    """Hook reading = opening, two quirks and a face."""
    HALF_CORNER = "half-corner"
    """The saw is set to half the corner."""
    PLAIN_45S = "plain-45s"
    """45s, whatever the two widths are."""
    SCRIBE_45 = "scribe-45"
    """A scribe is exposed at 45, whatever the corner is."""
    DIAGONALS = "diagonals"
    """Diagonals that differ by a little: it is square."""
    PACK = "pack"
    """Lining proud: pack the neighbour out, cut plain 45s."""
    LONG_RESIDUAL = "long-residual"
    """Tapes that don't close: the one furthest off the fit is wrong."""


class Span(NamedTuple):
    """Between which values a rule is good enough; None: no end that way."""

    least: float | None
    most: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """A rule beside the truth, for somebody's own figures.

    Attributes:
        rule: The rule.
        by_rule: What it gives: mm or degrees.
        true: What is so, in the same order.
        off_mm: How far a reading is short, or how far a joint stands open or misses; for the last
            rule the share of openings where it is right.
        good: Where it is off by no more than the crew's limit: clear sizes for the first two,
            corners for half the corner and scribing, the neighbour's face for 45s, the diagonals'
            difference, how proud. None: nowhere.
    """

    rule: Rule
    by_rule: tuple[float, ...]
    true: tuple[float, ...]
    off_mm: float
    good: Span | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ThumbFigures:
    """What a crew works with, and what it allows.

    Attributes:
        face_mm: Face width, > 0.
        quirk_mm: Quirk, >= 0.
        size_mm: Clear size of the opening along the piece, >= 100.
        height_mm: The other clear size, >= 100.
        add_mm: The little that the rule adds for the slant, >= 0.
        corner_deg: A corner, 45 to 135. [deg]
        neighbour_mm: Face width of a wider or narrower neighbour, > 0.
        depth_mm: By how much the thickness of a skirting changes up its section, > 0.
        apart_mm: How far two diagonals differ, >= 0.
        thickness_mm: Thickness of the architrave, > 0.
        lining_mm: Thickness of the lining's edge, less than face and quirk together.
        proud_mm: How far the lining stands out past the wall, >= 0.
        limit_mm: Largest gap or error that passes, > 0.
    """

    face_mm: float = 66.0
    quirk_mm: float = 5.0
    size_mm: float = 1180.0
    height_mm: float = 620.0
    add_mm: float = 1.0
    corner_deg: float = 91.0
    neighbour_mm: float = 57.0
    depth_mm: float = 12.0
    apart_mm: float = 3.0
    thickness_mm: float = 19.0
    lining_mm: float = 20.0
    proud_mm: float = 3.0
    limit_mm: float = 0.5

    def __post_init__(self) -> None:
        for name in ("face", "neighbour", "depth", "thickness", "limit"):
            value = getattr(self, f"{name}_mm")
            _check(
                value > 0.0,
                say("{name} is {value:g} mm", name=name, value=value),
                say("It has to be more than nothing."),
            )
        for name in ("size", "height"):
            value = getattr(self, f"{name}_mm")
            _check(
                value >= _LEAST_SIZE_MM,
                say("{name} is {value:g} mm", name=name, value=value),
                say(
                    "No opening is smaller than {least_size_mm:g} mm.",
                    least_size_mm=_LEAST_SIZE_MM,
                ),
            )
        for name in ("quirk", "add", "apart", "lining", "proud"):
            value = getattr(self, f"{name}_mm")
            _check(
                value >= 0.0,
                say("{name} is {value:g} mm", name=name, value=value),
                say("It can't be less than nothing."),
            )
        _check(
            45.0 <= self.corner_deg <= 135.0,
            say("corner is {corner_deg:g} degrees", corner_deg=self.corner_deg),
            say("Rules of thumb are for corners of 45 to 135."),
        )
        _check(
            self.bearing_mm > 0.0,
            say("lining is {lining_mm:g} mm thick", lining_mm=self.lining_mm),
            say("The architrave doesn't reach past it."),
        )
        _check(
            self.proud_mm <= self.most_proud_mm,
            say("proud is {proud_mm:g} mm", proud_mm=self.proud_mm),
            say(
                "Over {bearing_mm:g} mm that tilts the piece by more than {most_tilt_deg:g}.",
                bearing_mm=self.bearing_mm,
                most_tilt_deg=MOST_TILT_DEG,
            ),
        )
        _check(
            self.apart_mm < min(self.size_mm, self.height_mm) / 2.0,
            say("diagonals are {apart_mm:g} mm apart", apart_mm=self.apart_mm),
            say("No opening of that size is so far out."),
        )

    @property
    def along_mm(self) -> float:
        """From the long point to the square line through the other end's short point. [mm]"""
        return self.size_mm + 2.0 * self.quirk_mm + self.face_mm

    @property
    def bearing_mm(self) -> float:
        """From the lining's back arris to the outer edge of the piece that lies on it. [mm]"""
        return self.face_mm + self.quirk_mm - self.lining_mm

    @property
    def most_proud_mm(self) -> float:
        """How far the lining may stand out before the piece tilts too far to be worked out."""
        return self.bearing_mm * math.sin(math.radians(MOST_TILT_DEG))


def _check(is_good: bool, read: str, wrong: str) -> None:
    if not is_good:
        raise QuantityError(
            say("Among the figures, {read}.", read=read),
            wrong,
            say("Give the figures of a piece that can be cut."),
        )
