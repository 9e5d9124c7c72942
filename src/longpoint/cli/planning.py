"""A house as read, planned and written: the one way, for one house and for a street of them."""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from longpoint.cli.imagined import house_imagined
from longpoint.cli.plan_folder import write_plan
from longpoint.errors import Finding
from longpoint.exchange.crew_files import crew_lines
from longpoint.forecast.budget.records import BudgetLine
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.render.paper import Paper
from longpoint.solvers.installed import linear_solver
from longpoint.sticks.profile_plan import ProfilePlanner, one_by_one
from longpoint.survey.house import SurveyResult


def with_crew(
    survey: SurveyResult, crew: Path | None
) -> tuple[SurveyResult, tuple[BudgetLine, ...], tuple[Finding, ...]]:
    """Return a house with what is to be said of the crew's own figures, and the figures.

    Args:
        survey: The house as read.
        crew: File of the crew's figures; None: none.

    Raises:
        LongpointError: The crew file can't be used.
    """
    learned, said = crew_lines(crew, survey.house) if crew is not None else ((), ())
    return replace(survey, findings=(*survey.findings, *said)), learned, said


def plan_and_write(
    survey: SurveyResult,
    learned: tuple[BudgetLine, ...],
    document: Mapping[str, object],
    out: Path,
    paper: Paper | None,
    draws: int | None,
    planner: ProfilePlanner = one_by_one,
) -> tuple[HousePlan, Path]:
    """Return the plan of a house and the PDF of its sheets, which are all written by then.

    Args:
        survey: The house as read.
        learned: What the crew's finished work says of its saw and tape.
        document: The house file it was read from.
        out: Folder of the sheets; made when it isn't there.
        paper: Paper of the PDF.
        draws: How many houses the forecast imagines; None: as many as take no more than a breath.
        planner: Has the profiles of its cut plan planned.

    Raises:
        ExchangeError: A file can't be written.
        SheetError: The PDF can't be made.
    """
    plan = plan_house(survey, linear_solver(), house_imagined(draws), learned, planner=planner)
    return plan, write_plan(plan, document, out, paper)
