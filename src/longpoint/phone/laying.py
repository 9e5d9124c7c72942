"""Entries laid one on the other: the document of a house, and who read what of it."""

import contextlib
import copy
import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any

from longpoint.errors import StockError, SurveyError
from longpoint.journal import Entry
from longpoint.phone import ways
from longpoint.phone.entries import EntryKey
from longpoint.phone.messages.said import Document
from longpoint.phone.readings import texts_of
from longpoint.speech.said import joined, say
from longpoint.sticks.news.joined_saws import joined_saws
from longpoint.sticks.news.saw_document import kept_saw, saw_document
from longpoint.survey.house_file.house_table import FORMAT
from longpoint.survey.house_file.parsed_text import parsed_house

Line = tuple[tuple[str, ...], str]
"""The way to a place, and one of its lines."""


@dataclass(slots=True)
class Laid:
    """A house while its entries are laid one on the other.

    Attributes:
        by: The entry that each reading of a line was made by; None: it came with a file.
    """

    document: Document = field(default_factory=dict)
    saw: str = ""
    gaps: dict[str, dict[str, tuple[str, str]]] = field(default_factory=dict)
    by: dict[Line, list[EntryKey | None]] = field(default_factory=dict)


def laid(entries: Iterable[Entry]) -> Laid:
    """Return the house of some entries, all of which count, in their order."""
    house = Laid()
    for entry in entries:
        _lay(house, entry)
    return house


def _lay(house: Laid, entry: Entry) -> None:
    document = house.document
    match entry["what"]:
        case "house-made":
            document.update(
                format=FORMAT,
                name=entry["name"],
                units=entry["units"],
                dialect=entry["dialect"],
            )
        case "house-named":
            document["name"] = entry["name"]
        case "opened-file":
            # One that can't be read leaves what was there; whoever opened it was told.
            with contextlib.suppress(SurveyError):
                house.document = parsed_house(entry["text"])
                house.by.clear()
        case "setting":
            put(document, entry["key"], entry["value"])
        case "opening-added":
            added = {key: entry[key] for key in ("room", "kind", "trim")}
            ways.add(document, ("openings", entry["opening"]), added)
        case "opening-left-out":
            _leave_out(house, ("openings", entry["opening"]))
        case "opening-changed":
            for opening in _named(document, entry["opening"]):
                put(opening, entry["key"], entry["value"])
        case "reading":
            _read(house, ("openings", entry["opening"]), entry)
        case "place-added":
            ways.add(document, tuple(entry["place"]), entry["values"])
        case "place-left-out":
            _leave_out(house, tuple(entry["place"]))
        case "place-changed":
            place = tuple(entry["place"])
            table = ways.found(document, place)
            if table is not None:
                put(table, entry["key"].split("."), entry["value"])
                house.by.pop((place, entry["key"]), None)
        case "place-read":
            _read(house, tuple(entry["place"]), entry)
        case "cut-news":
            house.saw = _with_cuts_of(house.saw, entry["state"])
        case "wall-gaps":
            house.gaps[entry["opening"]] = entry["gaps"]
        case _:
            # Of a newer version of the app: kept, but not understood here.
            pass


def _with_cuts_of(earlier: str, later: str) -> str:
    """Return where the cutting stands after news that may not know what was told before."""
    try:
        before, after = kept_saw(json.loads(earlier)), kept_saw(json.loads(later))
    except (StockError, ValueError, RecursionError):
        return later
    both = joined_saws(before, after)
    if both is after:
        return later
    return json.dumps(saw_document(both.state, both.readings_code, both.shapes))


def _named(document: Document, mark: str) -> Iterable[dict[str, Any]]:
    return (each for each in ways.openings_in(document) if each.get("mark") == mark)


def put(table: dict[str, Any], key: Sequence[str], value: Any) -> None:  # noqa: ANN401
    """Put a value at the end of a way of keys; None takes it out."""
    for part in key[:-1]:
        inner = table.setdefault(part, {})
        if not isinstance(inner, dict):
            inner = table[part] = {}
        table = inner
    if value is None:
        table.pop(key[-1], None)
    else:
        table[key[-1]] = copy.deepcopy(value)


def _leave_out(house: Laid, way: ways.Way) -> None:
    ways.leave_out(house.document, way)
    for line in [line for line in house.by if line[0][: len(way)] == way]:
        del house.by[line]


def _read(house: Laid, way: ways.Way, entry: Entry) -> None:
    table = ways.found(house.document, way)
    if table is None:
        return
    line = entry["line"]
    before = texts_of(table, line)
    by = house.by.get((way, line), [])
    if len(by) != len(before):
        by = [None] * len(before)
    gone = _superseded(entry, by)
    standing = [(who, text) for who, text in zip(by, before, strict=True) if who not in gone]
    mine = EntryKey(device=entry["device"], counter=entry["counter"])
    standing.append((mine, _written(entry)))
    house.by[way, line] = [who for who, _ in standing]
    texts = [text for _, text in standing]
    put(table, line.split("."), texts if len(texts) > 1 else texts[0])


def _superseded(entry: Entry, by: Sequence[EntryKey | None]) -> list[EntryKey | None]:
    """Return which readings of a line a new one takes the place of."""
    if entry["again"]:
        return []
    over = entry.get("over")
    if over is None:
        return [who for who in by if who is None or who.device == entry["device"]]
    # A reading of the file lay before everyone who wrote after it was opened.
    return [None, *(EntryKey(device=one["device"], counter=one["counter"]) for one in over)]


def _written(entry: Entry) -> int | float | str:
    """Return a reading as a house file has it; what is no number is refused by its reader."""
    text: str = entry["value_text"]
    if entry["unit"] == "in":
        return text
    try:
        return float(text) if "." in text or text.startswith("-") else int(text)
    except ValueError:
        return text


def require_place(document: Document, way: Sequence[str]) -> dict[str, Any]:
    """Return the table of a place.

    Raises:
        SurveyError: There is no such place.
    """
    table = ways.found(document, way)
    if table is None:
        raise SurveyError(
            say("{way} was asked for.", way=joined(" ", way[1::2])),
            say("The house has none of it."),
            say("Choose another."),
        )
    return table
