"""Architraves, apron and board of one opening, from its fitted shape."""

from dataclasses import replace

from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.face_trim import BOTTOM, FaceTrim, face_trim, is_true_frame
from longpoint.pieces.hand_sum import hand_sum
from longpoint.pieces.opening_notes import square_notes
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, HookEnd, Piece, Role
from longpoint.shape.fitted import FittedOpening, Shapes
from longpoint.shape.opening_fit import mirrored
from longpoint.survey.house import House
from longpoint.survey.openings import Layout, Opening
from longpoint.trims.outline import TrimEdges

LEAST_FOOT_DEG = 0.05
"""A foot nearer to square than this is cut square."""

_SIDE_ROLES = (Role.SILL, Role.RIGHT_LEG, Role.HEAD, Role.LEFT_LEG)


def plan_openings(
    house: House, shapes: Shapes, held: frozenset[str]
) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
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
        faces = _faces(opening, shapes)
        try:
            for face in faces:
                pieces.extend(opening_pieces(house, opening, face))
        except PieceError as error:
            pieces = [p for p in pieces if p.opening != opening.mark]
            findings.append(_stop(opening.mark, error))
            continue
        findings.extend(note for face in faces[:1] for note in square_notes(house, opening, face))
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
        Left leg, head, right leg, then sill piece or apron and board.

    Raises:
        PieceError: The trim doesn't go round the opening.
    """
    trim = face_trim(house, opening, fitted)
    outline = trim.outline
    made = _Maker(house=house, opening=opening, fitted=fitted, trim=trim)
    pieces = [made.side(side, outline.edges(side)) for side in (3, 2, 1)]
    if opening.layout is Layout.ALL_ROUND:
        pieces.append(made.side(BOTTOM, outline.edges(BOTTOM)))
    if opening.layout is Layout.BOARD_AND_APRON:
        pieces.extend(made.below(outline.edges(BOTTOM).outer_mm))
    return tuple(pieces)


class _Maker:
    """Makes the pieces of one face."""

    def __init__(
        self, *, house: House, opening: Opening, fitted: FittedOpening, trim: FaceTrim
    ) -> None:
        self.house = house
        self.opening = opening
        self.fitted = fitted
        self.trim = trim

    def side(self, side: int, edges: TrimEdges) -> Piece:
        """Return the piece along a side: clockwise, so its left end is the side's second corner."""
        profile = self.trim.profiles[side]
        piece = Piece(
            mark=self._mark(_SIDE_ROLES[side]),
            role=_SIDE_ROLES[side],
            opening=self.opening.mark,
            room=self.opening.room,
            face=self.fitted.face,
            profile=profile.name,
            width_mm=profile.width_mm,
            thickness_mm=profile.thickness_mm,
            inner_mm=edges.inner_mm,
            outer_mm=edges.outer_mm,
            back_mm=max(edges.inner_mm, edges.outer_mm),
            left=_end(edges.end_deg, is_foot=self._is_foot(side + 1)),
            right=_end(edges.start_deg, is_foot=self._is_foot(side)),
            u_mm=self.fitted.side_u_mm[side],
            method=self.opening.method,
        )
        return replace(piece, hand_sum=self._hand_sum(side, piece))

    def below(self, outer_mm: float) -> tuple[Piece, ...]:
        """Return the apron, and the board when its profile is known."""
        apron = self._square(Role.APRON, self.opening.profiles.bottom, outer_mm, "")
        if not self.opening.board:
            return (apron,)
        horn_mm = self.opening.horn_mm
        board = self._square(Role.BOARD, self.opening.board, outer_mm + 2.0 * horn_mm, "")
        return (apron, board)

    def _square(self, role: Role, name: str, length_mm: float, hand: str) -> Piece:
        profile = self.house.profile(name)
        return Piece(
            mark=self._mark(role),
            role=role,
            opening=self.opening.mark,
            room=self.opening.room,
            face=self.fitted.face,
            profile=profile.name,
            width_mm=profile.width_mm,
            thickness_mm=profile.thickness_mm,
            inner_mm=length_mm,
            outer_mm=length_mm,
            back_mm=length_mm,
            left=SQUARE_CUT,
            right=SQUARE_CUT,
            u_mm=self.fitted.side_u_mm[BOTTOM],
            method=self.opening.method,
            hand_sum=hand,
        )

    def _hand_sum(self, side: int, piece: Piece) -> str:
        ends = ((side - 1) % 4, (side + 1) % 4)
        quirks = tuple(
            self.trim.quirks_mm[end]
            for end in ends
            if not (self.trim.has_bare_bottom and end == BOTTOM)
        )
        hooked = {HookEnd.LEFT: piece.left, HookEnd.RIGHT: piece.right}
        return hand_sum(
            self.fitted.side_mm[side],
            quirks,
            piece.inner_mm,
            piece.width_mm,
            hooked[piece.hook_from].mitre_deg if piece.hook_from else None,
            cover_mm=self.opening.floor_cover_mm if len(quirks) == 1 else 0.0,
            is_shared=is_true_frame(self.opening),
            units=self.house.units,
        )

    def _is_foot(self, corner: int) -> bool:
        return self.trim.has_bare_bottom and corner % 4 in (0, 1)

    def _mark(self, role: Role) -> str:
        return f"{self.opening.mark}{self.fitted.face}-{role.value}"


def _end(saw_deg: float, *, is_foot: bool) -> EndCut:
    if is_foot and abs(saw_deg) < LEAST_FOOT_DEG:
        return SQUARE_CUT
    return EndCut(kind=CutKind.MITRE, mitre_deg=saw_deg)


def _faces(opening: Opening, shapes: Shapes) -> tuple[FittedOpening, ...]:
    found = tuple(f for f in shapes.openings if f.mark == opening.mark)
    if opening.faces == 2 and len(found) == 1:
        return (*found, mirrored(found[0]))
    return found


def _stop(mark: str, error: PieceError) -> Finding:
    return Finding(
        code="no-pieces",
        severity=Severity.STOP,
        place=mark,
        read=error.read,
        wrong=error.wrong,
        do=error.do,
    )
