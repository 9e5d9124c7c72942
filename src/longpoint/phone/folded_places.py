"""How far each room, wall, run and other trim has come."""

from collections.abc import Mapping, Sequence
from typing import Any

from longpoint.phone.entries import EntryKey, LineState
from longpoint.phone.forms import LINES
from longpoint.phone.laying import Laid
from longpoint.phone.messages.limits import FormLine
from longpoint.phone.messages.said import Document
from longpoint.phone.messages.standing import FoldedPlace, ReadLine
from longpoint.phone.readings import differ, texts_of
from longpoint.phone.ways import FORMS, Way, places
from longpoint.quantities.length import Units
from longpoint.sheets.dialects import Words, in_words, words_for
from longpoint.speech.said import joined
from longpoint.survey.house import Dialect

_PARTS = {"walls": "wall", "openings": "at", "lights": "light", "diagonals": "diagonal"}


def folded_places(house: Laid, units: Units) -> tuple[FoldedPlace, ...]:
    """Return every place that is read by a form, in the order of the house file."""
    return tuple(
        _place(house, way, form, table, units) for way, form, table in places(house.document)
    )


def who_read(house: Laid, way: Way, line: str, texts: Sequence[Any]) -> tuple[EntryKey, ...]:
    """Return the entries by which a line was read, as far as it was read on a phone."""
    by = house.by.get((way, line), [])
    return tuple(who for who in by if who is not None) if len(by) == len(texts) else ()


def _place(house: Laid, way: Way, form: str, table: Mapping[str, Any], units: Units) -> FoldedPlace:
    lines, left = [], 0
    for asked in LINES[form]:
        texts = texts_of(table, asked.line)
        left += asked.asked and not texts
        lines.append(
            ReadLine(
                line=asked.line,
                texts=_texts(asked, texts),
                by=who_read(house, way, asked.line, texts) if asked.is_reading else (),
                differs=asked.is_reading
                and differ(texts, asked.apart, None if asked.scale == "angle" else units),
            )
        )
    state = LineState.READ
    if left:
        is_begun = any(line.texts for line in lines)
        state = LineState.PART if is_begun else LineState.UNREAD
    if any(line.differs for line in lines):
        state = LineState.HELD
    return FoldedPlace(
        place=way,
        form=form,
        title=title_of(way, form, country_words(house.document)),
        root=way[1],
        room=way[1] if way[0] == "rooms" else str(table.get("room", "")),
        state=state,
        left=left,
        lines=tuple(lines),
    )


def country_words(document: Document) -> Words:
    """Return the words of the country of a house; those of the UK where it names none we know."""
    said = str(document.get("dialect", "uk"))
    return words_for(Dialect(said) if said in list(Dialect) else Dialect.UK)


def title_of(way: Way, form: str, words: Words) -> str:
    """Return what a place is called.

    Example:
        >>> words = words_for(Dialect.US)
        >>> title_of(("rooms", "Kitchen", "walls", "N"), "rooms.walls", words)
        'Kitchen, wall N'
        >>> title_of(("trims", "C1"), "trims:cornice", words)
        'C1, crown'
    """
    parts = [way[1]]
    if len(way) == 2 and form != "rooms":
        title = in_words(FORMS[form].title, words)
        parts.append(title.removeprefix("an ").removeprefix("a "))
    for name, label in zip(way[2::2], way[3::2], strict=True):
        what = _PARTS.get(name, name.replace("_", " ").removesuffix("s"))
        parts.append(f"{what} {label}")
    return joined(", ", parts)


def _texts(asked: FormLine, texts: Sequence[Any]) -> tuple[str, ...]:
    if asked.scale == "tables":
        return (f"{len(texts)}",) if texts else ()
    if asked.scale == "points":
        return tuple(
            joined(" ", map(str, each)) if isinstance(each, list) else str(each) for each in texts
        )
    if asked.scale == "flag":
        return tuple("yes" if each is True else "no" for each in texts)
    return tuple(map(str, texts))
