"""Read house files from disk; what is no house file is refused with its place."""

import codecs
import json
import re
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final, NoReturn

from longpoint.catalogue.all_trims import trim_tables
from longpoint.errors import ExchangeError
from longpoint.survey.house import SurveyResult
from longpoint.survey.house_file import read_house

LARGEST_FILE_BYTES: Final = 8 * 1024 * 1024
DEEPEST: Final = 20
MOST_ENTRIES: Final = 200_000
LONGEST_LINE_SHOWN: Final = 60

_AT: Final = re.compile(r"\s*\(at (?:line (?P<line>\d+), column (?P<column>\d+)|end of document)\)")
_WIDE: Final = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE, codecs.BOM_UTF32_LE, codecs.BOM_UTF32_BE)


def load_house(path: Path) -> SurveyResult:
    """Return the house in a file, and what is to be said about it.

    Args:
        path: A house file, TOML or JSON.

    Raises:
        ExchangeError: The file can't be read.
        SurveyError: It can be read, but can't be used as a whole.
    """
    return read_house(load_house_document(path), trim_tables())


def load_house_document(path: Path) -> dict[str, object]:
    """Return a house file as parsed, TOML or JSON.

    A file is JSON when its name ends in ``.json`` or its text starts with a brace.

    Args:
        path: A file of at most 8 MB, UTF-8 with or without a byte order mark.

    Raises:
        ExchangeError: The file isn't there, isn't text, or breaks the rules of TOML or JSON.
    """
    text = _text_of(path)
    is_json = text.lstrip().startswith("{") or path.suffix.lower() == ".json"
    document = _parse_json(path, text) if is_json else _parse_toml(path, text)
    if not isinstance(document, dict):
        raise ExchangeError(
            f"The file {path.name} was read as JSON.",
            "It holds no object at its top, so there is no house in it.",
            "Put everything between { and }.",
        )
    _check_extent(path, document)
    return document


def _text_of(path: Path) -> str:
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST_FILE_BYTES + 1)
    except FileNotFoundError:
        raise ExchangeError(
            f"The file {path.name} was to be read.",
            "There is no file of that name in that folder.",
            "Check the name and the folder.",
        ) from None
    except IsADirectoryError:
        raise ExchangeError(
            f"{path.name} was to be read.",
            "It is a folder, not a file.",
            "Name the house file inside it.",
        ) from None
    except (OSError, ValueError) as error:
        raise ExchangeError(
            f"The file {path.name} was to be read.",
            f"The system refuses: {_reason(error)}.",
            "Check that it may be read and that its disk or card is sound.",
        ) from None
    if len(data) > LARGEST_FILE_BYTES:
        raise ExchangeError(
            f"The file {path.name} is over 8 MB.",
            "No house file is that large, so it is something else.",
            "Name the house file itself.",
        )
    return _decoded(path, data)


def _decoded(path: Path, data: bytes) -> str:
    if data.startswith(_WIDE) or b"\0" in data[:1000]:
        raise ExchangeError(
            f"The file {path.name} is not saved as UTF-8.",
            "It looks like UTF-16 text, or like no text at all.",
            'Open it in the editor and save it again with the encoding "UTF-8".',
        )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise ExchangeError(
            f"The file {path.name} holds a byte in line {line} that is not UTF-8.",
            "It was probably saved as Latin-1 or Windows text.",
            'Open it in the editor and save it again with the encoding "UTF-8".',
        ) from None


def _parse_toml(path: Path, text: str) -> object:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        message = str(error)
        at = _AT.search(message)
        line, column = _last_place(text)
        if at and at["line"]:
            line, column = int(at["line"]), int(at["column"])
        wrong = message[: at.start()] if at else message
        _refuse_syntax(path, "TOML", text, (line, column), wrong)
    except RecursionError:
        _refuse_depth(path)
    except ValueError:
        _refuse_number(path)


def _parse_json(path: Path, text: str) -> object:
    try:
        return json.loads(text, object_pairs_hook=_object, parse_constant=_constant)
    except json.JSONDecodeError as error:
        _refuse_syntax(path, "JSON", text, (error.lineno, error.colno), error.msg)
    except _TwiceError as error:
        raise ExchangeError(
            f"The file {path.name} gives the key {error} twice in one object.",
            "Which of the two counts can't be told.",
            "Take one of them out.",
        ) from None
    except RecursionError:
        _refuse_depth(path)
    except ValueError:
        _refuse_number(path)


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
    path: Path, language: str, text: str, place: tuple[int, int], message: str
) -> NoReturn:
    line, column = place
    lines = text.splitlines()
    stands = lines[line - 1].strip()[:LONGEST_LINE_SHOWN] if 0 < line <= len(lines) else ""
    stands = "".join(sign if sign.isprintable() else "?" for sign in stands)
    shown = f": {stands}" if stands else ""
    wrong = "".join(sign if sign.isprintable() else "?" for sign in message[:120]).rstrip(".")
    raise ExchangeError(
        f"The file {path.name} was read up to line {line}, column {column}{shown}",
        f"It breaks the rules of {language} there: {wrong}.",
        "Look there, and in the line before, for a missing quote, comma, bracket or equals sign.",
    )


def _refuse_depth(path: Path) -> NoReturn:
    raise ExchangeError(
        f"The file {path.name} has tables inside tables, over {DEEPEST} deep.",
        "No house file is like that, so it was damaged or made by mistake.",
        "Look for brackets that are opened and never closed.",
    )


def _refuse_number(path: Path) -> NoReturn:
    raise ExchangeError(
        f"The file {path.name} holds a number that can't be read.",
        "It is no number, or it has far too many digits.",
        "Look for NaN, Infinity, or a very long row of digits, and write what was read on site.",
    )


def _last_place(text: str) -> tuple[int, int]:
    lines = text.splitlines() or [""]
    return len(lines), len(lines[-1]) + 1


def _check_extent(path: Path, document: Mapping[str, object]) -> None:
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
            _refuse_depth(path)
        entries += len(inner)
        if entries > MOST_ENTRIES:
            raise ExchangeError(
                f"The file {path.name} holds over {MOST_ENTRIES} values.",
                "No house has that many readings, so it is something else.",
                "Name the house file itself, or split it by house.",
            )
        waiting += [(each, depth + 1) for each in inner]


def _reason(error: Exception) -> str:
    return (error.strerror if isinstance(error, OSError) and error.strerror else str(error)).lower()
