"""Which entries of each house are here, looked up anew only as far as some came.

With thousands of entries in a house, reading all keys for every share takes longer than the write
does. Entries are only ever added, under rising numbers, so what came since the last look is all
that there is to read, whoever wrote it. Each entry goes to all phones of its house: as the text
that it was written as, read from the store once.
"""

from collections import OrderedDict
from collections.abc import Iterable, Sequence
from typing import Final, Protocol

from longpoint.journal import Counters, Key, Seen, UpTo, lacking_of

MOST_HOUSES: Final = 50
"""Houses that are remembered; the one that was asked for longest ago is read anew."""
MOST_SIGNS: Final = 8_000_000
"""Signs of entries that are remembered, some 40,000 readings; the longest unasked goes first."""


class Looked(Protocol):
    """The store, as far as this asks it."""

    def keys(self, house: str, after: int = 0) -> tuple[tuple[int, Key], ...]:
        """Return the keys of a house beyond a number, each with its own."""

    def texts(self, keys: Sequence[Key]) -> tuple[str | None, ...]:
        """Return entries as they were written; None where there is none of that key."""


class HouseHere:
    """The entries of one house, by device."""

    def __init__(self) -> None:
        self._last = 0
        self._counters: dict[str, Counters] = {}
        self._seen: dict[str, UpTo] = {}

    def look(self, store: Looked, house: str) -> None:
        """Read what came since the last look."""
        came: set[str] = set()
        for number, key in store.keys(house, self._last):
            self._counters.setdefault(key.device, Counters()).add(key.counter)
            came.add(key.device)
            self._last = number
        for device in came:
            self._seen[device] = self._counters[device].up_to()

    def seen(self) -> Seen:
        """Return which entries of each device are here."""
        return dict(self._seen)

    def highest(self) -> int:
        """Return the highest count that was here at the last look."""
        return max((up_to.counter for up_to in self._seen.values()), default=0)

    def lacking(self, there: Seen) -> Iterable[Key]:
        """Yield which entries another device lacks, in their order."""
        differ = {
            device: self._counters[device]
            for device, up_to in self._seen.items()
            if there.get(device) != up_to
        }
        return lacking_of(differ, there)


class Texts:
    """Entries as they were written, those remembered that were asked for lately.

    Args:
        most_signs: Signs of all that are remembered.
    """

    def __init__(self, most_signs: int = MOST_SIGNS) -> None:
        self._most, self._signs = most_signs, 0
        self._texts: OrderedDict[Key, str] = OrderedDict()

    def of(self, store: Looked, keys: Sequence[Key]) -> list[str]:
        """Return the texts of entries that are in the store, in the order of their keys."""
        lacking = [key for key in keys if key not in self._texts]
        for key, text in zip(lacking, store.texts(lacking) if lacking else (), strict=True):
            if text is not None:
                self._texts[key] = text
                self._signs += len(text)
        found = []
        for key in keys:
            if key in self._texts:
                self._texts.move_to_end(key)
                found.append(self._texts[key])
        while self._signs > self._most:
            self._signs -= len(self._texts.popitem(last=False)[1])
        return found


class Here:
    """The entries of all houses that were asked for lately."""

    def __init__(self, most_houses: int = MOST_HOUSES) -> None:
        self._most = most_houses
        self._houses: OrderedDict[str, HouseHere] = OrderedDict()
        self._texts = Texts()

    def of(self, store: Looked, house: str) -> HouseHere:
        """Return what is here of a house now."""
        found = self._houses.setdefault(house, HouseHere())
        self._houses.move_to_end(house)
        while len(self._houses) > self._most:
            self._houses.popitem(last=False)
        found.look(store, house)
        return found

    def highest(self, house: str) -> int:
        """Return the highest count that is remembered of a house; 0 where nothing is."""
        found = self._houses.get(house)
        return found.highest() if found else 0

    def texts(self, store: Looked, keys: Sequence[Key]) -> list[str]:
        """Return entries as they were written."""
        return self._texts.of(store, keys)
