"""Options of every command that works on the store, and the names that it gives."""

from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Final, TypeVar

import click

from longpoint.cli.data_folder import data_folder
from longpoint.cli.store_places import StoreType
from longpoint.speech.said import say

F = TypeVar("F", bound=Callable[..., Any])

FILE: Final = "houses.store"
STORE_WORDS: Final = say(
    "File of the store, or a database: postgresql://host/name. [default: longpoint/houses.store "
    "in XDG_DATA_HOME or ~/.local/share]"
)
STORE_FILE_WORDS: Final = say(
    "File of the store. [default: longpoint/houses.store in XDG_DATA_HOME or ~/.local/share]"
)


def default_store() -> Path:
    """Return where the store lies when nothing else is said: the folder for a person's data."""
    return data_folder() / FILE


def store_option(command: F) -> F:
    """Give a command the option --store, the file or database that it works on."""
    return click.option("--store", type=StoreType(), default=default_store, help=STORE_WORDS)(
        command
    )


def store_file_option(command: F) -> F:
    """Give a command the option --store, a file: it works on no database."""
    return click.option(
        "--store", type=StoreType(is_file=True), default=default_store, help=STORE_FILE_WORDS
    )(command)


def at_moment(command: F) -> F:
    """Give a command the option --at, the moment that is written down; left out: now."""
    return click.option(
        "--at",
        callback=_moment,
        default=None,
        metavar="TIME",
        help="The moment it is, like 2026-03-01T07:30:00Z. [default: now]",
    )(command)


def rack_option(command: F) -> F:
    """Give a command the option --rack: it is of the rack of offcuts, of no house."""
    return click.option("--rack", "is_rack", is_flag=True, help="The rack of offcuts, no house.")(
        command
    )


def one_of(house: str | None, is_rack: bool) -> None:
    """Refuse a command that names neither a house nor the rack, or both.

    Raises:
        click.UsageError: It does.
    """
    if (house is None) != is_rack:
        raise click.UsageError(say("Name a house, or --rack for the rack of offcuts."))


def _moment(_context: click.Context, _option: click.Parameter, written: str | None) -> str:
    if written is None:
        moment = datetime.now(UTC)
    else:
        try:
            moment = datetime.fromisoformat(written).astimezone(UTC)
        except ValueError:
            raise click.BadParameter(
                say(
                    "{written!r} is no moment; write it like 2026-03-01T07:30:00Z.",
                    written=written,
                )
            ) from None
    return moment.isoformat(timespec="seconds").replace("+00:00", "Z")
