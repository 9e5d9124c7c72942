"""The language that this call of the command speaks: its screen, sheets and files for reading."""

import os
from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from typing import Final

import click

from longpoint.sheets.blocks import Sheet
from longpoint.sheets.in_tongue import in_tongue
from longpoint.speech.tongue import ENGLISH, Tongue, Translated

TONGUES: Final = ("en", "de")
"""Languages that there is a catalogue of; English needs none."""
VARIABLE: Final = "LONGPOINT_TONGUE"
"""Names the language where the option doesn't; read again by the processes of a street."""


def choose(code: str) -> None:
    """Speak a language from here on, in this process and in those that it starts."""
    os.environ[VARIABLE] = code


def tongue() -> Tongue:
    """Return the language that is spoken; English where none is chosen, or none that is known."""
    return _tongue(os.environ.get(VARIABLE, ENGLISH.code))


@cache
def _tongue(code: str) -> Tongue:
    if code not in TONGUES or code == ENGLISH.code:
        return ENGLISH
    return Translated(code, (files("longpoint.speech") / "words" / f"{code}.mo").read_bytes())


def speak(text: str = "", *, err: bool = False, nl: bool = True) -> None:
    """Write a text to the screen in the language that is spoken."""
    click.echo(tongue().text(text), err=err, nl=nl)


def spoken_sheets(sheets: Iterable[Sheet]) -> tuple[Sheet, ...]:
    """Return sheets in the language that is spoken."""
    return in_tongue(tuple(sheets), tongue())
