"""Sets of a frame's rows weighed outside of Python, behind the core's port: arrays in a browser."""

from array import array
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import chain
from typing import Protocol

from longpoint.forecast.fitup.frame import FrameRow
from longpoint.forecast.fitup.weighing import FitLine, columns_of


class WeighingCall(Protocol):
    """What is called: rows and sets in, lines out, all as arrays."""

    def __call__(
        self,
        rows: int,
        columns: "array[float]",
        errors: "array[float]",
        sizes: "array[int]",
        members: "array[int]",
        /,
    ) -> Sequence[float]:
        """Weigh sets of rows.

        Args:
            rows: How many rows there are.
            columns: Of each row its moves and limit.
            errors: Of each row what every error changes in it.
            sizes: Of each set how many rows it has.
            members: The rows of one set after those of the other.

        Returns:
            The lines of those sets that have weights, one after the other.
        """
        ...


@dataclass(frozen=True, slots=True)
class CalledWeigher:
    """Weighs sets by a call.

    Attributes:
        call: What is called.
    """

    call: WeighingCall

    def __call__(self, rows: Sequence[FrameRow], sets: Sequence[Sequence[int]]) -> list[FitLine]:
        """Return the lines of those sets that have weights."""
        if not sets:
            return []
        found = self.call(
            len(rows),
            array("d", chain.from_iterable(columns_of(rows))),
            array("d", chain.from_iterable(row.errors for row in rows)),
            array("i", map(len, sets)),
            array("i", chain.from_iterable(sets)),
        )
        slots = len(rows[0].errors)
        return [tuple(found[at : at + slots]) for at in range(0, len(found), slots)]
