"""The pieces round an opening of any convex shape with another number of sides than four."""

from dataclasses import replace

from longpoint.errors import Finding
from longpoint.pieces.arch_findings import not_forecast, own_corners, steep_cuts
from longpoint.pieces.face_set import end_cut
from longpoint.pieces.face_trim import is_true_frame
from longpoint.pieces.hand_sum import Term, hand_sum
from longpoint.pieces.outlined_face import OutlinedFace, outlined_face
from longpoint.pieces.piece import SQUARE_CUT, EndCut, HookEnd, Piece, Role
from longpoint.pieces.plinths import plinth_findings, plinth_pieces
from longpoint.pieces.window_board_findings import below_findings
from longpoint.pieces.window_boards import below_pieces
from longpoint.shape.fitted import FittedOutline
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.trims.set_rings import LEFT, RIGHT


def outline_pieces(house: House, opening: Opening, fitted: FittedOutline) -> tuple[Piece, ...]:
    """Return the pieces of one face of an opening with three, five or more sides.

    Each mitre runs from the inner to the outer corner. A side takes quirk and architrave of the
    bottom, the left, the right or the head, by which way its outside looks; slopes up to 60 degrees
    count as head.

    Args:
        house: Gives profiles and units.
        opening: Its settings.
        fitted: Its shape.

    Returns:
        Sides clockwise from the bottom, numbered as they were written; plinths, back band, apron
        and board.

    Raises:
        PieceError: The trim doesn't go round the opening, or is to be joined in a way that needs
            four sides.
    """
    face = outlined_face(house, opening, fitted)
    return (
        *(_side(face, side) for side in face.clockwise),
        *plinth_pieces(face.set),
        *(_band(face, side) for side in face.clockwise if side in face.band),
        *below_pieces(face.set),
    )


def outline_piece_findings(
    house: House, opening: Opening, fitted: FittedOutline
) -> tuple[Finding, ...]:
    """Return what is to be said of those pieces.

    Raises:
        PieceError: As `outline_pieces`.
    """
    face = outlined_face(house, opening, fitted)
    shaped = say("A set of {corners} sides", corners=len(fitted.corners))
    return (
        *([own_corners(opening, shaped)] if is_true_frame(opening) else []),
        not_forecast(
            opening.mark,
            say(
                "{mark} has {corners} sides.",
                mark=opening.mark,
                corners=len(fitted.corners),
            ),
        ),
        *steep_cuts(opening.mark, (_side(face, side) for side in face.clockwise)),
        *plinth_findings(face.set),
        *below_findings(face.set),
    )


def _side(face: OutlinedFace, side: int) -> Piece:
    edges = face.rings[side].edges()
    after = (side + 1) % len(face.sides)
    piece = face.set.piece(
        f"{Role.SIDE.value}-{face.number(side)}",
        Role.SIDE,
        face.profiles[side],
        edges,
        left=_cut(face, after, edges.end_deg, on_plinth_at=LEFT if after == 0 else None),
        right=_cut(face, side, edges.start_deg, on_plinth_at=RIGHT if side == 1 else None),
        u_mm=face.fitted.side_u_mm[side],
    )
    is_on_plinth = bool(face.set.rings.plinths) and side in (1, len(face.sides) - 1)
    terms = (Term(-face.set.shape.plinth_height_mm, "plinth"),) if is_on_plinth else ()
    return replace(piece, hand_sum=_sum(face, side, piece, terms))


def _cut(face: OutlinedFace, corner: int, saw_deg: float, *, on_plinth_at: int | None) -> EndCut:
    is_foot = face.has_bare_bottom and corner in (0, 1)
    if is_foot and on_plinth_at in face.set.rings.plinths:
        return SQUARE_CUT
    return end_cut(saw_deg, is_mitre=not is_foot)


def _sum(face: OutlinedFace, side: int, piece: Piece, terms: tuple[Term, ...]) -> str:
    count = len(face.sides)
    ends = ((side - 1) % count, (side + 1) % count)
    quirks = tuple(face.quirks_mm[e] for e in ends if not (face.has_bare_bottom and e == 0))
    return hand_sum(
        face.fitted.side_mm[side],
        quirks,
        piece.inner_mm,
        piece.width_mm,
        _hooked_deg(piece),
        cover_mm=face.written.floor_cover_mm if len(quirks) == 1 else 0.0,
        terms=terms,
        units=face.set.house.units,
    )


def _hooked_deg(piece: Piece) -> float | None:
    hooked = {HookEnd.LEFT: piece.left, HookEnd.RIGHT: piece.right}
    return hooked[piece.hook_from].mitre_deg if piece.hook_from else None


def _band(face: OutlinedFace, side: int) -> Piece:
    edges = face.band[side].edges()
    after = (side + 1) % len(face.sides)
    piece = face.set.piece(
        f"band-{face.number(side)}",
        Role.BACK_BAND,
        face.set.house.profile(face.written.back_band),
        edges,
        left=_cut(face, after, edges.end_deg, on_plinth_at=None),
        right=_cut(face, side, edges.start_deg, on_plinth_at=None),
        u_mm=face.fitted.side_u_mm[side],
    )
    outer_mm = face.outline.outer[side].distance_mm(face.outline.outer[after])
    built = hand_sum(
        outer_mm,
        (),
        piece.inner_mm,
        piece.width_mm,
        _hooked_deg(piece),
        units=face.set.house.units,
    )
    return replace(piece, hand_sum=say("outer edge {built}", built=built))
