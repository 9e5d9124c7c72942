"""Pieces as solids on their stick, measured edge by edge.

Nothing of how a plan is made is used here: a piece is a bar with four long edges (outer and inner
edge of face and of back), and an end cut gives each edge its own end.

Along an edge a cut takes kerf / (m . d) of the stick, m the unit normal of the blade and d the
direction of the stick; the blade is flat, so a cut that clears a piece at its four edges clears
it everywhere.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from longpoint.errors import StockError
from longpoint.pieces.piece import EndCut, Piece
from longpoint.speech.said import say
from longpoint.sticks.plan import CutStick, Laid
from longpoint.survey.house import House

TOLERANCE_MM: Final = 1e-6
PRINTED_MM: Final = 0.021
"""Lengths on the plan are rounded up to whole hundredths of a millimetre, twice at most."""


@dataclass(frozen=True, slots=True)
class Solid:
    """Ends of the four long edges, from the stick's left end, and the stretch of its cuts."""

    lefts_mm: tuple[float, ...]
    rights_mm: tuple[float, ...]
    left_stretch: float
    right_stretch: float


def refuse(where: str, wrong: str) -> StockError:
    """Return the error of a plan that can't be cut."""
    return StockError(
        say("Cut plan, {where}.", where=where),
        wrong,
        say("Don't cut from this plan; make it again and report it."),
    )


def check_gaps(stick: CutStick, solids: Sequence[Solid], kerf_mm: float) -> None:
    """Make sure that between neighbours every edge leaves room for each of their two cuts.

    Raises:
        StockError: It doesn't.
    """
    for (first, second), (one, other) in zip(pairwise(solids), pairwise(stick.laid), strict=True):
        needed_mm = kerf_mm * max(first.right_stretch, second.left_stretch)
        gap_mm = _least_gap_mm(first, second)
        if gap_mm < needed_mm - TOLERANCE_MM:
            raise refuse(
                say("stick {stick}", stick=stick.name),
                say(
                    "Between {piece} and {piece_2} a cut needs {needed_mm:.2f} mm "
                    "along the stick, and {gap_mm:.2f} mm are left.",
                    piece=one.piece,
                    piece_2=other.piece,
                    needed_mm=needed_mm,
                    gap_mm=gap_mm,
                ),
            )


def _least_gap_mm(first: Solid, second: Solid) -> float:
    return min(left - right for right, left in zip(first.rights_mm, second.lefts_mm, strict=True))


def laid_solid(stick: CutStick, laid: Laid, piece: Piece, house: House) -> Solid:
    """Return a piece as it lies on its stick.

    Raises:
        StockError: It is of another profile, turned though its section isn't reversible, or ends
            elsewhere than is said.
    """
    if piece.profile != stick.profile:
        raise refuse(
            say("stick {stick}", stick=stick.name),
            say(
                "{piece} is {profile}.",
                piece=laid.piece,
                profile=piece.profile,
            ),
        )
    if laid.turned and not house.profile(piece.profile).reversible:
        raise refuse(
            say("stick {stick}", stick=stick.name),
            say(
                "{piece} is turned; its section has two edges.",
                piece=laid.piece,
            ),
        )
    at_zero = turned_solid(solid_of(piece)) if laid.turned else solid_of(piece)
    shift_mm = laid.start_mm - min(at_zero.lefts_mm)
    solid = Solid(
        tuple(x + shift_mm for x in at_zero.lefts_mm),
        tuple(x + shift_mm for x in at_zero.rights_mm),
        at_zero.left_stretch,
        at_zero.right_stretch,
    )
    if abs(max(solid.rights_mm) - laid.end_mm) > PRINTED_MM + _odd_mm(piece):
        raise refuse(
            say("stick {stick}", stick=stick.name),
            say(
                "{piece} ends at {rights_mm:.2f} mm, not at {end_mm:.2f}.",
                piece=laid.piece,
                rights_mm=max(solid.rights_mm),
                end_mm=laid.end_mm,
            ),
        )
    return solid


def _odd_mm(piece: Piece) -> float:
    """By how much a piece's edges and angles disagree: a lean too small to cut was left out."""
    across = math.tan(math.radians(piece.left.mitre_deg))
    across += math.tan(math.radians(piece.right.mitre_deg))
    return abs(piece.outer_mm - piece.inner_mm - piece.width_mm * across)


def solid_of(piece: Piece) -> Solid:
    """The piece unturned, the left end of its inner face edge at 0.

    Edges in the order outer face, inner face, outer back, inner back: a half turn about the middle
    of the face changes the first two, and the last two, with each other.
    """
    left_mitre, left_bevel, left_stretch = _cut(piece.left)
    right_mitre, right_bevel, right_stretch = _cut(piece.right)
    width_mm, thickness_mm = piece.width_mm, piece.thickness_mm
    lefts = (
        -width_mm * left_mitre,
        0.0,
        -width_mm * left_mitre - thickness_mm * left_bevel,
        -thickness_mm * left_bevel,
    )
    # The outer edge is taken from the angles and from the record, whichever is the longer.
    outer_mm = max(piece.outer_mm - width_mm * left_mitre, piece.inner_mm + width_mm * right_mitre)
    rights = (
        outer_mm,
        piece.inner_mm,
        outer_mm + thickness_mm * right_bevel,
        piece.inner_mm + thickness_mm * right_bevel,
    )
    return Solid(lefts, rights, left_stretch, right_stretch)


def _cut(cut: EndCut) -> tuple[float, float, float]:
    """Slope across the face, slope through the thickness, length along the stick of a unit kerf."""
    mitre, bevel = math.radians(cut.mitre_deg), math.radians(cut.bevel_deg)
    stretch = 1.0 / (math.cos(mitre) * math.cos(bevel))
    return math.tan(mitre), math.tan(bevel) / math.cos(mitre), stretch


def turned_solid(solid: Solid) -> Solid:
    """Return the piece turned end for end about the middle of its face."""

    def other_way(ends_mm: Iterable[float]) -> tuple[float, ...]:
        outer_face, inner_face, outer_back, inner_back = ends_mm
        return (-inner_face, -outer_face, -inner_back, -outer_back)

    return Solid(
        other_way(solid.rights_mm),
        other_way(solid.lefts_mm),
        solid.right_stretch,
        solid.left_stretch,
    )
