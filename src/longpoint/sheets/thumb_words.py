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
from longpoint.speech.said import joined, say
from longpoint.trims.long_residual import DRAWN_OPENINGS, SLIP_MM
from longpoint.trims.thumb_figures import Compared, Rule, Span, ThumbFigures
from longpoint.trims.thumb_rules import exact_size_mm, gap_beside_flat_mm, thumb_rules

NO_SOURCE: Final = say("Common practice, no source.")
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
        units: In what lengths are written; gaps under a sixteenth of an inch are sixty-fourths.
    """
    words = _Words(figures, units)
    return tuple(words.text(compared) for compared in thumb_rules(figures))


def figures_line(figures: ThumbFigures, units: Units = Units.MM) -> str:
    """Return the figures that all the sentences go by."""
    mm, f = _Words(figures, units).mm, figures
    gap = _Words(figures, units).gap
    said = (
        say(
            "face {mm}, beside it {mm_2}, thickness {mm_3}",
            mm=mm(f.face_mm),
            mm_2=mm(f.neighbour_mm),
            mm_3=mm(f.thickness_mm),
        ),
        say("quirk {mm}", mm=mm(f.quirk_mm)),
        say("opening {mm} along the piece by {mm_2}", mm=mm(f.size_mm), mm_2=mm(f.height_mm)),
        say("diagonals {mm} apart", mm=mm(f.apart_mm)),
        say("corner {corner}", corner=format_angle(f.corner_deg)),
        say("thickness of a skirting changing by {mm}", mm=mm(f.depth_mm)),
        say("lining {mm} thick and {mm_2} proud", mm=mm(f.lining_mm), mm_2=mm(f.proud_mm)),
        say("what passes {gap}", gap=gap(f.limit_mm)),
    )
    unit = say("mm") if units is Units.MM else say("inches")
    return say(
        "Figures: {said}. Lengths in {unit}, angles in degrees.",
        said=joined("; ", said),
        unit=unit,
    )


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
        side = say("short") if c.off_mm > 0 else say("long")
        exact_mm = exact_size_mm(f)
        exact = (
            say(" It is right to the hair at {mm} alone.", mm=self.mm(exact_mm)) if exact_mm else ""
        )
        return ThumbText(
            rule=say("Hook the opening, two quirks, a face and {mm}.", mm=self.mm(f.add_mm)),
            short=say("opening + 2 quirks + face + {mm}", mm=self.mm(f.add_mm)),
            truth=say(
                "The tape lies on the slant across the face. What that adds is "
                "about the face times itself over twice the length, so it is "
                "more on a short piece and less on a long one; no one figure "
                "serves both."
            ),
            here=say(
                "The rule says {mm}, the tape has to show {mm_2}: {gap} too {side}.",
                mm=self.mm(c.by_rule[0]),
                mm_2=self.mm(c.true[0]),
                gap=self.gap(abs(c.off_mm)),
                side=side,
            ),
            holds=say(
                "{sizes}{exact} For square corners and 45s only.",
                sizes=self._sizes(c.good),
                exact=exact,
            ),
        )

    def _tape_along(self, c: Compared) -> ThumbText:
        return ThumbText(
            rule=say("Hook the opening, two quirks and a face."),
            short=say("opening + 2 quirks + face"),
            truth=say(
                "That is the length along the piece, from the long point to "
                "square over the short point of the other end. A tape hooked on "
                "the long point runs slantwise and shows more, so a piece marked "
                "by the rule comes out short."
            ),
            here=say(
                "The rule says {mm}, the tape has to show {mm_2}: {gap} too short.",
                mm=self.mm(c.by_rule[0]),
                mm_2=self.mm(c.true[0]),
                gap=self.gap(c.off_mm),
            ),
            holds=self._sizes(c.good),
        )

    def _sizes(self, good: Span | None) -> str:
        least, most = self._ends(good)
        passes = self.gap(self.figures.limit_mm)
        low = self.at_least(least or 0.0)
        if most is None:
            return say(
                "Within {passes} for openings of {low} and more along the piece.",
                passes=passes,
                low=low,
            )
        return say(
            "Within {passes} for openings of {low} to {at_most} along the piece.",
            passes=passes,
            low=low,
            at_most=self.at_most(most),
        )

    def _half_corner(self, c: Compared) -> ThumbText:
        return ThumbText(
            rule=say("Set the saw to half the corner."),
            short=say("saw to half the corner"),
            truth=say(
                "A saw counts from a square cut, so it goes to 90 less half the "
                "corner. At 90 the two are the same, which is why the rule seems "
                "to work; at any other corner it errs twice, once on each piece."
            ),
            here=say(
                "At {corner} the rule says {by_rule}, right is {true}. Both cut "
                "by the rule leave the joint {gap} open.",
                corner=format_angle(self.figures.corner_deg),
                by_rule=format_angle(c.by_rule[0]),
                true=format_angle(c.true[0]),
                gap=self.gap(c.off_mm),
            ),
            holds=self._corners(c.good),
        )

    def _plain_45s(self, c: Compared) -> ThumbText:
        f = self.figures
        least, most = self._ends(c.good)
        return ThumbText(
            rule=say("At a square corner it is 45, whatever the widths."),
            short=say("45s on two widths"),
            truth=say(
                "The cut has to run from the inner corner to the outer one, so "
                "the wider face takes the smaller angle; the two add to 90. With "
                "45s the joint closes, but its outer points miss each other."
            ),
            here=say(
                "{mm} beside {mm_2}: {true} on the first, {true_2} on the second. "
                "With 45s the points miss by {gap} along the joint.",
                mm=self.mm(f.face_mm),
                mm_2=self.mm(f.neighbour_mm),
                true=format_angle(c.true[0]),
                true_2=format_angle(c.true[1]),
                gap=self.gap(c.off_mm),
            ),
            holds=say(
                "Within {gap} beside a face of {at_least} to {at_most}.",
                gap=self.gap(f.limit_mm),
                at_least=self.at_least(least or 0.0),
                at_most=self.at_most(most or 0.0),
            ),
        )

    def _scribe_45(self, c: Compared) -> ThumbText:
        f = self.figures
        return ThumbText(
            rule=say("To scribe a skirting, cut 45 and follow the line."),
            short=say("45 for every scribe"),
            truth=say(
                "The saw shows the neighbour's section right at 90 less half the "
                "corner. At 45 the thick parts of the section are cut too far "
                "back in a corner over 90, and not far enough in one under 90."
            ),
            here=say(
                "At {corner} it is {true}. Where the section's thickness changes "
                "by {mm}, a 45 misses by {gap}.",
                corner=format_angle(f.corner_deg),
                true=format_angle(c.true[0]),
                mm=self.mm(f.depth_mm),
                gap=self.gap(c.off_mm),
            ),
            holds=self._corners(c.good),
        )

    def _corners(self, good: Span | None) -> str:
        least, most = self._ends(good)
        low = math.ceil((least or 0.0) * 10.0 - 1e-9) / 10.0
        high = math.floor((most or 0.0) * 10.0 + 1e-9) / 10.0
        return say(
            "Within {gap} for corners of {low} to {high}.",
            gap=self.gap(self.figures.limit_mm),
            low=format_angle(low),
            high=format_angle(high),
        )

    def _diagonals(self, c: Compared) -> ThumbText:
        f = self.figures
        _, most = self._ends(c.good)
        return ThumbText(
            rule=say("Diagonals within {mm}: it is square.", mm=self.mm(f.apart_mm)),
            short=say("diagonals within {mm} = square", mm=self.mm(f.apart_mm)),
            truth=say(
                "What a difference of diagonals means depends on the size: the "
                "smaller or the slimmer the opening, the more. And an opening "
                "that tapers has two equal diagonals without a square corner; "
                "the opposite sides have to be alike as well."
            ),
            here=say(
                "{mm} by {mm_2} with diagonals {mm_3} apart has corners of "
                "{true:.2f} and {true_2:.2f}. Plain 45s on {mm_4}, kept parallel "
                "to the lining, open by {gap}.",
                mm=self.mm(f.size_mm),
                mm_2=self.mm(f.height_mm),
                mm_3=self.mm(f.apart_mm),
                true=c.true[0],
                true_2=c.true[1],
                mm_4=self.mm(f.face_mm),
                gap=self.gap(c.off_mm),
            ),
            holds=say(
                "Within {gap} at this size while the diagonals are no more than {at_most} apart.",
                gap=self.gap(f.limit_mm),
                at_most=self.at_most(most or 0.0),
            ),
        )

    def _pack(self, c: Compared) -> ThumbText:
        f = self.figures
        _, most = self._ends(c.good)
        mitre_deg, bevel_deg = c.true
        flat = self.gap(gap_beside_flat_mm(f, f.proud_mm))
        return ThumbText(
            rule=say("Lining proud: pack the neighbour out to match."),
            short=say("proud lining: pack the neighbour"),
            truth=say(
                "A piece on a proud lining is tilted, and a plain 45 on it gapes "
                "at the face. Tilt the neighbour as well and it gapes twice as "
                "far: the faces are flush, the joint is worse. Packed or not, "
                "the tilt has to go into the cut."
            ),
            here=say(
                "A lining {mm} proud: plain 45s open by {flat} at the heel beside "
                "a flat neighbour and by {gap} beside a packed one. What closes "
                "the packed pair is {mitre_deg:.2f} with the back relieved by "
                "{bevel}, on both pieces.",
                mm=self.mm(f.proud_mm),
                flat=flat,
                gap=self.gap(c.off_mm),
                mitre_deg=mitre_deg,
                bevel=format_angle(abs(bevel_deg)),
            ),
            holds=say(
                "Plain 45s on both within {gap} while the lining is no more than {at_most} proud.",
                gap=self.gap(f.limit_mm),
                at_most=self.at_most(most or 0.0),
            ),
        )

    def _long_residual(self, c: Compared) -> ThumbText:
        f = self.figures
        times = round(c.true[0] * DRAWN_OPENINGS)
        return ThumbText(
            rule=say("The tapes don't close: the one furthest off is the wrong one."),
            short=say("the longest residual is the wrong tape"),
            truth=say(
                "Four sides and two diagonals leave one reading to spare. "
                "Whichever of the six slipped, the misfit spreads over all in "
                "much the same shares, most of it on a diagonal. The sum tells "
                "that one is wrong, never which."
            ),
            here=say(
                "Of {drawn_openings} openings of about {mm} by {mm_2}, drawn in "
                "the computer, each with one of its six tapes {mm_3} out, the "
                "rule named the right one in {times}, about 1 in {true}; guessing "
                "among six does 1 in 6. Model output, no count of houses.",
                drawn_openings=DRAWN_OPENINGS,
                mm=self.mm(f.size_mm),
                mm_2=self.mm(f.height_mm),
                mm_3=self.mm(SLIP_MM),
                times=times,
                true=round(1.0 / c.true[0]),
            ),
            holds=say(
                "Nowhere. Read both diagonals again, then the sides; or hold a "
                "level to both jambs and write what it shows."
            ),
        )

    @staticmethod
    def _ends(good: Span | None) -> tuple[float | None, float | None]:
        return (None, None) if good is None else (good.least, good.most)
