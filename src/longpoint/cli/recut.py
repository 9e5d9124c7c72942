"""`longpoint recut`: what happened at the saw, and what to cut now."""

import json
from collections.abc import Mapping
from pathlib import Path

import click

from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.plan_folder import READINGS, STATE
from longpoint.errors import ExchangeError
from longpoint.exchange.safe_files import write_bytes_safely, write_text_safely
from longpoint.exchange.saw_file import load_at_the_saw, save_at_the_saw
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_pdf
from longpoint.sheets.again_sheet import again_sheet
from longpoint.sheets.again_text import again_text, changed_lines
from longpoint.sheets.html import sheet_html
from longpoint.solvers import linear_solver
from longpoint.sticks.at_the_saw import nothing_cut
from longpoint.sticks.changed_pieces import (
    AfterChange,
    PieceShape,
    pieces_as_cut,
    shapes_to_keep,
    with_changed_pieces,
)
from longpoint.sticks.news_words import WAYS, told_in_words
from longpoint.sticks.plan_again import plan_again
from longpoint.survey.house_file import read_house


@click.command(name="recut", epilog=f"Ways to tell: {'; '.join(WAYS)}.")
@click.argument("sheets", type=click.Path(path_type=Path, file_okay=False, exists=True))
@click.argument("told", nargs=-1)
@click.option(
    "--paper",
    type=click.Choice([p.value for p in Paper]),
    default=Paper.A4.value,
    show_default=True,
    help="Paper of the PDF.",
)
@exits
def command(sheets: Path, told: tuple[str, ...], paper: str) -> Outcome:
    """Tell what happened at the saw, and get the rest planned again.

    SHEETS is the folder that `longpoint plan` wrote; TOLD are sentences such as "cut W1-head",
    "spoiled W2-head 900" or "bad OG57-3 1200 1350", in the order in which it happened. What was
    told before is kept in that folder. What is cut is never moved.
    """
    plan = _planned(sheets)
    kept, shapes = _kept(sheets / STATE, plan)
    pieces = pieces_as_cut(plan.pieces, shapes)
    state = told_in_words(kept.state, told, plan.house.units, pieces)
    again = plan_again(state, plan.pieces, plan.house)
    to_keep = shapes_to_keep(kept.state, again.state, shapes, plan.pieces)
    save_at_the_saw(sheets / STATE, again.state, plan.readings_code, to_keep)
    for line in changed_lines(with_changed_pieces(again.state, to_keep, plan.pieces)):
        click.echo(line)
    sheet = again_sheet(plan, kept.state, again)
    write_text_safely(sheets / "again.html", sheet_html(sheet))
    write_bytes_safely(sheets / "again.pdf", render_pdf((sheet,), Paper(paper)))
    click.echo(again_text(plan, kept.state, again))
    click.echo(f"\nSheet: {sheets / 'again.pdf'}")
    return Outcome.HELD if again.state.loose else Outcome.DONE


def _planned(sheets: Path) -> HousePlan:
    try:
        document = json.loads((sheets / READINGS).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        raise ExchangeError(
            f"The folder {sheets} is to hold sheets.",
            f"Its {READINGS} can't be read, so there is no plan to go on from.",
            "Name the folder that `longpoint plan` wrote.",
        ) from None
    survey = read_house(document, trim_tables())
    solver = None if (sheets / STATE).exists() else linear_solver()
    return plan_house(survey, solver)


def _kept(path: Path, plan: HousePlan) -> tuple[AfterChange, Mapping[str, PieceShape]]:
    if not path.exists():
        begun = nothing_cut(plan.cut_plan)
        return AfterChange(state=begun, cut_otherwise=(), cut_in_vain=()), {}
    kept = load_at_the_saw(path)
    known = {profile.name for profile in plan.house.profiles}
    strange = next((s.name for s in kept.state.sticks if s.profile not in known), None)
    if strange is not None:
        raise ExchangeError(
            f"The file {path.name} tells of stick {strange}.",
            "It is of a profile that the house doesn't have now.",
            "Put the profile back, or take the file away to begin again from the plan.",
        )
    return with_changed_pieces(kept.state, kept.shapes, plan.pieces), kept.shapes
