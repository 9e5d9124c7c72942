"""The folder for a person's data, and the name of this laptop that is kept in it."""

import os
import re
import secrets
from pathlib import Path
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.exchange.safe_files import write_text_safely
from longpoint.speech.said import say

NAME_FILE: Final = "laptop-name"
_NAME: Final = re.compile(r"[0-9a-f]{16}")


def data_folder() -> Path:
    """Return where stores lie when nothing else is said."""
    named = os.environ.get("XDG_DATA_HOME", "")
    # The XDG Base Directory Specification: a path that isn't absolute is to be ignored.
    data = Path(named) if Path(named).is_absolute() else Path.home() / ".local" / "share"
    return data / "longpoint"


def new_name() -> str:
    """Return a name for a device or a house that nobody else has."""
    return secrets.token_hex(8)


def known_laptop_name() -> str:
    """Return the name under which this laptop writes to a firm's database; empty: none yet."""
    try:
        found = (data_folder() / NAME_FILE).read_text(encoding="ascii").strip()
    except (OSError, ValueError):
        return ""
    return found if _NAME.fullmatch(found) else ""


def laptop_name() -> str:
    """Return the name under which this laptop writes to a firm's database; drawn once.

    Raises:
        ExchangeError: It can't be kept.
    """
    known = known_laptop_name()
    if known:
        return known
    folder, name = data_folder(), new_name()
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise ExchangeError(
            say("This laptop is to have a name of its own in the database."),
            say("{folder} can't be made: {why}.", folder=folder, why=error.strerror or error),
            say("Make that folder, or name another with XDG_DATA_HOME."),
        ) from error
    write_text_safely(folder / NAME_FILE, f"{name}\n")
    return name
