"""What one device has to send to another, and what comes of it.

Nothing is ever sent but entries as they were written. So it doesn't matter in which order they
arrive, how often, or what the clocks of the devices say: the same entries are the same journal.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from longpoint.journal.entry import Entry, Key, as_written, key_of

Seen = Mapping[str, int]
"""How many entries of each device are here, counted from the first until one is missing."""


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


def seen(entries: Iterable[Entry]) -> Seen:
    """Return what to tell another device, so that it sends what is missing here.

    Example:
        >>> found = [{"device": "p", "counter": n} for n in (1, 2, 4)]
        >>> seen(found)
        {'p': 2}
    """
    counters: dict[str, set[int]] = {}
    for entry in entries:
        counters.setdefault(entry["device"], set()).add(entry["counter"])
    found = {}
    for device, have in sorted(counters.items()):
        last = 0
        while last + 1 in have:
            last += 1
        if last:
            found[device] = last
    return found


def lacking(entries: Iterable[Entry], there: Seen) -> tuple[Entry, ...]:
    """Return what another device lacks, by key; some of it it may have behind a gap.

    Args:
        entries: What is here.
        there: What the other device says that it has.

    Example:
        >>> here = [{"device": "p", "counter": n} for n in (1, 2, 3)]
        >>> [e["counter"] for e in lacking(here, {"p": 1})]
        [2, 3]
    """
    wanted = (e for e in entries if e["counter"] > there.get(e["device"], 0))
    return tuple(sorted(wanted, key=key_of))


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
