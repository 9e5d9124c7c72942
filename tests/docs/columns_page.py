"""The reference page of the columns that are read and written, made from the code's own lists."""

from longpoint.exchange.confirm.confirm_list import COLUMNS
from longpoint.exchange.confirm.header_words import words_for
from longpoint.exchange.confirm.reading_rows import WALL_COLUMNS
from longpoint.exchange.confirm.record_keys import RecordKind, cell_keys
from longpoint.exchange.tables.records import LONGEST_CELL, MOST_COLUMNS, MOST_ROWS, MOST_TABS
from longpoint.sheets.table_rows import HELD_COLUMNS, PIECE_COLUMNS, STICK_COLUMNS

OPENING = (
    "# Columns of other people's tables\n\n"
    "What `longpoint bring table` reads and `longpoint give` writes; see "
    "[other people's files](../how-to/other-peoples-files.md). This page is made from the lists "
    "that the reader goes by; a test holds it to them.\n\n"
    "A header is the key's own name or one of the words beside it, in any case; signs and accents "
    "don't count. A unit in brackets behind it, `(mm)`, `(cm)`, `(m)` or `(in)`, is that of the "
    "column. A number behind it, as in `right 2`, makes it another reading of the same thing. "
    "What else a header may be called is said with `--column`.\n\n"
    f"A table has at most {MOST_ROWS} rows and {MOST_COLUMNS} columns, a workbook {MOST_TABS} "
    f"tabs, a cell {LONGEST_CELL} signs. All limits but the last are ours.\n"
)


def columns_page() -> str:
    """Return the page as Markdown."""
    parts = [OPENING]
    for kind, title in ((RecordKind.OPENING, "Openings"), (RecordKind.RUN, "Runs")):
        parts += [f"## {title}\n", "| key | words for it | meaning |", "|---|---|---|"]
        parts += [
            f"| `{path}` | {', '.join(words_for(kind, path))} | {key.meaning} |"
            for path, key in cell_keys(kind).items()
            if not path.startswith("b.")
        ]
        parts.append("")
    parts.append(
        "The readings of an opening's second face stand under the same keys with `b.` before "
        "them, as in `b.top`.\n"
    )
    parts += [
        "## The list to confirm\n",
        _listed(COLUMNS),
        "",
        "Only the column `confirmed` is yours: `yes`, the right value, or `no`.\n",
        "## What is written\n",
        f"`openings` and `runs` have the keys above, with units. `walls`: {_listed(WALL_COLUMNS)} "
        "`walls` isn't read back: rooms are typed into the house file.\n",
        f"`pieces`: {_listed(PIECE_COLUMNS)}\n",
        f"`sticks`: {_listed(STICK_COLUMNS)}\n",
        f"`held`: {_listed(HELD_COLUMNS)}\n",
        "Left and right, inner and outer, mitre and bevel of a piece are those of `plan.json`: as "
        "it lies at the saw, on its back, face up, its outer edge away from you.",
    ]
    return "\n".join(parts) + "\n"


def _listed(columns: tuple[str, ...]) -> str:
    return ", ".join(f"`{name}`" for name in columns) + "."
