"""`longpoint plan`: the main job."""

import sys
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Final

import click

from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.days import old_after, on_day
from longpoint.cli.imagined import PLAIN_DRAWS
from longpoint.cli.kept_houses import house_in_store, remember_plan
from longpoint.cli.kept_rack import rack_in_store
from longpoint.cli.outcome import Outcome, exits, outcome
from longpoint.cli.paper_option import on_paper
from longpoint.cli.plan_folder import STATE, void_sheets
from longpoint.cli.planning import plan_and_write, with_crew
from longpoint.cli.profiles_at_once import at_once
from longpoint.cli.rack_places import RackInStore, RackType, rack_place
from longpoint.cli.spoken import speak, tongue
from longpoint.cli.store_options import at_moment, store_option
from longpoint.cli.store_places import StorePlace
from longpoint.errors import LongpointError
from longpoint.exchange.house_files import load_house_document
from longpoint.exchange.safe_files import write_text_safely
from longpoint.forecast.chances import DRAWS
from longpoint.phone.planned import finding_of
from longpoint.render.paper import Paper
from longpoint.sheets.terminal import plan_text
from longpoint.speech.said import say
from longpoint.survey.house_file import read_house
from longpoint.survey.rack.for_house import rack_findings, with_rack

LONG_WORK: Final = 40
"""From so many openings on the work takes more than a breath, and is announced on a screen."""

LEAST_DRAWS: Final = 100
MOST_DRAWS: Final = 1_000_000


@click.command(name="plan")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    required=True,
    help="Folder for the sheets; made when it isn't there.",
)
@on_paper
@click.option(
    "--draws",
    type=click.IntRange(LEAST_DRAWS, MOST_DRAWS),
    metavar="N",
    help=f"How many houses the forecast imagines. [default: {DRAWS}, or {PLAIN_DRAWS} without "
    "numpy]",
)
@click.option(
    "--crew",
    type=click.Path(path_type=Path, dir_okay=False),
    default=None,
    help="File of the crew's own figures, for the forecast; see longpoint learn.",
)
@click.option(
    "--rack",
    type=RackType(),
    default=None,
    help="The crew's rack of offcuts, used before new timber: a file, or store; see longpoint "
    "rack. [default with --from-store: store]",
)
@click.option(
    "--from-store",
    is_flag=True,
    help="HOUSE is the name of a house in the store; see longpoint houses.",
)
@store_option
@at_moment
@on_day
@old_after
@exits
def command(
    house: Path,
    out: Path,
    paper: Paper | None,
    draws: int | None,
    crew: Path | None,
    rack: Path | str | None,
    from_store: bool,
    store: StorePlace,
    at: str,
    on: date,
    old_after_days: int | None,
) -> Outcome:
    """Plan HOUSE and write its sheets to a folder.

    HOUSE is a house file, or with --from-store the name of a house in the store. The folder gets
    sheets.pdf, each sheet as a page for the screen, a drawing of each opening, plan.json, and
    readings.json, a copy of the readings that the sheets were made from.
    """
    place = None if rack is None else rack_place(rack, store)
    if place is None and from_store and rack_in_store(store).entries:
        place = RackInStore(store)
    offcuts = None if place is None else place.load()
    stored = house_in_store(store, str(house)) if from_store else None
    try:
        document = stored.document if stored else load_house_document(house)
        survey = read_house(document, trim_tables())
        if offcuts is not None:
            document = with_rack(document, survey.house, offcuts)
            survey = read_house(document, trim_tables())
    except LongpointError:
        if void_sheets(out, paper):
            speak(
                say(
                    "The sheets in {out} are of older readings; they are marked VOID.",
                    out=out,
                )
            )
        raise
    if len(survey.house.openings) >= LONG_WORK and sys.stderr.isatty():
        speak(
            say("Planning {openings} openings ...", openings=len(survey.house.openings)), err=True
        )
    survey, learned, said = with_crew(survey, crew)
    if offcuts is not None:
        aged = rack_findings(survey.house, offcuts, on, old_after_days)
        mend = place.findings() if place else ()
        survey = replace(survey, findings=(*survey.findings, *aged, *mend))
    if stored is not None:
        held = tuple(finding_of(each) for each in stored.now.held)
        survey = replace(survey, findings=(*survey.findings, *held))
    for finding in said:
        speak(str(finding), err=True)
    plan, written = plan_and_write(survey, learned, document, out, paper, draws, at_once)
    speak(plan_text(plan, tongue=tongue(survey.house.dialect)))
    speak(f"\nSheets: {written}")
    if stored is not None:
        if stored.now.saw and not (out / STATE).exists():
            write_text_safely(out / STATE, stored.now.saw)
        for line in remember_plan(store, stored.key, at, out, plan.readings_code):
            speak(line)
    if (out / STATE).exists():
        speak(
            say(
                "Cutting has begun from this folder: `longpoint recut {out}` goes on from it.",
                out=out,
            )
        )
    return outcome(plan.findings)
