"""The option for the paper of a PDF."""

from collections.abc import Callable
from typing import Any, Final, TypeVar

import click

from longpoint.render.paper import Paper
from longpoint.survey.house import Dialect

F = TypeVar("F", bound=Callable[..., Any])

LETTER_COUNTRIES: Final = frozenset({Dialect.US, Dialect.CA})
"""Where printers hold Letter; common practice, no source."""


def on_paper(command: F) -> F:
    """Give a command the option --paper: a `Paper`, or None for that of the house's country."""
    return click.option(
        "--paper",
        type=click.Choice([p.value for p in Paper]),
        callback=lambda _context, _option, chosen: Paper(chosen) if chosen else None,
        default=None,
        help="Paper of the PDF.  [default: us-letter for a house of us or ca, else a4]",
    )(command)


def paper_of(chosen: Paper | None, dialect: Dialect | None) -> Paper:
    """Return the paper that was chosen, or that of a house's country.

    Example:
        >>> paper_of(None, Dialect.CA).value, paper_of(Paper.A4, Dialect.CA).value
        ('us-letter', 'a4')
    """
    return chosen or (Paper.US_LETTER if dialect in LETTER_COUNTRIES else Paper.A4)
