"""What a phone gives its crew, and what it says of what came from the others."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final

from longpoint.journal import Entry, Key, Seen, UpTo, in_order, lacking, seen
from longpoint.phone.entries import EntryKey
from longpoint.phone.entry_words import entry_words, key_words
from longpoint.phone.messages import Came, CameFrom, Passing, SeenUpTo

MOST_SAID: Final = 4
"""Sentences of one device; whoever wants all of it looks at the readings."""


def passing(keys: Iterable[Mapping[str, Any]], there: Mapping[str, Mapping[str, Any]]) -> Passing:
    """Return what of a house the laptop lacks, and whether it has more than this phone.

    Args:
        keys: Of the entries here: device and count.
        there: What the laptop has, by device, as `messages.SeenUpTo`.

    Example:
        >>> here = [{"device": "p", "counter": 1}, {"device": "p", "counter": 2}]
        >>> first = {
        ...     d: {"counter": s.counter, "sum": s.sum} for d, s in passing(here, {}).seen.items()
        ... }
        >>> passing(here, first).lacking, passing(here[:1], first).is_behind
        ((), True)
    """
    own = [Key(key["device"], key["counter"]) for key in keys]
    other = {device: UpTo(up["counter"], up["sum"]) for device, up in there.items()}
    here = seen(own)
    return Passing(
        seen={device: SeenUpTo(counter=up.counter, sum=up.sum) for device, up in here.items()},
        lacking=tuple(EntryKey(device=k.device, counter=k.counter) for k in lacking(own, other)),
        is_behind=any(_has_more(up, here, device) for device, up in other.items()),
    )


def _has_more(there: UpTo, here: Seen, device: str) -> bool:
    own = here.get(device)
    return (
        own is None
        or there.counter > own.counter
        or (there.counter == own.counter and there.sum != own.sum)
    )


def came(entries: Sequence[Entry]) -> Came:
    """Return what entries say that came from other devices, readings of one line together.

    Example:
        >>> one = {"device": "q", "counter": 4, "what": "reading", "opening": "W1", "line": "top"}
        >>> found = came([one, {**one, "counter": 5}]).by[0]
        >>> found.device, found.words
        ('q', ('2 readings of W1 top',))
    """
    devices = dict.fromkeys(str(entry["device"]) for entry in entries)
    return Came(
        by=tuple(_from(d, in_order(e for e in entries if e["device"] == d)) for d in devices)
    )


def _from(device: str, entries: Sequence[Entry]) -> CameFrom:
    counts: dict[str, int] = {}
    for entry in entries:
        what = _line(entry) or entry_words(entry)
        # Said last is what came last.
        counts[what] = counts.pop(what, 0) + 1
    said = [(_counted(what, count), count) for what, count in counts.items()]
    kept = said[-MOST_SAID:]
    return CameFrom(
        device=device,
        words=tuple(words for words, _ in kept),
        more=len(entries) - sum(count for _, count in kept),
    )


def _line(entry: Entry) -> str:
    try:
        match entry["what"]:
            case "reading":
                return f"reading of {entry['opening']} {key_words([entry['line']])}"
            case "place-read":
                return f"reading of {' '.join(entry['place'][1::2])}, {key_words([entry['line']])}"
            case _:
                return ""
    except (KeyError, TypeError, AttributeError, ValueError):
        # Of a version that writes it otherwise: it counts all the same.
        return ""


def _counted(what: str, count: int) -> str:
    if what.startswith("reading of "):
        return f"1 {what}" if count == 1 else f"{count} {what.replace('reading', 'readings', 1)}"
    return what if count == 1 else f"{what} ({count} times)"
