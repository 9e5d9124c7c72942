"""The words that people write over their columns, and what they mean here."""

import re
import unicodedata
from typing import Final

from longpoint.exchange.confirm.record_keys import RecordKind, cell_keys

# Usage is common practice in the trade's English of six countries and in German lists; no source.
_OPENING_WORDS: Final = {
    "mark": "mark|no|nr|number|opening|opening no|window|window no|door|door no|ref|reference|id"
    "|item|tag|label|code|window or door|pos|position|fenster|oeffnung|offnung|bezeichnung",
    "room": "room|space|location|where|area|raum|zimmer",
    "kind": "kind|type|opening type|art|typ",
    "trim": "trim|set|trimmed",
    "top": "top|head|top width|width top|width at top|width at head|head width|width head|oben"
    "|breite oben",
    "bottom": "bottom|sill|bottom width|width bottom|width at bottom|width at sill|width at floor"
    "|sill width|width sill|floor width|unten|breite unten",
    "left": "left|lh|left height|height left|left side|left leg|height lh|links|hohe links"
    "|hoehe links",
    "right": "right|rh|right height|height right|right side|right leg|height rh|rechts"
    "|hohe rechts|hoehe rechts",
    "rising": "rising|rising diagonal|diagonal rising|bl tr|bl to tr|diagonal bl tr"
    "|bottom left to top right",
    "falling": "falling|falling diagonal|diagonal falling|tl br|tl to br|diagonal tl br"
    "|top left to bottom right",
    "width": "width|w|wide|opening width|breite",
    "height": "height|h|high|opening height|hohe|hoehe",
    "middle.width": "middle width|width middle|mid width|width mid",
    "middle.height": "middle height|height middle|mid height|height mid",
    "plane.tl": "plane tl|proud tl|tl proud|proud top left",
    "plane.tr": "plane tr|proud tr|tr proud|proud top right",
    "plane.br": "plane br|proud br|br proud|proud bottom right",
    "plane.bl": "plane bl|proud bl|bl proud|proud bottom left",
    "plumb.left": "plumb left|left plumb",
    "plumb.right": "plumb right|right plumb",
    "level.head": "level head|head level",
    "level.floor": "level floor|floor level|sill level|level sill",
    "lining_edge": "lining edge|reveal edge|jamb edge",
    "tape": "tape|tape used|massband",
    "by": "by|read by|reader|measured by|who",
    "nominal.width": "nominal width|drawing width|width on drawing",
    "nominal.height": "nominal height|drawing height|height on drawing",
}
_RUN_WORDS: Final = {
    "mark": "mark|run|no|nr|number|ref|reference|id|item|tag|label",
    "room": _OPENING_WORDS["room"],
    "wall": "wall|wand",
    "profile": "profile|section|moulding|molding|skirting|baseboard|profil",
    "length": "length|run length|wall length|l|lange|laenge",
    "left": "left|left end|end left|links",
    "right": "right|right end|end right|rechts",
    "left_corner": "left corner|corner left|left angle",
    "right_corner": "right corner|corner right|right angle",
    "tape": _OPENING_WORDS["tape"],
}

UNITS: Final = {"mm": "mm", "cm": "cm", "m": "m", "in": "in", "inch": "in", "inches": "in"}
_UNIT: Final = re.compile(r"[(\[]\s*([A-Za-z]+)\s*[)\]]")
_SIGN: Final = re.compile(r"[^a-z0-9]+")


def plain_words(text: str) -> str:
    """Return a header in plain small letters, without what stands in brackets.

    Example:
        >>> plain_words("Höhe, links (mm)"), plain_words("TOP-WIDTH")
        ('hohe links', 'top width')
    """
    folded = unicodedata.normalize("NFKD", _UNIT.sub(" ", text[:200])).casefold()
    return " ".join(_SIGN.sub(" ", folded.replace("̈", "").replace("́", "")).split())


def header_unit(text: str) -> str:
    """Return the unit in a header's brackets; empty where there is none that is known.

    Example:
        >>> header_unit("Width (cm)"), header_unit("Width")
        ('cm', '')
    """
    found = _UNIT.search(text[:200])
    return UNITS.get(found[1].casefold(), "") if found else ""


def known_header(text: str, kind: RecordKind) -> tuple[str, int] | None:
    """Return the key that a header means, and the number behind it; None where it isn't known.

    Example:
        >>> known_header("Width at head (mm)", RecordKind.OPENING)
        ('top', 1)
        >>> known_header("left 2", RecordKind.OPENING)
        ('left', 2)
        >>> known_header("Colour", RecordKind.OPENING) is None
        True
    """
    bare = _UNIT.sub(" ", text[:200]).strip()
    keys = cell_keys(kind)
    for words, number in ((bare, "1"), bare.rpartition(" ")[::2]):
        if not number.isdecimal() or len(number) > 2 or not int(number):
            continue
        if words.strip() in keys:
            return words.strip(), int(number)
        plain = plain_words(words)
        for path, meant in _WORDS[kind].items():
            if plain and plain in meant.split("|"):
                return path, int(number)
    return None


def words_for(kind: RecordKind, path: str) -> tuple[str, ...]:
    """Return the words that are taken for a key, besides its own name.

    Example:
        >>> words_for(RecordKind.RUN, "wall")
        ('wall', 'wand')
    """
    found = _WORDS[kind].get(path, "")
    return tuple(found.split("|")) if found else ()


_WORDS: Final = {
    RecordKind.OPENING: _OPENING_WORDS,
    RecordKind.RUN: _RUN_WORDS,
    RecordKind.PROFILE: {},
}
