"""Which entries of each house are here, looked up anew only as far as some came.

With thousands of entries in a house, reading all keys for every share takes longer than the write
does. Entries are only ever added, under rising numbers, so what came since the last look is all
that there is to read, whoever wrote it.
"""

from collections import OrderedDict
from typing import Final, Protocol

from longpoint.journal import Key, Seen, UpTo, lacking, seen

MOST_HOUSES: Final = 50
"""Houses that are remembered; the one that was asked for longest ago is read anew."""


class Keys(Protocol):
    """The store, as far as this asks it."""

    def keys(self, house: str, after: int = 0) -> tuple[tuple[int, Key], ...]:
        """Return the keys of a house beyond a number, each with its own."""


class HouseHere:
    """The entries of one house, by device."""

    def __init__(self) -> None:
        self._last = 0
        self._counters: dict[str, set[int]] = {}
        self._seen: dict[str, UpTo] = {}

    def look(self, store: Keys, house: str) -> None:
        """Read what came since the last look."""
        came: set[str] = set()
        for number, key in store.keys(house, self._last):
            self._counters.setdefault(key.device, set()).add(key.counter)
            came.add(key.device)
            self._last = number
        for device in came:
            self._seen |= seen(self._keys(device))

    def seen(self) -> Seen:
        """Return which entries of each device are here."""
        return dict(self._seen)

    def lacking(self, there: Seen) -> tuple[Key, ...]:
        """Return which entries another device lacks, in their order."""
        differ = [device for device, up_to in self._seen.items() if there.get(device) != up_to]
        return lacking((key for device in differ for key in self._keys(device)), there)

    def _keys(self, device: str) -> list[Key]:
        return [Key(device, counter) for counter in self._counters[device]]


class Here:
    """The entries of all houses that were asked for lately."""

    def __init__(self, most_houses: int = MOST_HOUSES) -> None:
        self._most = most_houses
        self._houses: OrderedDict[str, HouseHere] = OrderedDict()

    def of(self, store: Keys, house: str) -> HouseHere:
        """Return what is here of a house now."""
        found = self._houses.setdefault(house, HouseHere())
        self._houses.move_to_end(house)
        while len(self._houses) > self._most:
            self._houses.popitem(last=False)
        found.look(store, house)
        return found
