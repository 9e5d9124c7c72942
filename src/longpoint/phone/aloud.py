"""A figure read out over the noise of the saw, and the word that is said back."""

import re
from typing import Final

from longpoint.speech.said import say

_WORDS: Final = say(
    "acorn amber anvil apple arrow aspen badge bamboo barrel basin beacon bishop "
    "bottle bramble brick bucket button cactus camel candle canyon cedar chalk "
    "cherry clover comet copper coral cotton cradle crane cricket dagger daisy "
    "delta desert diamond dragon eagle elbow ember fable falcon feather fiddle "
    "flint forest garlic ginger glacier granite hammer harbour hazel heron honey "
    "island ivory jacket jasper kettle ladder lantern lemon linen lobster magnet "
    "maple marble meadow mitten monkey nettle oyster paddle parcel pebble pepper "
    "pilot plover pocket quarry rabbit raven ribbon saddle salmon sparrow tiger "
    "timber tulip turnip velvet walnut whistle willow zebra"
)
CHECK_WORDS: Final = tuple(_WORDS.split())
"""As many as a prime number above 10: one wrong figure, or two neighbours swapped, always gives
another word.

References:
    A figure d at place k counts d x 10**k; 97 is prime and divides neither 10 nor any difference
    of two figures, nor 9 times one.
"""

_NAMES: Final = (
    "nought one two three four five six seven eight nine".split()  # noqa: SIM905
)
_LEVEL: Final = {
    " ": say(" and"),
    "/": say(" over"),
    ".": say(" point"),
    "'": say(" feet"),
    '"': say(" inches"),
}


def check_word(figure: str) -> str:
    """Return the word that goes with a figure.

    Example:
        >>> check_word("1254.5"), check_word("1245.5"), check_word("1255.5")
        ('dagger', 'elbow', 'falcon')
    """
    digits = "".join(re.findall(r"\d", figure)) or "0"
    return CHECK_WORDS[int(digits) % len(CHECK_WORDS)]


def aloud(figure: str) -> str:
    """Return a figure as it is read out, figure by figure.

    Example:
        >>> aloud("1254.5"), aloud("46 3/4")
        ('one two five four point five', 'four six and three over four')
    """
    said = ""
    for sign in figure:
        said += say(" {names}", names=_NAMES[int(sign)]) if sign.isdigit() else _LEVEL.get(sign, "")
    return said.strip()
