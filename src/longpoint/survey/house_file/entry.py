"""Read one table of a house file by the description of its keys."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from longpoint.quantities.length import Units
from longpoint.speech.said import begun_small, raised, say
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.house_file.trouble import HouseFileTrouble, instead, nearest, quoted, shown
from longpoint.survey.house_file.values import read_value


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A table as read.

    Attributes:
        values: What could be read, by key, in the order written. Tables that are read on their
            own (lists of tables, named tables, those apart) stand as written.
        troubles: What couldn't, in the order written.
    """

    values: dict[str, Any]
    troubles: tuple[HouseFileTrouble, ...]

    def spoiled(self, table: Table) -> frozenset[str]:
        """Return the keys whose value is missing because of a trouble, misspelt ones too."""
        keys = {trouble.key for trouble in self.troubles}
        return frozenset(
            key if key in table.by_name else nearest(key, table.by_name) for key in keys
        )


def read_entry(table: Table, written: Mapping[Any, object], units: Units, path: str = "") -> Entry:
    """Return what stands in a table, and everything that is wrong with it.

    Args:
        table: Description of its keys.
        written: The table as parsed.
        units: What a bare number means.
        path: What goes before a key to find it ("plane.", "stock 2, "); empty in the entry itself.
    """
    values: dict[str, Any] = {}
    troubles: list[HouseFileTrouble] = []
    keys = table.by_name
    for name, value in written.items():
        key = keys.get(name) if isinstance(name, str) else None
        if key is None:
            troubles.append(_unknown(name, table, path))
            continue
        try:
            values[key.name] = _read_key(key, value, units, f"{path}{key.name}")
        except HouseFileTrouble as trouble:
            trouble.key = key.name
            troubles.append(trouble)
    troubles += [
        _missing(keys[name], table, path) for name in table.required if name not in written
    ]
    return Entry(values=values, troubles=tuple(troubles))


def read_parts(table: Table, written: Mapping[Any, object], units: Units, path: str = "") -> Entry:
    """Return every part of a table that can be used, down to single figures of its inner tables.

    Args:
        table: Description of its keys.
        written: The table as parsed.
        units: What a bare number means.
        path: What goes before a key to find it.
    """
    inner = {key.name: key.table for key in table.keys if key.table is not None}
    plain = {name: value for name, value in written.items() if name not in inner}
    entry = read_entry(table, plain, units, path)
    values = dict(entry.values)
    values |= {trouble.key: trouble.kept for trouble in entry.troubles if trouble.kept is not None}
    troubles = list(entry.troubles)
    for name, inner_table in inner.items():
        if name not in written:
            continue
        try:
            part = read_parts(
                inner_table, as_table(written[name], f"{path}{name}"), units, f"{path}{name}."
            )
        except HouseFileTrouble as trouble:
            troubles.append(trouble)
            continue
        values[name] = part.values
        troubles += part.troubles
    return Entry(values=values, troubles=tuple(troubles))


def as_table(written: object, what: str) -> Mapping[object, object]:
    """Return a value that has to be a table.

    Raises:
        HouseFileTrouble: It is something else.
    """
    if not isinstance(written, Mapping):
        raise HouseFileTrouble(
            say("{what} is written as {shown}.", what=what, shown=shown(written)),
            say("It has to be a table of keys and values."),
            say("Write it the way the starter file shows."),
            code="not-a-table",
        )
    return written


def as_list(written: object, what: str) -> list[object]:
    """Return a value that has to be a list of tables.

    Raises:
        HouseFileTrouble: It is something else.
    """
    if not isinstance(written, list | tuple):
        raise HouseFileTrouble(
            say("{what} is written as {shown}.", what=what, shown=shown(written)),
            say("It has to be a list of tables."),
            say("Start each of them with [[{what}]].", what=what),
            code="not-a-table",
        )
    return list(written)


def _read_key(key: Key, written: object, units: Units, path: str) -> Any:  # noqa: ANN401
    match key.kind:
        case Kind.TABLE if key.apart:
            return written
        case Kind.TABLE:
            return _read_inner(key, as_table(written, path), units, path)
        case Kind.TABLES:
            return as_list(written, path)
        case Kind.NAMED_TABLES:
            return as_table(written, path)
        case _:
            return read_value(key, written, units, path)


def _read_inner(
    key: Key, written: Mapping[object, object], units: Units, path: str
) -> dict[str, Any]:
    if key.table is None:
        raise AssertionError(f"the key {key.name} describes no table")
    inner = read_entry(key.table, written, units, f"{path}.")
    for trouble in inner.troubles:
        raise trouble
    return inner.values


def _unknown(name: object, table: Table, path: str) -> HouseFileTrouble:
    text = name if isinstance(name, str) else ""
    where = (
        say("under {rstrip}", rstrip=path.rstrip("., "))
        if path
        else say("in {title}", title=table.title)
    )
    return HouseFileTrouble(
        say("The key {shown} stands {where}.", shown=shown(name), where=where),
        say("There is no such key there."),
        say("{instead} Change it, or take it out.", instead=instead(text, table.by_name)),
        code="unknown-key",
        key=text,
    )


def _missing(key: Key, table: Table, path: str) -> HouseFileTrouble:
    return HouseFileTrouble(
        say(
            "{title} is read without {path}.",
            title=raised(table.title),
            path=quoted(path + key.name),
        ),
        say(
            "It can't be done without: {meaning}",
            meaning=begun_small(key.meaning),
        ),
        say("Write it the way the starter file shows.")
        if key.kind is Kind.TABLES
        else say(
            "Write it, for example {key} = {shown}.",
            key=key.name,
            shown=shown(key.example),
        ),
        code="missing-key",
        key=key.name,
    )
