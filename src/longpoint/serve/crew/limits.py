"""How often somebody may ask: a bucket that fills again as time goes by."""

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

MOST_KNOWN: Final = 1_000
"""Addresses and devices that are remembered; the one that asked longest ago is forgotten first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rate:
    """How much may be asked.

    Attributes:
        at_once: Requests in one go. > 0.
        a_second: Requests in the long run. > 0. [1/s]
    """

    at_once: float
    a_second: float


ADDRESS_RATE: Final = Rate(at_once=200, a_second=50)
"""Of one address: a page with all its files, and phones behind one hotspot. Our choice."""
DEVICE_RATE: Final = Rate(at_once=100, a_second=10)
"""Of one device, from whatever address: a phone asks a few times a minute, and page by page when it
comes back after a long time. Our choice."""
DOOR_RATE: Final = Rate(at_once=10, a_second=0.2)
"""Of one address at the door: codes can't be tried out. Our choice."""


class Buckets:
    """One bucket for each that asks.

    Args:
        rate: How much each may ask.
        clock: Seconds, never going back.

    Example:
        >>> now = [0.0]
        >>> buckets = Buckets(Rate(at_once=2, a_second=1), lambda: now[0])
        >>> [buckets.wait_s("a") for _ in range(3)]
        [0.0, 0.0, 1.0]
        >>> now[0] = 1.0
        >>> buckets.wait_s("a")
        0.0
    """

    def __init__(self, rate: Rate, clock: Callable[[], float]) -> None:
        self._rate, self._clock = rate, clock
        self._left: OrderedDict[str, tuple[float, float]] = OrderedDict()

    def wait_s(self, who: str) -> float:
        """Take one from somebody's bucket; returns 0, or how long until there is one. [s]"""
        now = self._clock()
        left, then = self._left.pop(who, (self._rate.at_once, now))
        left = min(self._rate.at_once, left + (now - then) * self._rate.a_second)
        is_one = left >= 1.0
        self._left[who] = (left - 1.0 if is_one else left, now)
        while len(self._left) > MOST_KNOWN:
            self._left.popitem(last=False)
        return 0.0 if is_one else (1.0 - left) / self._rate.a_second
