"""The set of every opening, put together from its parts: sides, blocks, plinths, band, board."""

from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.back_bands import band_findings, band_pieces, refuse_band
from longpoint.pieces.corner_blocks import block_findings, corner_blocks
from longpoint.pieces.face_set import LEAST_FOOT_DEG as LEAST_FOOT_DEG
from longpoint.pieces.face_set import FaceSet, face_set
from longpoint.pieces.face_trim import has_mitred_corners, is_true_frame
from longpoint.pieces.flush import flush_pieces
from longpoint.pieces.opening_notes import square_notes
from longpoint.pieces.other_shapes import fitted_faces, other_shape
from longpoint.pieces.piece import Piece
from longpoint.pieces.plinths import plinth_findings, plinth_pieces
from longpoint.pieces.set_joints import butt_findings, side_pieces
from longpoint.pieces.window_board_findings import below_findings
from longpoint.pieces.window_boards import below_pieces
from longpoint.shape.fitted import FittedOpening, Shapes
from longpoint.survey.house import House
from longpoint.survey.openings import Opening

Made = tuple[tuple[Piece, ...], tuple[Finding, ...]]


def plan_openings(house: House, shapes: Shapes, held: frozenset[str]) -> Made:
    """Return the pieces of every opening that isn't held, in house order.

    Args:
        house: The house.
        shapes: Its fitted shapes.
        held: Marks that get no lengths.

    Returns:
        Pieces, clockwise from the left leg round each face; and findings.
    """
    pieces: list[Piece] = []
    findings: list[Finding] = []
    for opening in house.openings:
        if opening.mark in held:
            continue
        try:
            made, said = _opening(house, shapes, opening)
        except PieceError as error:
            made, said = (), (_stop(opening.mark, error),)
        pieces += made
        findings += said
    return tuple(pieces), tuple(findings)


def opening_pieces(house: House, opening: Opening, fitted: FittedOpening) -> tuple[Piece, ...]:
    """Return the pieces of one face of one opening.

    Lengths suppose the opening's way of fixing: cut in batch or marked in place, each mitre
    bisects its own corner; joined on the bench or cut at the stop, all are 45 and the quirk takes
    the error.

    Args:
        house: Gives profiles and units.
        opening: Its settings.
        fitted: Its shape.

    Returns:
        Left leg, head, right leg, then sill piece, blocks, plinths, band, apron and board.

    Raises:
        PieceError: The trim doesn't go round the opening.
    """
    return _set_pieces(face_set(house, opening, fitted))


def _opening(house: House, shapes: Shapes, opening: Opening) -> Made:
    """Return the set of one opening, by what shape it has."""
    other = other_shape(house, shapes, opening)
    if other is not None:
        return other
    refuse_band(opening)
    pieces: list[Piece] = []
    findings: list[Finding] = []
    for index, fitted in enumerate(fitted_faces(opening, shapes)):
        face = face_set(house, opening, fitted)
        made, said = flush_pieces(house, opening, fitted, face.trim, _set_pieces(face))
        pieces += made
        findings += said
        if index == 0 and (has_mitred_corners(opening) or is_true_frame(opening)):
            findings += square_notes(house, opening, fitted)
        if index == 0 or opening.readings_b is not None:
            findings += _set_findings(face)
    return tuple(pieces), tuple(dict.fromkeys(findings))


def _set_pieces(face: FaceSet) -> tuple[Piece, ...]:
    return (
        *side_pieces(face),
        *corner_blocks(face),
        *plinth_pieces(face),
        *band_pieces(face),
        *below_pieces(face),
    )


def _set_findings(face: FaceSet) -> tuple[Finding, ...]:
    return (
        *butt_findings(face),
        *block_findings(face),
        *plinth_findings(face),
        *band_findings(face),
        *below_findings(face),
    )


def _stop(mark: str, error: PieceError) -> Finding:
    return Finding(
        code="no-pieces",
        severity=Severity.STOP,
        place=mark,
        read=error.read,
        wrong=error.wrong,
        do=error.do,
    )
