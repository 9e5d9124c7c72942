"""The trade's words as the crew of each country says them.

References:
    The table of words in `docs/words.md`. Where it gives several, the first is printed.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Final

from longpoint.pieces.piece import Piece, Role
from longpoint.speech.said import instead, say
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
        lining: The board that lines an opening and that trim is nailed to.
        cover_bead: A small moulding over a joint, at the floor most often.
        jamb_lining: A lining that is cut and put up, all of it.
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
    dado_rail: str = say("dado rail")
    moulding: str = say("moulding")
    wall_reveal: str = instead("reveal", say("wall reveal"))
    lining: str = say("lining")
    cover_bead: str = say("cover bead")
    jamb_lining: str = say("jamb lining")


_SOUTH: Final = Words(
    architrave=say("architrave"),
    skirting=say("skirting"),
    quirk=say("quirk"),
    mitre=say("mitre"),
    scribe=say("scribe"),
    board=say("window board"),
    cornice=say("cornice"),
    corner_block=say("corner block"),
    saw=say("drop saw"),
)
_ISLES: Final = Words(
    architrave=say("architrave"),
    skirting=say("skirting"),
    quirk=instead("margin", say("quirk")),
    mitre=say("mitre"),
    scribe=say("scribe"),
    board=say("window board"),
    cornice=say("cornice"),
    corner_block=say("corner block"),
    saw=instead("mitre saw", say("drop saw")),
)
_STATES: Final = Words(
    architrave=instead("casing", say("architrave")),
    skirting=instead("baseboard", say("skirting")),
    quirk=instead("reveal", say("quirk")),
    mitre=instead("miter", say("mitre")),
    scribe=instead("cope", say("scribe")),
    board=instead("stool", say("window board")),
    cornice=instead("crown", say("cornice")),
    corner_block=instead("rosette", say("corner block")),
    saw=instead("miter saw", say("drop saw")),
    dado_rail=instead("chair rail", say("dado rail")),
    moulding=instead("molding", say("moulding")),
    wall_reveal=instead("recess", say("wall reveal")),
    lining=instead("jamb", say("lining")),
    cover_bead=instead("shoe", say("cover bead")),
    jamb_lining=instead("jamb", say("jamb lining")),
)
_CANADA: Final = Words(
    architrave=instead("casing", say("architrave")),
    skirting=instead("baseboard", say("skirting")),
    quirk=instead("reveal", say("quirk")),
    mitre=say("mitre"),
    scribe=instead("cope", say("scribe")),
    board=instead("stool", say("window board")),
    cornice=instead("crown", say("cornice")),
    corner_block=instead("rosette", say("corner block")),
    saw=instead("mitre saw", say("drop saw")),
    dado_rail=instead("chair rail", say("dado rail")),
    wall_reveal=instead("recess", say("wall reveal")),
    lining=instead("jamb", say("lining")),
    cover_bead=instead("shoe", say("cover bead")),
    jamb_lining=instead("jamb", say("jamb lining")),
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


def english_of(dialect: Dialect) -> str:
    """Return the English of a country as HTML names it; plain "en" where it is ours.

    Example:
        >>> english_of(Dialect.IE), english_of(Dialect.NZ)
        ('en-GB', 'en')
    """
    match dialect:
        case Dialect.AU | Dialect.NZ:
            return "en"
        case Dialect.UK | Dialect.IE:
            return "en-GB"
        case Dialect.US:
            return "en-US"
        case Dialect.CA:
            return "en-CA"


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
    return instead(_OURS.sub(lambda found: _said(found, said), text), text)


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
            return say("head")
        case Role.LEFT_LEG:
            return say("left leg")
        case Role.RIGHT_LEG:
            return say("right leg")
        case Role.SILL:
            return say("sill piece")
        case Role.APRON:
            return say("apron")
        case Role.BOARD:
            return words.board
        case Role.RUN:
            return words.skirting
        case Role.RETURN:
            return say("return")
        case Role.PLINTH_BLOCK:
            return say("plinth block")
        case Role.CORNER_BLOCK:
            return words.corner_block
        case Role.BACK_BAND:
            return say("back-band")
        case Role.CORNICE:
            return words.cornice
        case Role.LINING:
            return words.lining
        case Role.STOP:
            return say("door stop")
        case Role.STILE:
            return say("upright")
        case Role.SEGMENT:
            return say("segment")
        case Role.SIDE:
            return say("side")
        case Role.WEDGE:
            return say("wedge")
        case Role.RAIL:
            return say("rail")
        case Role.BEAD:
            return words.cover_bead
        case Role.SHELF:
            return say("shelf")
        case Role.HANDRAIL:
            return say("handrail")


def piece_words(piece: Piece, words: Words) -> str:
    """Return a piece's place and what it is there, e.g. "W1 head", "D2 face b left leg"."""
    place = piece.place
    face = say(" face {face}", face=piece.face) if piece.face else ""
    return say(
        "{place}{face} {role}",
        place=place,
        face=face,
        role=role_words(piece.role, words),
    )


def kind_words(kind: OpeningKind) -> str:
    """Return what a kind of opening is called."""
    match kind:
        case OpeningKind.WINDOW:
            return say("window")
        case OpeningKind.DOOR:
            return say("door")
        case OpeningKind.CASED:
            return say("opening without a door")


def method_words(method: Method) -> str:
    """Return a way of fixing in a few words, its name in brackets.

    Example:
        >>> method_words(Method.BATCH)
        'way of fixing (batch): all cut first, then fixed'
    """
    match method:
        case Method.BATCH:
            return say("way of fixing (batch): all cut first, then fixed")
        case Method.IN_PLACE:
            return say("way of fixing (in place): each piece marked off those already up")
        case Method.BENCH:
            return say("way of fixing (bench): frames joined first, then fixed")


def method_short(method: Method) -> str:
    """Return a way of fixing in one or two words."""
    match method:
        case Method.BATCH:
            return say("batch")
        case Method.IN_PLACE:
            return say("in place")
        case Method.BENCH:
            return say("bench")
