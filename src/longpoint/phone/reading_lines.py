"""Every line of a house that may be read more than once."""

from collections.abc import Iterator
from typing import Any, NamedTuple

from longpoint.phone.forms import LINES
from longpoint.phone.messages.said import Document
from longpoint.phone.opening_lines import lines_of
from longpoint.phone.ways import Way, openings_in, places
from longpoint.quantities.length import Units
from longpoint.survey.openings import OpeningKind


class ReadingLine(NamedTuple):
    """A line that may be read more than once, where it stands, and how far readings may be apart.

    Attributes:
        units: Of the house; None for angles.
    """

    way: Way
    table: dict[str, Any]
    line: str
    apart: float
    units: Units | None


def units_of(document: Document) -> Units:
    """Return the unit of a house."""
    return Units.INCH if document.get("units") == "in" else Units.MM


def kind_of(opening: dict[str, Any]) -> OpeningKind:
    """Return the kind of an opening; a window where it is none that is known."""
    name = str(opening.get("kind", ""))
    return OpeningKind(name) if name in set(OpeningKind) else OpeningKind.WINDOW


def reading_lines(document: Document) -> Iterator[ReadingLine]:
    """Return every line of a house that is a reading, read or not."""
    units = units_of(document)
    for opening in openings_in(document):
        way: Way = ("openings", str(opening.get("mark", "")))
        for asked in lines_of(kind_of(opening)):
            yield ReadingLine(way, opening, asked.line, asked.apart, units)
    for way, form, table in places(document):
        for line in LINES[form]:
            if line.is_reading:
                unit = None if line.scale == "angle" else units
                yield ReadingLine(way, table, line.line, line.apart, unit)
