"""The random stream of the forecast with numpy: the same draws, many at a time."""

import math
from collections.abc import Sequence
from types import ModuleType
from typing import TYPE_CHECKING, Any, Final, assert_never

from longpoint.forecast.stream import (
    CENTRE,
    PHILOX_4X32,
    ROUNDS,
    TAIL,
    Spread,
    key_of,
)
from longpoint.solvers.one_thread import numpy_in_one_thread

if TYPE_CHECKING:
    from numpy.typing import NDArray

_AT_ONCE: Final = 32768
"""Errors at a time: so many stay in the processor's cache."""

_WORD: Final = 0xFFFFFFFF


class NumpyStream:
    """Draws what `longpoint.forecast.stream` draws, operation by operation.

    The words are the same, and so are rectangular errors and normal ones but for the last digit of
    a logarithm, which concerns the outer three in twenty.
    """

    def __init__(self) -> None:
        self._numpy: ModuleType = numpy_in_one_thread()

    def draws(
        self, seed: int, stream: int, rows: "NDArray[Any]", spreads: Sequence[Spread]
    ) -> "NDArray[Any]":
        """Return what each source of error was in some draws.

        Args:
            seed: Of the whole forecast; its lower 64 bits count.
            stream: Which set of draws. 0 <= stream < 2**32
            rows: Which draws of the set. 0 <= row < 2**32, (n,)
            spreads: How each source spreads, (t,).

        Returns:
            In standard uncertainties, (t, n).
        """
        found: NDArray[Any] = self._numpy.empty((len(spreads), len(rows)))
        at_once = max(1, _AT_ONCE // max(1, len(spreads)))
        for start in range(0, len(rows), at_once):
            part = slice(start, start + at_once)
            found[:, part] = self._spread_out(
                self._chances(seed, stream, rows[part], len(spreads)), spreads
            )
        return found

    def _chances(self, seed: int, stream: int, rows: "NDArray[Any]", terms: int) -> "NDArray[Any]":
        """Return even chances between 0 and 1, (terms, n)."""
        numpy = self._numpy
        shape = (quarters, count) = ((terms + 3) // 4, len(rows))
        c0 = numpy.broadcast_to(rows.astype(numpy.uint64), shape)
        c1 = numpy.broadcast_to(numpy.arange(quarters, dtype=numpy.uint64)[:, None], shape)
        c2 = numpy.full(shape, stream, numpy.uint64)
        c3 = numpy.zeros(shape, numpy.uint64)
        words = numpy.stack(self._philox(seed, (c0, c1, c2, c3)), axis=1)
        chances: NDArray[Any] = (words.reshape(4 * quarters, count)[:terms] + 0.5) * 2.0**-32
        return chances

    def _philox(self, seed: int, counter: "tuple[NDArray[Any], ...]") -> "tuple[NDArray[Any], ...]":
        numpy = self._numpy
        word, half = numpy.uint64(_WORD), numpy.uint64(32)
        m0, m1 = map(numpy.uint64, PHILOX_4X32.multipliers)
        w0, w1 = PHILOX_4X32.increments
        k0, k1 = key_of(seed)
        c0, c1, c2, c3 = counter
        for _ in range(ROUNDS):
            p0, p1 = m0 * c0, m1 * c2
            c0 = (p1 >> half) ^ c1 ^ numpy.uint64(k0)
            c2 = (p0 >> half) ^ c3 ^ numpy.uint64(k1)
            c1, c3 = p1 & word, p0 & word
            k0, k1 = (k0 + w0) & _WORD, (k1 + w1) & _WORD
        return c0, c1, c2, c3

    def _spread_out(self, chances: "NDArray[Any]", spreads: Sequence[Spread]) -> "NDArray[Any]":
        found: NDArray[Any] = self._numpy.empty_like(chances)
        for spread in Spread:
            terms = [term for term, its in enumerate(spreads) if its is spread]
            if not terms:
                continue
            match spread:
                case Spread.NORMAL:
                    found[terms] = self._normal_quantiles(chances[terms])
                case Spread.RECTANGULAR:
                    found[terms] = math.sqrt(12.0) * (chances[terms] - 0.5)
                case _:
                    assert_never(spread)
        return found

    def _normal_quantiles(self, chances: "NDArray[Any]") -> "NDArray[Any]":
        numpy = self._numpy
        shape, chances = chances.shape, chances.ravel()
        q = chances - 0.5
        found = _ratio(CENTRE, 0.180625 - q * q, q)
        outer = numpy.flatnonzero(numpy.abs(q) > 0.425)
        below = q[outer] < 0.0
        depths = numpy.sqrt(-numpy.log(numpy.where(below, chances[outer], 1.0 - chances[outer])))
        # No chance of the stream is below 2**-33: no depth is above 4.8, none in the far tail.
        sizes = _ratio(TAIL, depths - 1.6)
        found[outer] = numpy.where(below, -sizes, sizes)
        return found.reshape(shape)


def _ratio(
    pair: tuple[tuple[float, ...], tuple[float, ...]],
    x: "NDArray[Any]",
    times: "NDArray[Any] | float" = 1.0,
) -> "NDArray[Any]":
    above, below = (_polynomial(coefficients, x) for coefficients in pair)
    above *= times
    above /= below
    return above


def _polynomial(coefficients: tuple[float, ...], x: "NDArray[Any]") -> "NDArray[Any]":
    value = coefficients[0] * x
    for coefficient in coefficients[1:-1]:
        value += coefficient
        value *= x
    value += coefficients[-1]
    return value
