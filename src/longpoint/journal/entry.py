"""One entry: who wrote it, its count, when, of which house; and its one way of being written."""

import json
from collections.abc import Mapping
from typing import Any, Final, NamedTuple

from longpoint.errors import SurveyError
from longpoint.journal.json_depth import is_nested_deeper

Entry = Mapping[str, Any]
"""An entry as `phone/entries` describes them, also one of a kind that this version doesn't know."""

LONGEST_NAME: Final = 100
"""Signs in the name of a device, a house or a kind of entry."""
LARGEST_ENTRY: Final = 10_000_000
"""Signs in an entry; the largest is a house file that was opened."""
DEEPEST: Final = 30
"""Brackets that may be open at once: those of a house file that was opened, and its entry's."""
NO_HOUSE: Final = "."
"""With it begin the keys of what a laptop keeps beside its houses, such as the rack."""
MOST_COUNT: Final = 2**53
"""A browser counts no further without skipping numbers."""


class Key(NamedTuple):
    """Which entry: no two entries have one key."""

    device: str
    counter: int


def key_of(entry: Entry) -> Key:
    """Return the key of an entry.

    Example:
        >>> key_of({"device": "p", "counter": 3})
        Key(device='p', counter=3)
    """
    return Key(entry["device"], entry["counter"])


def is_house(key: str) -> bool:
    """Tell whether a key is a house's.

    Example:
        >>> is_house("7f3c"), is_house(".rack")
        (True, False)
    """
    return not key.startswith(NO_HOUSE)


def as_written(entry: Entry) -> str:
    """Return an entry as text: the same text for the same entry, on every device.

    Whole numbers are written without a point, since a browser knows no other way.

    Raises:
        SurveyError: There is something in it that can't be written.

    Example:
        >>> as_written({"what": "setting", "value": 3.0, "counter": 1})
        '{"counter":1,"value":3,"what":"setting"}'
    """
    try:
        return json.dumps(_plain(entry), sort_keys=True, separators=(",", ":"), allow_nan=False)
    except (TypeError, ValueError, RecursionError):
        raise _refused("There is something in it that can't be written down.") from None


def read_entry(text: str) -> Entry:
    """Return the entry in a text.

    Raises:
        SurveyError: There is none in it.

    Example:
        >>> text = '{"at":"","counter":1,"device":"p","house":"h","what":"house-named"}'
        >>> as_written(read_entry(text)) == text
        True
    """
    if len(text) > LARGEST_ENTRY:
        raise _refused("It is far larger than any that longpoint writes.")
    if is_nested_deeper(text, DEEPEST):
        raise _refused("It is nested deeper than any that longpoint writes.")
    try:
        return checked_entry(json.loads(text))
    except ValueError:
        raise _refused("It is damaged: it can't be read.") from None


def checked_entry(found: object) -> Entry:
    """Return what was found if it is an entry: device, count, time, house and kind are there.

    Raises:
        SurveyError: It is none.
    """
    if not isinstance(found, Mapping):
        raise _refused("It is no table of keys and values.")
    for key in ("device", "house", "what"):
        name = found.get(key)
        if not isinstance(name, str) or not 0 < len(name) <= LONGEST_NAME:
            raise _refused(f"Its {key} is missing, or is no short name.")
        if not name.isprintable():
            raise _refused(f"There are signs in its {key} that can't be printed.")
    counter = found.get("counter")
    if type(counter) is not int or not 0 < counter < MOST_COUNT:
        raise _refused("Its count is missing, or is no whole number above nought.")
    if not isinstance(found.get("at"), str) or len(found["at"]) > LONGEST_NAME:
        raise _refused("The time it was written is missing.")
    return found


def _plain(value: object) -> object:
    match value:
        case Mapping():
            return {str(key): _plain(each) for key, each in value.items()}
        case list() | tuple():
            return [_plain(each) for each in value]
        case float() if value.is_integer() and abs(value) < MOST_COUNT:
            return int(value)
        case _:
            return value


def _refused(wrong: str) -> SurveyError:
    return SurveyError(
        "An entry of a journal was read.",
        wrong,
        "Leave it where it is and send it again from the device that wrote it.",
    )
