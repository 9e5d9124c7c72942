"""Rules of thumb in words: the rule, what is so, the crew's own figures, and where it holds."""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.quantities.formatting import (
    format_angle,
    format_gap,
    format_tenth,
)
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.trims.long_residual import DRAWN_OPENINGS, SLIP_MM
from longpoint.trims.thumb_figures import Compared, Rule, Span, ThumbFigures
from longpoint.trims.thumb_rules import exact_size_mm, gap_beside_flat_mm, thumb_rules

NO_SOURCE: Final = "Common practice, no source."
_INCH_STEP_MM: Final = MM_PER_INCH / 32.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ThumbText:
    """One rule, to be read.

    Attributes:
        rule: The rule as it is said.
        short: The same in a few words, for a table.
        truth: What is so, and why.
        here: What both come to with the crew's figures.
        holds: Where the rule is good enough.
    """

    rule: str
    short: str
    truth: str
    here: str
    holds: str


def thumb_texts(figures: ThumbFigures, units: Units = Units.MM) -> tuple[ThumbText, ...]:
    """Return every rule of thumb in words, with a crew's own figures.

    Args:
        figures: What the crew works with.
        units: In what lengths are written; gaps in inches are thousandths.
    """
    words = _Words(figures, units)
    return tuple(words.text(compared) for compared in thumb_rules(figures))


def figures_line(figures: ThumbFigures, units: Units = Units.MM) -> str:
    """Return the figures that all the sentences go by."""
    mm, f = _Words(figures, units).mm, figures
    gap = _Words(figures, units).gap
    said = (
        f"face {mm(f.face_mm)}, beside it {mm(f.neighbour_mm)}, thickness {mm(f.thickness_mm)}",
        f"quirk {mm(f.quirk_mm)}",
        f"opening {mm(f.size_mm)} along the piece by {mm(f.height_mm)}",
        f"diagonals {mm(f.apart_mm)} apart",
        f"corner {format_angle(f.corner_deg)}",
        f"thickness of a skirting changing by {mm(f.depth_mm)}",
        f"lining {mm(f.lining_mm)} thick and {mm(f.proud_mm)} proud",
        f"what passes {gap(f.limit_mm)}",
    )
    unit = "mm" if units is Units.MM else "inches"
    return f"Figures: {'; '.join(said)}. Lengths in {unit}, angles in degrees."


