"""The port through which what is said becomes a language, and its adapters.

References:
    gettext of the standard library; messages with braces as in GNU gettext's python-brace-format.
"""

import gettext
import io
import string
from collections.abc import Mapping, Sequence
from typing import Final, Protocol

from longpoint.speech.said import Figure, Filled, Instead, Joined, Said, Shape


class Tongue(Protocol):
    """A language that sheets are written in."""

    @property
    def code(self) -> str:
        """Return the language as HTML names it: "en", "de"."""

    def text(self, words: str) -> str:
        """Return a text in this language; a text that is no `Said` stays as it is."""


class English:
    """The language that everything is said in: each text is itself."""

    @property
    def code(self) -> str:
        """Return the language as HTML names it."""
        return "en"

    def text(self, words: str) -> str:
        """Return the text as it is."""
        return str.__str__(words)


class Translated:
    """A language looked up in a catalogue of gettext.

    Args:
        code: The language as HTML names it.
        catalogue: Contents of a .mo file.
        decimal: What stands in front of decimals.
    """

    def __init__(self, code: str, catalogue: bytes, decimal: str = ",") -> None:
        self._code = code
        self._words = gettext.GNUTranslations(io.BytesIO(catalogue))
        self._formatter = _Given(self, decimal)
        self._decimal = decimal

    @property
    def code(self) -> str:
        """Return the language as HTML names it."""
        return self._code

    def text(self, words: str) -> str:
        """Return a text in this language; English where the catalogue has nothing."""
        match words:
            case Joined():
                return self.text(words.between).join(map(self.text, words.parts))
            case Instead():
                return self._instead(words)
            case Filled():
                return self._formatter.vformat(self.text(words.inner), (), words.given)
            case Figure():
                return str.__str__(words).replace(".", self._decimal)
            case Said():
                return self._formatter.vformat(self._message(words), (), words.given)
            case _:
                return words

    def _instead(self, words: Instead) -> str:
        return _shaped(self.text(words.inner), words.shape)

    def _message(self, said: Said) -> str:
        if said.plural:
            return self._words.ngettext(said.message, said.plural, said.number)
        return self._words.gettext(said.message)


class Country(Translated):
    """English as one country's trade speaks it.

    What is English of its own already, `instead`, stays: it is that country's word by then.

    Args:
        code: The language as HTML names it: "en-US".
        catalogue: Contents of a .mo file, of those messages that the country says otherwise.
    """

    def __init__(self, code: str, catalogue: bytes) -> None:
        super().__init__(code, catalogue, decimal=".")

    def _instead(self, words: Instead) -> str:
        if words.shape is Shape.AS_IT_IS:
            return str.__str__(words)
        return super()._instead(words)


def _shaped(text: str, shape: Shape) -> str:
    match shape:
        case Shape.RAISED:
            return f"{text[:1].upper()}{text[1:]}"
        case Shape.STRIPPED:
            return text.strip()
        case Shape.AS_IT_IS:
            return text


class _Given(string.Formatter):
    """Writes values into a message: texts of ours translated, decimals as the language writes."""

    def __init__(self, tongue: Tongue, decimal: str) -> None:
        self._tongue = tongue
        self._decimal = decimal

    def get_value(
        self, key: int | str, args: Sequence[object], kwargs: Mapping[str, object]
    ) -> object:
        value = kwargs[str(key)]
        return self._tongue.text(value) if isinstance(value, Said) else value

    def format_field(self, value: object, format_spec: str) -> str:
        written = format(value, format_spec)
        return written.replace(".", self._decimal) if isinstance(value, float) else written


ENGLISH: Final[Tongue] = English()
