"""Files written whole or not at all."""

import contextlib
import os
import secrets
from pathlib import Path
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.speech.said import say

MOST_COPIES: Final = 1000


def write_text_safely(path: Path, text: str) -> None:
    """Write text as UTF-8 so that the file holds all of it or is as it was before.

    Args:
        path: Where to; its folder has to be there. A link is followed.
        text: What to write.

    Raises:
        ExchangeError: It can't be written.
    """
    write_bytes_safely(path, _encoded(path, text))


def write_bytes_safely(path: Path, data: bytes) -> None:
    """Write bytes so that the file holds all of them or is as it was before.

    Args:
        path: Where to; its folder has to be there. A link is followed.
        data: What to write.

    Raises:
        ExchangeError: It can't be written.
    """
    target = path.resolve()
    beside = target.with_name(f".{target.name[:100]}.{secrets.token_hex(6)}.part")
    try:
        mode = target.stat().st_mode & 0o777 if target.exists() else None
        with beside.open("xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            beside.chmod(mode)
        beside.replace(target)
    except OSError as error:
        raise _refused(path, error) from None
    finally:
        with contextlib.suppress(OSError):
            beside.unlink(missing_ok=True)
    _settle_folder(target.parent)


def write_new_text(path: Path, text: str) -> None:
    """Write text to a file that isn't there yet.

    Raises:
        ExchangeError: The file is there already, or can't be written.
    """
    refuse_existing(path)
    write_text_safely(path, text)


def refuse_existing(path: Path) -> None:
    """Refuse to make a file where there is one.

    Raises:
        ExchangeError: There is.
    """
    if path.exists() or path.is_symlink():
        raise ExchangeError(
            say("The file {path} was to be made.", path=path.name),
            say("There is a file of that name already, and it may hold readings."),
            say("Choose another name, or move that file away first."),
        )


def free_name(path: Path) -> Path:
    """Return the name of a copy beside a file that isn't taken yet.

    Raises:
        ExchangeError: There are a thousand already.
    """
    for number in range(1, MOST_COPIES):
        name = path.with_name(f"{path.name}.before-{number}")
        if not name.exists() and not name.is_symlink():
            return name
    raise ExchangeError(
        say("A copy of {path} was to be kept.", path=path.name),
        say("There are {most_copies} beside it already.", most_copies=MOST_COPIES),
        say("Move the old ones away."),
    )


def _encoded(path: Path, text: str) -> bytes:
    try:
        return text.encode("utf-8")
    except UnicodeEncodeError as error:
        raise ExchangeError(
            say(
                "The text for {path} holds a sign that is no text at place {start}.",
                path=path.name,
                start=error.start,
            ),
            say("It can't be written to a file."),
            say("Type that part again by hand."),
        ) from None


def _refused(path: Path, error: OSError) -> ExchangeError:
    return ExchangeError(
        say("The file {path} was to be written.", path=path.name),
        say(
            "The system refuses: {strerror}.",
            strerror=(error.strerror or str(error)).lower(),
        ),
        say("Check that its folder is there, is yours to write in, and has room."),
    )


def _settle_folder(folder: Path) -> None:
    """Make the new name last through a power cut, where the system offers that."""
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
