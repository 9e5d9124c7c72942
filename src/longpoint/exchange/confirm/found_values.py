"""Every value of a table as it was read, with its cell, and what is wrong with it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.exchange.confirm.columns import MappedColumn, TableMapping
from longpoint.exchange.confirm.decimal_sign import DecimalSign, decimal_sign, with_point
from longpoint.exchange.confirm.record_keys import (
    LENGTHS,
    RecordKind,
    cell_keys,
)
from longpoint.exchange.tables.records import ForeignTable, TableCell
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.keys import Key, Kind
from longpoint.survey.house_file.trouble import HouseFileTrouble, nearest
from longpoint.survey.house_file.values import read_value
from longpoint.survey.house_file.written_numbers import from_digits

SHOWN_SIGNS: Final = 60
LONGEST_VALUE: Final = 400
"""Longer than any text that the house file takes, so that the reader still sees it is too long."""
YES: Final = frozenset({"yes", "y", "ok", "okay", "true", "x", "✓", "✔", "ja", "oui", "si", "sí"})
NO: Final = frozenset({"no", "n", "false", "-", "–", "nein", "non"})
_TEXTS: Final = frozenset({Kind.TEXT, Kind.MARK})


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundValue:
    """One value from somebody else's file.

    Attributes:
        kind: What it belongs to.
        mark: Mark of the opening or run, name of the profile.
        path: Key of the house file, such as "plane.tl".
        number: Which of several readings of the same thing it is, from 1.
        value: The value, as it would be written; empty where it is missing.
        unit: Unit of a length: mm, cm, m or in; "deg" for an angle; else empty.
        written: As it stands in the file.
        source: The file and the cell.
        trouble: Why it can't be used as it is; empty where it can.
        confirmed: What a person wrote beside it; empty: nothing yet.
    """

    kind: RecordKind
    mark: str
    path: str
    number: int = 1
    value: str
    unit: str = ""
    written: str
    source: str
    trouble: str = ""
    confirmed: str = ""

    @property
    def place(self) -> tuple[RecordKind, str, str, int]:
        """What tells it from every other value of the list."""
        return (self.kind, self.mark, self.path, self.number)

    @property
    def is_struck_out(self) -> bool:
        """Whether a person said that it isn't to be used."""
        return self.confirmed.strip().casefold() in NO

    @property
    def is_settled(self) -> bool:
        """Whether a person has said what is to become of it."""
        return bool(self.confirmed.strip())

    @property
    def settled_value(self) -> str:
        """The value that a person stands by: the one read, or the one written beside it."""
        said = self.confirmed.strip()
        return self.value if said.casefold() in YES else said


def found_values(
    table: ForeignTable,
    mapping: TableMapping,
    unit: str = "mm",
    sign: DecimalSign | None = None,
) -> tuple[FoundValue, ...]:
    """Return every value of a table that its mapping uses, row by row.

    Rows without a mark are passed over where they hold nothing; where they hold a reading, that is
    a trouble of its own.

    Args:
        table: The table.
        mapping: What its columns hold.
        unit: Unit of a bare figure in a column without one: mm, cm, m or in.
        sign: The decimal sign; None: what its figures show.

    Raises:
        ExchangeError: Its figures show both decimal signs.
    """
    rows = list(enumerate(table.rows))[mapping.header_row + 1 :]
    if sign is None:
        sign = _sign_of(table, mapping, [row for _, row in rows])
    found: list[FoundValue] = []
    marks: dict[str, int] = {}
    (mark_column,) = (column for column in mapping.used if column.path == "mark")
    for number, row in rows:
        cells = [(column, _at(row, column)) for column in mapping.used]
        filled = [(c, cell) for c, cell in cells if cell != TableCell() and c.path != "mark"]
        mark_cell = _at(row, mark_column)
        if not filled:
            continue
        mark, trouble = _mark(mark_cell, number)
        if mark in marks and not trouble:
            trouble = say(
                "{mark} stands in row {marks} as well; its own mark tells it apart",
                mark=mark,
                marks=marks[mark] + 1,
            )
            mark = say("{mark} (row {number})", mark=mark, number=number + 1)
        marks.setdefault(mark, number)
        found += _in_order(
            [
                _found(table, mapping.kind, (number, column), cell, mark, unit, sign, trouble)
                for column, cell in filled
            ]
        )
    return _with_missing(_numbered(found))


