"""The trade's words as the crew of each country says them.

References:
    The table of words in `docs/words.md`. Where it gives several, the first is printed.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Final

from longpoint.pieces.piece import Piece, Role
from longpoint.survey.house import Dialect
from longpoint.survey.openings import Method, OpeningKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """The words of one country, in lower case.

    Attributes:
        architrave: Trim round an opening.
        skirting: Trim at the floor.
        quirk: Set-back of the trim from the lining's edge.
        mitre: Cut on the slant across the face.
        scribe: End shaped to the neighbour's section.
        board: Shelf at the bottom of a window.
        cornice: Trim where wall and ceiling meet.
        corner_block: Block at the corner of a set.
        saw: The saw the sheet is read at.
        dado_rail: Moulding along a wall at chair height.
        moulding: A shaped strip.
        wall_reveal: The wall's own face at the side of an opening; no word for the quirk.
    """

    architrave: str
    skirting: str
    quirk: str
    mitre: str
    scribe: str
    board: str
    cornice: str
    corner_block: str
    saw: str
    dado_rail: str = "dado rail"
    moulding: str = "moulding"
    wall_reveal: str = "reveal"


_SOUTH: Final = Words(
    architrave="architrave",
    skirting="skirting",
    quirk="quirk",
    mitre="mitre",
    scribe="scribe",
    board="window board",
    cornice="cornice",
    corner_block="corner block",
    saw="drop saw",
)
_ISLES: Final = Words(
    architrave="architrave",
    skirting="skirting",
    quirk="margin",
    mitre="mitre",
    scribe="scribe",
    board="window board",
    cornice="cornice",
    corner_block="corner block",
    saw="mitre saw",
)
_STATES: Final = Words(
    architrave="casing",
    skirting="baseboard",
    quirk="reveal",
    mitre="miter",
    scribe="cope",
    board="stool",
    cornice="crown",
    corner_block="rosette",
    saw="miter saw",
    dado_rail="chair rail",
    moulding="molding",
    wall_reveal="recess",
)
_CANADA: Final = Words(
    architrave="casing",
    skirting="baseboard",
    quirk="reveal",
    mitre="mitre",
    scribe="cope",
    board="stool",
    cornice="crown",
    corner_block="rosette",
    saw="mitre saw",
    dado_rail="chair rail",
    wall_reveal="recess",
)


def words_for(dialect: Dialect) -> Words:
    """Return the words of a country.

    Example:
        >>> words_for(Dialect.UK).architrave, words_for(Dialect.US).architrave
        ('architrave', 'casing')
    """
    match dialect:
        case Dialect.AU | Dialect.NZ:
            return _SOUTH
        case Dialect.UK | Dialect.IE:
            return _ISLES
        case Dialect.US:
            return _STATES
        case Dialect.CA:
            return _CANADA


def in_words(text: str, words: Words) -> str:
    """Return a text of ours with the trade's words as a country says them.

    Args:
        text: In the words of `docs/words.md`: AU and NZ print them as they are.
        words: Of the country.

    Example:
        >>> in_words("Mitred to an architrave; the default skirting", words_for(Dialect.US))
        'Mitered to a casing; the default baseboard'
        >>> in_words("as the architrave's quirk", words_for(Dialect.UK))
        "as the architrave's margin"
    """
    said = {getattr(_SOUTH, each.name): getattr(words, each.name) for each in fields(Words)}
    return _OURS.sub(lambda found: _said(found, said), text)


_OURS: Final = re.compile(
    r"\b(?:(?P<article>an?) )?"
    rf"(?P<word>{'|'.join(sorted((getattr(_SOUTH, f.name) for f in fields(Words)), reverse=True))})"
    r"(?P<end>s|d)?\b",
    re.IGNORECASE,
)
"""A word of ours with its article before it, and "s" or "d" behind it."""


def _said(found: re.Match[str], said: Mapping[str, str]) -> str:
    article, word, end = found["article"], found["word"], found["end"] or ""
    other = said[word.lower()]
    if other == word.lower():
        return found[0]
    if end == "d" and not other.endswith("e"):
        end = "ed"
    if word[0].isupper():
        other = other.capitalize()
    if article is None:
        return other + end
    return f"{article[0]}{'n' if other[0] in 'aeiou' else ''} {other}{end}"


def role_words(role: Role, words: Words) -> str:
    """Return what a piece is called in its place.

    Example:
        >>> role_words(Role.LEFT_LEG, words_for(Dialect.NZ))
        'left leg'
    """
    match role:
        case Role.HEAD:
            return "head"
        case Role.LEFT_LEG:
            return "left leg"
        case Role.RIGHT_LEG:
            return "right leg"
        case Role.SILL:
            return "sill piece"
        case Role.APRON:
            return "apron"
        case Role.BOARD:
            return words.board
        case Role.RUN:
            return words.skirting
        case Role.RETURN:
            return "return"
        case Role.PLINTH_BLOCK:
            return "plinth block"
        case Role.CORNER_BLOCK:
            return words.corner_block
        case Role.BACK_BAND:
            return "back-band"
        case Role.CORNICE:
            return words.cornice
        case Role.STOP:
            return "door stop"
        case Role.STILE:
            return "upright"
        case _:
            return role.value


def piece_words(piece: Piece, words: Words) -> str:
    """Return a piece's place and what it is there, e.g. "W1 head", "D2 face b left leg"."""
    place = piece.place
    face = f" face {piece.face}" if piece.face else ""
    return f"{place}{face} {role_words(piece.role, words)}"


def kind_words(kind: OpeningKind) -> str:
    """Return what a kind of opening is called."""
    match kind:
        case OpeningKind.WINDOW:
            return "window"
        case OpeningKind.DOOR:
            return "door"
        case OpeningKind.CASED:
            return "opening without a door"


def method_words(method: Method) -> str:
    """Return a way of fixing in a few words, its name in brackets.

    Example:
        >>> method_words(Method.BATCH)
        'way of fixing (batch): all cut first, then fixed'
    """
    match method:
        case Method.BATCH:
            return "way of fixing (batch): all cut first, then fixed"
        case Method.IN_PLACE:
            return "way of fixing (in place): each piece marked off those already up"
        case Method.BENCH:
            return "way of fixing (bench): frames joined first, then fixed"


def method_short(method: Method) -> str:
    """Return a way of fixing in one or two words."""
    match method:
        case Method.BATCH:
            return "batch"
        case Method.IN_PLACE:
            return "in place"
        case Method.BENCH:
            return "bench"
