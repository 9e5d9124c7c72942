"""The files of a street: which are houses, and where the sheets of each go."""

from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.exchange.house_files import load_house_document
from longpoint.speech.said import say
from longpoint.survey.house_file.reader import is_something_else

_ENDINGS: Final = (".toml", ".json")


def folder_names(files: Sequence[Path]) -> list[str]:
    """Return the name of each house's folder: its file's without the ending, where that is one's.

    Example:
        >>> folder_names([Path("a.toml"), Path("b.json"), Path("B.toml")])
        ['a', 'b-json', 'B-toml']
    """
    stems = Counter(file.stem.casefold() for file in files)
    return [
        file.stem if stems[file.stem.casefold()] == 1 else file.name.replace(".", "-")
        for file in files
    ]


def house_files(folder: Path, out: Path) -> tuple[list[Path], list[Path]]:
    """Return the house files of a folder, and the files that say they are something else of ours.

    What can't be read is taken for a house: its refusal then stands in the summary.

    Args:
        folder: Holds the house files.
        out: Where the summary is to go.

    Raises:
        ExchangeError: The summary would go among the house files, or there is none.
    """
    if out.resolve() == folder.resolve():
        raise ExchangeError(
            say(
                "The sheets were to go into {folder}, where the house files are.",
                folder=folder,
            ),
            say("The summary would be taken for a house file the next time."),
            say("Name another folder with --out."),
        )
    found = sorted(
        file
        for file in folder.iterdir()
        if file.suffix.lower() in _ENDINGS and file.is_file() and not file.name.startswith(".")
    )
    files = [file for file in found if not _is_something_else(file)]
    if not files:
        raise ExchangeError(
            say("The folder {folder} was looked through for house files.", folder=folder),
            say("No house file in it ends in .toml or .json."),
            say("Name the folder that holds the house files themselves."),
        )
    return files, [file for file in found if file not in files]


def _is_something_else(file: Path) -> bool:
    try:
        return is_something_else(load_house_document(file).get("format"))
    except ExchangeError:
        return False