def _sign_of(
    table: ForeignTable, mapping: TableMapping, rows: Sequence[tuple[TableCell, ...]]
) -> DecimalSign | None:
    keys = cell_keys(mapping.kind)
    texts = [
        cell.text
        for row in rows
        for column in mapping.used
        if keys[column.path].kind not in _TEXTS | {Kind.CHOICE, Kind.FLAG}
        and (cell := _at(row, column)).text
        and not cell.is_number
    ]
    sign, are_both = decimal_sign(texts)
    if are_both:
        raise ExchangeError(
            say("The figures of {file} were read.", file=table.file),
            say("Some have a decimal comma and some a decimal point, so 1,187 may be either."),
            say("Say which it is with --decimal comma or --decimal point."),
        )
    return sign


def _at(row: tuple[TableCell, ...], column: MappedColumn) -> TableCell:
    return row[column.column] if column.column < len(row) else TableCell()


def _mark(cell: TableCell, row: int) -> tuple[str, str]:
    key = cell_keys(RecordKind.OPENING)["mark"]
    if cell.trouble:
        return say("row {row}", row=row + 1), say(
            "Its mark can't be used. {trouble}",
            trouble=cell.trouble,
        )
    if not cell.text:
        return say("row {row}", row=row + 1), say("Its row has no mark.")
    try:
        return str(read_value(key, cell.text, Units.MM, "mark")), ""
    except HouseFileTrouble as trouble:
        return say("row {row}", row=row + 1), say(
            "Its mark can't be used. {wrong}", wrong=trouble.wrong
        )


def _found(
    table: ForeignTable,
    kind: RecordKind,
    at: tuple[int, MappedColumn],
    cell: TableCell,
    mark: str,
    unit: str,
    sign: DecimalSign | None,
    trouble: str,
) -> FoundValue:
    row, column = at
    key = cell_keys(kind)[column.path]
    value, wrong = _value(key, cell, sign)
    value_unit = unit_of(key, column.unit or unit)
    if not wrong and not trouble:
        wrong = trouble_with(key, value, value_unit, column.path)
    return FoundValue(
        kind=kind,
        mark=mark,
        path=column.path,
        number=column.number,
        value=value,
        unit=value_unit,
        written=safe_words(cell.text),
        source=f"{table.file} {table.address(row, column.column)}",
        trouble=trouble or wrong,
    )


def _value(key: Key, cell: TableCell, sign: DecimalSign | None) -> tuple[str, str]:
    text = joined(" ", cell.text[:LONGEST_VALUE].split())
    if cell.trouble:
        return "", cell.trouble
    if key.kind in _TEXTS:
        return text, ""
    if key.kind is Kind.CHOICE:
        # Capitals and a plural say nothing; anything else is proposed, never taken.
        alike = nearest(text, key.choices) if text else ""
        return (text.casefold() if text.casefold() in key.choices else alike), ""
    if key.kind is Kind.FLAG:
        return text.casefold(), ""
    if cell.is_number:
        return text, ""
    figure = with_point(text, sign)
    if figure is None:
        return "", (
            say(
                "Its comma or point may be the decimal sign or part off the thousands. "
                "Say which with --decimal comma or --decimal point."
            )
        )
    return figure, ""


def unit_of(key: Key, unit: str) -> str:
    """Return the unit to show for a value of a key."""
    if key.kind in LENGTHS:
        return unit
    return "deg" if key.kind in {Kind.ANGLE, Kind.ANGLE_READING} else ""


