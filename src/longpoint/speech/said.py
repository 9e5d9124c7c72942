"""Texts that remember what they say: a message, and the values in it.

A `Said` is a `str`, its value the English text; so it is compared, sorted, kept and written as any
text. Only a `Tongue` looks behind it. What becomes of it by a method of `str` is plain English
again: texts are put together by `say`, `joined` and `+`.
"""

from collections.abc import Iterable, Mapping
from enum import StrEnum
from typing import Any, Final, SupportsIndex

_NOTHING: Final[Mapping[str, object]] = {}


class Shape(StrEnum):
    """What is done to a text after it is in its language."""

    AS_IT_IS = "as it is"
    RAISED = "raised"
    """Its first letter is made a capital."""
    STRIPPED = "stripped"
    """Blanks at its ends are taken off."""


class Said(str):
    """A text with the message that it was made from.

    Attributes:
        message: English message with its values named in braces, as `str.format` reads it; the
            key to its translation. Of a plural, the form for one.
        plural: The form for any other count; empty when the message has only one form.
        number: What the form is chosen by; 0 without a plural.
        given: Values by name: numbers, names as typed, and other texts of ours.
    """

    __slots__ = ("given", "message", "number", "plural")

    message: str
    plural: str
    number: int
    given: Mapping[str, object]

    def __new__(
        cls,
        english: str,
        message: str = "",
        given: Mapping[str, object] = _NOTHING,
        plural: str = "",
        number: int = 0,
    ) -> "Said":
        """Return a text; without a message it is its own."""
        made = super().__new__(cls, english)
        made.message = message or english
        made.given = given
        made.plural = plural
        made.number = number
        return made

    def __getnewargs__(self) -> tuple[Any, ...]:
        return (str.__str__(self), self.message, dict(self.given), self.plural, self.number)

    def __str__(self) -> str:
        return self

    def __add__(self, other: str) -> str:
        return joined("", (self, other)) if other else self

    def __radd__(self, other: str) -> str:
        return joined("", (other, self)) if other else self

    def removesuffix(self, suffix: str, /) -> str:
        """Return English without that end; any other language keeps its own."""
        return Instead(super().removesuffix(suffix), self) if self.endswith(suffix) else self

    def removeprefix(self, prefix: str, /) -> str:
        """Return English without that beginning; any other language keeps its own."""
        return Instead(super().removeprefix(prefix), self) if self.startswith(prefix) else self

    def strip(self, chars: str | None = None, /) -> str:
        """Return the text without blanks at its ends, in whichever language."""
        bare = super().strip(chars)
        return self if len(bare) == len(self) else Instead(bare, self, Shape.STRIPPED)

    def format(self, *args: object, **given: object) -> str:
        """Return the text with values for the names that are left in it."""
        return Filled(super().format(*args, **given), self, given)

    def replace(self, old: str, new: str, count: SupportsIndex = -1, /) -> str:
        """Return English with one word for another; any other language keeps its own."""
        return Instead(super().replace(old, new, count), self) if old in self else self

    def rstrip(self, chars: str | None = None, /) -> str:
        """Return the text without blanks at its end, in whichever language."""
        bare = super().rstrip(chars)
        return self if len(bare) == len(self) else Instead(bare, self, Shape.STRIPPED)


class Joined(Said):
    """Texts side by side, something between them.

    Attributes:
        between: What stands between two of them.
        parts: The texts.
    """

    __slots__ = ("between", "parts")

    between: str
    parts: tuple[str, ...]

    def __new__(cls, between: str, parts: tuple[str, ...]) -> "Joined":
        """Return the texts as one."""
        made = super().__new__(cls, str.join(between, parts))
        assert isinstance(made, Joined)
        made.between = between
        made.parts = parts
        return made

    def __getnewargs__(self) -> tuple[Any, ...]:
        return (self.between, self.parts)


class Instead(Said):
    """A text that is English of its own, and another text in any other language.

    Attributes:
        inner: The other text.
        shape: What is done to the other text.
    """

    __slots__ = ("inner", "shape")

    inner: str
    shape: Shape

    def __new__(cls, english: str, inner: str, shape: Shape = Shape.AS_IT_IS) -> "Instead":
        """Return the English text."""
        made = super().__new__(cls, english)
        assert isinstance(made, Instead)
        made.inner = inner
        made.shape = shape
        return made

    def __getnewargs__(self) -> tuple[Any, ...]:
        return (str.__str__(self), self.inner, self.shape)


class Filled(Said):
    """A text whose message is filled in twice: what it was made with left names open.

    Attributes:
        inner: The text with its open names.
    """

    __slots__ = ("inner",)

    inner: str

    def __new__(cls, english: str, inner: str, given: Mapping[str, object]) -> "Filled":
        """Return the filled text."""
        made = super().__new__(cls, english, given=given)
        assert isinstance(made, Filled)
        made.inner = inner
        return made

    def __getnewargs__(self) -> tuple[Any, ...]:
        return (str.__str__(self), self.inner, dict(self.given))


class Figure(Said):
    """A number as it is printed, its decimals behind a point: a tongue may write a comma."""

    __slots__ = ()


def say(message: str, /, **given: object) -> str:
    """Return what a message says of its values.

    Args:
        message: English text, the values named in braces: "held: {places}". A format may stand
            behind a name, "{cut_mm:.1f}". Written out where it is used: it is collected from there.
        given: The values.

    Example:
        >>> say("held: {places}", places="W1, W2")
        'held: W1, W2'
    """
    return Said(message.format(**given), message, given)


def say_many(one: str, more: str, /, *, count: int, **given: object) -> str:
    """Return what a message says of a count, in the form for one or for any other.

    Args:
        one: The form for one.
        more: The form for any other count.
        count: What is counted; "{count}" in the message.
        given: The other values.

    Example:
        >>> say_many("{count} piece", "{count} pieces", count=3)
        '3 pieces'
    """
    message = one if count == 1 else more
    named = {"count": count, **given}
    return Said(message.format(**named), one, named, more, count)


def instead(english: str, message: str) -> str:
    """Return a text that is English of its own, and what another message is in any other language.

    Args:
        english: What one country says.
        message: What is translated.

    Example:
        >>> instead("casing", say("architrave"))
        'casing'
    """
    return Instead(english, message) if isinstance(message, Said) else english


def joined(between: str, parts: Iterable[str]) -> str:
    """Return texts as one, each still what it says.

    Example:
        >>> joined(", ", ["W1", say("held")])
        'W1, held'
    """
    return Joined(between, tuple(parts))


def raised(text: str) -> str:
    """Return a text with a capital in front.

    Example:
        >>> raised(say("left leg"))
        'Left leg'
    """
    english = f"{text[:1].upper()}{text[1:]}"
    return Instead(english, text, Shape.RAISED) if isinstance(text, Said) else english


def begun_small(text: str) -> str:
    """Return a sentence as it goes on behind a colon; other languages leave it as it is.

    Example:
        >>> begun_small(say("Only a door has stops."))
        'only a door has stops.'
    """
    return instead(f"{text[:1].lower()}{text[1:]}", text)


def lowered(text: str) -> str:
    """Return a title as it stands within a sentence; other languages leave it as it is.

    Example:
        >>> lowered(say("Skirting"))
        'skirting'
    """
    return instead(text.lower(), text)


def figure(number: str) -> str:
    """Return a number as printed in English, for each tongue to write as it writes numbers.

    Example:
        >>> figure("812.5")
        '812.5'
    """
    return Figure(number)
