"""Headed paragraphs for a screen."""

import textwrap
from collections.abc import Iterable
from typing import Final

from longpoint.cli.spoken import tongue

WIDTH: Final = 96


def paragraphs(parts: Iterable[tuple[str, Iterable[str]]], width: int = WIDTH) -> str:
    """Return headings with their sentences below; a heading without any is left out.

    Args:
        parts: Heading and sentences.
        width: Signs in a line.

    Example:
        >>> print(paragraphs([("Then", ["Glue it.", "Pin it."]), ("Else", [])]))
        Then
          Glue it.
          Pin it.
    """
    shown = []
    for heading, sentences in parts:
        lines = [
            textwrap.fill(
                tongue().text(text),
                width,
                initial_indent="  ",
                subsequent_indent="    ",
                break_on_hyphens=False,
            )
            for text in sentences
        ]
        if lines:
            shown.append("\n".join((tongue().text(heading), *lines)))
    return "\n\n".join(shown)
