"""Entries of a journal in, the house as it stands out."""

import copy
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations
from typing import Any, Final

from longpoint.errors import QuantityError
from longpoint.phone.entries import LineState, Place
from longpoint.phone.messages import (
    CanUndo,
    Document,
    Fold,
    FoldedOpening,
    NextLine,
    ReadLine,
    Said,
)
from longpoint.phone.opening_lines import lines_of
from longpoint.quantities.length import Units, parse_signed_length
from longpoint.survey.house_file.house_table import FORMAT
from longpoint.survey.house_file.parsed_text import parsed_house
from longpoint.survey.openings import OpeningKind

Entry = Mapping[str, Any]

_LISTS: Final = ("stock", "offcuts", "openings", "rooms", "runs")


@dataclass(slots=True)
class _House:
    """A house while its entries are laid one on the other."""

    document: Document = field(default_factory=dict)
    saw: str = ""
    gaps: dict[str, dict[str, tuple[str, str]]] = field(default_factory=dict)


def fold(entries: Sequence[Entry]) -> Fold:
    """Return the house as it stands after some entries, in the order in which they were written.

    Args:
        entries: Of one house, as `entries` describes them.
    """
    counting = _counting(entries)
    house = _House()
    for entry in counting:
        _lay(house, entry)
    document = house.document
    units = _units(document)
    openings = tuple(_opening(each, units) for each in document.get("openings", ()))
    held = tuple(
        _differs(opening.mark, line, units)
        for opening in openings
        for line in opening.lines
        if line.differs
    )
    kinds = [{line.line for line in lines_of(_kind(o.what)) if line.asked} for o in openings]
    return Fold(
        name=str(document.get("name", "")),
        units=units.value,
        dialect=str(document.get("dialect", "uk")),
        document=document,
        openings=openings,
        next=_next(openings),
        read=sum(len(asked) - o.left for asked, o in zip(kinds, openings, strict=True)),
        asked=sum(map(len, kinds)),
        held=held,
        undo=_undo(counting),
        saw=house.saw,
        gaps=house.gaps,
    )


def _counting(entries: Sequence[Entry]) -> list[Entry]:
    """Return the entries that count: those that no entry that counts has undone."""
    undone: set[tuple[str, int]] = set()
    counting = []
    for entry in reversed(entries):
        if (entry["device"], entry["counter"]) in undone:
            continue
        if entry["what"] == "undo":
            undone.add((entry["of"]["device"], entry["of"]["counter"]))
        else:
            counting.append(entry)
    return counting[::-1]


def _lay(house: _House, entry: Entry) -> None:
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
            house.document = parsed_house(entry["text"])
        case "setting":
            _put(document, entry["key"], entry["value"])
        case "opening-added":
            added = {
                "mark": entry["opening"],
                "room": entry["room"],
                "kind": entry["kind"],
                "trim": entry["trim"],
            }
            document.setdefault("openings", []).append(added)
        case "opening-left-out":
            openings = document.get("openings", [])
            document["openings"] = [o for o in openings if o.get("mark") != entry["opening"]]
        case "opening-changed":
            for opening in _named(document, entry["opening"]):
                _put(opening, entry["key"], entry["value"])
        case "reading":
            for opening in _named(document, entry["opening"]):
                _read(opening, entry)
        case "cut-news":
            house.saw = entry["state"]
        case "wall-gaps":
            house.gaps[entry["opening"]] = entry["gaps"]
        case _:
            # Of a newer version of the app: kept, but not understood here.
            pass


def _named(document: Document, mark: str) -> Iterable[dict[str, Any]]:
    return (each for each in document.get("openings", ()) if each.get("mark") == mark)


def _put(table: dict[str, Any], key: Sequence[str], value: Any) -> None:  # noqa: ANN401
    for part in key[:-1]:
        inner = table.setdefault(part, {})
        if not isinstance(inner, dict):
            inner = table[part] = {}
        table = inner
    if value is None:
        table.pop(key[-1], None)
    else:
        table[key[-1]] = copy.deepcopy(value)


def _read(opening: dict[str, Any], entry: Entry) -> None:
    key = entry["line"].split(".")
    text = _figure(entry["value_text"]) if entry["unit"] == "mm" else entry["value_text"]
    before = _texts(opening, entry["line"])
    _put(opening, key, [*before, text] if entry["again"] and before else text)


