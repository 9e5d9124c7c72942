"""`longpoint recut`: what happened at the saw, and what to cut now."""

from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper, paper_of
from longpoint.cli.plan_folder import STATE
from longpoint.cli.saw_folder import at_the_saw_in, planned_in
from longpoint.cli.spoken import speak, spoken_sheets
from longpoint.exchange.safe_files import write_bytes_safely, write_text_safely
from longpoint.exchange.saw_file import save_at_the_saw
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_pdf
from longpoint.sheets.again_sheet import again_sheet
from longpoint.sheets.again_text import again_text, changed_lines
from longpoint.sheets.html import sheet_html
from longpoint.sticks.news.changed_pieces import (
    pieces_as_cut,
    shapes_to_keep,
    with_changed_pieces,
)
from longpoint.sticks.news.news_words import WAYS, told_in_words
from longpoint.sticks.news.plan_again import plan_again


@click.command(name="recut", epilog=f"Ways to tell: {'; '.join(WAYS)}.")
@click.argument("sheets", type=click.Path(path_type=Path, file_okay=False, exists=True))
@click.argument("told", nargs=-1)
@on_paper
@exits
def command(sheets: Path, told: tuple[str, ...], paper: Paper | None) -> Outcome:
    """Tell what happened at the saw, and get the rest planned again.

    SHEETS is the folder that `longpoint plan` wrote; TOLD are sentences such as "cut W1-head",
    "spoiled W2-head 900" or "bad OG57-3 1200 1350", in the order in which it happened. What was
    told before is kept in that folder. What is cut is never moved.
    """
    plan = planned_in(sheets)
    kept, shapes = at_the_saw_in(sheets, plan)
    pieces = pieces_as_cut(plan.pieces, shapes)
    state = told_in_words(kept.state, told, plan.house.units, pieces)
    again = plan_again(state, plan.pieces, plan.house)
    to_keep = shapes_to_keep(kept.state, again.state, shapes, plan.pieces)
    save_at_the_saw(sheets / STATE, again.state, plan.readings_code, to_keep)
    for line in changed_lines(with_changed_pieces(again.state, to_keep, plan.pieces)):
        speak(line)
    dialect = plan.house.dialect
    (sheet,) = spoken_sheets((again_sheet(plan, kept.state, again),), dialect)
    write_text_safely(sheets / "again.html", sheet_html(sheet))
    write_bytes_safely(sheets / "again.pdf", render_pdf((sheet,), paper_of(paper, dialect)))
    speak(again_text(plan, kept.state, again), dialect)
    speak(f"\nSheet: {sheets / 'again.pdf'}")
    return Outcome.HELD if again.state.loose else Outcome.DONE
