"""Draws of a whole house judged with numpy, behind the port of the lines."""

import importlib.util
from collections.abc import Sequence
from types import ModuleType
from typing import TYPE_CHECKING, Any, Final, NamedTuple

from longpoint.forecast.lines import (
    PRIVATE_STREAM,
    SHARED_STREAM,
    LineGroup,
    LineHouse,
    LineTally,
    OpeningTally,
)
from longpoint.forecast.stream import Spread
from longpoint.solvers.numpy_stream import NumpyStream
from longpoint.solvers.one_thread import numpy_in_one_thread

if TYPE_CHECKING:
    from numpy.typing import NDArray

NEAR: Final = 1e-4
"""Draws whose largest line is this near to 1 in single precision are judged in double."""

_BLOCK: Final = 2048
"""Draws at a time: their errors and lines stay in the processor's cache."""

_BEYOND: Final = 6.0
"""No draw of t errors has a length above sqrt(t) + this: the chance is below 1e-15."""

_SINGLE: Final = 2.0**-24
_NOUGHT: Final = 1e-9

_Pool = dict[tuple[int, Spread], "NDArray[Any]"]


class _Judge(NamedTuple):
    """One group of lines, ready to be judged.

    Attributes:
        combine: Combinations of errors that the lines are made of, and a last row that keeps the
            constant 1 behind the errors; single precision, (k + 1, s + p + 1).
        lines: The lines by combination, their offsets last, single precision, (l, k + 1).
        near: Within this of 1 single precision doesn't decide.
        exact: The lines by error, (l, s + p).
        offsets: (l,)
    """

    combine: "NDArray[Any]"
    lines: "NDArray[Any]"
    near: float
    exact: "NDArray[Any]"
    offsets: "NDArray[Any]"


