"""Chance by number: what a source of error was in one imagined house, the same on every platform.

A draw is a function of four numbers, so that any of them can be had again on its own, in any order
and by any engine: nothing is carried from one to the next.

References:
    Salmon, Moraes, Dror, Shaw (2011), "Parallel random numbers: as easy as 1, 2, 3": Philox with
    four words and ten rounds. Wichura (1988), algorithm AS 241, Applied Statistics 37(3):
    percentage points of the normal distribution.
"""

import math
from enum import StrEnum
from typing import Final, NamedTuple, assert_never

ROUNDS: Final = 10


class Philox(NamedTuple):
    """Constants of the generator for one width of word.

    Attributes:
        bits: Width of a word.
        multipliers: Of the first and the third word of the counter.
        increments: What each word of the key grows by from round to round.
    """

    bits: int
    multipliers: tuple[int, int]
    increments: tuple[int, int]


PHILOX_4X32: Final = Philox(
    bits=32, multipliers=(0xD2511F53, 0xCD9E8D57), increments=(0x9E3779B9, 0xBB67AE85)
)
PHILOX_4X64: Final = Philox(
    bits=64,
    multipliers=(0xD2E7470EE14C6C93, 0xCA5A826395121157),
    increments=(0x9E3779B97F4A7C15, 0xBB67AE8584CAA73B),
)

_WORD: Final = 0xFFFFFFFF
_STEP: Final = 2.0**-32
_RECTANGLE: Final = math.sqrt(12.0)

# AS 241, highest power first: within 0.425 of a half, then by the root of minus the log of what is
# left, up to 5 and beyond.
CENTRE: Final = (
    (
        2.5090809287301226727e3,
        3.3430575583588128105e4,
        6.7265770927008700853e4,
        4.5921953931549871457e4,
        1.3731693765509461125e4,
        1.9715909503065514427e3,
        1.3314166789178437745e2,
        3.3871328727963666080e0,
    ),
    (
        5.2264952788528545610e3,
        2.8729085735721942674e4,
        3.9307895800092710610e4,
        2.1213794301586595867e4,
        5.3941960214247511077e3,
        6.8718700749205790830e2,
        4.2313330701600911252e1,
        1.0,
    ),
)
TAIL: Final = (
    (
        7.74545014278341407640e-4,
        2.27238449892691845833e-2,
        2.41780725177450611770e-1,
        1.27045825245236838258e0,
        3.64784832476320460504e0,
        5.76949722146069140550e0,
        4.63033784615654529590e0,
        1.42343711074968357734e0,
    ),
    (
        1.05075007164441684324e-9,
        5.47593808499534494600e-4,
        1.51986665636164571966e-2,
        1.48103976427480074590e-1,
        6.89767334985100004550e-1,
        1.67638483018380384940e0,
        2.05319162663775882187e0,
        1.0,
    ),
)
_FAR_TAIL: Final = (
    (
        2.01033439929228813265e-7,
        2.71155556874348757815e-5,
        1.24266094738807843860e-3,
        2.65321895265761230930e-2,
        2.96560571828504891230e-1,
        1.78482653991729133580e0,
        5.46378491116411436990e0,
        6.65790464350110377720e0,
    ),
    (
        2.04426310338993978564e-15,
        1.42151175831644588870e-7,
        1.84631831751005468180e-5,
        7.86869131145613259100e-4,
        1.48753612908506148525e-2,
        1.36929880922735805310e-1,
        5.99832206555887937690e-1,
        1.0,
    ),
)


class Spread(StrEnum):
    """How a source of error spreads; of mean nought and standard uncertainty one."""

    NORMAL = "normal"
    RECTANGULAR = "rectangular"


def philox(
    counter: tuple[int, int, int, int], key: tuple[int, int], kind: Philox = PHILOX_4X32
) -> tuple[int, int, int, int]:
    """Return the four words that belong to a counter under a key.

    Example:
        >>> [f"{word:08x}" for word in philox((0, 0, 0, 0), (0, 0))]
        ['6627e8d5', 'e169c58d', 'bc57ac4c', '9b00dbd8']
    """
    bits, (m0, m1), (w0, w1) = kind
    word = (1 << bits) - 1
    c0, c1, c2, c3 = counter
    k0, k1 = key
    for _ in range(ROUNDS):
        p0, p1 = m0 * c0, m1 * c2
        c0, c1, c2, c3 = (p1 >> bits) ^ c1 ^ k0, p1 & word, (p0 >> bits) ^ c3 ^ k1, p0 & word
        k0, k1 = (k0 + w0) & word, (k1 + w1) & word
    return c0, c1, c2, c3


def key_of(seed: int) -> tuple[int, int]:
    """Return the key of a seed, its lower 64 bits."""
    return seed & _WORD, (seed >> 32) & _WORD


def uniforms(seed: int, stream: int, index: int, terms: int) -> list[float]:
    """Return the first `terms` even chances of one draw, each between 0 and 1 and neither.

    Args:
        seed: Of the whole forecast; its lower 64 bits count.
        stream: Which set of draws. 0 <= stream < 2**32
        index: Which draw of the set. 0 <= index < 2**32
        terms: How many sources of error.

    Example:
        >>> [round(u, 4) for u in uniforms(0, 0, 0, 2)]
        [0.399, 0.8805]
    """
    key = key_of(seed)
    words: list[int] = []
    for quarter in range((terms + 3) // 4):
        words += philox((index, quarter, stream, 0), key)
    return [(word + 0.5) * _STEP for word in words[:terms]]


def draw(seed: int, stream: int, index: int, term: int, spread: Spread = Spread.NORMAL) -> float:
    """Return what one source of error was in one draw, in its standard uncertainties."""
    word = philox((index, term // 4, stream, 0), key_of(seed))[term % 4]
    return spread_out(spread, (word + 0.5) * _STEP)


def spread_out(spread: Spread, chance: float) -> float:
    """Return the error of unit variance below which lies a share `chance` of its kind."""
    match spread:
        case Spread.NORMAL:
            return normal_quantile(chance)
        case Spread.RECTANGULAR:
            return _RECTANGLE * (chance - 0.5)
        case _:
            assert_never(spread)


def normal_quantile(chance: float) -> float:
    """Return how many standard uncertainties a normal error stays below with a given chance.

    Args:
        chance: 0 < chance < 1.

    Example:
        >>> round(normal_quantile(0.975), 4)
        1.96

    References:
        Wichura (1988), AS 241, routine PPND16; good to about one part in 10**16.
    """
    q = chance - 0.5
    if abs(q) <= 0.425:
        return _ratio(CENTRE, 0.180625 - q * q, q)
    depth = math.sqrt(-math.log(chance if q < 0.0 else 1.0 - chance))
    size = _ratio(TAIL, depth - 1.6) if depth <= 5.0 else _ratio(_FAR_TAIL, depth - 5.0)
    return -size if q < 0.0 else size


def _ratio(
    pair: tuple[tuple[float, ...], tuple[float, ...]], x: float, times: float = 1.0
) -> float:
    (a7, a6, a5, a4, a3, a2, a1, a0), (b7, b6, b5, b4, b3, b2, b1, b0) = pair
    above = ((((((a7 * x + a6) * x + a5) * x + a4) * x + a3) * x + a2) * x + a1) * x + a0
    below = ((((((b7 * x + b6) * x + b5) * x + b4) * x + b3) * x + b2) * x + b1) * x + b0
    return above * times / below
