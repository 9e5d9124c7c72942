"""Which counts of one device are here: what devices tell each other instead of all their keys."""

import hashlib
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from typing import Final, NamedTuple

SUM_SIGNS: Final = 16


class UpTo(NamedTuple):
    """Which entries of one device are here.

    A device's counts have gaps: it counts on from the highest that it has seen of any device. So
    the highest count alone doesn't say what is missing before it.

    Attributes:
        counter: The highest count.
        sum: Sum over all counts that are here.
    """

    counter: int
    sum: str


class Counters:
    """The counts of one device that are here, with the sum up to each of them.

    What is asked of it costs no more when there are thousands: a share reads none but the new ones.

    Example:
        >>> here = Counters()
        >>> for counter in (1, 4, 6):
        ...     here.add(counter)
        >>> list(here.lacking(UpTo(4, counters_sum([1, 4]))))
        [6]
    """

    def __init__(self) -> None:
        self._counters: list[int] = []
        self._sums: list[str] = []
        self._sum = hashlib.sha256()

    def add(self, counter: int) -> None:
        """Note one more; one that is here already changes nothing."""
        at = bisect_left(self._counters, counter)
        if at < len(self._counters) and self._counters[at] == counter:
            return
        self._counters.insert(at, counter)
        if at < len(self._sums):
            # All sums from here on are others; they are made when somebody asks.
            self._sums.clear()
            self._sum = hashlib.sha256()

    def up_to(self) -> UpTo:
        """Return which are here; there is one at least."""
        return UpTo(self._counters[-1], self._sum_of_first(len(self._counters)))

    def lacking(self, known: UpTo | None) -> Sequence[int]:
        """Return which ones another device lacks, the lowest first.

        Args:
            known: What the other knows of this one's; None: nothing.
        """
        if known is None:
            return self._counters[:]
        if known.counter > self._counters[-1]:
            return ()
        first = bisect_right(self._counters, known.counter)
        is_whole = self._sum_of_first(first) == known.sum
        return self._counters[first if is_whole else 0 :]

    def _sum_of_first(self, count: int) -> str:
        if count == 0:
            return counters_sum(())
        for counter in self._counters[len(self._sums) :]:
            self._sum.update(f"{',' if self._sums else ''}{counter}".encode())
            self._sums.append(self._sum.hexdigest()[:SUM_SIGNS])
        return self._sums[count - 1]


def counters_sum(counters: Iterable[int]) -> str:
    """Return the sum over counts, whatever their order; the phone makes the same.

    Example:
        >>> counters_sum([4, 1]) == counters_sum([1, 4])
        True
    """
    text = ",".join(map(str, sorted(counters)))
    return hashlib.sha256(text.encode()).hexdigest()[:SUM_SIGNS]
