"""The folder of sheets that a plan is written to, and how it is voided."""

import json
from collections.abc import Collection, Mapping
from pathlib import Path
from typing import Final

from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.paper_option import paper_of
from longpoint.cli.sheet_folder import make_folder
from longpoint.cli.spoken import spoken_sheets, tongue
from longpoint.errors import LongpointError
from longpoint.exchange.own_files import own_document
from longpoint.exchange.safe_files import write_bytes_safely, write_text_safely
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_pdf
from longpoint.sheets.blocks import SheetState
from longpoint.sheets.book import house_sheets
from longpoint.sheets.html import sheet_html
from longpoint.sheets.in_tongue import in_tongue
from longpoint.sheets.opening_drawings import opening_drawings
from longpoint.sheets.plan_json import plan_document
from longpoint.sheets.svg import drawing_svg
from longpoint.survey.house_file import read_house

PLAN: Final = "plan.json"
READINGS: Final = "readings.json"
PDF: Final = "sheets.pdf"
STATE: Final = "at-the-saw.json"
DRAWINGS: Final = "drawings"
SOMETIMES: Final = ("trims.html",)
"""Sheets that only some houses have."""


def write_plan(
    plan: HousePlan,
    document: Mapping[str, object],
    folder: Path,
    paper: Paper | None,
    state: SheetState = SheetState.CURRENT,
) -> Path:
    """Write every sheet of a plan, whole files only.

    Args:
        plan: The plan.
        document: The house file it was made from, kept beside it.
        folder: Where to; made when it isn't there.
        paper: Paper of the PDF; None: that of the house's country.
        state: Current, or stale to void what is there.

    Returns:
        The PDF that holds all sheets.

    Raises:
        ExchangeError: The folder or a file can't be written.
        SheetError: The PDF can't be made; the other files are there all the same.
    """
    dialect = plan.house.dialect
    sheets = spoken_sheets(house_sheets(plan, state), dialect)
    drawings = {
        f"{name}.svg": drawing_svg(in_tongue(drawing, tongue(dialect)))
        for name, drawing in opening_drawings(plan, state)
    }
    make_folder(folder / DRAWINGS)
    clear_old(folder, drawings.keys(), {f"{sheet.name}.html" for sheet in sheets})
    write_text_safely(folder / READINGS, _json(document))
    for sheet in sheets:
        write_text_safely(folder / f"{sheet.name}.html", sheet_html(sheet))
    for name, text in drawings.items():
        write_text_safely(folder / DRAWINGS / name, text)
    write_text_safely(folder / PLAN, _json(plan_document(plan, state)))
    write_bytes_safely(folder / PDF, render_pdf(sheets, paper_of(paper, dialect)))
    return folder / PDF


def planned_code(folder: Path) -> str | None:
    """Return the readings code of the plan in a folder; None when there is no readable plan."""
    plan = own_document(folder / PLAN)
    code = plan.get("readings_code") if plan else None
    return code if isinstance(code, str) else None


def void_sheets(folder: Path, paper: Paper | None) -> bool:
    """Mark the sheets in a folder as made from older readings.

    The plan is made again from the kept readings, so the voided sheet still shows what was cut.

    Returns:
        True when there were sheets to void.

    Raises:
        ExchangeError: The sheets can't be written.
    """
    document = own_document(folder / READINGS)
    if document is None:
        return False
    try:
        survey = read_house(document, trim_tables())
    except LongpointError:
        return False
    write_plan(plan_house(survey), document, folder, paper, SheetState.STALE)
    return True


def clear_old(folder: Path, drawings: Collection[str], pages: Collection[str]) -> None:
    """Take away drawings and sheets of an earlier plan that this one hasn't: none is cut from."""
    if planned_code(folder) is None:
        return
    for old in (folder / DRAWINGS).glob("*.svg"):
        if old.name not in drawings:
            old.unlink(missing_ok=True)
    for name in SOMETIMES:
        if name not in pages:
            (folder / name).unlink(missing_ok=True)


def _json(document: Mapping[str, object]) -> str:
    return json.dumps(document, indent=1, ensure_ascii=False, default=str) + "\n"
