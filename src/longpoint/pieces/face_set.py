"""One face's set while its pieces are being made."""

from dataclasses import dataclass

from longpoint.pieces.face_trim import FaceTrim, face_trim
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.shape.fitted import FittedOpening
from longpoint.survey.house import House
from longpoint.survey.openings import Joint, Opening
from longpoint.survey.profiles import Profile
from longpoint.trims.outline import TrimEdges
from longpoint.trims.set_rings import SetRings, SetShape, set_rings

LEAST_FOOT_DEG = 0.05
"""A foot, or the square end of a piece, nearer to square than this is cut square."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FaceSet:
    """One face of an opening, and where the pieces of its set lie.

    Attributes:
        house: Gives profiles and units.
        opening: Its settings.
        fitted: Its shape.
        trim: Inner and outer lines of its architraves.
        shape: How the set is put together.
        rings: Where each piece lies.
    """

    house: House
    opening: Opening
    fitted: FittedOpening
    trim: FaceTrim
    shape: SetShape
    rings: SetRings

    def mark(self, what: str) -> str:
        """Return the mark of a piece of this face."""
        return f"{self.opening.mark}{self.fitted.face}-{what}"

    def piece(
        self,
        what: str,
        role: Role,
        profile: Profile,
        edges: TrimEdges,
        *,
        left: EndCut = SQUARE_CUT,
        right: EndCut = SQUARE_CUT,
        u_mm: float = 0.0,
        hand_sum: str = "",
        notes: tuple[str, ...] = (),
    ) -> Piece:
        """Return a piece: clockwise, so that its left end is the end of its edges."""
        return Piece(
            mark=self.mark(what),
            role=role,
            opening=self.opening.mark,
            room=self.opening.room,
            face=self.fitted.face,
            profile=profile.name,
            width_mm=profile.width_mm,
            thickness_mm=profile.thickness_mm,
            inner_mm=edges.inner_mm,
            outer_mm=edges.outer_mm,
            back_mm=max(edges.inner_mm, edges.outer_mm),
            left=left,
            right=right,
            u_mm=u_mm,
            method=self.opening.method,
            hand_sum=hand_sum,
            notes=notes,
        )

    def square_piece(
        self,
        what: str,
        role: Role,
        profile: Profile,
        length_mm: float,
        *,
        u_mm: float = 0.0,
        hand_sum: str = "",
        notes: tuple[str, ...] = (),
    ) -> Piece:
        """Return a piece cut square at both ends."""
        edges = TrimEdges(inner_mm=length_mm, outer_mm=length_mm, start_deg=0.0, end_deg=0.0)
        return self.piece(what, role, profile, edges, u_mm=u_mm, hand_sum=hand_sum, notes=notes)


def face_set(house: House, opening: Opening, fitted: FittedOpening) -> FaceSet:
    """Return one face's set before its pieces are made.

    Raises:
        PieceError: The set doesn't go round the opening.
    """
    trim = face_trim(house, opening, fitted)
    shape = set_shape(house, opening, trim)
    return FaceSet(
        house=house,
        opening=opening,
        fitted=fitted,
        trim=trim,
        shape=shape,
        rings=set_rings(trim.corners, trim.sides, shape),
    )


def set_shape(house: House, opening: Opening, trim: FaceTrim) -> SetShape:
    """Return how a set is put together, in sizes."""

    def face_mm(name: str) -> float:
        return house.profile(name).width_mm if name else 0.0

    has_plinths = bool(opening.plinth) and trim.has_bare_bottom and opening.stands_on_floor
    is_blocked = opening.joint is Joint.BLOCKS
    return SetShape(
        is_butted=opening.joint is Joint.BUTT,
        horn_mm=opening.head_horn_mm,
        block_mm=face_mm(opening.corner_block) if is_blocked else 0.0,
        plinth_mm=face_mm(opening.plinth) if has_plinths else 0.0,
        plinth_height_mm=opening.plinth_height_mm,
        band_mm=face_mm(opening.back_band),
    )


def end_cut(saw_deg: float, *, is_mitre: bool) -> EndCut:
    """Return how an end is cut: a mitre as it is, any other end square if it is nearly so."""
    if not is_mitre and abs(saw_deg) < LEAST_FOOT_DEG:
        return SQUARE_CUT
    return EndCut(kind=CutKind.MITRE, mitre_deg=saw_deg)
