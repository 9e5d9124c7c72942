"""What an entry of the journal says, for whoever looks back through a house."""

import re
from collections.abc import Mapping, Sequence
from typing import Any, Final

from longpoint.errors import SurveyError
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
    except (KeyError, TypeError, AttributeError):
        return f"{entry.get('what')}, which can't be read"


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
        return " ".join(rest)
    return " ".join([first.removesuffix("s") if rest else first, *rest])


def _words(entry: Mapping[str, Any]) -> str:
    match entry["what"]:
        case "house-made":
            return f"house begun: {entry['name']}"
        case "house-named":
            return f"house named {entry['name']}"
        case "opened-file":
            return _file_words(entry["text"])
        case "setting":
            return _set(key_words(entry["key"]), entry["value"])
        case "opening-added":
            return f"{entry['opening']} added: {entry['kind']}, {entry['room']}, {entry['trim']}"
        case "opening-changed":
            return _set(f"{entry['opening']} {key_words(entry['key'])}", entry["value"])
        case "opening-left-out":
            return f"{entry['opening']} left out"
        case "reading":
            return _read_words(entry["opening"], entry)
        case "place-added":
            return f"{_place(entry)} added"
        case "place-changed":
            return _set(f"{_place(entry)} {key_words([entry['key']])}", entry["value"])
        case "place-left-out":
            return f"{_place(entry)} left out"
        case "place-read":
            return _read_words(_place(entry), entry)
        case "undo":
            return "taken back: "
        case "cut-news":
            return f"at the saw: {entry['told']}"
        case "wall-gaps":
            return f"{entry['opening']}: gaps read on the wall"
        case other:
            return f"{other}, which a newer longpoint wrote"


def _place(entry: Mapping[str, Any]) -> str:
    return " ".join(map(str, entry["place"][1::2]))


def _read_words(place: str, entry: Mapping[str, Any]) -> str:
    again = " again" if entry["again"] else ""
    line = key_words([entry["line"]])
    return f"{place} {line} read{again}: {entry['value_text']} {entry['unit']}"


def _set(key: str, value: object) -> str:
    return f"{key} taken out" if value is None else f"{key} = {_shown(value)}"


def _shown(value: object) -> str:
    if isinstance(value, Mapping):
        return ", ".join(f"{key} {_shown(each)}" for key, each in value.items())[:LONGEST]
    if isinstance(value, Sequence) and not isinstance(value, str):
        if any(isinstance(each, Mapping) for each in value):
            return f"{len(value)} entries"
        return " and ".join(map(_shown, value))[:LONGEST]
    return str(value)[:LONGEST]


def _file_words(text: str) -> str:
    try:
        document = parsed_house(text)
    except SurveyError:
        return "house file, which can't be read"
    openings = document.get("openings", ())
    count = len(openings) if isinstance(openings, list) else 0
    return f"house file: {document.get('name', '')}, {count} opening{'' if count == 1 else 's'}"