class _Words:
    """Writes the sentences of one set of figures in one unit."""

    def __init__(self, figures: ThumbFigures, units: Units) -> None:
        self.figures = figures
        self.units = units

    def mm(self, length_mm: float) -> str:
        return format_tenth(length_mm, self.units)

    def gap(self, gap_mm: float) -> str:
        if self.units is Units.MM and gap_mm < 0.95:
            return f"{gap_mm:.2f}".rstrip("0").rstrip(".")
        return format_gap(gap_mm, self.units)

    def at_least(self, length_mm: float) -> str:
        """Return the first length on the tape that isn't below."""
        step_mm = self._step_mm
        return self.mm(math.ceil(length_mm / step_mm - 1e-9) * step_mm)

    def at_most(self, length_mm: float) -> str:
        """Return the last length on the tape that isn't above."""
        step_mm = self._step_mm
        return self.mm(math.floor(length_mm / step_mm + 1e-9) * step_mm)

    @property
    def _step_mm(self) -> float:
        return 0.1 if self.units is Units.MM else _INCH_STEP_MM

    def text(self, compared: Compared) -> ThumbText:
        match compared.rule:
            case Rule.ADD_ON:
                return self._add_on(compared)
            case Rule.TAPE_ALONG:
                return self._tape_along(compared)
            case Rule.HALF_CORNER:
                return self._half_corner(compared)
            case Rule.PLAIN_45S:
                return self._plain_45s(compared)
            case Rule.SCRIBE_45:
                return self._scribe_45(compared)
            case Rule.DIAGONALS:
                return self._diagonals(compared)
            case Rule.PACK:
                return self._pack(compared)
            case Rule.LONG_RESIDUAL:
                return self._long_residual(compared)

    def _add_on(self, c: Compared) -> ThumbText:
        f = self.figures
        side = "short" if c.off_mm > 0 else "long"
        exact_mm = exact_size_mm(f)
        exact = f" It is right to the hair at {self.mm(exact_mm)} alone." if exact_mm else ""
        return ThumbText(
            rule=f"Hook the opening, two quirks, a face and {self.mm(f.add_mm)}.",
            short=f"opening + 2 quirks + face + {self.mm(f.add_mm)}",
            truth="The tape lies on the slant across the face. What that adds is about the face "
            "times itself over twice the length, so it is more on a short piece and less on a long "
            "one; no one figure serves both.",
            here=f"The rule says {self.mm(c.by_rule[0])}, the tape has to show "
            f"{self.mm(c.true[0])}: {self.gap(abs(c.off_mm))} too {side}.",
            holds=f"{self._sizes(c.good)}{exact} For square corners and 45s only.",
        )

    def _tape_along(self, c: Compared) -> ThumbText:
        return ThumbText(
            rule="Hook the opening, two quirks and a face.",
            short="opening + 2 quirks + face",
            truth="That is the length along the piece, from the long point to square over the "
            "short point of the other end. A tape hooked on the long point runs slantwise and "
            "shows more, so a piece marked by the rule comes out short.",
            here=f"The rule says {self.mm(c.by_rule[0])}, the tape has to show "
            f"{self.mm(c.true[0])}: {self.gap(c.off_mm)} too short.",
            holds=self._sizes(c.good),
        )

    def _sizes(self, good: Span | None) -> str:
        least, most = self._ends(good)
        passes = self.gap(self.figures.limit_mm)
        low = self.at_least(least or 0.0)
        if most is None:
            return f"Within {passes} for openings of {low} and more along the piece."
        return f"Within {passes} for openings of {low} to {self.at_most(most)} along the piece."

    def _half_corner(self, c: Compared) -> ThumbText:
        return ThumbText(
            rule="Set the saw to half the corner.",
            short="saw to half the corner",
            truth="A saw counts from a square cut, so it goes to 90 less half the corner. At 90 "
            "the two are the same, which is why the rule seems to work; at any other corner it "
            "errs twice, once on each piece.",
            here=f"At {format_angle(self.figures.corner_deg)} the rule says "
            f"{format_angle(c.by_rule[0])}, right is {format_angle(c.true[0])}. Both cut by the "
            f"rule leave the joint {self.gap(c.off_mm)} open.",
            holds=self._corners(c.good),
        )

    def _plain_45s(self, c: Compared) -> ThumbText:
        f = self.figures
        least, most = self._ends(c.good)
        return ThumbText(
            rule="At a square corner it is 45, whatever the widths.",
            short="45s on two widths",
            truth="The cut has to run from the inner corner to the outer one, so the wider face "
            "takes the smaller angle; the two add to 90. With 45s the joint closes, but its outer "
            "points miss each other.",
            here=f"{self.mm(f.face_mm)} beside {self.mm(f.neighbour_mm)}: "
            f"{format_angle(c.true[0])} on the first, {format_angle(c.true[1])} on the second. "
            f"With 45s the points miss by {self.gap(c.off_mm)} along the joint.",
            holds=f"Within {self.gap(f.limit_mm)} beside a face of {self.at_least(least or 0.0)} "
            f"to {self.at_most(most or 0.0)}.",
        )

    def _scribe_45(self, c: Compared) -> ThumbText:
        f = self.figures
        return ThumbText(
            rule="To scribe a skirting, cut 45 and follow the line.",
            short="45 for every scribe",
            truth="The saw shows the neighbour's section right at 90 less half the corner. At 45 "
            "the thick parts of the section are cut too far back in a corner over 90, and not far "
            "enough in one under 90.",
            here=f"At {format_angle(f.corner_deg)} it is {format_angle(c.true[0])}. Where the "
            f"section's thickness changes by {self.mm(f.depth_mm)}, a 45 misses by "
            f"{self.gap(c.off_mm)}.",
            holds=self._corners(c.good),
        )

    def _corners(self, good: Span | None) -> str:
        least, most = self._ends(good)
        low = math.ceil((least or 0.0) * 10.0 - 1e-9) / 10.0
        high = math.floor((most or 0.0) * 10.0 + 1e-9) / 10.0
        return (
            f"Within {self.gap(self.figures.limit_mm)} for corners of {format_angle(low)} to "
            f"{format_angle(high)}."
        )

    def _diagonals(self, c: Compared) -> ThumbText:
        f = self.figures
        _, most = self._ends(c.good)
        return ThumbText(
            rule=f"Diagonals within {self.mm(f.apart_mm)}: it is square.",
            short=f"diagonals within {self.mm(f.apart_mm)} = square",
            truth="What a difference of diagonals means depends on the size: the smaller or the "
            "slimmer the opening, the more. And an opening that tapers has two equal diagonals "
            "without a square corner; the opposite sides have to be alike as well.",
            here=f"{self.mm(f.size_mm)} by {self.mm(f.height_mm)} with diagonals "
            f"{self.mm(f.apart_mm)} apart has corners of {c.true[0]:.2f} and {c.true[1]:.2f}. "
            f"Plain 45s on {self.mm(f.face_mm)}, kept parallel to the lining, open by "
            f"{self.gap(c.off_mm)}.",
            holds=f"Within {self.gap(f.limit_mm)} at this size while the diagonals are no more "
            f"than {self.at_most(most or 0.0)} apart.",
        )

    def _pack(self, c: Compared) -> ThumbText:
        f = self.figures
        _, most = self._ends(c.good)
        mitre_deg, bevel_deg = c.true
        flat = self.gap(gap_beside_flat_mm(f, f.proud_mm))
        return ThumbText(
            rule="Lining proud: pack the neighbour out to match.",
            short="proud lining: pack the neighbour",
            truth="A piece on a proud lining is tilted, and a plain 45 on it gapes at the face. "
            "Tilt the neighbour as well and it gapes twice as far: the faces are flush, the joint "
            "is worse. Packed or not, the tilt has to go into the cut.",
            here=f"A lining {self.mm(f.proud_mm)} proud: plain 45s open by {flat} at the heel "
            f"beside a flat neighbour and by {self.gap(c.off_mm)} beside a packed one. What closes "
            f"the packed pair is {mitre_deg:.2f} with the back relieved by "
            f"{format_angle(abs(bevel_deg))}, on both pieces.",
            holds=f"Plain 45s on both within {self.gap(f.limit_mm)} while the lining is no more "
            f"than {self.at_most(most or 0.0)} proud.",
        )

    def _long_residual(self, c: Compared) -> ThumbText:
        f = self.figures
        times = round(c.true[0] * DRAWN_OPENINGS)
        return ThumbText(
            rule="The tapes don't close: the one furthest off is the wrong one.",
            short="the longest residual is the wrong tape",
            truth="Four sides and two diagonals leave one reading to spare. Whichever of the six "
            "slipped, the misfit spreads over all in much the same shares, most of it on a "
            "diagonal. The sum tells that one is wrong, never which.",
            here=f"Of {DRAWN_OPENINGS} openings of about {self.mm(f.size_mm)} by "
            f"{self.mm(f.height_mm)}, drawn in the computer, each with one of its six tapes "
            f"{self.mm(SLIP_MM)} out, the rule named the right one in {times}, about 1 in "
            f"{round(1.0 / c.true[0])}; guessing among six does 1 in 6. Model output, no count of "
            "houses.",
            holds="Nowhere. Read both diagonals again, then the sides; or hold a level to both "
            "jambs and write what it shows.",
        )

    @staticmethod
    def _ends(good: Span | None) -> tuple[float | None, float | None]:
        return (None, None) if good is None else (good.least, good.most)
