"""The reference page of the catalogue, made from what each kind of trim asks for."""

from longpoint.catalogue.all_trims import CATALOGUE
from longpoint.catalogue.trim import TrimKind
from longpoint.survey.house_file.keys import Table
from longpoint.survey.house_file.trim_tables import TRIM
from tests.docs.house_file_page import key_rows, tables_under

OPENING = (
    "# The catalogue of other trim\n\n"
    "Whatever is neither a set round an opening nor a skirting run stands under `[[trims]]` of "
    "the [house file](house-file.md), with its `kind` and what that kind asks for. "
    "`longpoint catalogue` lists the kinds on the screen. This page is made from what the kinds "
    "ask for; a test holds it to them. [Add a trim](../how-to/add-a-trim.md) tells how to make "
    "one of your own.\n"
)


def catalogue_page() -> str:
    """Return the page as Markdown."""
    parts = [OPENING, "## What every trim has\n", *key_rows(TRIM.keys), ""]
    for kind in CATALOGUE:
        parts += [f"## {kind.name}\n", f"{_sentence(kind)}\n"]
        own = Table(title=kind.title, keys=kind.asks)
        for path, table in tables_under("", own):
            parts += [*([f"### {kind.name}, {path}\n"] if path else []), *key_rows(table.keys), ""]
    return "\n".join(parts)


def _sentence(kind: TrimKind) -> str:
    needed = {
        "`profile`": kind.needs_profile,
        "`room`": kind.needs_room,
        "`openings`": kind.needs_openings,
    }
    names = " and ".join(name for name, is_needed in needed.items() if is_needed)
    title = f"{kind.title[0].upper()}{kind.title[1:]}."
    return f"{title} Needs {names}." if names else title
