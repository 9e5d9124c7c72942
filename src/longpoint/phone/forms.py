"""What is asked of rooms, walls, runs and every kind of trim: one form each, as data."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from longpoint.phone.messages.limits import Choice, Form, FormLine
from longpoint.phone.ways import FORMS, is_asked, label_key
from longpoint.quantities.length import LONGEST_MM
from longpoint.sheets.dialects import Words, in_words, words_for
from longpoint.survey.house import Dialect
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.instruments import Tape
from longpoint.survey.odd_one import APART_DEG, apart_along_wall_mm, apart_mm

_SCALES: Final = {
    Kind.LENGTH: "length",
    Kind.READING: "length",
    Kind.SIGNED_LENGTH: "signed",
    Kind.SIGNED_READING: "signed",
    Kind.ANGLE: "angle",
    Kind.ANGLE_READING: "angle",
    Kind.COUNT: "count",
    Kind.NUMBER: "number",
    Kind.CHOICE: "choice",
    Kind.FLAG: "flag",
    Kind.TEXT: "text",
    Kind.MARK: "text",
    Kind.CODES: "names",
    Kind.READINGS: "lengths",
    Kind.ANGLES: "angles",
    Kind.POINTS: "points",
    Kind.TABLES: "tables",
}
"""How a page takes a value; keys of any other kind stay with the house file."""

_UNASKED: Final = frozenset({"tape", "accept", "corner_u", "kind"})
"""What a page doesn't ask for: set once for the house, or not at all."""

_NAMES: Final = {
    **dict.fromkeys(("board", "head", "apron", "cover", "profile", "level_profile"), "profiles"),
    **dict.fromkeys(("walls", "wall", "datum", "from", "to"), "walls"),
    **dict.fromkeys(("openings", "opening"), "openings"),
    "room": "rooms",
}
"""Where what a key names is found; other texts are free."""


def forms(words: Words) -> tuple[Form, ...]:
    """Return every form, those of the catalogue in its order.

    Args:
        words: Of the country; what an answer is kept as is the same in all.
    """
    return tuple(
        Form(
            form=name,
            title=in_words(table.title, words),
            label=label_key(table),
            lines=tuple(
                _line(name, key, words)
                for key in _flat(table)
                if key.kind in _SCALES and key.name not in {*_UNASKED, label_key(table)}
            ),
        )
        for name, table in FORMS.items()
    )


def _flat(table: Table) -> Iterator[Key]:
    """Return the keys of a table; those of a table in it by both names."""
    for key in table.keys:
        if key.kind is not Kind.TABLE or key.table is None:
            yield key
            continue
        for inner in key.table.keys:
            name = f"{key.name}.{inner.name}"
            is_needed = key.required and inner.required
            yield replace(inner, name=name, required=is_needed)


def _line(form: str, key: Key, words: Words) -> FormLine:
    scale = _SCALES[key.kind]
    is_long = scale in ("length", "signed", "lengths")
    return FormLine(
        line=key.name,
        short=in_words(key.name.replace("_", " ").replace(".", " ").capitalize(), words),
        words=in_words(key.meaning, words),
        left_out=in_words(key.left_out, words),
        scale=scale,  # type: ignore[arg-type]
        is_reading=key.kind in (Kind.READING, Kind.SIGNED_READING, Kind.ANGLE_READING),
        asked=is_asked(form, key),
        least=key.low,
        most=min(key.high, LONGEST_MM if is_long else 1e6),
        apart=_apart_mm(form) if is_long else APART_DEG,
        choices=tuple(
            Choice(value=str(each), words=in_words(str(each), words)) for each in key.choices
        ),
        names=_NAMES.get(key.name, "") if scale in ("text", "names") else "",
        form=f"{form}.{key.name}" if scale == "tables" else "",
    )


def _apart_mm(form: str) -> float:
    """How far two lengths of a form may be apart, as the reader of house files has it. [mm]"""
    is_along_wall = form.partition(".")[0] in ("rooms", "runs")
    return (apart_along_wall_mm if is_along_wall else apart_mm)(Tape(name=""))


LINES: Final = {form.form: form.lines for form in forms(words_for(Dialect.UK))}
"""The lines of each form, by its name."""
