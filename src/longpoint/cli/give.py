"""`longpoint give`: a house's readings, pieces and sticks for other people's programs."""

from datetime import date
from enum import StrEnum
from pathlib import Path
from typing import Final

import click

from longpoint.cli.days import on_day
from longpoint.cli.outcome import Outcome, exits, outcome
from longpoint.cli.profiles_at_once import at_once
from longpoint.cli.spoken import speak
from longpoint.errors import ExchangeError
from longpoint.exchange.confirm.reading_rows import opening_rows, run_rows, wall_rows
from longpoint.exchange.house_files import load_house
from longpoint.exchange.models.write_ifc import house_ifc
from longpoint.exchange.safe_files import write_bytes_safely
from longpoint.exchange.sections.write_dxf import house_dxf
from longpoint.exchange.tables.csv_table import csv_text
from longpoint.exchange.tables.write_xlsx import Tab, write_workbook
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.sheets.opening_outlines import opening_outlines
from longpoint.sheets.table_rows import held_rows, piece_rows, stick_rows
from longpoint.solvers.installed import linear_solver
from longpoint.speech.said import joined, say

READINGS: Final = ("openings", "runs", "walls")
"""Tables of readings; the others are of what is cut. A workbook each: one is read back, one not."""


class GivenAs(StrEnum):
    """Kinds of file that a house is given as."""

    CSV = "csv"
    DXF = "dxf"
    IFC = "ifc"
    XLSX = "xlsx"


@click.command(name="give")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    required=True,
    help="Folder for the files; made when it isn't there.",
)
@click.option(
    "--as",
    "kinds",
    type=click.Choice([kind.value for kind in GivenAs]),
    multiple=True,
    required=True,
    help="csv, xlsx, dxf (openings and sections drawn) or ifc (trim as bodies, with quantities); "
    "may be repeated.",
)
@on_day
@exits
def command(house: Path, out: Path, kinds: tuple[str, ...], on: date) -> Outcome:
    """Give HOUSE to other people's programs: readings, pieces and sticks.

    Places that are held get no pieces; the table `held` names them, and why.
    """
    plan = plan_house(load_house(house), linear_solver(), planner=at_once)
    files: dict[str, bytes] = {}
    for kind in dict.fromkeys(map(GivenAs, kinds)):
        files |= _files(plan, kind, on)
    try:
        out.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise ExchangeError(
            say("The files are to go to {out}.", out=out),
            say("That folder can't be made: {strerror}.", strerror=error.strerror or error),
            say("Name another folder with --out."),
        ) from error
    for name, data in files.items():
        write_bytes_safely(out / name, data)
        speak(f"Written: {out / name}")
    if plan.held:
        speak(say("Held, so without pieces: {held}.", held=joined(", ", sorted(plan.held))))
    return outcome(plan.findings)


def _files(plan: HousePlan, kind: GivenAs, on: date) -> dict[str, bytes]:
    match kind:
        case GivenAs.CSV:
            return {
                f"{tab.name}.csv": b"\xef\xbb\xbf"
                + csv_text([tuple(row) for row in tab.rows]).encode()
                for tab in tables_of(plan)
            }
        case GivenAs.DXF:
            found = opening_outlines(plan)
            for mark in found.left_out:
                speak(
                    say(
                        "Not in the drawing, as it isn't a fitted four-sided opening: {mark}.",
                        mark=mark,
                    )
                )
            sections = {each.name: each.section for each in plan.house.profiles if each.section}
            return {"house.dxf": house_dxf(found.outlines, sections)}
        case GivenAs.IFC:
            model = house_ifc(plan, on)
            if model.left_out:
                speak(
                    say(
                        "Not in the model, as no covering: {left_out}.",
                        left_out=joined(", ", model.left_out),
                    )
                )
            if model.in_a_row:
                speak(
                    say(
                        "Places in the building are not known; openings stand in a row: {marks}.",
                        marks=joined(", ", model.in_a_row),
                    )
                )
            if model.without_body:
                speak(
                    say(
                        "Without a body in the model, as its two cuts cross: {marks}.",
                        marks=joined(", ", model.without_body),
                    )
                )
            return {"house.ifc": model.text.encode()}
        case GivenAs.XLSX:
            tabs = tables_of(plan)
            read = [tab for tab in tabs if tab.name in READINGS]
            return {
                f"{name}.xlsx": write_workbook(some)
                for name, some in (
                    ("readings", read),
                    ("cutting", [t for t in tabs if t not in read]),
                )
                if some
            }


def tables_of(plan: HousePlan) -> tuple[Tab, ...]:
    """Return every table that a house is given as, those with nothing in them left out."""
    tables = {
        "openings": opening_rows(plan.house),
        "runs": run_rows(plan.house),
        "walls": wall_rows(plan.house),
        "pieces": piece_rows(plan),
        "sticks": stick_rows(plan),
        "held": held_rows(plan),
    }
    return tuple(
        Tab(name=name, rows=rows, as_text=_names(rows[0]))
        for name, rows in tables.items()
        if len(rows) > 1
    )


def _names(head: tuple[str, ...]) -> tuple[int, ...]:
    """Columns without a unit hold marks and words, and a mark like 7 is no number."""
    return tuple(n for n, title in enumerate(head) if "(" not in title)