def _figure(text: str) -> int | float | str:
    """Return a number; text that is none stays, for the reader of the house to refuse."""
    try:
        return float(text) if "." in text or text.startswith("-") else int(text)
    except ValueError:
        return text


def _texts(opening: Mapping[str, Any], line: str) -> list[Any]:
    """Return the readings of a line as they stand in a document."""
    value: Any = opening
    for part in line.split("."):
        value = value.get(part) if isinstance(value, Mapping) else None
    if value is None:
        return []
    return list(value) if isinstance(value, list) else [value]


def _opening(entry: Mapping[str, Any], units: Units) -> FoldedOpening:
    kind = _kind(str(entry.get("kind", "")))
    lines, left = [], 0
    for asked in lines_of(kind):
        texts = _texts(entry, asked.line)
        left += asked.asked and not texts
        lines.append(
            ReadLine(
                line=asked.line,
                texts=tuple(map(str, texts)),
                differs=_apart(texts, asked.apart, units),
            )
        )
    is_read = "width" in entry or "corners" in entry or "sides" in entry or not left
    state = LineState.READ if is_read else LineState.PART
    if not any(line.texts for line in lines) and not is_read:
        state = LineState.UNREAD
    if any(line.differs for line in lines):
        state = LineState.HELD
    return FoldedOpening(
        mark=str(entry.get("mark", "")),
        room=str(entry.get("room", "")),
        what=kind.value,
        trim=str(entry.get("trim", "")),
        state=state,
        left=0 if is_read else left,
        lines=tuple(lines),
    )


def _apart(texts: Sequence[Any], apart_mm: float, units: Units) -> bool:
    """Tell whether the readings of a line disagree: no two of them agree, or there are but two."""
    try:
        values = [parse_signed_length(text, units) for text in texts]
    except QuantityError:
        return False
    if len(values) < 2 or max(values) - min(values) <= apart_mm:
        return False
    return not (len(values) > 2 and any(abs(a - b) <= apart_mm for a, b in combinations(values, 2)))


def decided(document: Document) -> Document:
    """Return the house with the odd one left out where a third reading has decided."""
    units = _units(document)
    done = copy.deepcopy(document)
    for opening in done.get("openings", ()):
        for asked in lines_of(_kind(str(opening.get("kind", "")))):
            texts = _texts(opening, asked.line)
            if len(texts) > 2 and not _apart(texts, asked.apart, units):
                _put(opening, asked.line.split("."), _agreeing(texts, asked.apart, units))
    return done


def _agreeing(texts: Sequence[Any], apart_mm: float, units: Units) -> list[Any]:
    values = [(parse_signed_length(text, units), text) for text in texts]
    best = max(values, key=lambda one: sum(abs(one[0] - other[0]) <= apart_mm for other in values))
    return [text for value, text in values if abs(value - best[0]) <= apart_mm]


def _differs(mark: str, line: ReadLine, units: Units) -> Said:
    figures = " and ".join(line.texts)
    return Said(
        code="readings-differ",
        severity="stop",
        place=mark,
        read=f"{line.line} was read as {figures} {units.value}.",
        wrong="They are further apart than a careful hand leaves, so one of them is a slip.",
        do="Read it once more, or choose the one that is right.",
    )


def _next(openings: Sequence[FoldedOpening]) -> NextLine | None:
    for opening in openings:
        for line, asked in zip(opening.lines, lines_of(_kind(opening.what)), strict=True):
            if opening.left and asked.asked and not line.texts:
                return NextLine(opening=opening.mark, line=line.line)
    return None


def _undo(counting: Sequence[Entry]) -> CanUndo | None:
    if not counting or counting[-1]["what"] in ("house-made", "opened-file"):
        return None
    last = counting[-1]
    match last["what"]:
        case "reading":
            words = f"{last['opening']} {last['line']} {last['value_text']}"
        case "cut-news":
            words = last["told"]
        case "opening-added":
            words = f"{last['opening']} added"
        case "opening-left-out":
            words = f"{last['opening']} left out"
        case "wall-gaps":
            words = f"{last['opening']}, gaps on the wall"
        case "setting" | "opening-changed":
            words = f"{'.'.join(last['key'])} changed"
        case _:
            words = last["what"]
    return CanUndo(of=Place(device=last["device"], counter=last["counter"]), words=words)


def _units(document: Document) -> Units:
    return Units.INCH if document.get("units") == "in" else Units.MM


def _kind(name: str) -> OpeningKind:
    return OpeningKind(name) if name in set(OpeningKind) else OpeningKind.WINDOW
