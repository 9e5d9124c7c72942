"""How far a mitre opens when its boards shrink or swell across, and at which end."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.trims.joints import mitre_pair


class JointEnd(StrEnum):
    """Where a joint stands open."""

    HEEL = "heel"
    """The short point, at the inside sight edge."""
    TOE = "toe"
    """The long point."""
    FACE = "face"
    """Of skirting: towards the room."""
    BACK = "back"
    """Of skirting: towards the wall, out of sight."""
    NEITHER = "neither"

    @property
    def is_seen(self) -> bool:
        """Tell whether a gap there can be seen from the room."""
        return self not in (JointEnd.BACK, JointEnd.NEITHER)


class JointKind(StrEnum):
    """What meets."""

    FACE_MITRE = "mitre across the face"
    INTERNAL_MITRE = "internal mitre of skirting"
    EXTERNAL_MITRE = "external mitre of skirting"
    SCRIBE = "scribed internal corner"


class Restraint(StrEnum):
    """What holds a joint against its boards."""

    FREE = "free"
    WEAK = "glue or pins alone"
    STRONG = "glue and pins"


HELD_SHARES: Final[Mapping[Restraint, tuple[float, float]]] = {
    Restraint.FREE: (0.0, 0.0),
    Restraint.WEAK: (0.0, 0.5),
    Restraint.STRONG: (0.6, 0.9),
}
"""Least and most share of the movement that is held; assumed. Good for an order, not a promise."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JointOpening:
    """A joint whose boards moved, the pieces pushed together again along their lines.

    Attributes:
        end: The end that stands open; the other one touches.
        gap_mm: How far, square to the joint. >= 0.
        slip_mm: How far the two cuts miss each other along the joint, at the open end. >= 0.
        opened_deg: Angle of the wedge. >= 0.
    """

    end: JointEnd
    gap_mm: float
    slip_mm: float
    opened_deg: float


def mitre_opening(
    corner_deg: float,
    widths_mm: tuple[float, float],
    shrinks: tuple[float, float],
) -> JointOpening:
    """Return how far a mitre opens when its boards get narrower or wider.

    The boards keep their lengths and their lines. The ends that touch stay flush: the toes in dry
    air, the heels in damp.

    Args:
        corner_deg: Angle between the boards, 0 < corner < 180. [deg]
        widths_mm: Width of each board across the joint when cut. > 0. [mm]
        shrinks: Share of its width that each loses; negative where it swells. < 1.

    Returns:
        The open end, its gap and slip.

    Example:
        >>> dry = mitre_opening(90.0, (66.0, 66.0), (0.01, 0.01))
        >>> dry.end.value, round(dry.gap_mm, 2), round(dry.opened_deg, 2), round(dry.slip_mm, 9)
        ('heel', 0.93, 0.58, 0.0)
        >>> mitre_opening(90.0, (66.0, 66.0), (-0.01, -0.01)).end.value
        'toe'

    References:
        A cut keeps its length along the board while the width turns to w (1 - s), so that
        tan(new) = tan(old) / (1 - s). The two cuts then enclose the wedge `old - new` summed, and
        their far ends are (L1 + L2) sin(wedge / 2) apart and |L1 - L2| cos(wedge / 2) off along
        the joint. Equal boards: 2 w s cos(corner / 2).
    """
    cuts_mm, wedge = [], 0.0
    for mitre_deg, width_mm, shrink in zip(
        mitre_pair(corner_deg, *widths_mm), widths_mm, shrinks, strict=True
    ):
        along_mm = width_mm * math.tan(math.radians(mitre_deg))
        left_mm = width_mm * (1.0 - shrink)
        cuts_mm.append(math.hypot(along_mm, left_mm))
        wedge += math.atan2(along_mm, left_mm) - math.radians(mitre_deg)
    first_mm, second_mm = cuts_mm
    return JointOpening(
        end=_open_end(wedge),
        gap_mm=(first_mm + second_mm) * math.sin(abs(wedge) / 2.0),
        slip_mm=abs(first_mm - second_mm) * math.cos(wedge / 2.0),
        opened_deg=math.degrees(abs(wedge)),
    )


def skirting_opening(
    corner_deg: float,
    thicknesses_mm: tuple[float, float],
    shrinks: tuple[float, float],
) -> JointOpening:
    """Return how far a skirting mitre opens when its boards, held to the wall, get thinner.

    Args:
        corner_deg: Angle of the room at the corner: below 180 internal, above external. [deg]
        thicknesses_mm: Thickness of each board when cut. > 0. [mm]
        shrinks: Share of its thickness that each loses; negative where it swells.

    Returns:
        The opening: in dry air at the face of an internal corner, behind an external one; in damp
        air the other way round.

    Example:
        >>> round(skirting_opening(90.0, (18.0, 18.0), (0.01, 0.01)).gap_mm, 2)
        0.25
        >>> skirting_opening(270.0, (18.0, 18.0), (0.01, 0.01)).end.value
        'back'

    References:
        The same wedge, through the thickness. Inside a room the face is the short point; round an
        outside corner, with 360 less the corner between the boards, it is the long one.
    """
    is_internal = corner_deg < 180.0
    between_deg = corner_deg if is_internal else 360.0 - corner_deg
    opening = mitre_opening(between_deg, thicknesses_mm, shrinks)
    short, long = (JointEnd.FACE, JointEnd.BACK) if is_internal else (JointEnd.BACK, JointEnd.FACE)
    ends = {JointEnd.HEEL: short, JointEnd.TOE: long}
    return JointOpening(
        end=ends.get(opening.end, opening.end),
        gap_mm=opening.gap_mm,
        slip_mm=opening.slip_mm,
        opened_deg=opening.opened_deg,
    )


def scribe_opening(thickness_mm: float, shrink: float) -> JointOpening:
    """Return how far a scribed end stands off when the board it butts against gets thinner.

    Args:
        thickness_mm: Thickness of the board that runs through. > 0. [mm]
        shrink: Share of it that is lost; negative where it swells, and then nothing opens.

    Example:
        >>> round(scribe_opening(18.0, 0.01).gap_mm, 2)
        0.18

    References:
        The face of the through board moves towards its wall by thickness x shrink; the scribed
        board keeps its length. A scribe cut a little long and sprung in shows less: common
        practice, no source, and not counted.
    """
    gap_mm = max(0.0, thickness_mm * shrink)
    end = JointEnd.FACE if gap_mm > 0.0 else JointEnd.NEITHER
    return JointOpening(end=end, gap_mm=gap_mm, slip_mm=0.0, opened_deg=0.0)


def _open_end(wedge: float) -> JointEnd:
    if abs(wedge) < 1e-12:
        return JointEnd.NEITHER
    return JointEnd.HEEL if wedge > 0.0 else JointEnd.TOE
