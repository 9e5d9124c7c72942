"""The language that this call of the command speaks: its screen, sheets and files for reading.

English is that of the house's country; any other language has one catalogue for all of them.
"""

import os
from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from typing import Final

import click

from longpoint.sheets.blocks import Sheet
from longpoint.sheets.in_tongue import country_tongue, in_tongue
from longpoint.speech.tongue import ENGLISH, Tongue, Translated
from longpoint.survey.house import Dialect

TONGUES: Final = ("en", "de")
"""Languages that there is a catalogue of; English needs none."""
VARIABLE: Final = "LONGPOINT_TONGUE"
"""Names the language where the option doesn't; read again by the processes of a street."""


def choose(code: str) -> None:
    """Speak a language from here on, in this process and in those that it starts."""
    os.environ[VARIABLE] = code


def tongue(dialect: Dialect | None = None) -> Tongue:
    """Return the language that is spoken; English where none is chosen, or none that is known.

    Args:
        dialect: Of the house that is spoken of; None: no house, and the words of `docs/words.md`.
    """
    return _tongue(os.environ.get(VARIABLE, ENGLISH.code), dialect)


@cache
def _tongue(code: str, dialect: Dialect | None) -> Tongue:
    if code in TONGUES and code != ENGLISH.code:
        return Translated(code, _catalogue(code))
    return country_tongue(dialect, _catalogue) if dialect else ENGLISH


def _catalogue(name: str) -> bytes:
    return (files("longpoint.speech") / "words" / f"{name}.mo").read_bytes()


def speak(
    text: str = "", dialect: Dialect | None = None, *, err: bool = False, nl: bool = True
) -> None:
    """Write a text to the screen in the language that is spoken.

    Args:
        text: What is said.
        dialect: Of the house that is spoken of, if any.
        err: Not where results go.
        nl: A new line behind it.
    """
    click.echo(tongue(dialect).text(text), err=err, nl=nl)


def spoken_sheets(sheets: Iterable[Sheet], dialect: Dialect | None) -> tuple[Sheet, ...]:
    """Return sheets in the language that is spoken, and in the words of a house's country."""
    return in_tongue(tuple(sheets), tongue(dialect))