def as_written_value(key: Key, value: str, unit: str, units: Units) -> object:
    """Return a value as it is written in a house file of some unit.

    Args:
        key: The key it stands behind.
        value: The value as text.
        unit: The unit of a bare length: mm, cm, m or in.
        units: The house's unit.
    """
    if key.kind is Kind.POINTS:
        points = [point.split() for point in value.split(";") if point.strip()]
        is_bare = unit == units.value
        return [[_number(v) if is_bare else f"{v} {unit}" for v in point] for point in points]
    if key.kind in LENGTHS:
        if unit == units.value or not _is_bare(value):
            return _number(value)
        return f"{value} {unit}"
    if key.kind is Kind.FLAG:
        return {"true": True, "yes": True, "false": False, "no": False}.get(value, value)
    if key.kind in _TEXTS or key.kind is Kind.CHOICE:
        return value
    return _number(value)


def _is_bare(value: str) -> bool:
    """Whether a length leaves its unit open: no letter, foot or inch mark behind its figures."""
    return not any(sign.isalpha() or sign in "'\"′″’”" for sign in value)  # noqa: RUF001


def _number(value: str) -> object:
    text = value.strip().removeprefix("+")
    whole = from_digits(text)
    if whole != text:
        return whole
    body = text.removeprefix("-")
    if body.replace(".", "", 1).isascii() and body.replace(".", "", 1).isdecimal():
        return float(text) if "." in body else int(text)
    return text


def trouble_with(key: Key, value: str, unit: str, path: str) -> str:
    """Return what the house file's own reader says against a value; empty where it reads."""
    units = Units.INCH if unit == "in" else Units.MM
    try:
        read_value(key, as_written_value(key, value, unit or "mm", units), units, path)
    except HouseFileTrouble as trouble:
        return f"{trouble.wrong} {trouble.do}"
    return ""


def _in_order(values: list[FoundValue]) -> list[FoundValue]:
    order = {path: n for n, path in enumerate(cell_keys(values[0].kind))} if values else {}
    return sorted(values, key=lambda each: (order[each.path], each.number))


def _numbered(values: list[FoundValue]) -> list[FoundValue]:
    """Number the readings of one thing without gaps, in the order of their columns."""
    counts: dict[tuple[RecordKind, str, str], int] = {}
    numbered = []
    for each in values:
        thing = each.place[:3]
        counts[thing] = counts.get(thing, 0) + 1
        numbered.append(replace(each, number=counts[thing]))
    return numbered


def _with_missing(values: list[FoundValue]) -> tuple[FoundValue, ...]:
    """Add a line for what an opening can't do without and its row doesn't say."""
    full: list[FoundValue] = []
    records: dict[tuple[RecordKind, str], list[FoundValue]] = {}
    for each in values:
        records.setdefault((each.kind, each.mark), []).append(each)
    for (kind, mark), lines in records.items():
        there = {line.path for line in lines}
        for path, key in cell_keys(kind).items():
            if key.required and path not in there and path != "mark" and "." not in path:
                full.append(_missing(kind, mark, path, key, lines[0]))
        full += lines
    return tuple(full)


def _missing(kind: RecordKind, mark: str, path: str, key: Key, beside: FoundValue) -> FoundValue:
    choices = (
        say(" Write one of: {choices}.", choices=joined(", ", key.choices))
        if key.choices
        else say(" Write it here.")
    )
    return FoundValue(
        kind=kind,
        mark=mark,
        path=path,
        value="",
        unit=beside.unit if key.kind in LENGTHS else "",
        written="",
        source=beside.source.rpartition(" ")[0],
        trouble=say("The table doesn't say it.{choices}", choices=choices),
    )


def safe_words(text: str) -> str:
    """Return text on one line, what can't be printed as a question mark, long text shortened."""
    line = joined(" ", text.split())
    line = "".join(sign if sign.isprintable() else "?" for sign in line)
    return (
        line
        if len(line) <= SHOWN_SIGNS
        else say(
            "{line}...",
            line=line[: SHOWN_SIGNS - 3],
        )
    )
