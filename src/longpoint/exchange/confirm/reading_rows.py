"""A house's readings as rows, in the columns that `longpoint bring table` reads back."""

from collections import Counter
from collections.abc import Iterable, Mapping
from typing import Any, Final

from longpoint.exchange.confirm.record_keys import ANGLES, LENGTHS, RecordKind, cell_keys
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.house_file import house_document
from longpoint.survey.house_file.written_numbers import number_text

Row = tuple[str, ...]

WALL_COLUMNS: Final = ("room", "wall", "length", "corner", "bow", "lean", "profile")


def opening_rows(house: House) -> tuple[Row, ...]:
    """Return what was read of each opening, the headers first, each with its unit.

    Openings of another shape than four sides have only their mark, room and kind here: the house
    file alone holds the rest.
    """
    entries = _entries(house, "openings")
    return _rows(RecordKind.OPENING, entries, house.units)


def run_rows(house: House) -> tuple[Row, ...]:
    """Return what was read of each run, the headers first."""
    return _rows(RecordKind.RUN, _entries(house, "runs"), house.units)


def wall_rows(house: House) -> tuple[Row, ...]:
    """Return what was read of each wall, room by room, the headers first."""
    unit = house.units.value
    lengths = {"length", "bow"}
    head = tuple(
        f"{name} ({unit})"
        if name in lengths
        else say("{name} (deg)", name=name)
        if name in _DEG
        else name
        for name in WALL_COLUMNS
    )
    rows = []
    for room in _entries(house, "rooms"):
        for wall in room.get("walls", ()):
            named = {**wall, "room": room["name"], "wall": wall.get("mark", "")}
            rows.append(tuple(_text(named.get(name, "")) for name in WALL_COLUMNS))
    return (head, *rows)


_DEG: Final = frozenset({"corner", "lean"})


def _entries(house: House, name: str) -> list[Mapping[str, Any]]:
    found = house_document(house).get(name, [])
    return found if isinstance(found, list) else []


def _rows(kind: RecordKind, entries: Iterable[Mapping[str, Any]], units: Units) -> tuple[Row, ...]:
    records = [_flat(kind, entry) for entry in entries]
    most: Counter[str] = Counter()
    for record in records:
        for path, values in record.items():
            most[path] = max(most[path], len(values))
    paths = [path for path in cell_keys(kind) if most[path]]
    head = tuple(_header(kind, path, n, units) for path in paths for n in range(most[path]))
    return (
        head,
        *(
            tuple(
                record[path][n] if n < len(record.get(path, ())) else ""
                for path in paths
                for n in range(most[path])
            )
            for record in records
        ),
    )


def _flat(kind: RecordKind, entry: Mapping[str, Any]) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for path in cell_keys(kind):
        value: Any = entry
        for part in path.split("."):
            value = value.get(part) if isinstance(value, Mapping) else None
        if value is not None and not isinstance(value, Mapping):
            several = value if isinstance(value, list) else [value]
            found[path] = [_text(each) for each in several]
    return found


def _header(kind: RecordKind, path: str, number: int, units: Units) -> str:
    key = cell_keys(kind)[path]
    again = say(" {number}", number=number + 1) if number else ""
    unit = units.value if key.kind in LENGTHS else "deg" if key.kind in ANGLES else ""
    return say(
        "{path}{again}{unit}",
        path=path,
        again=again,
        unit=say(" ({unit})", unit=unit) if unit else "",
    )


def _text(value: object) -> str:
    match value:
        case bool():
            return "true" if value else "false"
        case int() | float():
            return number_text(value)
        case _:
            return str(value)
