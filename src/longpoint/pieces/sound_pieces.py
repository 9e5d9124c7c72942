"""The last look at pieces before they go to the sticks: none that no saw could make."""

import math
from collections.abc import Iterable
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.piece import Piece, Role
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import say
from longpoint.survey.house import House

PIECE_IMPOSSIBLE: Final = "piece-impossible"

ODD_MM: Final = 0.5
"""Edges may differ from what the angles say by a lean too small to cut, never by more."""


def unsound_pieces(house: House, pieces: Iterable[Piece]) -> tuple[Finding, ...]:
    """Return a stop for every place with a piece that can't be: its cuts meet, or don't agree.

    Sizes outside all sense get this far where every reading by itself could be true.

    Args:
        house: Its units.
        pieces: Pieces of any place.
    """
    found: dict[str, Finding] = {}
    for piece in pieces:
        if piece.place not in found and not _is_sound(piece):
            found[piece.place] = _impossible(house, piece)
    return tuple(found.values())


def _is_sound(piece: Piece) -> bool:
    lengths = (piece.inner_mm, piece.outer_mm, piece.back_mm)
    angles = (
        piece.left.mitre_deg,
        piece.left.bevel_deg,
        piece.right.mitre_deg,
        piece.right.bevel_deg,
    )
    if not all(map(math.isfinite, (*lengths, *angles))) or max(map(abs, angles)) >= 89.0:
        return False
    comes_to_a_point = piece.role in (Role.RETURN, Role.CORNICE, Role.HANDRAIL)
    least_mm = -1e-6 if comes_to_a_point else 1e-6
    if min(lengths) < least_mm or max(lengths) <= 0.0:
        return False
    across = math.tan(math.radians(piece.left.mitre_deg))
    across += math.tan(math.radians(piece.right.mitre_deg))
    return abs(piece.outer_mm - piece.inner_mm - piece.width_mm * across) <= ODD_MM


def _impossible(house: House, piece: Piece) -> Finding:
    inner, outer, back = (
        format_with_unit(mm, house.units) if math.isfinite(mm) else say("no length")
        for mm in (piece.inner_mm, piece.outer_mm, piece.back_mm)
    )
    return Finding(
        code=PIECE_IMPOSSIBLE,
        severity=Severity.STOP,
        place=piece.place,
        read=say(
            "{mark} comes out {inner} long inside, {outer} outside and {back} at "
            "the back, of {profile} {width} wide.",
            mark=piece.mark,
            inner=inner,
            outer=outer,
            back=back,
            profile=piece.profile,
            width=format_with_unit(piece.width_mm, house.units),
        ),
        wrong=say(
            "No saw can make such a piece: its two cuts meet, or its edges and "
            "its cuts don't belong together."
        ),
        do=say("Look at the sizes of its profile and at the readings of this place."),
    )
