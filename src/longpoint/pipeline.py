"""The whole story on one screen: a house's readings in, its plan out."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from typing import Final

from longpoint.catalogue.all_trims import CATALOGUE
from longpoint.catalogue.plan_trims import PlannedTrim, plan_trims
from longpoint.catalogue.trim import TrimKind
from longpoint.errors import Finding, held_places
from longpoint.forecast.budget.records import BudgetLine
from longpoint.forecast.chances import Imagined
from longpoint.forecast.forecast_house import forecast_house
from longpoint.forecast.records import HouseForecast
from longpoint.forecast.recut_counts import recut_counts
from longpoint.house_plan import HousePlan, Spares
from longpoint.linear.port import LinearSolver
from longpoint.pieces.openings import plan_openings
from longpoint.pieces.piece import Piece
from longpoint.pieces.proud_findings import check_proud
from longpoint.pieces.runs import plan_runs
from longpoint.pieces.sound_pieces import unsound_pieces
from longpoint.shape.contradicted import by_each_figure
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings, fit_outlines
from longpoint.shape.room_fit import fit_rooms
from longpoint.shape.slips import check_closure
from longpoint.sticks.effort import STANDARD, Effort
from longpoint.sticks.plan import CutPlan
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.sticks.profile_plan import ProfilePlanner, one_by_one
from longpoint.sticks.spare_sticks import spare_sticks
from longpoint.survey.checks import accepted, check_survey
from longpoint.survey.checks.wall_sums import check_wall_sums
from longpoint.survey.house import House, SurveyResult
from longpoint.survey.house_file import readings_code

SAME_SLIP: Final = frozenset({"sides-apart", "floor-slope"})
"""What a slip in a side shows as besides the misclosure."""


def check_house(survey: SurveyResult) -> tuple[Shapes, tuple[Finding, ...]]:
    """Return the fitted shapes of a house and everything to be said before a piece is made.

    Args:
        survey: The house as read, with what the reader said.

    Returns:
        Shapes, and findings in the order of the house.
    """
    house = survey.house
    shapes, found = _looked_at(house)
    all_found = by_each_figure(house, survey.findings, found, lambda other: _looked_at(other)[1])
    return shapes, in_house_order(house, accepted(_told_once(all_found), house))


def _looked_at(house: House) -> tuple[Shapes, tuple[Finding, ...]]:
    openings, shape_findings = fit_openings(house)
    outlines, outline_findings = fit_outlines(house)
    rooms, room_findings = fit_rooms(house)
    shapes = Shapes(openings=openings, outlines=outlines, rooms=rooms)
    return shapes, (
        *check_survey(house),
        *shape_findings,
        *outline_findings,
        *check_closure(house, openings),
        *room_findings,
        *check_wall_sums(house),
        *check_proud(house, shapes),
    )


def plan_house(
    survey: SurveyResult,
    solver: LinearSolver | None = None,
    imagined: Imagined | None = None,
    learned: tuple[BudgetLine, ...] = (),
    kinds: tuple[TrimKind, ...] = CATALOGUE,
    planner: ProfilePlanner = one_by_one,
    effort: Effort = STANDARD,
    before: HousePlan | None = None,
) -> HousePlan:
    """Return the plan of a house: pieces, sticks and all that is to be said.

    A place with a finding that stops it gets no lengths; the rest of the house goes on.

    Args:
        survey: The house as read.
        solver: Adapter for the cut plan's linear programmes; None: the built-in search alone.
        imagined: By whom and how often the house is drawn for its forecast; None: no forecast.
        learned: What the crew's finished work says of its saw and tape.
        kinds: The catalogue by which all trim besides sets and skirting is made.
        planner: Has the profiles of the cut plan planned.
        effort: How hard the cut plan is tried.
        before: A plan of the same readings, its forecast made by the same engine from the same
            figures: it is taken over where the same places are held.

    Returns:
        The plan, the same for the same readings on every platform.
    """
    house = survey.house
    shapes, found = check_house(survey)
    nest = partial(plan_sticks, solver=solver, effort=effort, planner=planner)
    made = _made(house, shapes, held_places(found), kinds, nest)
    findings = in_house_order(house, accepted((*found, *made.findings), house))
    held = held_places(findings)
    if held & {piece.place for piece in made.pieces}:
        made = _made(house, shapes, held, kinds, nest)
    outlook = before.outlook if before and before.held == _all_held(house, held) else None
    if imagined is not None and outlook is None:
        outlook = forecast_house(house, shapes, held, imagined, solver=solver, learned=learned)
    proved = outlook.if_proved if outlook else None
    return HousePlan(
        house=house,
        shapes=shapes,
        pieces=made.pieces,
        cut_plan=made.cut_plan,
        findings=findings,
        held=_all_held(house, held),
        readings_code=readings_code(house),
        trims=made.trims,
        outlook=outlook,
        spares=_spares(house, made, outlook.forecast if outlook else None),
        spares_if_proved=_spares(house, made, proved) if proved else None,
    )


def _all_held(house: House, held: frozenset[str]) -> frozenset[str]:
    """Return what gets no lengths, what couldn't be read of the house among it."""
    return held | {entry.mark for entry in house.held}


def in_house_order(house: House, findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Return the findings sorted by place as the house lists it, each said once."""
    places = (
        house.name,
        *(o.mark for o in house.openings),
        *(r.name for r in house.rooms),
        *(f"{r.name} {w.mark}" for r in house.rooms for w in r.walls),
        *(r.mark for r in house.runs),
        *(t.mark for t in house.trims),
    )
    order = {place: index for index, place in enumerate(dict.fromkeys(places))}
    return tuple(sorted(dict.fromkeys(findings), key=lambda f: order.get(f.place, len(order))))


def _told_once(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Leave out what a misclosure at the same place says again, with the same proposals."""
    misclosed = {f.place for f in findings if f.code == "misclosure"}
    return tuple(f for f in findings if f.code not in SAME_SLIP or f.place not in misclosed)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Made:
    """What comes of the shapes while some places are held."""

    pieces: tuple[Piece, ...]
    trims: tuple[PlannedTrim, ...]
    cut_plan: CutPlan
    findings: tuple[Finding, ...]


def _spares(house: House, made: _Made, forecast: HouseForecast | None) -> Spares:
    counts = recut_counts(made.pieces, house.crew, forecast)
    wanted = {count.profile: count.p90 for count in counts}
    return Spares(counts=counts, sticks=spare_sticks(made.cut_plan, made.pieces, house, wanted))


def _made(
    house: House,
    shapes: Shapes,
    held: frozenset[str],
    kinds: tuple[TrimKind, ...],
    nest: Callable[[tuple[Piece, ...], House], CutPlan],
) -> _Made:
    openings, opening_findings = plan_openings(house, shapes, held)
    runs, run_findings = plan_runs(house, shapes, held | held_places(opening_findings))
    so_far = held | held_places((*opening_findings, *run_findings))
    planned = plan_trims(house, shapes, so_far, kinds)
    other = (piece for trim in planned.trims for piece in trim.plan.pieces)
    every = (*openings, *runs, *other)
    found = (*opening_findings, *run_findings, *planned.findings, *unsound_pieces(house, every))
    said = accepted(found, house)
    stopped = held | held_places(said)
    trims = tuple(trim for trim in planned.trims if trim.entry.mark not in stopped)
    pieces = tuple(piece for piece in every if piece.place not in stopped)
    cut_plan = nest(pieces, house)
    return _Made(
        pieces=pieces,
        trims=trims,
        cut_plan=replace(cut_plan, findings=()),
        findings=(*said, *cut_plan.findings),
    )
