"""Read somebody else's file only as far as it is allowed to go."""

import stat
from pathlib import Path

from longpoint.errors import ExchangeError
from longpoint.speech.said import say


def bounded_bytes(path: Path, most_bytes: int, what: str) -> bytes:
    """Return the bytes of a file.

    Args:
        path: The file.
        most_bytes: It may have so many.
        what: What it is to be, to stand in a sentence ("a table of readings").

    Raises:
        ExchangeError: It isn't there, is no plain file, can't be read, is empty or too large.
    """
    read = say(
        "The file {shown_name} was to be read as {what}.",
        shown_name=shown_name(path),
        what=what,
    )
    try:
        kind = path.stat().st_mode
        if stat.S_ISREG(kind):
            with path.open("rb") as file:
                data = file.read(most_bytes + 1)
            is_plain = True
        else:
            data, is_plain = b"", False
    except FileNotFoundError:
        raise ExchangeError(
            read,
            say("There is no file of that name in that folder."),
            say("Check the name and the folder."),
        ) from None
    except (OSError, ValueError) as error:
        reason = (getattr(error, "strerror", None) or str(error)).lower()
        raise ExchangeError(
            read,
            say("The system refuses: {reason}.", reason=reason),
            say("Check that it may be read and that its disk or card is sound."),
        ) from None
    if not is_plain:
        raise ExchangeError(read, say("It is a folder or a device."), say("Name the file itself."))
    if len(data) > most_bytes:
        raise ExchangeError(
            read,
            say(
                "It is over {most_bytes} MB, far more than that needs.",
                most_bytes=most_bytes // 1000000,
            ),
            say("Take out pictures and whatever else isn't wanted, and save it again."),
        )
    if not data.strip(b"\0 \t\r\n"):
        raise ExchangeError(
            read,
            say("There is nothing in it."),
            say("Check that it was saved, and name the right file."),
        )
    return data


def shown_name(path: Path) -> str:
    """Return a file's name so that it can stand in a sentence."""
    name = "".join(sign if sign.isprintable() else "?" for sign in path.name)
    return name if len(name) <= 80 else say("{name}...", name=name[:77])
