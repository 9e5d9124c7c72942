"""The reference pages of the rates and the counts file, made from the keys of their readers."""

from longpoint.pricing.counts_tables import COUNTS
from longpoint.pricing.rates_tables import RATES
from longpoint.survey.house_file.house_table import HOUSE
from tests.docs.house_file_page import key_rows, tables_under

RATES_OPENING = (
    "# The rates file\n\n"
    "What a crew charges by, in one TOML file written by hand: "
    "[rates.toml](../../examples/rates.toml) is one to start from. It stands beside the crew file "
    "of `longpoint learn` and not in it: that one is written by the program and goes to the saw "
    "bench, this one holds money and the crew's own remarks. This page is made from the keys that "
    "the reader reads by; a test holds it to them.\n\n"
    "Anything that can't be read refuses the whole file, since every sum rests on it. Money is "
    "kept in whole minor units of its currency and rounded to the nearest, halves away from zero. "
    "Hours are of one person; where they have no figure of yours they start from the one named "
    "here, with its source, and the estimate says so on each line.\n"
)

COUNTS_OPENING = (
    "# The counts file\n\n"
    "A house before its walls are lined, in one TOML file: how many openings of which size, and "
    "how much skirting. [wren-counts.toml](../../examples/wren-counts.toml) is one. This page is "
    "made from the keys that the reader reads by; a test holds it to them.\n\n"
    "Lengths are numbers in the file's `units`, or text, as in the [house file](house-file.md); "
    "`defaults`, `crew`, `profiles`, `saws`, `stock` and `offcuts` hold what they hold there. "
    "Anything that can't be read refuses the whole file.\n"
)


def rates_page() -> str:
    """Return the page of the rates file as Markdown."""
    parts = [RATES_OPENING]
    for path, table in tables_under("", RATES):
        parts += [f"## {path or 'At the top'}\n", *key_rows(table.keys), ""]
    return "\n".join(parts)


def counts_page() -> str:
    """Return the page of the counts file as Markdown; what the house file describes is left out."""
    parts = [COUNTS_OPENING]
    described = {key.name for key in HOUSE.keys if key.table is not None}
    for path, table in tables_under("", COUNTS):
        if path.split(".")[0] not in described:
            parts += [f"## {path or 'At the top'}\n", *key_rows(table.keys), ""]
    return "\n".join(parts)
