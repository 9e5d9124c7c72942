"""What the server asks of the store, and one thread that asks it.

The store makes every write wait for the disk. Shares that arrive while it waits are taken together
in the next write: with many phones the disk is waited for once for all of them.
"""

import asyncio
import threading
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import islice
from queue import SimpleQueue
from typing import Final, Protocol, TypeVar

from longpoint.errors import LongpointError, StoreError
from longpoint.journal import (
    WHY_REFUSED,
    Clash,
    Entry,
    Key,
    Seen,
    as_written,
    furthest_ahead,
    is_house,
    key_of,
)
from longpoint.serve.crew.here import Here
from longpoint.serve.crew.refusals import Refused

T = TypeVar("T")

MOST_ENTRIES: Final = 500
"""Entries in one answer; whoever lacks more asks again."""
MOST_SIGNS: Final = 1_000_000
"""Signs of the entries in one answer, but always at least one entry."""
READ_AT_ONCE: Final = 25
"""Entries that are read together: few enough that large ones don't fill the memory."""
MOST_AT_ONCE: Final = 64
"""Shares that are taken in one write."""


class TakenIn(Protocol):
    """What came of taking entries in."""

    @property
    def clashes(self) -> tuple[Clash, ...]:
        """Those that were refused."""


class Kept(Protocol):
    """The store, as the server uses it."""

    def take(self, entries: Iterable[Entry]) -> TakenIn:
        """Take entries in; when it comes back they are on the disk."""

    def houses(self) -> tuple[str, ...]:
        """Return the keys of all houses."""

    def keys(self, house: str, after: int = 0) -> tuple[tuple[int, Key], ...]:
        """Return the keys of a house beyond a number, each with its own."""

    def texts(self, keys: Sequence[Key]) -> tuple[str | None, ...]:
        """Return entries as they were written; None where there is none of that key."""

    def highest(self) -> int:
        """Return the highest count of any device; 0 where there is none."""

    def close(self) -> None:
        """Let go of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """What a phone gives of a house, and what it has of it.

    Attributes:
        house: Key of the house.
        seen: What the phone has, what it gives here included.
        entries: What it gives; all of this house.
    """

    house: str
    seen: Seen
    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """What a phone gets back.

    Attributes:
        seen: What is here now of the house.
        texts: Entries that the phone lacks, as they were written, or the first of them.
        more: Whether there is more.
        clashes: What of its own was refused: another entry stands here under that key.
    """

    seen: Seen
    texts: tuple[str, ...]
    more: bool
    clashes: tuple[Clash, ...] = ()


@dataclass(frozen=True, slots=True)
class _Asked:
    """Something asked of the store, and where the answer goes."""

    share: Share | None
    done: Callable[[object], object]


class Keeper:
    """Asks the store, on a thread of its own; a store belongs to the thread that opened it.

    Args:
        open_store: Opens it; called on that thread.

    Raises:
        LongpointError: The store can't be opened.
    """

    def __init__(self, open_store: Callable[[], Kept]) -> None:
        self._queue: SimpleQueue[_Asked | None] = SimpleQueue()
        self._open = open_store
        self._trouble: LongpointError | None = None
        ready = threading.Event()
        self._thread = threading.Thread(target=self._work, args=(ready,), daemon=True)
        self._thread.start()
        ready.wait()
        if self._trouble is not None:
            raise self._trouble

    async def share(self, share: Share) -> Shared:
        """Take in what a phone gives, and return what it lacks, once that is on the disk.

        Raises:
            LongpointError: The store refuses it, or there is no entry in what it gave.
        """
        found = await self._ask(share)
        assert isinstance(found, Shared)
        return found

    async def houses(self) -> tuple[tuple[str, Seen], ...]:
        """Return every house and what is here of it.

        Raises:
            LongpointError: The store can't be read.
        """
        found = await self._ask(None)
        assert isinstance(found, tuple)
        return found

    def close(self) -> None:
        """Finish what was asked, and let go of the store."""
        self._queue.put(None)
        self._thread.join()

    async def _ask(self, share: Share | None) -> object:
        loop = asyncio.get_running_loop()
        answer: asyncio.Future[object] = loop.create_future()

        def done(found: object) -> None:
            # A phone that went away in the middle doesn't wait for it any more.
            if not answer.done():
                answer.set_result(found)

        self._queue.put(_Asked(share, lambda found: loop.call_soon_threadsafe(done, found)))
        found = await answer
        if isinstance(found, LongpointError):
            raise found
        return found

    def _work(self, ready: threading.Event) -> None:
        try:
            store = self._open()
        except LongpointError as trouble:
            self._trouble = trouble
            return
        finally:
            ready.set()
        here = Here()
        try:
            while self._serve(store, here):
                pass
        finally:
            store.close()

    def _serve(self, store: Kept, here: Here) -> bool:
        """Answer what is waiting; False once it is to end."""
        asked = [self._queue.get()]
        while not self._queue.empty() and len(asked) < MOST_AT_ONCE:
            asked.append(self._queue.get())
        now = []
        for each in (each for each in asked if each is not None):
            trouble = _told(partial(_refuse_far_ahead, store, here, each.share))
            if trouble is None:
                now.append(each)
            else:
                each.done(trouble)
        taken = _take_together(store, [each.share for each in now if each.share])
        for each in now:
            each.done(_answer(store, here, each.share, taken))
        return None not in asked


def _take_together(store: Kept, shares: Sequence[Share]) -> TakenIn | LongpointError | None:
    entries = [entry for share in shares for entry in share.entries]
    return _told(lambda: store.take(entries)) if entries else None


def _answer(
    store: Kept, here: Here, share: Share | None, taken: TakenIn | LongpointError | None
) -> object:
    if share is None:
        return _told(
            lambda: tuple(
                (house, here.of(store, house).seen()) for house in store.houses() if is_house(house)
            )
        )
    if share.entries and isinstance(taken, LongpointError):
        return taken
    return _told(lambda: _lacking(store, here, share, taken if share.entries else None))


def _refuse_far_ahead(store: Kept, here: Here, share: Share | None) -> None:
    """Refuse a share with a count that nobody can have come to.

    Raises:
        Refused: There is one; nothing of the share is taken then.
    """
    # What is remembered of the house may be old, and then too low: the store is asked only after.
    if share is None or furthest_ahead(share.entries, here.highest(share.house)) is None:
        return
    furthest = furthest_ahead(share.entries, store.highest())
    if furthest is None:
        return
    raise Refused(
        422,
        f"Entry {furthest['counter']} of {furthest['device']} was shared.",
        WHY_REFUSED,
        "All of it stays on the phone and nothing was taken. Begin a new journal on the phone that "
        "wrote it, and read there again what is missing here.",
    )


def _told(act: Callable[[], T]) -> T | LongpointError:
    """Return what comes of it, or why nothing does: the thread goes on for everybody else."""
    try:
        return act()
    except LongpointError as trouble:
        return trouble
    except Exception as trouble:
        return StoreError(
            "A house was to be shared.",
            f"The store can't do it: {type(trouble).__name__}.",
            "Run `longpoint verify` on the laptop; what the phone has stays on the phone.",
        )


def _lacking(store: Kept, here: Here, share: Share, taken: object) -> Shared:
    house = here.of(store, share.house)
    texts, more = _page(store, here, house.lacking(share.seen))
    return Shared(seen=house.seen(), texts=texts, more=more, clashes=_clashes_of(share, taken))


def _page(store: Kept, here: Here, wanted: Iterable[Key]) -> tuple[tuple[str, ...], bool]:
    """Return as many entries as one answer holds, and whether there are more."""
    keys = list(islice(wanted, MOST_ENTRIES + 1))
    found: list[str] = []
    signs = 0
    for first in range(0, min(len(keys), MOST_ENTRIES), READ_AT_ONCE):
        for text in here.texts(store, keys[first : first + READ_AT_ONCE]):
            signs += len(text)
            if len(found) == MOST_ENTRIES or (found and signs > MOST_SIGNS):
                return tuple(found), True
            found.append(text)
    return tuple(found), len(keys) > MOST_ENTRIES


def _clashes_of(share: Share, taken: object) -> tuple[Clash, ...]:
    # Shares are taken together: a clash is of the one that brought the refused entry.
    clashes: tuple[Clash, ...] = getattr(taken, "clashes", ())
    if not clashes:
        return ()
    own = {key_of(entry): as_written(entry) for entry in share.entries}
    return tuple(c for c in clashes if own.get(c.key) == as_written(c.there))
