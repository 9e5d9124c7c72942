"""Every sheet and text of houses that between them ask for most of what there is."""

import tomllib
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path

from longpoint.catalogue.all_trims import trim_tables
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.sheets.blocks import Drawing, Sheet, SheetState
from longpoint.sheets.book import house_sheets
from longpoint.sheets.fixing_text import fixing_text
from longpoint.sheets.handover_sheets import handover_text
from longpoint.sheets.house_book import BookOf, house_book
from longpoint.sheets.labels.grid import GRIDS
from longpoint.sheets.labels.label_pages import label_pages
from longpoint.sheets.opening_drawings import opening_drawings
from longpoint.sheets.rack_sheet import rack_sheets
from longpoint.survey.house import Dialect
from longpoint.survey.house_file import read_house
from tests.golden.test_handover import PLAN_UP
from tests.golden.test_money_sheets import sheets as papers
from tests.unit.sheets.sample import PLAN, unproved
from tests.unit.sheets.sample_rack import RACK, TODAY

ROOT = Path(__file__).resolve().parent.parent
FILES = (
    ROOT / "examples" / "wren-house.toml",
    ROOT / "examples" / "otter-mill.toml",
    *sorted((ROOT / "tests" / "scenarios").glob("*.toml")),
)
SAMPLES = (
    ROOT / "tests" / "unit" / "sheets" / "sample.py",
    ROOT / "tests" / "unit" / "sheets" / "outlook_sample.py",
    ROOT / "tests" / "golden" / "test_handover.py",
    ROOT / "tests" / "unit" / "sheets" / "sample_rack.py",
    ROOT / "examples" / "rates.toml",
    ROOT / "examples" / "wren-counts.toml",
)
"""Records written by hand: their findings and names are typed, not said."""


@cache
def plans() -> tuple[HousePlan, ...]:
    """Return the houses, planned."""
    made = []
    for path in FILES:
        document = tomllib.loads(path.read_text(encoding="utf-8"))
        made.append(plan_house(read_house(document, trim_tables())))
    return (PLAN, unproved(), PLAN_UP, *made)


def plans_in(dialect: Dialect) -> tuple[HousePlan, ...]:
    """Return the same houses as if they stood in another country."""
    return tuple(replace(p, house=replace(p.house, dialect=dialect)) for p in plans())


def typed_in_all() -> str:
    """Return all that somebody typed for the houses."""
    return " ".join(path.read_text(encoding="utf-8") for path in (*FILES, *SAMPLES))


def spoken_things() -> Iterator[tuple[Sheet | Drawing | str, str]]:
    """Give every sheet, drawing and text, with all that was typed for it."""
    typed = typed_in_all()
    for plan in plans():
        book = house_book(BookOf(plan=plan, on=date(2026, 3, 2)))
        yield from ((sheet, typed) for sheet in book.sheets)
        yield from ((drawing, typed) for _, drawing in opening_drawings(plan))
        yield fixing_text(plan), typed
        yield handover_text(plan, date(2026, 3, 2)), typed
        for page in label_pages(plan, next(iter(GRIDS.values())), lambda text: ((True,),)):
            yield from ((drawing, typed) for _, drawing in page.labels)
        for finding in plan.findings:
            yield str(finding), typed
    yield from ((sheet, typed) for sheet in house_sheets(PLAN, SheetState.STALE))
    yield from ((sheet, typed) for sheet in rack_sheets(RACK, TODAY, RACK.there))
    yield from ((sheet, typed) for sheet in papers().values())
