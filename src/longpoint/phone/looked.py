"""One opening by itself: its drawing, its pieces, what is to be said of it."""

from collections.abc import Iterable

from longpoint.errors import SurveyError
from longpoint.house_plan import HousePlan
from longpoint.phone.messages import Face, Look, PieceRow
from longpoint.phone.planned import Ports, planned, said_of
from longpoint.pieces.piece import HookEnd, Piece
from longpoint.quantities.formatting import format_length
from longpoint.sheets.cut_cells import end_cells, key_figure
from longpoint.sheets.dialects import kind_words, role_words, words_for
from longpoint.sheets.hold_picture import hold_picture
from longpoint.sheets.opening_faces import face_echo, fitted_faces
from longpoint.sheets.printed_lengths import PrintedLengths, printed_lengths
from longpoint.sheets.svg import drawing_svg
from longpoint.speech.said import say

_HOW = {
    f"hook {HookEnd.LEFT.value}": say(
        "hook the tape on the left point, read at the inner edge right"
    ),
    f"hook {HookEnd.RIGHT.value}": say(
        "hook the tape on the right point, read at the inner edge left"
    ),
    "length": say("from end to end"),
    "back": say("along the back"),
    "face": say("along the face"),
}


def how_words(how: str) -> str:
    """Return how a figure is read, in full."""
    return _HOW.get(how, how)


def looked(document: dict[str, object], mark: str) -> Look:
    """Return how one opening looks by itself, without the rest of the house.

    Raises:
        SurveyError: There is no such opening, or the house can't be used as a whole.
    """
    openings = document.get("openings")
    alone = [o for o in openings if o.get("mark") == mark] if isinstance(openings, list) else []
    if not alone:
        raise SurveyError(
            say("Opening {mark} was asked for.", mark=mark),
            say("The house has none of it."),
            say("Choose another one."),
        )
    only = {key: value for key, value in document.items() if key not in ("rooms", "runs", "trims")}
    plan = planned(only | {"openings": alone}, (), "", Ports(), forecast=False).plan
    return Look(
        mark=mark,
        is_held=mark in plan.held,
        faces=_faces(plan, mark),
        pieces=piece_rows(plan, [piece for piece in plan.pieces if piece.opening == mark]),
        findings=tuple(said for said in said_of(plan.findings) if said.place == mark),
        lines=(),
    )


def _faces(plan: HousePlan, mark: str) -> tuple[Face, ...]:
    found = []
    for opening in plan.house.openings:
        if mark in plan.held:
            held = hold_picture(opening.mark, kind_words(opening.kind))
            return (Face(svg=drawing_svg(held), question=""),)
        for fitted in fitted_faces(plan, opening):
            echo = face_echo(plan, opening, fitted)
            found.append(Face(svg=drawing_svg(echo.drawing), question=echo.question))
    return tuple(found)


def piece_rows(plan: HousePlan, pieces: Iterable[Piece]) -> tuple[PieceRow, ...]:
    """Return pieces of a plan as a screen lists them, a pair printed alike."""
    lengths = printed_lengths(plan.pieces)
    return tuple(_row(plan, piece, lengths[piece.mark]) for piece in pieces)


def _row(plan: HousePlan, piece: Piece, printed: PrintedLengths) -> PieceRow:
    units, words = plan.house.units, words_for(plan.house.dialect)
    figure, how = key_figure(piece, printed, units)
    left, right = end_cells(piece, plan.house.saw, words)
    return PieceRow(
        mark=piece.mark,
        what=role_words(piece.role, words),
        figure=figure,
        how=how_words(how),
        left=left.text,
        right=right.text,
        short=format_length(printed.short_mm, units),
        long=format_length(printed.long_mm, units),
    )
