"""The crew's rack as a file: read whole, written whole, and nothing in it ever lost."""

from pathlib import Path

from longpoint.errors import ExchangeError, SurveyError
from longpoint.exchange.house_files import load_house_document
from longpoint.exchange.safe_files import free_name, write_new_text, write_text_safely
from longpoint.speech.said import say
from longpoint.survey.rack import Rack, rack_text, read_rack


def load_rack(path: Path) -> Rack:
    """Return the rack in a file.

    Raises:
        ExchangeError: It isn't there, is something else, or anything in it can't be read.
    """
    try:
        return read_rack(load_house_document(path))
    except SurveyError as error:
        raise ExchangeError(f"{path.name}: {error.read}", error.wrong, error.do) from None


def load_or_begin_rack(path: Path) -> Rack:
    """Return the rack in a file; an empty one where there is no file yet.

    Raises:
        ExchangeError: What is there is no rack.
    """
    return load_rack(path) if path.exists() or path.is_symlink() else Rack()


def save_rack(path: Path, before: Rack, after: Rack) -> Path | None:
    """Write a rack, the whole file or nothing.

    Where the file held more than the rack itself, such as remarks written by hand, a copy of it is
    kept first.

    Args:
        path: Where to.
        before: The rack as it was read from there.
        after: The rack to write.

    Returns:
        The copy; None where none was needed.

    Raises:
        ExchangeError: The name ends in .json, the file was changed since it was read, an offcut
            would be lost, or it can't be written; the file is then as it was.
    """
    if path.suffix.lower() == ".json":
        raise ExchangeError(
            say("The rack was to be written to {path}.", path=path.name),
            say("A rack is kept as TOML, and a name in .json would be read as something else."),
            say("Give it a name that ends in .toml."),
        )
    there = load_or_begin_rack(path)
    if there != before:
        raise ExchangeError(
            say("The file {path} was to be written.", path=path.name),
            say("Somebody else changed it in the meantime."),
            say("Do it again: it is read anew."),
        )
    lost = {piece.label for piece in before.pieces} - {piece.label for piece in after.pieces}
    if lost:
        raise ExchangeError(
            say("The file {path} was to be written.", path=path.name),
            say("The offcut {lost} would be lost from it.", lost=min(lost)),
            say("Nothing was written; please report this with the file."),
        )
    copy = None
    if path.exists():
        text = path.read_text(encoding="utf-8-sig")
        if text != rack_text(before):
            copy = free_name(path)
            write_new_text(copy, text)
    write_text_safely(path, rack_text(after))
    return copy
