"""What an entry of the journal says, for whoever looks back through a house."""

import re
from collections.abc import Mapping, Sequence
from typing import Any, Final

from longpoint.errors import SurveyError
from longpoint.speech.said import joined, say, say_many
from longpoint.survey.house_file.parsed_text import parsed_house

LONGEST: Final = 60
"""Signs of a value that are shown."""


def entry_words(entry: Mapping[str, Any]) -> str:
    """Return an entry in words, without who wrote it and when.

    Example:
        >>> entry_words(
        ...     {
        ...         "what": "reading",
        ...         "opening": "W3",
        ...         "line": "top",
        ...         "value_text": "1178",
        ...         "unit": "mm",
        ...         "again": True,
        ...     }
        ... )
        'W3 top read again: 1178 mm'
    """
    try:
        return _words(entry)
    except (KeyError, TypeError, AttributeError, ValueError):
        return say("{entry}, which can't be read", entry=entry.get("what"))


def key_words(key: Sequence[str]) -> str:
    """Return the way to a setting as somebody would say it.

    Example:
        >>> key_words(["defaults", "floor_gap"]), key_words(["profiles", "AR57", "face"])
        ('floor gap', 'profile AR57 face')
        >>> key_words(["plane.bl"])
        'plane bl'
    """
    first, *rest = [re.sub(r"[._]", " ", part) for part in key]
    if first == "defaults" and rest:
        return joined(" ", rest)
    return joined(" ", [first.removesuffix("s") if rest else first, *rest])


def _words(entry: Mapping[str, Any]) -> str:
    match entry["what"]:
        case "house-made":
            return say("house begun: {entry}", entry=entry["name"])
        case "house-named":
            return say("house named {entry}", entry=entry["name"])
        case "opened-file":
            return _file_words(entry["text"])
        case "setting":
            return _set(key_words(entry["key"]), entry["value"])
        case "opening-added":
            return say(
                "{entry} added: {entry_2}, {entry_3}, {entry_4}",
                entry=entry["opening"],
                entry_2=entry["kind"],
                entry_3=entry["room"],
                entry_4=entry["trim"],
            )
        case "opening-changed":
            return _set(f"{entry['opening']} {key_words(entry['key'])}", entry["value"])
        case "opening-left-out":
            return say("{entry} left out", entry=entry["opening"])
        case "reading":
            return _read_words(entry["opening"], entry)
        case "place-added":
            return say("{place} added", place=_place(entry))
        case "place-changed":
            return _set(f"{_place(entry)} {key_words([entry['key']])}", entry["value"])
        case "place-left-out":
            return say("{place} left out", place=_place(entry))
        case "place-read":
            return _read_words(_place(entry), entry)
        case "undo":
            return say("taken back: ")
        case "cut-news":
            return say("at the saw: {entry}", entry=entry["told"])
        case "wall-gaps":
            return say("{entry}: gaps read on the wall", entry=entry["opening"])
        case other:
            return say("{other}, which a newer longpoint wrote", other=other)


def _place(entry: Mapping[str, Any]) -> str:
    return joined(" ", map(str, entry["place"][1::2]))


def _read_words(place: str, entry: Mapping[str, Any]) -> str:
    again = say(" again") if entry["again"] else ""
    line = key_words([entry["line"]])
    return say(
        "{place} {line} read{again}: {entry} {entry_2}",
        place=place,
        line=line,
        again=again,
        entry=entry["value_text"],
        entry_2=entry["unit"],
    )


def _set(key: str, value: object) -> str:
    return (
        say("{key} taken out", key=key)
        if value is None
        else say(
            "{key} = {shown}",
            key=key,
            shown=_shown(value),
        )
    )


def _shown(value: object) -> str:
    if isinstance(value, Mapping):
        return joined(", ", (f"{key} {_shown(each)}" for key, each in value.items()))[:LONGEST]
    if isinstance(value, Sequence) and not isinstance(value, str):
        if any(isinstance(each, Mapping) for each in value):
            return say("{value} entries", value=len(value))
        return joined(say(" and "), map(_shown, value))[:LONGEST]
    return str(value)[:LONGEST]


def _file_words(text: str) -> str:
    try:
        document = parsed_house(text)
    except SurveyError:
        return say("house file, which can't be read")
    openings = document.get("openings", ())
    count = len(openings) if isinstance(openings, list) else 0
    return say_many(
        "house file: {document}, {count} opening",
        "house file: {document}, {count} openings",
        document=document.get("name", ""),
        count=count,
    )
