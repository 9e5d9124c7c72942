"""Options for the day, which the core is always told and never looks up."""

from collections.abc import Callable
from datetime import date, datetime
from typing import Any, Final, TypeVar

import click

from longpoint.speech.said import say

F = TypeVar("F", bound=Callable[..., Any])

MOST_DAYS: Final = 36_500


def a_day(_context: click.Context, _option: click.Parameter, written: str | None) -> date | None:
    """Read the day of an option; None where it is left out."""
    if written is None:
        return None
    try:
        return date.fromisoformat(written)
    except ValueError:
        raise click.BadParameter(
            say(
                "{written!r} is no day of the calendar; write it like 2026-03-01.",
                written=written,
            )
        ) from None


def _day(context: click.Context, option: click.Parameter, written: str | None) -> date:
    return a_day(context, option, written) or datetime.now().astimezone().date()


def on_day(command: F) -> F:
    """Give a command the option --on, the day that is written down; left out: today."""
    return click.option(
        "--on",
        callback=_day,
        default=None,
        metavar="DAY",
        help="The day it is, like 2026-03-01. [default: today]",
    )(command)


def old_after(command: F) -> F:
    """Give a command the option --old-after, from when on an offcut is said to be old."""
    return click.option(
        "--old-after",
        "old_after_days",
        type=click.IntRange(1, MOST_DAYS),
        default=None,
        metavar="DAYS",
        help="Say which offcuts are older. [default: as the rack file says]",
    )(command)
