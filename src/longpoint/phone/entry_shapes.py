"""Has an entry all that its kind says? One that hasn't is kept and passed on, but doesn't count."""

from collections.abc import Container, Iterable, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from types import UnionType
from typing import Any, Final, Literal, get_args, get_origin, get_type_hints

from longpoint.journal import Entry
from longpoint.phone import entries as kinds

_ONCE_LEFT_OUT: Final = "over"
"""An older app didn't write it."""


def is_whole(entry: Entry) -> bool:
    """Return whether an entry has the keys of its kind, each with what the record says of it.

    An entry of a kind that isn't known here is of a newer version, and as good as whole: nothing
    is made of it.

    Args:
        entry: As `journal.checked_entry` gives it.

    Example:
        >>> named = {"device": "p", "counter": 1, "at": "", "house": "h", "what": "house-named"}
        >>> is_whole({**named, "name": "Pipit"}), is_whole(named), is_whole({**named, "name": 3})
        (True, False, False)
    """
    record = _records().get(entry["what"])
    if record is None:
        return True
    return _has_all(entry, record) and _leads_somewhere(entry, _hints(record))


def _leads_somewhere(entry: Entry, said: Container[str]) -> bool:
    """Say whether a place is made of lists and marks by turns, and a key of one part or more.

    What the kind doesn't say is left alone, whatever it is called.
    """
    place = entry["place"] if "place" in said else ("", "")
    key = entry["key"] if "key" in said else ("",)
    return len(place) > 0 and len(place) % 2 == 0 and len(key) > 0


@cache
def _records() -> Mapping[str, Any]:
    records = get_args(kinds.Entry)
    return {get_args(get_type_hints(each)["what"])[0]: each for each in records}


@cache
def _hints(record: Any) -> Mapping[str, Any]:  # noqa: ANN401
    hints = get_type_hints(record)
    return {each.name: hints[each.name] for each in fields(record)}


def _has_all(found: Mapping[str, Any], record: Any) -> bool:  # noqa: ANN401
    return all(
        _fits(found[key], hint) if key in found else key == _ONCE_LEFT_OUT
        for key, hint in _hints(record).items()
    )


def _fits(value: object, hint: Any) -> bool:  # noqa: ANN401
    origin, inner = get_origin(hint), get_args(hint)
    if hint is Any:
        return True
    if origin is Literal:
        return isinstance(value, str) and value in inner
    if origin is UnionType:
        return any(_fits(value, each) for each in inner)
    if origin is dict:
        return isinstance(value, Mapping) and _all_fit(value.values(), inner[1])
    if origin is tuple:
        if not isinstance(value, list | tuple):
            return False
        if inner[-1] is Ellipsis:
            return _all_fit(value, inner[0])
        return len(value) == len(inner) and all(map(_fits, value, inner))
    if is_dataclass(hint):
        return isinstance(value, Mapping) and _has_all(value, hint)
    return type(value) is hint or (hint is type(None) and value is None)


def _all_fit(values: Iterable[object], hint: Any) -> bool:  # noqa: ANN401
    return all(_fits(each, hint) for each in values)
