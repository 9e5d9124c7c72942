"""The entries of one or more devices, brought into one order; which of them count."""

from collections.abc import Iterable, Sequence

from longpoint.journal.entry import Entry, as_written


def in_order(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """Return the entries in the one order in which they are laid, each once.

    By count, then by device: clocks differ from one to the next, but whatever an entry's author had
    in sight has a lower count. So two journals give one house, whichever comes
    first and however often an entry comes.

    Example:
        >>> late, early = {"device": "a", "counter": 2}, {"device": "b", "counter": 1}
        >>> in_order([late, early, late]) == (early, late)
        True
    """
    found: dict[tuple[int, str], tuple[str, Entry]] = {}
    for entry in entries:
        key, text = (entry["counter"], entry["device"]), as_written(entry)
        # One key with two texts is a damaged journal: the same one is taken whichever comes first.
        if key not in found or text < found[key][0]:
            found[key] = (text, entry)
    return tuple(found[key][1] for key in sorted(found))


def counting(ordered: Sequence[Entry]) -> tuple[Entry, ...]:
    """Return the entries that count: those that no entry that counts has undone.

    Args:
        ordered: As `in_order` gives them.
    """
    undone: set[tuple[str, int]] = set()
    found = []
    for entry in reversed(ordered):
        if (entry["device"], entry["counter"]) in undone:
            continue
        match entry:
            case {"what": "undo", "of": {"device": str(device), "counter": int(counter)}}:
                undone.add((device, counter))
            case {"what": "undo"}:
                # Damaged, or of other hands: it takes nothing back.
                pass
            case _:
                found.append(entry)
    return tuple(found[::-1])
