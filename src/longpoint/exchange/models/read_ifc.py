"""Openings of a building model as lines of a list to confirm: as drawn, never as read."""

import math
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, Final

from longpoint.errors import ExchangeError
from longpoint.exchange.bounded_files import bounded_bytes, shown_name
from longpoint.exchange.confirm.found_values import FoundValue, safe_words, trouble_with
from longpoint.exchange.confirm.record_keys import RecordKind, cell_keys
from longpoint.exchange.limited_work import limited
from longpoint.speech.said import say
from longpoint.survey.house_file.written_numbers import number_text
from longpoint.survey.house_file.written_text import LONGEST_TEXT, MARK_SIGNS

LARGEST_BYTES: Final = 200_000_000
SECONDS: Final = 60
LONGEST_MARK: Final = 16
LETTERS: Final = {"door": "D", "window": "W", "cased": "C"}


def model_values(path: Path) -> tuple[FoundValue, ...]:
    """Return what a model says of its doors, windows and openings without either.

    The width and height are the overall sizes on the drawing. They go under `nominal`; no length
    hangs on them, and an opening with nothing else is held until it is read.

    Args:
        path: An IFC file in the text form of ISO 10303-21, IFC2X3, IFC4 or IFC4X3.

    Raises:
        ExchangeError: It can't be read, is a trap, or holds no opening; or the library isn't
            installed.
    """
    name = shown_name(path)
    read = say("The file {name} was to be read as a building model.", name=name)
    start = bounded_bytes(path, LARGEST_BYTES, say("a building model"))[:400]
    if path.suffix.lower() != ".ifc" or not start.lstrip(b"\xef\xbb\xbf \r\n\t").startswith(
        b"ISO-10303-21"
    ):
        raise ExchangeError(
            read,
            say("It is no IFC file in plain text; packed ones aren't read here."),
            say("Ask for an .ifc file, or unpack it first."),
        )
    found = limited(
        "longpoint.exchange.models.ifc_worker", path, say("a building model"), "ifc", SECONDS
    )
    if not found:
        raise ExchangeError(
            read,
            say("It holds no door, no window and no bare opening."),
            say("Ask for the model of the walls with what stands in them."),
        )
    values: list[FoundValue] = []
    for mark, each in zip(_marks(found), found, strict=True):
        values += _values(name, mark, each)
    return tuple(values)


def _marks(openings: Sequence[Mapping[str, Any]]) -> list[str]:
    """A short mark of each, its own tag or name where that is one, else a letter and a number."""
    counts = dict.fromkeys(LETTERS, 0)
    taken: set[str] = set()
    marks = []
    for each in openings:
        own = next((m for m in (each["tag"], each["name"]) if _is_mark(m, taken)), "")
        mark = own.strip()
        while not mark or mark in taken:
            counts[each["kind"]] += 1
            mark = f"{LETTERS[each['kind']]}{counts[each['kind']]}"
        taken.add(mark)
        marks.append(mark)
    return marks


def _is_mark(text: str, taken: set[str]) -> bool:
    mark = text.strip()
    has_signs = all(sign.isalnum() or sign in MARK_SIGNS for sign in mark)
    # A row of digits is a program's own number, and no mark that anybody pencilled.
    is_number = mark.isdecimal() and len(mark) > 3
    return 0 < len(mark) <= LONGEST_MARK and has_signs and not is_number and mark not in taken


def _values(file: str, mark: str, opening: Mapping[str, Any]) -> list[FoundValue]:
    source = f"{file} #{opening['id']}"
    named = safe_words(f"{opening['class']} {opening['name']}".strip())
    told = [
        ("room", safe_words(opening["storey"])[:LONGEST_TEXT], "", "storey"),
        ("kind", opening["kind"], "", named),
        ("nominal.width", _figure(opening["width_mm"]), "mm", named),
        ("nominal.height", _figure(opening["height_mm"]), "mm", named),
    ]
    keys = cell_keys(RecordKind.OPENING)
    return [
        FoundValue(
            kind=RecordKind.OPENING,
            mark=mark,
            path=path,
            value=value,
            unit=unit,
            written=written,
            source=source,
            trouble=trouble_with(keys[path], value, unit, path)
            if value
            else say("The model doesn't say it. Write it here, or no."),
        )
        for path, value, unit, written in told
        if value or path != "room"
    ]


def _figure(size_mm: float | None) -> str:
    if size_mm is None or not math.isfinite(size_mm) or abs(size_mm) > 1e9:
        return ""
    return number_text(round(size_mm, 2))
