"""Add keys to a TOML house file so that all else in it, remarks too, stays as it was."""

import copy
import json
import re
import tomllib
from collections.abc import Mapping, Sequence
from typing import Any, Final

from longpoint.errors import ExchangeError
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.written_numbers import number_text

_HEADER: Final = re.compile(
    r"^[ \t]*(?P<open>\[\[?)[ \t]*(?P<name>[^\[\]#]*?)[ \t]*\]\]?[ \t]*(?:#.*)?$", re.MULTILINE
)
_BARE: Final = re.compile(r"^[A-Za-z0-9_-]+$")

Additions = Mapping[str, object]
"""Keys and values that an entry gets; a table among them is written inline."""


def with_entries(
    text: str,
    document: Mapping[str, Any],
    into: Mapping[tuple[str, int | str], Additions],
    new: Sequence[tuple[str, str, Additions]],
) -> tuple[str, dict[str, Any]]:
    """Return a house file's text with keys added, and the document that it then is.

    The new text is parsed again and held to the document that is wanted, so that a file written in
    a way that isn't understood here is refused rather than spoiled.

    Args:
        text: The file's text.
        document: What it parses to.
        into: Keys for entries that are there: by list and place in it, or by table and name.
        new: Whole new entries: the list or table, the name in the table (empty: a list), keys.

    Raises:
        ExchangeError: The text can't be changed safely; the lines to write by hand are named.
    """
    wanted: dict[str, Any] = copy.deepcopy(dict(document))
    inserts: list[tuple[int, str]] = []
    spots = _spots(text)
    for (where, which), keys in into.items():
        wanted[where][which] |= keys
        spot = spots.get((where, which))
        if spot is None:
            raise _refused(keys)
        inserts.append((spot, "".join(f"{_key(k)} = {_value(v)}\n" for k, v in keys.items())))
    added = []
    for where, name, keys in new:
        if name:
            wanted.setdefault(where, {})[name] = dict(keys)
            head = f"[{where}.{_key(name)}]\n"
        else:
            wanted.setdefault(where, []).append(dict(keys))
            head = f"[[{where}]]\n"
        added.append(head + "".join(f"{_key(k)} = {_value(v)}\n" for k, v in keys.items()))
    changed = text if text.endswith("\n") or not text else f"{text}\n"
    for at, lines in sorted(inserts, reverse=True):
        changed = changed[:at] + lines + changed[at:]
    changed += "".join(f"\n{block}" for block in added)
    try:
        is_right = tomllib.loads(changed) == wanted
    except (tomllib.TOMLDecodeError, RecursionError, ValueError):
        is_right = False
    if not is_right:
        raise _refused(next(iter([*into.values(), *(keys for _, _, keys in new)]), {}))
    return changed, wanted


def _spots(text: str) -> dict[tuple[str, int | str], int]:
    """Where the first line below each header of an entry begins."""
    counts: dict[str, int] = {}
    spots: dict[tuple[str, int | str], int] = {}
    for header in _HEADER.finditer(text):
        name, below = header["name"], min(header.end() + 1, len(text))
        if header["open"] == "[[":
            spots[(name, counts.get(name, 0))] = below
            counts[name] = counts.get(name, 0) + 1
        elif "." in name:
            table, _, inner = name.partition(".")
            inner = inner.strip()
            if inner[:1] in {'"', "'"} and inner[-1:] == inner[:1]:
                inner = inner[1:-1]
            spots.setdefault((table.strip(), inner), below)
    return spots


def _refused(keys: Additions) -> ExchangeError:
    lines = joined("; ", (f"{_key(key)} = {_value(value)}" for key, value in keys.items()))
    return ExchangeError(
        say("The house file was to get what was confirmed."),
        say("It is written in a way that keys can't be added to safely, so it was left as it is."),
        say(
            "Write it in by hand, or keep entries under headers like [[openings]]: {lines}.",
            lines=lines[:400],
        ),
    )


def _key(key: str) -> str:
    return key if _BARE.match(key) else _text(key)


def _value(value: object) -> str:
    match value:
        case bool():
            return "true" if value else "false"
        case int() | float():
            return number_text(value)
        case Mapping():
            return (
                "{ "
                + joined(", ", (f"{_key(str(k))} = {_value(v)}" for k, v in value.items()))
                + " }"
            )
        case list() | tuple():
            return "[" + joined(", ", (_value(each) for each in value)) + "]"
        case _:
            return _text(str(value))


def _text(text: str) -> str:
    """A basic string of TOML: that of JSON, but for DEL, which TOML wants escaped."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
