"""Entries of a journal in, the house as it stands out."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final

from longpoint.journal import Entry, counting, in_order
from longpoint.phone.entries import EntryKey, LineState
from longpoint.phone.entry_shapes import is_whole
from longpoint.phone.entry_words import key_words
from longpoint.phone.folded_places import country_words, folded_places, title_of, who_read
from longpoint.phone.forms import LINES
from longpoint.phone.laying import Laid, laid
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
from longpoint.phone.reading_lines import kind_of, reading_lines, units_of
from longpoint.phone.readings import differ, texts_of
from longpoint.phone.ways import Way, form_name, openings_in
from longpoint.quantities.length import Units
from longpoint.sheets.dialects import in_words
from longpoint.speech.said import joined, say
from longpoint.survey.openings import OpeningKind

_OF_PLACES: Final = ("place-added", "place-read", "place-changed", "place-left-out")


def fold(entries: Iterable[Entry]) -> Fold:
    """Return the house as it stands after some entries.

    Two journals of one house give the same house in whatever order their entries come, and an entry
    that comes twice counts once.

    Args:
        entries: Of one house, as `entries` describes them.
    """
    written = counting(tuple(filter(is_whole, in_order(entries))))
    house = laid(written)
    document = house.document
    units = units_of(document)
    openings = tuple(_opening(house, each, units) for each in openings_in(document))
    places = folded_places(house, units)
    asked = [
        *((sum(line.asked for line in lines_of(OpeningKind(o.what))), o.left) for o in openings),
        *((sum(line.asked for line in LINES[p.form]), p.left) for p in places),
    ]
    return Fold(
        name=str(document.get("name", "")),
        units=units.value,
        dialect=str(document.get("dialect", "uk")),
        document=document,
        openings=openings,
        places=places,
        next=_next(openings),
        read=sum(count - left for count, left in asked),
        asked=sum(count for count, _ in asked),
        held=tuple(_held(document)),
        undo=_undo(written, document),
        saw=house.saw,
        gaps=house.gaps,
    )


def _opening(house: Laid, entry: Mapping[str, Any], units: Units) -> FoldedOpening:
    kind = kind_of(dict(entry))
    mark = str(entry.get("mark", ""))
    lines, left = [], 0
    for asked in lines_of(kind):
        texts = texts_of(entry, asked.line)
        left += asked.asked and not texts
        lines.append(
            ReadLine(
                line=asked.line,
                texts=tuple(map(str, texts)),
                by=who_read(house, ("openings", mark), asked.line, texts),
                differs=differ(texts, asked.apart, units),
            )
        )
    is_read = "width" in entry or "corners" in entry or "sides" in entry or not left
    state = LineState.READ if is_read else LineState.PART
    if not any(line.texts for line in lines) and not is_read:
        state = LineState.UNREAD
    if any(line.differs for line in lines):
        state = LineState.HELD
    return FoldedOpening(
        mark=mark,
        room=str(entry.get("room", "")),
        what=kind.value,
        trim=str(entry.get("trim", "")),
        state=state,
        left=0 if is_read else left,
        lines=tuple(lines),
    )


def _held(document: Document) -> Iterable[Said]:
    """Say of every line whose readings disagree that it holds the place it belongs to."""
    for line in reading_lines(document):
        texts = texts_of(line.table, line.line)
        if not differ(texts, line.apart, line.units):
            continue
        part = ""
        if len(line.way) > 2:
            form = form_name(document, line.way)
            part = f"{title_of(line.way, form, country_words(document))}: "
        unit = line.units.value if line.units else "degrees"
        yield Said(
            code="readings-differ",
            severity="stop",
            place=line.way[1],
            read=say(
                "{part}{line} was read as {texts} {unit}.",
                part=part,
                line=line.line,
                texts=joined(say(" and "), map(str, texts)),
                unit=unit,
            ),
            wrong=say(
                "They are further apart than a careful hand leaves, so one of them is a slip."
            ),
            do=say("Read it once more, or choose the one that is right."),
        )


def _next(openings: Sequence[FoldedOpening]) -> NextLine | None:
    for opening in openings:
        for line, asked in zip(opening.lines, lines_of(OpeningKind(opening.what)), strict=True):
            if opening.left and asked.asked and not line.texts:
                return NextLine(opening=opening.mark, line=line.line)
    return None


def _undo(count: Sequence[Entry], document: Document) -> CanUndo | None:
    if not count or count[-1]["what"] in ("house-made", "opened-file"):
        return None
    last = count[-1]
    # Another version may mean something else by a place.
    way: Way = tuple(last["place"]) if last["what"] in _OF_PLACES else ("", "")
    country = country_words(document)
    name = title_of(way, form_name(document, way) or "rooms", country)
    match last["what"]:
        case "reading":
            words = f"{last['opening']} {key_words([last['line']])} {last['value_text']}"
        case "place-read":
            words = f"{name}: {key_words([last['line']])} {last['value_text']}"
        case "cut-news":
            words = last["told"]
        case "opening-added":
            words = say("{last} added", last=last["opening"])
        case "opening-left-out":
            words = say("{last} left out", last=last["opening"])
        case "place-added":
            words = say("{name} added", name=name)
        case "place-left-out":
            words = say("{way} left out", way=joined(" ", way[1::2]))
        case "place-changed":
            words = say("{name}: {key} changed", name=name, key=key_words([last["key"]]))
        case "wall-gaps":
            words = say("{last}, gaps on the wall", last=last["opening"])
        case "setting":
            words = in_words(say("{key} changed", key=key_words(last["key"])), country)
        case "opening-changed":
            words = in_words(f"{last['opening']} {key_words(last['key'])} changed", country)
        case _:
            words = last["what"]
    return CanUndo(of=EntryKey(device=last["device"], counter=last["counter"]), words=words)
