"""`longpoint stops`: the fewest settings of the saw's stop for bench-made frames."""

from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper
from longpoint.cli.sheet_folder import write_sheets
from longpoint.cli.spoken import speak, spoken_sheets
from longpoint.exchange.house_files import load_house
from longpoint.house_plan import HousePlan
from longpoint.pieces.stop_lengths import StopWish, saw_stops, stop_wishes
from longpoint.pipeline import plan_house
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.render.paper import Paper
from longpoint.sheets.dialects import words_for
from longpoint.sheets.plain_text import sheet_text
from longpoint.sheets.stop_sheet import stop_sheet
from longpoint.speech.said import joined


@click.command(name="stops")
@click.argument("houses", nargs=-1, required=True, type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    default=None,
    help="Write stops.pdf and its page to this folder.",
)
@on_paper
@exits
def command(houses: tuple[Path, ...], out: Path | None, paper: Paper | None) -> Outcome:
    """Say at how few settings of the stop the frames of HOUSES can be cut.

    Frames of 45s share what an opening is out of true in the quirk; within the band that you
    accept, openings nearly alike get pieces of one length.
    """
    plans = [plan_house(load_house(house)) for house in houses]
    wishes = [wish for plan in plans for wish in _wishes(plan, is_one=len(plans) == 1)]
    first = plans[0].house
    step_mm = MM_PER_INCH / 16.0 if first.units is Units.INCH else 0.5
    sheet = stop_sheet(
        joined(", ", [plan.house.name for plan in plans]),
        joined(" ", [plan.readings_code for plan in plans]),
        saw_stops(wishes, step_mm),
        [piece for plan in plans for piece in plan.pieces],
        first.units,
        words_for(first.dialect),
    )
    for spoken in spoken_sheets([sheet], first.dialect):
        speak(sheet_text(spoken))
    if out is not None:
        write_sheets(out, "stops.pdf", (sheet,), paper, first.dialect)
    return Outcome.DONE


def _wishes(plan: HousePlan, *, is_one: bool) -> tuple[StopWish, ...]:
    prefix = "" if is_one else f"{plan.house.name}: "
    return stop_wishes(plan.house, plan.shapes.openings, plan.pieces, prefix=prefix)
