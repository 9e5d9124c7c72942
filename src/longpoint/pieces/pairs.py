"""Pieces that belong together, printed alike."""

from longpoint.pieces.piece import Piece, Role

ALIKE_MM = 0.5
"""Two pieces nearer than this are cut as a pair to one figure: half a millimetre is what a sheet
prints."""

_PARTNER = {
    Role.LEFT_LEG: Role.RIGHT_LEG,
    Role.RIGHT_LEG: Role.LEFT_LEG,
    Role.HEAD: Role.SILL,
    Role.SILL: Role.HEAD,
}


def partner_of(piece: Piece, pieces: tuple[Piece, ...]) -> Piece | None:
    """Return the piece that stands opposite in the same set, None if there is none."""
    role = _PARTNER.get(piece.role)
    for other in pieces:
        if (other.opening, other.face, other.role) == (piece.opening, piece.face, role):
            return other
    return None


def printed_lengths_mm(piece: Piece, pieces: tuple[Piece, ...]) -> dict[str, float | None]:
    """Return the lengths to print of a piece, a pair rounded alike.

    Two opposite pieces whose edges differ by less than half a millimetre print their mean, so that
    rounding doesn't make two figures out of one.

    Args:
        piece: The piece.
        pieces: All pieces of the house.

    Returns:
        Keys "inner", "outer", "short", "long", "hook" and "back"; hook None without a long point.
    """
    own = _lengths_mm(piece)
    partner = partner_of(piece, pieces)
    if partner is None or partner.profile != piece.profile:
        return own
    other = _lengths_mm(partner)
    alike = all(
        (a is None) == (b is None) and (a is None or b is None or abs(a - b) < ALIKE_MM)
        for a, b in ((own[key], other[key]) for key in own)
    )
    if not alike:
        return own
    return {
        key: None if value is None else (value + (other[key] or 0.0)) / 2.0
        for key, value in own.items()
    }


def _lengths_mm(piece: Piece) -> dict[str, float | None]:
    return {
        "inner": piece.inner_mm,
        "outer": piece.outer_mm,
        "short": piece.short_mm,
        "long": piece.long_mm,
        "hook": piece.hook_mm,
        "back": piece.back_mm,
    }
