"""The reference page of the house file, made from the keys that the reader itself reads by."""

import json
from collections.abc import Iterable, Iterator

from longpoint.survey.house_file.house_table import HOUSE
from longpoint.survey.house_file.keys import Key, Kind, Table

OPENING = (
    "# The house file\n\n"
    "One house is one file, TOML by hand or JSON by program, with the same keys. "
    "`longpoint new` writes one to start from, and [house.schema.json](house.schema.json) "
    "describes it for editors. This page is made from the keys that the reader reads by; "
    "a test holds it to them.\n\n"
    "Lengths are numbers in the file's `units`, or text as a carpenter writes it: "
    '`"1187"`, `"1187.5"`, `"46 3/4"`, `"3\' 10 3/4\\""`. '
    "A reading may be a list: repeated readings of the same thing. Angles are degrees. "
    "An unknown key at the top refuses the file; inside one opening, room or run it holds "
    "that one, naming the nearest known key. Under `crew`, `season`, `fixing`, `handover` "
    "and `as_built` a bad part "
    'is left out with a warning, since no length hangs on it; `"?"` stands for a spot that '
    "wasn't read.\n"
)

KINDS = {
    Kind.TEXT: "text",
    Kind.MARK: "mark",
    Kind.FLAG: "true or false",
    Kind.COUNT: "whole number",
    Kind.PRICE: "price",
    Kind.LENGTH: "length",
    Kind.SIGNED_LENGTH: "length, + or -",
    Kind.READING: "reading",
    Kind.SIGNED_READING: "reading, + or -",
    Kind.ANGLE: "angle",
    Kind.ANGLE_READING: "angle reading",
    Kind.BAND: "least and most length",
    Kind.SIDE_LENGTHS: "length, or one per side",
    Kind.SIDE_NAMES: "name, or one per side",
    Kind.CODES: "list of finding codes",
    Kind.READINGS: "list of readings",
    Kind.ANGLES: "list of angles",
    Kind.POINTS: "list of points",
    Kind.NUMBER: "number",
    Kind.LEAST_LIKELY_MOST: "number, or least, likely and most",
    Kind.DATE: "day, like `2026-03-01`",
    Kind.SPOT: 'length, + or -, or `"?"`',
    Kind.HEEL_TOE: 'two lengths, + or -, or `"?"`',
    Kind.ALONG_SIDE: 'one to three lengths, + or -, or `"?"`',
    Kind.TABLE: "table",
    Kind.TABLES: "list of tables",
    Kind.NAMED_TABLES: "tables, each under a name",
}


def house_file_page() -> str:
    """Return the page as Markdown."""
    parts = [OPENING]
    for path, table in tables_under("", HOUSE):
        parts += [f"## {path or 'At the top'}\n", *key_rows(table.keys), ""]
    return "\n".join(parts)


def key_rows(keys: Iterable[Key]) -> list[str]:
    """Return a table of keys as Markdown, line by line."""
    return [
        "| key | what stands there | meaning | left out | example |",
        "|---|---|---|---|---|",
        *(_row(key) for key in keys),
    ]


def tables_under(path: str, table: Table) -> Iterator[tuple[str, Table]]:
    """Yield a table and all tables inside it, each with where it stands."""
    yield path, table
    for key in table.keys:
        if key.table is not None:
            inner = f"{path}.{key.name}" if path else key.name
            shown = inner + (".NAME" if key.kind is Kind.NAMED_TABLES else "")
            yield from tables_under(shown, key.table)


def _row(key: Key) -> str:
    kind = " \\| ".join(f"`{c}`" for c in key.choices) if key.choices else KINDS[key.kind]
    left_out = "**required**" if key.required else key.left_out
    is_plain = key.kind not in (Kind.TABLE, Kind.TABLES, Kind.NAMED_TABLES)
    example = f"`{json.dumps(key.example, ensure_ascii=False)}`" if is_plain else ""
    return f"| `{key.name}` | {kind} | {key.meaning} | {left_out} | {example} |"
