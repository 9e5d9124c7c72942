"""The text of a house file, TOML or JSON, as tables; what is no house file is refused."""

import json
import re
import tomllib
from collections.abc import Mapping
from typing import Any, Final, NoReturn

from longpoint.errors import SurveyError
from longpoint.journal.json_depth import is_nested_deeper
from longpoint.speech.said import say

LARGEST_FILE_BYTES: Final = 8 * 1024 * 1024
DEEPEST: Final = 20
MOST_ENTRIES: Final = 200_000
LONGEST_LINE_SHOWN: Final = 60

_AT: Final = re.compile(r"\s*\(at (?:line (?P<line>\d+), column (?P<column>\d+)|end of document)\)")


def parsed_house(text: str, name: str = "The text", *, is_json: bool = False) -> dict[str, Any]:
    """Return the tables in the text of a house file.

    Args:
        text: TOML; JSON where it starts with a brace.
        name: What it is called where it is refused: "The file wren.toml".
        is_json: True for what is JSON however it starts.

    Raises:
        SurveyError: It breaks the rules of TOML or JSON, or is larger or deeper than any house.

    Example:
        >>> parsed_house('{"name": "Pipit"}') == parsed_house('name = "Pipit"')
        True
    """
    refuse_size(len(text), name)
    is_json = is_json or text.lstrip().startswith("{")
    document = _parse_json(name, text) if is_json else _parse_toml(name, text)
    if not isinstance(document, dict):
        raise SurveyError(
            say("{name} was read as JSON.", name=name),
            say("It holds no object at its top, so there is no house in it."),
            say("Put everything between {{ and }}."),
        )
    _check_extent(name, document)
    return document


def refuse_size(size: int, name: str) -> None:
    """Refuse what is larger than any house file.

    Raises:
        SurveyError: It is.
    """
    if size > LARGEST_FILE_BYTES:
        raise SurveyError(
            say("{name} is over 8 MB.", name=name),
            say("No house file is that large, so it is something else."),
            say("Name the house file itself."),
        )


def _parse_toml(name: str, text: str) -> object:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        message = str(error)
        at = _AT.search(message)
        line, column = _last_place(text)
        if at and at["line"]:
            line, column = int(at["line"]), int(at["column"])
        wrong = message[: at.start()] if at else message
        _refuse_syntax(name, "TOML", text, (line, column), wrong)
    except RecursionError:
        _refuse_depth(name)
    except ValueError:
        _refuse_number(name)


def _parse_json(name: str, text: str) -> object:
    if is_nested_deeper(text, DEEPEST):
        _refuse_depth(name)
    try:
        return json.loads(text, object_pairs_hook=_object, parse_constant=_constant)
    except json.JSONDecodeError as error:
        _refuse_syntax(name, "JSON", text, (error.lineno, error.colno), error.msg)
    except _TwiceError as error:
        raise SurveyError(
            say("{name} gives the key {error} twice in one object.", name=name, error=error),
            say("Which of the two counts can't be told."),
            say("Take one of them out."),
        ) from None
    except ValueError:
        _refuse_number(name)


class _TwiceError(Exception):
    """A key that stands twice in one JSON object."""


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for key, value in pairs:
        if key in found:
            raise _TwiceError(json.dumps(key[:40]))
        found[key] = value
    return found


def _constant(name: str) -> NoReturn:
    raise ValueError(name)


def _refuse_syntax(
    name: str, language: str, text: str, place: tuple[int, int], message: str
) -> NoReturn:
    line, column = place
    lines = text.splitlines()
    stands = lines[line - 1].strip()[:LONGEST_LINE_SHOWN] if 0 < line <= len(lines) else ""
    stands = "".join(sign if sign.isprintable() else "?" for sign in stands)
    shown = f": {stands}" if stands else ""
    wrong = "".join(sign if sign.isprintable() else "?" for sign in message[:120]).rstrip(".")
    raise SurveyError(
        say(
            "{name} was read up to line {line}, column {column}{shown}",
            name=name,
            line=line,
            column=column,
            shown=shown,
        ),
        say(
            "It breaks the rules of {language} there: {wrong}.",
            language=language,
            wrong=wrong,
        ),
        say(
            "Look there, and in the line before, for a missing quote, comma, bracket "
            "or equals sign."
        ),
    )


def _refuse_depth(name: str) -> NoReturn:
    raise SurveyError(
        say(
            "{name} has tables inside tables, over {deepest} deep.",
            name=name,
            deepest=DEEPEST,
        ),
        say("No house file is like that, so it was damaged or made by mistake."),
        say("Look for brackets that are opened and never closed."),
    )


def _refuse_number(name: str) -> NoReturn:
    raise SurveyError(
        say("{name} holds a number that can't be read.", name=name),
        say("It is no number, or it has far too many digits."),
        say(
            "Look for NaN, Infinity, or a very long row of digits, and write what was read on site."
        ),
    )


def _last_place(text: str) -> tuple[int, int]:
    lines = text.splitlines() or [""]
    return len(lines), len(lines[-1]) + 1


def _check_extent(name: str, document: Mapping[str, object]) -> None:
    waiting: list[tuple[object, int]] = [(document, 1)]
    entries = 0
    while waiting:
        value, depth = waiting.pop()
        inner: list[object]
        match value:
            case dict():
                inner = list(value.values())
            case list():
                inner = value
            case _:
                continue
        if depth > DEEPEST:
            _refuse_depth(name)
        entries += len(inner)
        if entries > MOST_ENTRIES:
            raise SurveyError(
                say(
                    "{name} holds over {most_entries} values.",
                    name=name,
                    most_entries=MOST_ENTRIES,
                ),
                say("No house has that many readings, so it is something else."),
                say("Name the house file itself, or split it by house."),
            )
        waiting += [(each, depth + 1) for each in inner]
