"""A rack file put into a rack that is kept: it adds and mends, and brings nothing back."""

from dataclasses import replace

from longpoint.errors import SurveyError
from longpoint.speech.said import say
from longpoint.survey.rack.records import Rack, RackPiece, Section


def with_file(kept: Rack, file: Rack) -> Rack:
    """Return a rack with what a file says more, or otherwise, of its offcuts.

    What the file doesn't have stays. What is gone stays gone, as the file may be an old one.

    Args:
        kept: The rack.
        file: The file's.

    Raises:
        SurveyError: One name or label is of two things: the file is of another rack.

    Example:
        >>> with_file(Rack(old_after_days=300), Rack()).old_after_days
        300
    """
    sections = dict(kept.sections)
    for key, section in file.sections:
        if _size(sections.get(key, section)) != _size(section):
            raise _another(say("The section {key}", key=key))
        sections[key] = section
    pieces = {piece.label: piece for piece in kept.pieces}
    for piece in file.pieces:
        pieces[piece.label] = _mended(pieces.get(piece.label), piece)
    is_begun = bool(kept.sections or kept.pieces)
    return replace(
        kept,
        units=kept.units if is_begun else file.units,
        old_after_days=file.old_after_days or kept.old_after_days,
        sections=tuple(sections.items()),
        pieces=tuple(pieces.values()),
    )


def _size(section: Section) -> tuple[str, float, float, bool]:
    return section.name, section.width_mm, section.thickness_mm, section.reversible


def _mended(there: RackPiece | None, piece: RackPiece) -> RackPiece:
    if there is None:
        return piece
    if (there.section, there.put_up, there.origin) != (piece.section, piece.put_up, piece.origin):
        raise _another(say("The offcut {label}", label=piece.label))
    return piece if there.gone is None else replace(piece, gone=there.gone)


def _another(what: str) -> SurveyError:
    return SurveyError(
        say("A rack file was to be put into the store."),
        say("{what} is another one there, so the file is of another rack.", what=what),
        say("Put its offcuts up anew with longpoint rack put; nothing was changed."),
    )
