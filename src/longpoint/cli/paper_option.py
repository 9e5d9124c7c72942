"""The option for the paper of a PDF."""

from collections.abc import Callable
from typing import Any, TypeVar

import click

from longpoint.render.paper import Paper

F = TypeVar("F", bound=Callable[..., Any])


def on_paper(command: F) -> F:
    """Give a command the option --paper."""
    return click.option(
        "--paper",
        type=click.Choice([p.value for p in Paper]),
        callback=lambda _context, _option, chosen: Paper(chosen),
        default=Paper.A4.value,
        show_default=True,
        help="Paper of the PDF.",
    )(command)
