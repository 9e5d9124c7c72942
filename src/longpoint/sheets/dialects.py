"""The trade's words as the crew of each country says them.

References:
    The table of words in `docs/words.md`. Where it gives several, the first is printed.
"""

from dataclasses import dataclass
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
