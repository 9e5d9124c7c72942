r"""How the saw is set for the two ends of a piece.

You stand in front of the saw, its fence away from you. A piece lies on its back, face up, the
edge that is up on the page (outer edge, top edge) at the fence; turned end for end, the other edge
is at the fence. A cut that leans like "/" seen from above is made with the handle swung to your
left, one that leans like "\" with the handle swung to your right; so a right end whose outer edge
is the longer is swung left, a left end whose outer edge is the longer is swung right.

Skirting that is held standing has its bottom edge on the table, its back at the fence and its face
to you: a bevel is then a swing, left for a right end whose back is the longer. Held flat, the
bevel is a tilt, named by the side to which the top of the blade leans: left for a right end whose
back is the longer.
"""

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.survey.instruments import Saw, SkirtingCut

PROVED_AT_DEG: Final = 45.0
"""The setting at which the saw's test cuts are made."""


class Side(StrEnum):
    """To which side the handle is swung, or the top of the blade leans."""

    LEFT = "left"
    SQUARE = "square"
    RIGHT = "right"


@dataclass(frozen=True, slots=True, kw_only=True)
class SawSetting:
    """How the saw is set for one cut.

    Attributes:
        swing: To which side the handle is swung.
        swing_deg: The angle wanted off square, to a tenth. >= 0. [deg]
        dial_deg: What to set on the scale so that it comes out, to a tenth; None where that swing
            of the saw is not proved, or for no swing. [deg]
        tilt: To which side the top of the blade leans.
        tilt_deg: The tilt wanted, to a tenth. >= 0. [deg]
    """

    swing: Side = Side.SQUARE
    swing_deg: float = 0.0
    dial_deg: float | None = None
    tilt: Side = Side.SQUARE
    tilt_deg: float = 0.0


def end_settings(piece: Piece, saw: Saw, *, turned: bool = False) -> tuple[SawSetting, SawSetting]:
    """Return the settings for the left and the right end of a piece as it lies at the saw.

    Args:
        piece: The piece; its angles are those wanted.
        saw: The saw, with what its test cuts gave.
        turned: True when the piece lies turned end for end. Its cuts keep the way they lean across
            the face; a lean through the thickness changes sides.
    """
    hold = hold_at_saw(piece, saw)
    # Seen on the stick, a half turn keeps a lean across the face and mirrors one through it.
    through = -1.0 if turned else 1.0
    left = _setting(-piece.left.mitre_deg, -piece.left.bevel_deg * through, saw, hold)
    right = _setting(piece.right.mitre_deg, piece.right.bevel_deg * through, saw, hold)
    return (right, left) if turned else (left, right)


def dial_deg(wanted_deg: float, found_deg: float) -> float:
    """Return what to set so that a cut comes out as wanted.

    The saw's error is taken to grow evenly from none at square to what was found at 45 (common
    practice, no source).

    Example:
        A cut set to 45 gave 45.2; for 44.8 the saw is set to 44.6.

        >>> round(dial_deg(44.8, 45.2), 1)
        44.6
    """
    return wanted_deg - (found_deg - PROVED_AT_DEG) * wanted_deg / PROVED_AT_DEG


def hold_at_saw(piece: Piece, saw: Saw) -> SkirtingCut:
    """Return how a piece is held: architrave flat, skirting as the saw's owner has it."""
    return saw.skirting if piece.is_along_wall else SkirtingCut.FLAT


def _setting(mitre_deg: float, bevel_deg: float, saw: Saw, hold: SkirtingCut) -> SawSetting:
    """Setting for a cut by the way it leans on the stick, + as at a right end."""
    swing_deg, tilt_deg = mitre_deg, bevel_deg
    if hold is SkirtingCut.STANDING:
        # Swing and tilt change places: the blade is the same plane, seen with the face upright.
        mitre, bevel = math.radians(mitre_deg), math.radians(bevel_deg)
        swing_deg = math.degrees(math.atan2(math.tan(bevel), math.cos(mitre)))
        tilt_deg = -math.degrees(math.asin(math.sin(mitre) * math.cos(bevel)))
    swing, tilt = _side(swing_deg), _side(tilt_deg)
    # From the printed tenth, so that one angle on the sheet has one dial figure.
    wanted_deg = _tenth(abs(swing_deg))
    found_deg = {Side.LEFT: saw.found_left_deg, Side.RIGHT: saw.found_right_deg}.get(swing)
    return SawSetting(
        swing=swing,
        swing_deg=wanted_deg,
        dial_deg=None if found_deg is None else _tenth(dial_deg(wanted_deg, found_deg)),
        tilt=tilt,
        tilt_deg=_tenth(abs(tilt_deg)),
    )


def _side(angle_deg: float) -> Side:
    if _tenth(abs(angle_deg)) == 0.0:
        return Side.SQUARE
    return Side.LEFT if angle_deg > 0 else Side.RIGHT


def _tenth(angle_deg: float) -> float:
    return round(angle_deg, 1) + 0.0
