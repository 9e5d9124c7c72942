"""What one device has to send to another, and what comes of it.

Nothing is ever sent but entries as they were written. So it doesn't matter in which order they
arrive, how often, or what the clocks of the devices say: the same entries are the same journal.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from heapq import merge

from longpoint.journal.counters import Counters, UpTo
from longpoint.journal.entry import Entry, Key, as_written, key_of

Seen = Mapping[str, UpTo]
"""Which entries of each device are here."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """Two different entries under one key: a device was copied, or an entry was changed.

    Attributes:
        key: Their key.
        here: What stands here, and goes on standing.
        there: What came, and was not taken.
    """

    key: Key
    here: Entry
    there: Entry


@dataclass(frozen=True, slots=True, kw_only=True)
class Merged:
    """What came of taking entries in.

    Attributes:
        entries: All that are here now, by key.
        added: Those that are new.
        known: How many were here before.
        clashes: Those that were refused.
    """

    entries: tuple[Entry, ...]
    added: tuple[Entry, ...]
    known: int
    clashes: tuple[Clash, ...]


def seen(keys: Iterable[Key]) -> Seen:
    """Return what to tell another device, so that it sends what is missing here.

    Args:
        keys: Of all entries that are here.

    Example:
        >>> seen([Key("p", 1), Key("p", 4), Key("q", 3)])["p"].counter
        4
    """
    return {device: counters.up_to() for device, counters in sorted(_by_device(keys).items())}


def lacking(keys: Iterable[Key], there: Seen) -> tuple[Key, ...]:
    """Return which entries another device lacks, in their order.

    What is here of a device beyond the other's highest is sent. Where one is missing before that,
    all of that device is sent; it does no harm. Of a device of which the other knows a higher count
    nothing is sent yet: once what it knows has come here, it can be told what it lacks.

    Args:
        keys: Of all entries that are here.
        there: What the other device says that it has.

    Example:
        >>> here = [Key("p", 1), Key("p", 4), Key("p", 6)]
        >>> lacking(here, seen(here[:2]))
        (Key(device='p', counter=6),)
        >>> len(lacking(here, seen(here[1:])))
        3
    """
    return tuple(lacking_of(_by_device(keys), there))


def lacking_of(here: Mapping[str, Counters], there: Seen) -> Iterable[Key]:
    """Yield as `lacking` does, for counts that are kept ready.

    Args:
        here: What is here of each device.
        there: What the other device says that it has.
    """
    ordered = merge(
        *(
            [(counter, device) for counter in counters.lacking(there.get(device))]
            for device, counters in here.items()
        )
    )
    return (Key(device, counter) for counter, device in ordered)


def merged(here: Iterable[Entry], there: Iterable[Entry]) -> Merged:
    """Return the journal after entries came; what is here already is never changed.

    Args:
        here: What is here.
        there: What came: in any order, any of it twice.

    Example:
        >>> one = {"device": "p", "counter": 1, "what": "house-named", "name": "Wren"}
        >>> both = merged([one], [one, {**one, "counter": 2}, {**one, "name": "Lark"}])
        >>> len(both.entries), len(both.added), both.known, both.clashes[0].there["name"]
        (2, 1, 1, 'Lark')
    """
    found = {key_of(entry): entry for entry in here}
    added, clashes, known = [], [], 0
    for entry in there:
        stands = found.get(key_of(entry))
        if stands is None:
            found[key_of(entry)] = entry
            added.append(entry)
        elif as_written(stands) == as_written(entry):
            known += 1
        else:
            clashes.append(Clash(key=key_of(entry), here=stands, there=entry))
    return Merged(
        entries=tuple(found[key] for key in sorted(found)),
        added=tuple(added),
        known=known,
        clashes=tuple(clashes),
    )


def _by_device(keys: Iterable[Key]) -> dict[str, Counters]:
    found: dict[str, Counters] = {}
    for device, counter in sorted(keys):
        found.setdefault(device, Counters()).add(counter)
    return found
