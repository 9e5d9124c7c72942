"""The reference page of the rack file, made from the keys that the reader itself reads by."""

from longpoint.survey.rack.labels import BASE, BODY, LABEL_SIGNS, MOST_LABELS
from longpoint.survey.rack.rack_tables import RACK
from tests.docs.house_file_page import key_rows, tables_under

OPENING = (
    "# The rack file\n\n"
    "The crew's offcuts through all houses, in one TOML file that `longpoint rack` makes and adds "
    "to; it may be edited by hand. Where the rack is kept in the store, this file is the way in "
    "and out: `longpoint rack add` and `rack write`. This page is made from the keys that the "
    "reader reads by; a test holds it to them.\n\n"
    "Lengths are numbers in the file's `units`, or text, as in the [house file](house-file.md). "
    "Days are written like `2026-03-01`.\n\n"
    "A section is known by name, face, thickness and whether it is the same from both edges: all "
    "four have to agree with a house's profile, sizes to a quarter of a millimetre, or nothing of "
    "it is used there.\n\n"
    f"A label is {BODY} signs and a check sign, of `{LABEL_SIGNS}`: none of these is taken for "
    "another when written by hand. With the signs numbered from 0, twice the first, three times "
    f"the second and four times the third add up to the fourth, whole {BASE}s left out. One wrong "
    "sign never gives another label, nor do two neighbours that change places. There are "
    f"{MOST_LABELS} labels; none is given twice.\n\n"
    "Anything that can't be read refuses the whole file: a part left out would be lost when the "
    "file is written again. An offcut that is gone stays in it, with what came of it and when. "
    "The file is written whole or not at all. Where it holds more than the rack, such as remarks "
    "behind a `#`, a copy is kept beside it first, named `.before-1` and so on.\n"
)


def rack_page() -> str:
    """Return the page as Markdown."""
    parts = [OPENING]
    for path, table in tables_under("", RACK):
        parts += [f"## {path or 'At the top'}\n", *key_rows(table.keys), ""]
    return "\n".join(parts)
