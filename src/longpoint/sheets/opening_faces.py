"""The faces of an opening: their shapes, pieces and drawings."""

from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import FittedOpening
from longpoint.shape.opening_fit import mirrored
from longpoint.sheets.dialects import words_for
from longpoint.sheets.opening_pictures import Echo, echo_of
from longpoint.sheets.seen_face import seen_readings
from longpoint.survey.openings import Opening


def face_echo(plan: HousePlan, opening: Opening, fitted: FittedOpening) -> Echo:
    """Return the drawing of one face, and what is said about it."""
    return echo_of(
        opening,
        fitted,
        seen_readings(opening, fitted.face),
        face_pieces(plan, fitted),
        words_for(plan.house.dialect),
        plan.house.units,
    )


def face_pieces(plan: HousePlan, fitted: FittedOpening) -> tuple[Piece, ...]:
    """Return the pieces of one face."""
    return tuple(
        piece for piece in plan.pieces if piece.opening == fitted.mark and piece.face == fitted.face
    )


def fitted_faces(plan: HousePlan, opening: Opening) -> tuple[FittedOpening, ...]:
    """Return the shape of each face that is trimmed; none where no shape could be fitted."""
    fitted = tuple(shape for shape in plan.shapes.openings if shape.mark == opening.mark)
    if opening.faces == 2 and len(fitted) == 1:
        return (*fitted, mirrored(fitted[0]))
    return fitted
