"""Read house files from disk; what is no house file is refused with its place."""

import codecs
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Final

from longpoint.catalogue.all_trims import trim_tables
from longpoint.errors import ExchangeError, SurveyError
from longpoint.speech.said import say
from longpoint.survey.house import SurveyResult
from longpoint.survey.house_file import read_house
from longpoint.survey.house_file.parsed_text import LARGEST_FILE_BYTES, parsed_house, refuse_size

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
    text = load_house_text(path)
    with _as_file():
        return parsed_house(text, _named(path), is_json=path.suffix.lower() == ".json")


def load_house_text(path: Path) -> str:
    """Return the text of a house file as it stands there, remarks and all.

    Raises:
        ExchangeError: The file isn't there, is too large, or isn't text.
    """
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST_FILE_BYTES + 1)
    except FileNotFoundError:
        raise ExchangeError(
            say("The file {path} was to be read.", path=path.name),
            say("There is no file of that name in that folder."),
            say("Check the name and the folder."),
        ) from None
    except IsADirectoryError:
        raise ExchangeError(
            say("{path} was to be read.", path=path.name),
            say("It is a folder, not a file."),
            say("Name the house file inside it."),
        ) from None
    except (OSError, ValueError) as error:
        raise ExchangeError(
            say("The file {path} was to be read.", path=path.name),
            say("The system refuses: {reason}.", reason=_reason(error)),
            say("Check that it may be read and that its disk or card is sound."),
        ) from None
    with _as_file():
        refuse_size(len(data), _named(path))
    return _decoded(path, data)


def _decoded(path: Path, data: bytes) -> str:
    if data.startswith(_WIDE) or b"\0" in data[:1000]:
        raise ExchangeError(
            say("The file {path} is not saved as UTF-8.", path=path.name),
            say("It looks like UTF-16 text, or like no text at all."),
            say('Open it in the editor and save it again with the encoding "UTF-8".'),
        )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise ExchangeError(
            say(
                "The file {path} holds a byte in line {line} that is not UTF-8.",
                path=path.name,
                line=line,
            ),
            say("It was probably saved as Latin-1 or Windows text."),
            say('Open it in the editor and save it again with the encoding "UTF-8".'),
        ) from None


def _reason(error: Exception) -> str:
    return (error.strerror if isinstance(error, OSError) and error.strerror else str(error)).lower()


def _named(path: Path) -> str:
    return say("The file {path}", path=path.name)


@contextmanager
def _as_file() -> Iterator[None]:
    """Say of the file what the core says of its text."""
    try:
        yield
    except SurveyError as error:
        raise ExchangeError(error.read, error.wrong, error.do) from None
