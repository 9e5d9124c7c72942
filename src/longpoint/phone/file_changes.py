"""What somebody changed in a house file, as entries of the journal.

A file that was edited is not a new house: what phones read meanwhile stays, and the history says
which figure became which.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date
from typing import Any, Final

from longpoint.journal import Entry, key_of
from longpoint.phone.opening_lines import lines_of
from longpoint.survey.openings import OpeningKind

Body = dict[str, Any]
"""An entry without who wrote it and when."""

_MARK: Final = "mark"
_OF_AN_OPENING: Final = ("room", "kind", "trim")


def file_changes(
    before: Mapping[str, Any], after: Mapping[str, Any], written: Iterable[Entry]
) -> tuple[Body, ...] | None:
    """Return what makes one document the other.

    Args:
        before: As the file stood when it was last put in.
        after: As it stands now.
        written: All entries of the house, of whatever device: a changed reading takes their place.

    Returns:
        Entries without device, count and time; None where an opening has no mark of its own, so
        that nobody can tell which is which.

    Example:
        >>> before = {"openings": [{"mark": "W1", "kind": "window", "top": 1187}]}
        >>> after = {"openings": [{"mark": "W1", "kind": "window", "top": 1178}]}
        >>> [(each["line"], each["value_text"]) for each in file_changes(before, after, ())]
        [('top', '1178')]
    """
    olds, news = _by_mark(before), _by_mark(after)
    if olds is None or news is None:
        return None
    units = "in" if after.get("units") == "in" else "mm"
    over = _readings(written)
    found = [*_settings(before, after)]
    found += [{"what": "opening-left-out", "opening": mark} for mark in olds if mark not in news]
    for mark, opening in news.items():
        old = olds.get(mark)
        if old is None:
            if not all(isinstance(opening.get(key), str) for key in _OF_AN_OPENING):
                return None
            old = {key: opening[key] for key in (_MARK, *_OF_AN_OPENING)}
            head = {key: opening[key] for key in _OF_AN_OPENING}
            found.append({"what": "opening-added", "opening": mark, **head})
        lines = _lines(opening)
        for path, value in _changed(old, opening, ()):
            line = ".".join(path)
            if line in lines and _is_a_reading(value, units):
                found.append(
                    {
                        "what": "reading",
                        "opening": mark,
                        "line": line,
                        "value_text": str(value),
                        "unit": units,
                        "again": False,
                        "over": over.get((mark, line), []),
                    }
                )
            else:
                changed = {"opening": mark, "key": [*path], "value": value}
                found.append({"what": "opening-changed", **changed})
    return tuple(found)


def without_days(value: Any) -> Any:  # noqa: ANN401
    """Return a document with days as text, as a journal carries them."""
    match value:
        case Mapping():
            return {key: without_days(each) for key, each in value.items()}
        case list() | tuple():
            return [without_days(each) for each in value]
        case date():
            return value.isoformat()
        case _:
            return value


def _settings(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[Body]:
    old, new = ({k: v for k, v in each.items() if k != "openings"} for each in (before, after))
    if "name" in new and old.get("name") != new["name"]:
        yield {"what": "house-named", "name": new["name"]}
        old["name"] = new["name"]
    for path, value in _changed(old, new, ()):
        yield {"what": "setting", "key": [*path], "value": value}


def _changed(
    before: Mapping[str, Any], after: Mapping[str, Any], path: tuple[str, ...]
) -> Iterator[tuple[tuple[str, ...], Any]]:
    """Yield the way to each value that became another, and what it is now; None: it is gone."""
    for key in dict.fromkeys((*before, *after)):
        old, new = before.get(key), after.get(key)
        if isinstance(old, Mapping) and isinstance(new, Mapping):
            yield from _changed(old, new, (*path, key))
        elif old != new or type(old) is not type(new):
            yield (*path, key), new


def _by_mark(document: Mapping[str, Any]) -> dict[str, Mapping[str, Any]] | None:
    openings = document.get("openings", [])
    if not isinstance(openings, Sequence):
        return None
    found: dict[str, Mapping[str, Any]] = {}
    for opening in openings:
        mark = opening.get(_MARK) if isinstance(opening, Mapping) else None
        if not isinstance(mark, str) or mark in found:
            return None
        found[mark] = opening
    return found


def _lines(opening: Mapping[str, Any]) -> frozenset[str]:
    kind = opening.get("kind")
    return frozenset(
        line.line for line in (lines_of(OpeningKind(kind)) if kind in set(OpeningKind) else ())
    )


def _is_a_reading(value: object, units: str) -> bool:
    """Tell whether a value is one figure, as a phone writes it."""
    if units == "in":
        return isinstance(value, str)
    return isinstance(value, int | float) and not isinstance(value, bool)


def _readings(written: Iterable[Entry]) -> dict[tuple[str, str], list[dict[str, Any]]]:
    found: dict[tuple[str, str], list[dict[str, Any]]] = {}
    for entry in written:
        if entry["what"] == "reading":
            key = key_of(entry)
            line = (entry["opening"], entry["line"])
            found.setdefault(line, []).append({"device": key.device, "counter": key.counter})
    return found
