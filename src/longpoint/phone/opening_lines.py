"""Which lines of an opening are read, in the order of the walk, and what can be said of each."""

from typing import Final

from longpoint.phone.messages import Choice, DialectWords, Form, KindLimits, Limits, LineLimits
from longpoint.quantities.length import MM_PER_INCH
from longpoint.sheets.dialects import Words, kind_words, words_for
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
    "left": ("left", "Height at the left side"),
    "top": ("top", "Width at the head"),
    "right": ("right", "Height at the right side"),
    "bottom": ("bottom", "Width at the bottom"),
    "rising": ("rising", "Diagonal, bottom left to top right"),
    "falling": ("falling", "Diagonal, top left to bottom right"),
    "plane.bl": ("plane BL", "Proud of the wall, bottom left"),
    "plane.tl": ("plane TL", "Proud of the wall, top left"),
    "plane.tr": ("plane TR", "Proud of the wall, top right"),
    "plane.br": ("plane BR", "Proud of the wall, bottom right"),
}
_ON_A_FLOOR: Final = {
    "left": "Left side, from the finished floor to the head",
    "right": "Right side, from the finished floor to the head",
    "bottom": "Width at the floor",
    "rising": "Diagonal, floor left to top right",
    "falling": "Diagonal, top left to floor right",
}
_DIALECTS: Final = {
    Dialect.AU: "Australia",
    Dialect.NZ: "New Zealand",
    Dialect.UK: "United Kingdom",
    Dialect.IE: "Ireland",
    Dialect.US: "United States",
    Dialect.CA: "Canada",
}
_TRIMS: Final = {
    Layout.ALL_ROUND: "all round",
    Layout.LEGS_AND_HEAD: "legs and head",
    Layout.BOARD_AND_APRON: "board and apron",
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
