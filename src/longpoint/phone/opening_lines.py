"""Which lines of an opening are read, in the order of the walk, and what can be said of each."""

from typing import Final

from longpoint.phone.messages import Choice, DialectWords, Form, KindLimits, Limits, LineLimits
from longpoint.quantities.length import MM_PER_INCH
from longpoint.sheets.dialects import Words, kind_words, words_for
from longpoint.speech.said import say
from longpoint.survey.checks.opposite_sides import DOOR_WIDTH_APART_MM, WINDOW_APART_MM
from longpoint.survey.house import Dialect
from longpoint.survey.house_file.face_tables import LONGEST_SIDE_MM
from longpoint.survey.instruments import Tape
from longpoint.survey.odd_one import apart_mm
from longpoint.survey.openings import Layout, OpeningKind

SMALLEST_MM: Final = 100.0
"""No opening that gets trim is smaller: our choice, no source."""
MOST_PROUD_MM: Final = 30.0
"""More than this is not a plane reading: our choice, no source."""
FLOOR_APART_MM: Final = 25.0
"""Legs of a door may differ by a floor's fall; beyond this they are looked at again: ours."""

CORNERS: Final = ("bl", "tl", "tr", "br")
"""From the bottom left clockwise, as the walk goes."""

_ACROSS: Final = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}
_WORDS: Final = {
    "left": ("left", say("Height at the left side")),
    "top": ("top", say("Width at the head")),
    "right": ("right", say("Height at the right side")),
    "bottom": ("bottom", say("Width at the bottom")),
    "rising": ("rising", say("Diagonal, bottom left to top right")),
    "falling": ("falling", say("Diagonal, top left to bottom right")),
    "plane.bl": (say("plane BL"), say("Proud of the wall, bottom left")),
    "plane.tl": (say("plane TL"), say("Proud of the wall, top left")),
    "plane.tr": (say("plane TR"), say("Proud of the wall, top right")),
    "plane.br": (say("plane BR"), say("Proud of the wall, bottom right")),
}
_ON_A_FLOOR: Final = {
    "left": say("Left side, from the finished floor to the head"),
    "right": say("Right side, from the finished floor to the head"),
    "bottom": say("Width at the floor"),
    "rising": say("Diagonal, floor left to top right"),
    "falling": say("Diagonal, top left to floor right"),
}
_DIALECTS: Final = {
    Dialect.AU: "Australia",
    Dialect.NZ: say("New Zealand"),
    Dialect.UK: say("United Kingdom"),
    Dialect.IE: "Ireland",
    Dialect.US: say("United States"),
    Dialect.CA: "Canada",
}
_TRIMS: Final = {
    Layout.ALL_ROUND: say("all round"),
    Layout.LEGS_AND_HEAD: say("legs and head"),
    Layout.BOARD_AND_APRON: say("board and apron"),
}


def limits(forms: tuple[Form, ...], words: Words) -> Limits:
    """Return what a page checks by itself while a figure is typed.

    Args:
        forms: Of all that isn't an opening.
        words: Of the country.
    """
    return Limits(
        forms=forms,
        kinds=tuple(
            KindLimits(kind=kind.value, words=kind_words(kind), lines=lines_of(kind))
            for kind in OpeningKind
        ),
        dialects=tuple(_country(dialect, name) for dialect, name in _DIALECTS.items()),
        trims=tuple(
            Choice(value=trim.value, words=said.replace("board", words.board.split()[-1]))
            for trim, said in _TRIMS.items()
        ),
        mm_per_inch=MM_PER_INCH,
    )


def _country(dialect: Dialect, name: str) -> DialectWords:
    said = words_for(dialect)
    return DialectWords(
        value=dialect.value,
        words=name,
        quirk=said.quirk,
        skirting=said.skirting,
        mitre=said.mitre,
    )


def lines_of(kind: OpeningKind) -> tuple[LineLimits, ...]:
    """Return the lines of one kind of opening in the order of the walk.

    Example:
        >>> [line.line for line in lines_of(OpeningKind.WINDOW) if line.asked]
        ['left', 'top', 'right', 'bottom', 'rising', 'falling']
    """
    return tuple(_line(key, kind) for key in _WORDS)


def _line(key: str, kind: OpeningKind) -> LineLimits:
    is_plane = key.startswith("plane.")
    on_floor = kind is not OpeningKind.WINDOW
    short, words = _WORDS[key]
    longest = LONGEST_SIDE_MM * (2.0 if key in ("rising", "falling") else 1.0)
    beside_apart = WINDOW_APART_MM
    if on_floor:
        beside_apart = FLOOR_APART_MM if key in ("left", "right") else DOOR_WIDTH_APART_MM
    return LineLimits(
        line=key,
        short=short,
        words=_ON_A_FLOOR.get(key, words) if on_floor else words,
        scale="proud" if is_plane else "length",
        least=-MOST_PROUD_MM if is_plane else SMALLEST_MM,
        most=MOST_PROUD_MM if is_plane else longest,
        apart=1.0 if is_plane else apart_mm(Tape(name="")),
        beside=_ACROSS.get(key, ""),
        beside_apart=beside_apart,
        asked=not is_plane,
    )
