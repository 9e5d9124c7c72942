"""`longpoint book`: all sheets of a house in one PDF."""

from datetime import date
from pathlib import Path

import click

from longpoint.cli.days import on_day
from longpoint.cli.imagined import house_imagined
from longpoint.cli.outcome import Outcome, exits, outcome
from longpoint.cli.paper_option import on_paper, paper_of
from longpoint.cli.planning import with_crew
from longpoint.cli.profiles_at_once import at_once
from longpoint.cli.sheet_folder import write_file
from longpoint.cli.spoken import speak, tongue
from longpoint.exchange.house_files import load_house
from longpoint.pipeline import plan_house
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_book
from longpoint.sheets.house_book import BookOf, house_book
from longpoint.sheets.in_tongue import in_tongue
from longpoint.solvers.installed import linear_solver
from longpoint.speech.said import joined, say

BOOK = "book.pdf"


@click.command(name="book")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    required=True,
    help="Folder for book.pdf; made when it isn't there.",
)
@click.option(
    "--crew",
    type=click.Path(path_type=Path, dir_okay=False),
    default=None,
    help="File of the crew's own figures, for the forecast; see longpoint learn.",
)
@on_paper
@on_day
@exits
def command(house: Path, out: Path, crew: Path | None, paper: Paper | None, on: date) -> Outcome:
    """Plan HOUSE and write one PDF that holds every sheet, with contents and bookmarks."""
    survey, learned, said = with_crew(load_house(house), crew)
    for finding in said:
        speak(str(finding), err=True)
    plan = plan_house(survey, linear_solver(), house_imagined(), learned, planner=at_once)
    book = house_book(BookOf(plan=plan, on=on))
    book = in_tongue(book, tongue(plan.house.dialect))
    written = write_file(out, BOOK, render_book(book, paper_of(paper, plan.house.dialect)))
    speak(
        say(
            "{sheets} sheets: {sheets_2}.",
            sheets=len(book.sheets),
            sheets_2=joined(", ", (s.title.lower() for s in book.sheets)),
        )
    )
    if plan.held:
        speak(
            say(
                "Held back, so without lengths: {held}.",
                held=joined(", ", sorted(plan.held)),
            )
        )
    speak(say("The book: {written}", written=written))
    return outcome(plan.findings)