class NumpyLines:
    """Judges draws by matrix products: about a second for 25 openings and 100 000 draws.

    numpy is imported when the first engine is made, so that a plan without one doesn't wait for it.
    """

    def __init__(self) -> None:
        self._numpy: ModuleType = numpy_in_one_thread()
        self._stream = NumpyStream()

    @staticmethod
    def is_installed() -> bool:
        """Tell whether numpy can be imported."""
        return importlib.util.find_spec("numpy") is not None

    def tally(self, house: LineHouse) -> LineTally:
        """Return in how many draws each opening fits, and how many don't at once."""
        numpy = self._numpy
        shared, pool = self.drawn(house)
        misfits = numpy.zeros(house.draws, numpy.int32)
        tallies = []
        for number, opening in enumerate(house.openings):
            failing = self._failing(house, number, shared, pool)
            anywhere = failing.any(axis=0)
            misfits += anywhere
            tallies.append(
                OpeningTally(
                    mark=opening.mark,
                    fits=tuple(house.draws - int(count) for count in failing.sum(axis=1)),
                    together=house.draws - int(anywhere.sum()),
                )
            )
        counts = numpy.bincount(misfits, minlength=len(house.openings) + 1)
        return LineTally(
            openings=tuple(tallies), misfits=tuple(map(int, counts)), draws=house.draws
        )

    def drawn(self, house: LineHouse) -> "tuple[NDArray[Any], _Pool]":
        """Return the errors of all draws in single precision: shared, (s, draws), and the pool's.

        A row of the pool is longer than the pool by one block, which begins it again.
        """
        shared = self._singles(house.seed, SHARED_STREAM, house.draws, house.shared)
        used = {key for opening in house.openings for key in enumerate(opening.private)}
        pool: _Pool = {}
        # Once for all terms, and once more for those that spread in two ways.
        while left := {term: spread for term, spread in sorted(used - pool.keys(), reverse=True)}:
            spreads = [left.get(term, Spread.RECTANGULAR) for term in range(max(left) + 1)]
            rows = self._singles(house.seed, PRIVATE_STREAM, house.pool_rows, spreads, again=_BLOCK)
            pool |= {(term, spread): rows[term] for term, spread in left.items()}
        return shared, pool

    def _singles(
        self, seed: int, stream: int, draws: int, spreads: Sequence[Spread], *, again: int = 0
    ) -> "NDArray[Any]":
        numpy = self._numpy
        found: NDArray[Any] = numpy.empty((len(spreads), draws + again), numpy.float32)
        for start in range(0, draws, _BLOCK):
            rows = numpy.arange(start, min(start + _BLOCK, draws))
            found[:, start : start + len(rows)] = self._stream.draws(seed, stream, rows, spreads)
        found[:, draws:] = found[:, numpy.arange(again) % draws]
        return found

    def _failing(
        self, house: LineHouse, number: int, shared: "NDArray[Any]", pool: _Pool
    ) -> "NDArray[Any]":
        """Return where an opening doesn't fit: (groups, draws)."""
        numpy, opening = self._numpy, house.openings[number]
        terms = len(shared) + len(opening.private)
        judges = [self._judge(group, terms) for group in opening.groups]
        failing: NDArray[Any] = numpy.zeros((len(judges), house.draws), bool)
        near = numpy.zeros(house.draws, bool)
        rows = [pool[key] for key in enumerate(opening.private)]
        errors = numpy.ones((terms + 1, _BLOCK), numpy.float32)
        # Memory taken once: to ask for it anew in every block costs as much as the products.
        space = numpy.empty(
            _BLOCK * max((len(judge.lines) for judge in judges), default=0), numpy.float32
        )
        for start in range(0, house.draws, _BLOCK):
            size = min(_BLOCK, house.draws - start)
            first = (start + house.first_row(number)) % house.pool_rows
            errors[: len(shared), :size] = shared[:, start : start + size]
            for term, row in enumerate(rows, start=len(shared)):
                errors[term, :size] = row[first : first + size]
            for group, judge in enumerate(judges):
                if len(judge.lines):
                    values = space[: len(judge.lines) * size].reshape(-1, size)
                    numpy.matmul(judge.lines, judge.combine @ errors[:, :size], out=values)
                    largest = values.max(axis=0)
                    failing[group, start : start + size] = largest > 1.0
                    near[start : start + size] |= numpy.abs(largest - 1.0) <= judge.near
        self._judge_in_double(house, number, judges, numpy.flatnonzero(near), failing)
        return failing

    def _judge_in_double(
        self,
        house: LineHouse,
        number: int,
        judges: "Sequence[_Judge]",
        draws: "NDArray[Any]",
        failing: "NDArray[Any]",
    ) -> None:
        """Write anew in which of some draws each group doesn't fit."""
        numpy, opening = self._numpy, house.openings[number]
        for start in range(0, len(draws), _BLOCK):
            some = draws[start : start + _BLOCK]
            rows = (some + house.first_row(number)) % house.pool_rows
            shared = self._stream.draws(house.seed, SHARED_STREAM, some, house.shared)
            private = self._stream.draws(house.seed, PRIVATE_STREAM, rows, opening.private)
            errors = numpy.concatenate((shared, private))
            for group, judge in enumerate(judges):
                if len(judge.lines):
                    values = judge.exact @ errors + judge.offsets[:, None]
                    failing[group, some] = values.max(axis=0) > 1.0

    def _judge(self, group: LineGroup, terms: int) -> _Judge:
        """Return a group's lines as matrices, over fewer combinations where that is less work.

        References:
            Singular values: A = (A V') V for the rows V that belong to those above nought.
        """
        numpy = self._numpy
        exact = numpy.array([(*line.shared, *line.private) for line in group.lines], dtype=float)
        exact = exact.reshape(len(group.lines), terms)
        offsets = numpy.array([line.offset for line in group.lines], dtype=float)
        combine = numpy.eye(terms)[exact.any(axis=0)]
        if exact.any():
            _, sizes, across = numpy.linalg.svd(exact, full_matrices=False)
            rank = int((sizes > _NOUGHT * sizes[0]).sum())
            combine = across[:rank] if rank < len(combine) else combine
        lines = exact @ combine.T
        furthest = terms**0.5 + _BEYOND
        reach = numpy.abs(lines) @ numpy.linalg.norm(combine, axis=1)
        left = numpy.linalg.norm(exact - lines @ combine, axis=1)
        singles = (2 * terms + 4) * _SINGLE * (numpy.abs(offsets) + furthest * reach)
        rounding = float((singles + furthest * left).max(initial=0.0))
        with_one = numpy.zeros((len(combine) + 1, terms + 1))
        with_one[:-1, :-1], with_one[-1, -1] = combine, 1.0
        return _Judge(
            combine=with_one.astype(numpy.float32),
            lines=numpy.column_stack((lines, offsets)).astype(numpy.float32),
            near=max(NEAR, rounding),
            exact=exact,
            offsets=offsets,
        )
