"""The faces of an opening: their shapes, pieces and drawings."""

from longpoint.house_plan import HousePlan
from longpoint.pieces.other_shapes import outline_faces
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import FittedOpening, FittedOutline
from longpoint.shape.opening_fit import mirrored
from longpoint.sheets.dialects import words_for
from longpoint.sheets.opening_pictures import Echo, echo_of
from longpoint.sheets.outline_pictures import arch_echo, outline_echo
from longpoint.sheets.seen_face import seen_readings
from longpoint.survey.openings import Opening

FittedShape = FittedOpening | FittedOutline


def face_echo(plan: HousePlan, opening: Opening, fitted: FittedShape) -> Echo:
    """Return the drawing of one face, and what is said about it."""
    words = words_for(plan.house.dialect)
    if isinstance(fitted, FittedOutline):
        return outline_echo(plan.house, opening, fitted, words)
    if opening.arch is not None:
        readings = seen_readings(opening, fitted.face)
        return arch_echo(plan.house, opening, fitted, readings, words)
    return echo_of(
        opening,
        fitted,
        seen_readings(opening, fitted.face),
        face_pieces(plan, fitted),
        words,
        plan.house.units,
    )


def face_pieces(plan: HousePlan, fitted: FittedShape) -> tuple[Piece, ...]:
    """Return the pieces of one face."""
    return tuple(
        piece for piece in plan.pieces if piece.opening == fitted.mark and piece.face == fitted.face
    )


def fitted_faces(plan: HousePlan, opening: Opening) -> tuple[FittedShape, ...]:
    """Return the shape of each face that is trimmed; none where no shape could be fitted."""
    outlines = outline_faces(opening, plan.shapes)
    if outlines:
        return outlines
    fitted = tuple(shape for shape in plan.shapes.openings if shape.mark == opening.mark)
    if opening.faces == 2 and len(fitted) == 1:
        return (*fitted, mirrored(fitted[0]))
    return fitted
