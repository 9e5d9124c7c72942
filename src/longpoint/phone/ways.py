"""The way to a place in a house's document: lists and what is called by a mark in them."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from longpoint.catalogue.all_trims import CATALOGUE, trim_tables
from longpoint.phone.messages.said import Document
from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.house_file.room_tables import ROOM, RUN

Way = tuple[str, ...]

TRIMS: Final = trim_tables()
LISTS: Final = ("rooms", "runs", "trims")
"""Lists of a house file whose entries are read by forms; openings have a walk of their own."""

_LABELS: Final = ("mark", "name", "wall")


def form_name(document: Document, way: Sequence[str]) -> str:
    """Return the name of the form by which a place is read; empty where it has none.

    Example:
        >>> form_name({}, ("rooms", "Kitchen", "walls", "N"))
        'rooms.walls'
        >>> form_name({"trims": [{"mark": "B1", "kind": "bay"}]}, ("trims", "B1", "lights", "1"))
        'trims:bay.lights'
    """
    lists = list(way[::2])
    if lists[:1] == ["trims"]:
        trim = found(document, way[:2])
        lists[0] = f"trims:{trim.get('kind', '')}" if trim else ""
    name = ".".join(lists)
    return name if name in FORMS else ""


def label_key(table: Table) -> str:
    """Return the key by which an entry of such a table is called; empty: by its number.

    Example:
        >>> label_key(ROOM), label_key(RUN)
        ('name', 'mark')
    """
    required = set(table.required)
    return next((key for key in _LABELS if key in required), "")


def found(document: Document, way: Sequence[str]) -> dict[str, Any] | None:
    """Return the table that a way leads to; None where there is none."""
    table: Any = document
    form = ""
    for name, label in zip(way[::2], way[1::2], strict=True):
        rows = table.get(name)
        form = f"{form}.{name}" if form else name
        table = _labelled(rows, label, form) if isinstance(rows, list) else None
        if table is None:
            return None
        form = form if form != "trims" else say("trims:{table}", table=table.get("kind", ""))
    return table  # type: ignore[no-any-return]


def openings_in(document: Document) -> Iterator[dict[str, Any]]:
    """Return the openings of a house as far as they are tables: a file may hold anything there."""
    rows = document.get("openings")
    return (row for row in (rows if isinstance(rows, list) else ()) if isinstance(row, dict))


def with_gaps(document: Document, gaps: Mapping[str, Mapping[str, Sequence[str]]]) -> Document:
    """Return a house with what was read of sets on the wall.

    Args:
        document: The house; it stays as it is.
        gaps: By mark and corner, at the heel and at the toe.
    """
    rows = document.get("openings")
    if not isinstance(rows, list):
        return document
    return document | {"openings": [_with_gaps(row, gaps) for row in rows]}


def add(document: Document, way: Way, values: Mapping[str, Any]) -> None:
    """Put an empty table where a way leads to; what is there already stays as it is."""
    inside = found(document, way[:-2]) if len(way) > 2 else document
    if inside is None or found(document, way) is not None:
        return
    table = FORMS.get(form_name(document, way))
    label = label_key(table) if table else "mark"
    rows = inside.setdefault(way[-2], [])
    if isinstance(rows, list):
        rows.append(({label: way[-1]} if label else {}) | dict(values))


def leave_out(document: Document, way: Way) -> None:
    """Take the table out that a way leads to."""
    inside = found(document, way[:-2]) if len(way) > 2 else document
    table = found(document, way)
    if inside is not None and table is not None:
        inside[way[-2]] = [row for row in inside[way[-2]] if row is not table]


def places(document: Document) -> Iterator[tuple[Way, str, dict[str, Any]]]:
    """Return each place that has a form: the way to it, the form's name, its table."""
    for name in LISTS:
        yield from _below(document, name, (), "")


def _below(
    inside: Mapping[str, Any], name: str, above: Way, form_above: str
) -> Iterator[tuple[Way, str, dict[str, Any]]]:
    rows = inside.get(name)
    for number, row in enumerate(rows if isinstance(rows, list) else (), start=1):
        if not isinstance(row, dict):
            continue
        form = f"{form_above}.{name}" if form_above else name
        form = form if form != "trims" else say("trims:{row}", row=row.get("kind", ""))
        table = FORMS.get(form)
        if table is None:
            continue
        key = label_key(table)
        way = (*above, name, str(row.get(key, "")) if key else str(number))
        yield way, form, row
        for inner in table.keys:
            if inner.kind is Kind.TABLES:
                yield from _below(row, inner.name, way, form)


def _with_gaps(row: Any, gaps: Mapping[str, Mapping[str, Sequence[str]]]) -> Any:  # noqa: ANN401
    mark = row.get("mark") if isinstance(row, dict) else None
    read = gaps.get(mark) if isinstance(mark, str) else None
    if not read:
        return row
    found = {corner: list(pair) for corner, pair in read.items()}
    return row | {"as_built": row.get("as_built", {}) | {"gaps": found}}


def _labelled(rows: Sequence[Any], label: str, form: str) -> dict[str, Any] | None:
    table = FORMS.get(form)
    key = label_key(table) if table else "mark"
    if key:
        return next((r for r in rows if isinstance(r, dict) and str(r.get(key)) == label), None)
    number = int(label) if label.isdecimal() else 0
    row = rows[number - 1] if 0 < number <= len(rows) else None
    return row if isinstance(row, dict) else None


def _inner(name: str, table: Table) -> Iterator[tuple[str, Table]]:
    yield name, table
    for key in table.keys:
        if key.kind is Kind.TABLES and key.table is not None:
            yield from _inner(f"{name}.{key.name}", key.table)


FORMS: Final[dict[str, Table]] = {
    name: table
    for outer, top in (
        ("rooms", ROOM),
        ("runs", RUN),
        *((f"trims:{kind}", table) for kind, table in TRIMS.items()),
    )
    for name, table in _inner(outer, top)
}
"""Every table that is read by a form, by its name."""

_NEEDS: Final = {kind.name: kind for kind in CATALOGUE}


def is_asked(form: str, key: Key) -> bool:
    """Tell whether a place can't be planned without a key, or the walk stops at it all the same."""
    if form == "rooms.walls" and key.name in ("length", "corner"):
        return True
    kind = _NEEDS.get(form.removeprefix("trims:")) if form.startswith("trims:") else None
    if kind is not None:
        needs = {
            "profile": kind.needs_profile,
            "room": kind.needs_room,
            "openings": kind.needs_openings,
        }
        if needs.get(key.name):
            return True
    return key.required
