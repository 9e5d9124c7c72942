"""An opening as the boards see it that line it: its fitted sides, its plane, its cuts."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.catalogue.trim import Asked
from longpoint.errors import PieceError
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece
from longpoint.pieces.run_sums import run_sum
from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.shape.fitted import FittedOpening
from longpoint.shape.opening_fit import mirrored
from longpoint.shape.point import Point
from longpoint.speech.said import say
from longpoint.survey.openings import Layout, Opening
from longpoint.survey.readings import Plane
from longpoint.trims.joint_plane import SawAngles
from longpoint.trims.outline import offset_corners

_NAUGHT_DEG: Final = 1e-9
"""What rounding leaves of an angle that is none."""

LEAST_SETTING_DEG: Final = 0.05
"""What a saw can't be set to; an end nearer to square than this is cut square."""

AT_THE_SAW: Final = say(
    "As it lies at the saw, face up: a left leg's left end is its foot, a right "
    "leg's its head. Bevel: off square through the thickness, - where the face is "
    "longer than the back."
)
"""How the pieces of a reveal lie, and the sign of their bevels."""

SIDE_NAMES: Final = ("sill", "right", "head", "left")
"""Last part of a piece's mark, by side: bottom, right, head, left."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reveal:
    """One face of one opening.

    Attributes:
        opening: Its settings.
        fitted: Its fitted shape.
        plane: Its reveal against the wall's face; None where that wasn't read.
    """

    opening: Opening
    fitted: FittedOpening
    plane: Plane | None

    @property
    def has_sill(self) -> bool:
        """Tell whether boards go all round it."""
        return not self.opening.stands_on_floor and self.opening.layout is Layout.ALL_ROUND

    def faces(self, step_mm: float, *, bottom_mm: float | None = None) -> tuple[Point, ...]:
        """Return the corners of the boards' faces, anticlockwise from the bottom left.

        Args:
            step_mm: How far they stand back from the reveal's own; negative: in front of it. [mm]
            bottom_mm: The same of the bottom line; None: where there is no sill piece, the floor
                as it will be, its cover laid.
        """
        bare_mm = -self.opening.floor_cover_mm if self.opening.stands_on_floor else 0.0
        below_mm = step_mm if self.has_sill else bare_mm
        if bottom_mm is not None:
            below_mm = bottom_mm
        return offset_corners(self.fitted.corners, (below_mm, step_mm, step_mm, step_mm))


def reveal_of(asked: Asked, mark: str, face: str = "a") -> Reveal:
    """Return a face of an opening.

    Args:
        asked: The entry.
        mark: Mark of the opening.
        face: "a", or "b" for the second face; of no meaning where only one is trimmed.

    Raises:
        PieceError: It has no straight four sides, no such face, or no fitted shape.
    """
    opening = next(each for each in asked.house.openings if each.mark == mark)
    if opening.arch is not None or opening.outline is not None:
        raise PieceError(
            say(
                "{mark} is to line {mark_2}, which hasn't four straight sides.",
                mark=asked.mark,
                mark_2=mark,
            ),
            say("These boards are straight, so none is worked out for it."),
            say("Take {mark} out of its openings.", mark=mark),
        )
    if face == "b" and opening.faces == 1:
        raise PieceError(
            say("{mark} is for the second face of {mark_2}.", mark=asked.mark, mark_2=mark),
            say("{mark} is written with one face.", mark=mark),
            say(
                "Take the face out of {mark}, or write faces = 2 at {mark_2}.",
                mark=asked.mark,
                mark_2=mark,
            ),
        )
    found = [each for each in asked.shapes.openings if each.mark == mark]
    if not found:
        raise PieceError(
            say("{mark} is fixed to {mark_2}.", mark=asked.mark, mark_2=mark),
            say("Its readings gave no shape, so no length can be worked out."),
            say("Put {mark} right first.", mark=mark),
        )
    fitted, readings = found[0], opening.readings_b if face == "b" else opening.readings
    if face == "b":
        fitted = found[1] if len(found) > 1 else mirrored(found[0])
    plane = None if readings is None else readings.plane
    return Reveal(opening=opening, fitted=fitted, plane=plane)


def end_cut(angles: SawAngles) -> EndCut:
    """Return the cut of an end from its saw angles.

    An end nearer to square than a saw can be set is cut square. Beside an angle that is set, one
    too small to set is kept, but doesn't make the cut a compound one.

    Example:
        >>> cut = end_cut(SawAngles(0.01, -22.5))
        >>> cut.kind.value, cut.mitre_deg, cut.bevel_deg
        ('bevel', 0.01, -22.5)
        >>> end_cut(SawAngles(0.01, -0.04)) == SQUARE_CUT
        True
    """
    is_mitred, is_bevelled = (abs(angle) >= LEAST_SETTING_DEG for angle in angles)
    if not (is_mitred or is_bevelled):
        return SQUARE_CUT
    kind = CutKind.COMPOUND
    if not is_bevelled:
        kind = CutKind.MITRE
    elif not is_mitred:
        kind = CutKind.BEVEL
    mitre_deg, bevel_deg = (angle if abs(angle) > _NAUGHT_DEG else 0.0 for angle in angles)
    return EndCut(kind=kind, mitre_deg=mitre_deg, bevel_deg=bevel_deg)


def board_sum(start: str, terms_mm: Sequence[float], length_mm: float, units: Units) -> str:
    """Return the sum of a board's length, what corners off square make last.

    Args:
        start: What the first term is: "reveal", "jamb".
        terms_mm: The first term, then what is added (> 0) or taken off (< 0). [mm]
        length_mm: The board's length. [mm]
        units: Unit to print in.

    Example:
        >>> board_sum("jamb", [1981.0, -12.0], 1969.2, Units.MM)
        'jamb 1981 - 12 + 0.2 = 1969.2 (the last for corners off square)'
        >>> board_sum("jamb", [1981.0, -12.0], 1969.0, Units.MM)
        'jamb 1981 - 12 = 1969'
    """
    rest_mm = length_mm - math.fsum(terms_mm)
    least_mm = 0.1 if units is Units.MM else MM_PER_INCH / 32.0
    if abs(rest_mm) < least_mm:
        return run_sum(start, terms_mm, units)
    return say(
        "{run_sum} (the last for corners off square)",
        run_sum=run_sum(start, [*terms_mm, rest_mm], units),
    )


def ripped(piece: Piece, width_mm: float) -> Piece:
    """Return a piece whose stick is ripped to a width before its ends are cut."""
    return replace(piece, width_mm=width_mm)


def rip_note(at_left_mm: float, at_right_mm: float, against: str, units: Units) -> str:
    """Return what a board is ripped to, and where its ripped edge goes.

    Example:
        >>> rip_note(92.0, 95.5, "the lining", Units.MM)
        'rip to 92 at the left end, 95.5 at the right; ripped edge to the lining'
        >>> rip_note(6.0, 6.0, "the lining", Units.MM)
        'rip to 6 all along; ripped edge to the lining'
    """
    left, right = (format_length(mm, units) for mm in (at_left_mm, at_right_mm))
    if left == right:
        return say(
            "rip to {left} all along; ripped edge to {against}",
            left=left,
            against=against,
        )
    return say(
        "rip to {left} at the left end, {right} at the right; ripped edge to {against}",
        left=left,
        right=right,
        against=against,
    )


def check_width(asked: Asked, needed_mm: float, needed: str, bought: str) -> None:
    """Refuse a profile that is too narrow.

    Args:
        asked: The entry.
        needed_mm: Width that the widest board has to have. [mm]
        needed: What asks for it, printed, with its unit.
        bought: The profile's width, printed, with its unit.

    Raises:
        PieceError: The profile is narrower.
    """
    if needed_mm > asked.profile.width_mm + 0.05:
        raise PieceError(
            say(
                "{mark} is cut from {profile}, {bought} wide.",
                mark=asked.mark,
                profile=asked.profile.name,
                bought=bought,
            ),
            say("Its widest board needs {needed}.", needed=needed),
            say("Choose a wider profile."),
        )
