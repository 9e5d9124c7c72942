"""`longpoint delivery`: the sheet to check a delivery by, and what came of it."""

import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import click

from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper
from longpoint.cli.plan_folder import PLAN, READINGS, STATE
from longpoint.cli.saw_folder import at_the_saw_in, document_in, house_in, planned_in
from longpoint.cli.sheet_folder import write_sheets
from longpoint.cli.spoken import speak
from longpoint.exchange.safe_files import write_text_safely
from longpoint.exchange.saw_file import save_at_the_saw
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.render.paper import Paper
from longpoint.sheets.again_sheet import again_sheet
from longpoint.sheets.again_text import again_text
from longpoint.sheets.delivery_sheet import delivery_sheet, moisture_range
from longpoint.sheets.plan_file import bought_in
from longpoint.speech.said import say
from longpoint.sticks.news.changed_pieces import shapes_to_keep
from longpoint.sticks.news.delivery import WAYS, Delivery, as_delivered, delivery_in_words
from longpoint.sticks.news.plan_again import plan_again
from longpoint.sticks.order_lines import order_lines
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house

AS_DELIVERED = "house-as-delivered.json"


@click.command(name="delivery", epilog=f"Ways to tell: {'; '.join(WAYS)}.")
@click.argument("sheets", type=click.Path(path_type=Path, file_okay=False, exists=True))
@click.argument("told", nargs=-1)
@on_paper
@exits
def command(sheets: Path, told: tuple[str, ...], paper: Paper | None) -> Outcome:
    """Write the sheet to check a delivery by; or tell what came, and get the rest planned with it.

    SHEETS is the folder that `longpoint plan` wrote. TOLD are sentences such as "came OG57 5400 6";
    of a profile that is named, all that is there must be told.
    """
    house = house_in(sheets)
    if not told:
        bought = bought_in(document_in(sheets, PLAN))
        lines = order_lines(house, bought.needed, bought.spares)
        sheet = delivery_sheet(house, lines, bought.readings_code)
        made = write_sheets(sheets, "delivery.pdf", (sheet,), paper, house.dialect)
        speak(
            say(
                "{lines} sticks to check. Sheet: {made}",
                lines=sum(line.count for line in lines),
                made=made,
            )
        )
        return Outcome.DONE
    delivery = delivery_in_words(told, house)
    status = _planned_with(sheets, delivery, paper) if delivery.came else Outcome.DONE
    changed = _as_delivered(document_in(sheets, READINGS), delivery, house)
    for line in _said(delivery, house):
        speak(line)
    if changed is None:
        return status
    # Read once, so that no file is written that `longpoint plan` would refuse.
    read_house(changed, trim_tables())
    file = sheets / AS_DELIVERED
    write_text_safely(file, json.dumps(changed, indent=1, ensure_ascii=False) + "\n")
    speak(
        say(
            "The house with what came: {file}. Plan from it with `longpoint plan`.",
            file=file,
        )
    )
    return Outcome.HELD if delivery.sections else status


def _planned_with(sheets: Path, delivery: Delivery, paper: Paper | None) -> Outcome:
    plan = planned_in(sheets)
    kept, shapes = at_the_saw_in(sheets, plan)
    again = plan_again(as_delivered(kept.state, delivery.came), plan.pieces, plan.house)
    to_keep = shapes_to_keep(kept.state, again.state, shapes, plan.pieces)
    save_at_the_saw(sheets / STATE, again.state, plan.readings_code, to_keep)
    made = write_sheets(
        sheets, "again.pdf", (again_sheet(plan, kept.state, again),), paper, plan.house.dialect
    )
    speak(again_text(plan, kept.state, again), plan.house.dialect)
    speak(f"\nSheet: {made}")
    return Outcome.HELD if again.state.loose else Outcome.DONE


def _as_delivered(
    document: Mapping[str, Any], delivery: Delivery, house: House
) -> dict[str, Any] | None:
    """Return the house file with measured sections and moisture; None where nothing changes it."""
    changed: dict[str, Any] = json.loads(json.dumps(document))
    wettest = max(delivery.moisture_percent.values(), default=None)
    if not delivery.sections and wettest is None:
        return None
    for profile, (face_mm, thickness_mm) in delivery.sections.items():
        changed["profiles"][profile]["face"] = _written(face_mm, house.units)
        changed["profiles"][profile]["thickness"] = _written(thickness_mm, house.units)
    if wettest is not None:
        season = changed.setdefault("season", {})
        season.pop("fitting", None)
        season["moisture"] = wettest
    return changed


def _written(length_mm: float, units: Units) -> float | str:
    return say("{length_mm:g} mm", length_mm=length_mm) if units is Units.INCH else length_mm


def _said(delivery: Delivery, house: House) -> Iterator[str]:
    units = house.units
    for name, (face_mm, thickness_mm) in delivery.sections.items():
        known = house.profile(name)
        came = say(
            "{face} x {thickness}",
            face=format_length(face_mm, units),
            thickness=format_with_unit(thickness_mm, units),
        )
        ordered = say("{width} x ", width=format_length(known.width_mm, units))
        ordered += format_with_unit(known.thickness_mm, units)
        yield (
            say(
                "STOP · {name} came as {came}, not {ordered}. Every piece of it "
                "changes: cut none by these sheets. Send it back, or plan anew with it.",
                name=name,
                came=came,
                ordered=ordered,
            )
        )
    between = moisture_range(house)
    for name, percent in delivery.moisture_percent.items():
        if between is None or percent <= between[1]:
            yield say(
                "{name} at {percent:g} % is as dry as the air of this house keeps it.",
                name=name,
                percent=percent,
            )
            continue
        yield (
            say(
                "LOOK · {name} at {percent:g} % is wetter than the {between:.0f} % at "
                "which timber settles in the dampest air of this house. Stack it "
                "stickered in the heated rooms and read it again, or plan with it: the "
                "sheet `outlook` then says what its joints do.",
                name=name,
                percent=percent,
                between=between[1],
            )
        )
