"""The pieces of an opening that hasn't four straight sides: arched, or with more sides or fewer."""

from longpoint.errors import Finding
from longpoint.pieces.arched import arch_pieces
from longpoint.pieces.outlined import outline_piece_findings, outline_pieces
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import FittedOpening, FittedOutline, Shapes
from longpoint.shape.opening_fit import has_four_sides, mirrored
from longpoint.shape.outline_fit import mirrored_outline
from longpoint.survey.house import House
from longpoint.survey.openings import Opening

Made = tuple[tuple[Piece, ...], tuple[Finding, ...]]


def other_shape(house: House, shapes: Shapes, opening: Opening) -> Made | None:
    """Return the pieces of an opening of another shape, and what is said of them.

    Args:
        house: The house.
        shapes: Its fitted shapes.
        opening: Any opening.

    Returns:
        None for an opening with four straight sides, however it was read.

    Raises:
        PieceError: The trim doesn't go round it.
    """
    pieces: list[Piece] = []
    findings: list[Finding] = []
    if opening.arch is not None:
        for arched in fitted_faces(opening, shapes):
            made, said = arch_pieces(house, opening, arched)
            pieces += made
            findings += said
    elif opening.outline is not None and not has_four_sides(opening.outline):
        for fitted in outline_faces(opening, shapes):
            pieces += outline_pieces(house, opening, fitted)
            findings += outline_piece_findings(house, opening, fitted)
    else:
        return None
    return tuple(pieces), tuple(dict.fromkeys(findings))


def fitted_faces(opening: Opening, shapes: Shapes) -> tuple[FittedOpening, ...]:
    """Return the four-sided shape of each face of an opening, of an arch below its springing."""
    found = tuple(fitted for fitted in shapes.openings if fitted.mark == opening.mark)
    if opening.faces == 2 and len(found) == 1:
        return (*found, mirrored(found[0]))
    return found


def outline_faces(opening: Opening, shapes: Shapes) -> tuple[FittedOutline, ...]:
    """Return the shape of each face of an opening that hasn't four sides."""
    found = tuple(fitted for fitted in shapes.outlines if fitted.mark == opening.mark)
    if opening.faces == 2 and len(found) == 1:
        return (*found, mirrored_outline(found[0]))
    return found
