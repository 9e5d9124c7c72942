"""The ways to mend a proud lining in words: the one advised, and the others."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.pieces.proud_remedies import (
    CORNER_NAMES,
    SIDE_NAMES,
    ProudCorner,
    best_way,
    is_mitred,
    is_proud_all_along,
    packing,
)
from longpoint.quantities.formatting import format_angle, format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, say
from longpoint.survey.openings import Flush, Method, Opening
from longpoint.survey.readings import Plane
from longpoint.trims.tilt import ClosingCut

PROUD_WARNING_MM: Final = 2.0
"""From here on the corner wants work before trim; common practice, no source."""


def listed(figures_mm: Sequence[float], corners: Sequence[int], units: Units) -> str:
    """Return what stands proud or shy, corner by corner.

    Args:
        figures_mm: Proud of each corner, from bottom left anticlockwise, (4,); shy is negative.
        corners: Numbers of those to list.
        units: Units of the figures.
    """
    return joined(
        ", ",
        (
            say(
                "{figures} at the {corner_names}",
                figures=format_length(abs(figures_mm[i]), units),
                corner_names=CORNER_NAMES[i],
            )
            for i in corners
        ),
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class ProudWays:
    """Puts the ways to mend one face into words.

    Attributes:
        opening: Its settings.
        plane: The face's plane readings.
        corners: What each proud or shy mitred corner does.
        units: Units of the house.
    """

    opening: Opening
    plane: Plane
    corners: tuple[ProudCorner, ...]
    units: Units

    def advice(self, told: tuple[ProudCorner, ...], at: list[int], *, is_refused: bool) -> str:
        """Return what to do about a proud lining.

        Args:
            told: Its mitred corners worth figures, the worst first.
            at: Numbers of its proud corners, from bottom left anticlockwise.
            is_refused: True where no bevel can be worked out.
        """
        chosen = self.opening.flush
        if chosen is not Flush.LEAVE:
            return say(
                "You chose flush {chosen}; the sheet says what it needs.",
                chosen=chosen.value,
            )
        if is_refused:
            return say("Re-set the reveal: {set_back}.", set_back=self._set_back(at))
        if self.opening.method is Method.BENCH and is_mitred(self.opening):
            return say("Plane the reveal, or pack behind the frame's outer edges.")
        if not told:
            return say("Plane the reveal, or pack the outer edge of the piece.")
        ways = dict(self._ways(told, at))
        best = best_way(self.corners, self.opening.max_gap_mm)
        if best is Flush.LEAVE:
            within = format_with_unit(self.opening.max_gap_mm, self.units)
            return say(
                "Leave it: where both tilt, gap and step stay within your {within}.",
                within=within,
            )
        if told[0].proud_mm < PROUD_WARNING_MM:
            return say(
                "Advised (common practice, no source): {ways}; that alone, or leave it.",
                ways=ways[best],
            )
        others = joined(say("; or "), (text for way, text in ways.items() if way is not best))
        return say(
            "Advised (common practice, no source): {ways}. One of these only, not two: {others}.",
            ways=ways[best],
            others=others,
        )

    def _ways(self, told: tuple[ProudCorner, ...], at: list[int]) -> Iterator[tuple[Flush, str]]:
        yield Flush.LEAVE, say("leave it and fill the joint (flush leave)")
        bevels = joined(
            "; ",
            (
                say(
                    "{each} {settings}",
                    each=each.name,
                    settings=self._settings(each.back_bevels()),
                )
                for each in told
            ),
        )
        yield (
            Flush.BACK_BEVEL,
            say(
                "relieve the backs of both ends (flush back-bevel: mitre and bevel, {bevels})",
                bevels=bevels,
            ),
        )
        packed = joined("; ", (self._packed(each) for each in told))
        yield (
            Flush.PACK,
            say(
                "pack the lower piece to the same tilt (flush pack: {packed})",
                packed=packed,
            ),
        )
        yield (
            Flush.RE_SET,
            say(
                "plane or re-set the reveal (flush re-set: {set_back})",
                set_back=self._set_back(at),
            ),
        )

    def _set_back(self, at: list[int]) -> str:
        return say("back by {listed}", listed=listed(self.plane.corners_mm(), at, self.units))

    def _settings(self, cuts: tuple[ClosingCut, ClosingCut]) -> str:
        told = [
            say(
                "{mitre} and {bevel}",
                mitre=format_angle(cut.mitre_deg),
                bevel=format_angle(cut.bevel_deg),
            )
            for cut in cuts
        ]
        return (
            told[0]
            if told[0] == told[1]
            else say(
                "{told}, {told_2}",
                told=told[0],
                told_2=told[1],
            )
        )

    def _packed(self, at: ProudCorner) -> str:
        packed = packing(at)
        if packed is None:
            return say("{at} nothing", at=at.name)
        is_proud_itself = is_proud_all_along(self.plane, packed.side)
        thick_mm = packed.on_proud_mm if is_proud_itself else packed.thick_mm
        thick = format_length(thick_mm, self.units) if thick_mm else say("nothing")
        cuts = self._settings(packed.cuts)
        same = cuts == self._settings(at.back_bevels())
        return say(
            "{at} {thick} under the {side_names}, {the}",
            at=at.name,
            thick=thick,
            side_names=SIDE_NAMES[packed.side],
            the=say("the same cuts") if same else say("cuts {cuts}", cuts=cuts),
        )
