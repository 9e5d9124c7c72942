"""A page of plain text: how wide it is and which language it is in."""

import textwrap
from dataclasses import dataclass

from longpoint.speech.tongue import ENGLISH, Tongue


@dataclass(frozen=True, slots=True)
class Page:
    """What the lines of a plain text are broken for.

    Attributes:
        width: Signs in a line.
        tongue: Language of the text.
    """

    width: int
    tongue: Tongue = ENGLISH

    def said(self, text: str) -> str:
        """Return a text in the page's language."""
        return self.tongue.text(text)

    def wrapped(self, text: str, *, first: str = "", indent: str = "  ") -> list[str]:
        """Return a text as lines in the page's language.

        Args:
            text: The text.
            first: What stands in front of the first line.
            indent: What stands in front of every other line.
        """
        written = f"{first}{self.said(text)}"
        if len(written) <= self.width:
            return [written]
        return textwrap.wrap(written, self.width, subsequent_indent=indent)
