"""The saw proof: four offcuts, a frame on the bench, eight gaps read, and the error dialled out."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.errors import SurveyError
from longpoint.speech.said import say

CUTS: Final = 8
CORNERS: Final = 4

MOST_STEEP_DEG: Final = 2.0
"""No saw in use is out by more: the gaps were read or written wrong; our limit."""

ONE_CUT_DEG: Final = 0.05
"""Spread of one cut at the saw's stop; assumed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SawProof:
    """What a proof frame says of the saw.

    Attributes:
        found_deg: What a cut set to 45 gives on average over both swings.
        steep_deg: How far that is past 45: positive stands open at the heels.
        u_deg: Standard uncertainty of both.
        is_worth_dialling: True when it is more than twice its uncertainty.
    """

    found_deg: float
    steep_deg: float
    u_deg: float
    is_worth_dialling: bool

    def words(self) -> str:
        """Return the proof as a sentence for the saw bench."""
        if not self.is_worth_dialling:
            return say(
                "Your 45 cuts {found_deg:.2f}, give or take {u_deg:.2f}: leave the "
                "stop where it is.",
                found_deg=self.found_deg,
                u_deg=2.0 * self.u_deg,
            )
        way = say("steep") if self.steep_deg > 0 else say("shallow")
        return say(
            "Your 45 cuts {way} by {steep_deg:.2f} (give or take {u_deg:.2f}): "
            "move the stop by that much, prove it once more, or write found = {{ "
            "left = {found_deg:.2f}, right = {found_deg:.2f} }} for the saw.",
            way=way,
            steep_deg=abs(self.steep_deg),
            u_deg=2.0 * self.u_deg,
            found_deg=self.found_deg,
        )


def saw_proof(
    gaps_mm: Sequence[tuple[float, float]], width_mm: float, feeler_mm: float = 0.05
) -> SawProof:
    """Return what the gaps of a frame of four offcuts say of the saw.

    Two long and two short offcuts, cut in pairs, all ends at the 45 stop, pushed together on the
    bench without nails. However they are pushed, the sum over the corners stays.

    Args:
        gaps_mm: (heel, toe) at each of the four corners. [mm]
        width_mm: Face width of the offcuts. > 0. [mm]
        feeler_mm: Step of the feelers. [mm]

    Raises:
        SurveyError: There aren't four corners, the width is none, or no saw is so far out.

    Example:
        >>> proof = saw_proof([(0.4, 0.0)] * 4, 66.0)
        >>> round(proof.steep_deg, 3)
        0.123

    References:
        Round a closed frame the turns of the pieces cancel: the heels less the toes add up to the
        length of a mitre times the angle errors of all eight cuts.
    """
    if len(gaps_mm) != CORNERS or width_mm <= 0.0:
        raise SurveyError(
            say(
                "Gaps of {gaps_mm} corners and a face width of {width_mm:g} mm were given.",
                gaps_mm=len(gaps_mm),
                width_mm=width_mm,
            ),
            say("A proof frame has four corners and a width."),
            say("Read heel and toe at all four corners, zeros too."),
        )
    mitre_mm = math.sqrt(2.0) * width_mm
    sum_mm = math.fsum(heel - toe for heel, toe in gaps_mm)
    steep_deg = math.degrees(sum_mm / (CUTS * mitre_mm))
    if abs(steep_deg) > MOST_STEEP_DEG:
        raise SurveyError(
            say("The gaps add up to {sum_mm:g} mm, heels less toes.", sum_mm=sum_mm),
            say(
                "A saw would have to be {steep_deg:.0f} degrees out for that.",
                steep_deg=abs(steep_deg),
            ),
            say("Read the gaps again, heel first and then toe, in millimetres."),
        )
    reading_mm = feeler_mm / math.sqrt(12.0) * math.sqrt(2.0 * CORNERS)
    u_deg = math.hypot(math.degrees(reading_mm / (CUTS * mitre_mm)), ONE_CUT_DEG / math.sqrt(CUTS))
    return SawProof(
        found_deg=45.0 + steep_deg,
        steep_deg=steep_deg,
        u_deg=u_deg,
        is_worth_dialling=abs(steep_deg) > 2.0 * u_deg,
    )
