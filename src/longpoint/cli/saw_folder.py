"""What a folder of sheets says of the plan and of the cutting."""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.plan_folder import PLAN, READINGS, STATE
from longpoint.cli.profiles_at_once import at_once
from longpoint.errors import ExchangeError, SheetError
from longpoint.exchange.own_files import own_document
from longpoint.exchange.saw_file import load_at_the_saw
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.sheets.plan_file import sticks_in
from longpoint.solvers.installed import linear_solver
from longpoint.speech.said import say
from longpoint.sticks.news.at_the_saw import nothing_cut
from longpoint.sticks.news.changed_pieces import AfterChange, PieceShape, with_changed_pieces
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house


def printed_plan_in(sheets: Path) -> HousePlan:
    """Return the plan of a folder of sheets with the very sticks that were printed.

    Raises:
        ExchangeError: There is no plan in it.
        SheetError: Its plan file is void, damaged, or of other pieces than the readings in it.
    """
    sticks = sticks_in(document_in(sheets, PLAN))
    plan = plan_house(read_house(document_in(sheets, READINGS), trim_tables()))
    laid = {one.piece for stick in sticks for one in stick.laid}
    if not laid <= {piece.mark for piece in plan.pieces}:
        raise SheetError(
            say(
                "The plan file in {sheets} was read, and the readings beside it.",
                sheets=sheets,
            ),
            say("They are of different pieces, so one of them was changed."),
            say("Plan the house again with `longpoint plan`, into the same folder."),
        )
    return replace(plan, cut_plan=replace(plan.cut_plan, sticks=sticks))


def planned_in(sheets: Path) -> HousePlan:
    """Return the plan of a folder of sheets, made again from the readings kept in it.

    Raises:
        ExchangeError: There is no plan in it.
    """
    survey = read_house(document_in(sheets, READINGS), trim_tables())
    solver = None if (sheets / STATE).exists() else linear_solver()
    return plan_house(survey, solver, planner=at_once)


def house_in(sheets: Path) -> House:
    """Return the house of a folder of sheets, read from the readings kept in it.

    Raises:
        ExchangeError: There are none.
    """
    return read_house(document_in(sheets, READINGS), trim_tables()).house


def document_in(sheets: Path, name: str) -> dict[str, Any]:
    """Return what a JSON file of a folder of sheets holds.

    Raises:
        ExchangeError: It can't be read, or holds no table.
    """
    document = own_document(sheets / name)
    if document is None:
        raise ExchangeError(
            say("The folder {sheets} is to hold sheets.", sheets=sheets),
            say("Its {name} can't be read, so there is no plan to go on from.", name=name),
            say("Name the folder that `longpoint plan` wrote."),
        )
    return document


def at_the_saw_in(sheets: Path, plan: HousePlan) -> tuple[AfterChange, Mapping[str, PieceShape]]:
    """Return where the cutting of a folder of sheets stands, and what its pieces were cut to.

    Args:
        sheets: The folder.
        plan: The plan in it.

    Raises:
        ExchangeError: What was kept of the cutting can't be used.
    """
    path = sheets / STATE
    if not path.exists():
        begun = nothing_cut(plan.cut_plan)
        return AfterChange(state=begun, cut_otherwise=(), cut_in_vain=()), {}
    kept = load_at_the_saw(path)
    known = {profile.name for profile in plan.house.profiles}
    strange = next((s.name for s in kept.state.sticks if s.profile not in known), None)
    if strange is not None:
        raise ExchangeError(
            say("The file {path} tells of stick {strange}.", path=path.name, strange=strange),
            say("It is of a profile that the house doesn't have now."),
            say("Put the profile back, or take the file away to begin again from the plan."),
        )
    return with_changed_pieces(kept.state, kept.shapes, plan.pieces), kept.shapes
