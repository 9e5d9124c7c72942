"""A house planned for the phone, with what is held before anything is reckoned."""

import json
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from longpoint.catalogue.all_trims import trim_tables
from longpoint.errors import Finding, Severity, StockError
from longpoint.forecast.chances import Imagined
from longpoint.house_plan import HousePlan
from longpoint.linear.port import LinearSolver
from longpoint.phone.hand_over import Modules
from longpoint.phone.last_plan import LastPlan
from longpoint.phone.messages import Document, Said
from longpoint.phone.ways import openings_in
from longpoint.pipeline import plan_house
from longpoint.sheets.again_sheet import rest_of
from longpoint.sheets.again_text import changed_lines
from longpoint.speech.said import say
from longpoint.speech.tongue import ENGLISH, Tongue
from longpoint.sticks.effort import AT_THE_SAW_ON_A_PHONE, ON_A_PHONE
from longpoint.sticks.news.at_the_saw import AtTheSaw, nothing_cut
from longpoint.sticks.news.changed_pieces import (
    AfterChange,
    PieceShape,
    shapes_to_keep,
    with_changed_pieces,
)
from longpoint.sticks.news.plan_again import PlannedAgain, plan_again
from longpoint.sticks.news.saw_document import kept_saw, saw_document
from longpoint.survey.house import Dialect, EntryKind, HeldEntry, SurveyResult
from longpoint.survey.house_file import read_house
from longpoint.survey.repeated import REPEATS_DISAGREE


@dataclass(frozen=True, slots=True, kw_only=True)
class Ports:
    """What the core asks of the page.

    Attributes:
        solver: Solves linear programmes; None: the built-in ones.
        imagined: How the forecast draws; None: no forecast.
        code_modules: Draws a code for another phone; None: a house is handed over as a file alone.
        tongue: Gives the English of a house's country.
        last: The house planned last with them.
    """

    solver: LinearSolver | None = None
    imagined: Imagined | None = None
    code_modules: Modules | None = None
    tongue: Callable[[Dialect], Tongue] = field(default=lambda _: ENGLISH, compare=False)
    last: LastPlan = field(default_factory=LastPlan, compare=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class AtPhone:
    """A plan, and where its cutting stands.

    Attributes:
        plan: The house as planned, all its pieces.
        rest: The same with only what is still to be cut.
        again: Where the cutting stands.
        before: Where it stood before the rest was planned again.
        shapes: What was cut of each piece until then, by mark.
        said: What changed under what was cut, in sentences.
        is_first: Whether it is a first plan, whose sticks may still change.
    """

    plan: HousePlan
    rest: HousePlan
    again: PlannedAgain
    before: AtTheSaw
    shapes: Mapping[str, PieceShape]
    said: tuple[str, ...] = ()
    is_first: bool = False


def surveyed(document: Document, held: Sequence[Said] = ()) -> SurveyResult:
    """Return the house of a document, without the openings that are held beforehand.

    Raises:
        SurveyError: It can't be used as a whole.
    """
    doubted = {said.place for said in held}
    rooms = {}
    kept = []
    for opening in openings_in(document):
        if opening.get("mark") in doubted:
            rooms[opening["mark"]] = str(opening.get("room", ""))
        else:
            kept.append(opening)
    survey = read_house(document | {"openings": kept}, trim_tables())
    entries = tuple(
        HeldEntry(kind=EntryKind.OPENING, mark=mark, room=room) for mark, room in rooms.items()
    )
    house = replace(survey.house, held=(*survey.house.held, *entries))
    # What the reader says of readings that differ, the page has said at the place it holds.
    read = (
        f for f in survey.findings if f.code != REPEATS_DISAGREE or not _is_in(f.place, doubted)
    )
    return SurveyResult(house=house, findings=(*read, *map(finding_of, held)))


def _is_in(place: str, places: Collection[str]) -> bool:
    """Tell whether a place, or the room that a wall is in, is among others."""
    return any(place == one or place.startswith(f"{one} ") for one in places)


def planned(
    document: Document,
    held: Sequence[Said],
    saw: str,
    ports: Ports,
    *,
    forecast: bool = True,
    is_first: bool = False,
) -> AtPhone:
    """Return the plan of a house, and where its cutting stands.

    Args:
        document: The house.
        held: What is held beforehand.
        saw: What was kept of the cutting; empty where nothing was.
        ports: Engines of the page.
        forecast: Whether a forecast is wanted.
        is_first: Whether a first plan will do; once the cutting has begun none does.

    Raises:
        SurveyError: The house can't be used as a whole.
        StockError: What was kept of the cutting can't be read.
    """
    imagined = ports.imagined if forecast else None
    is_first = is_first and not saw
    solver = None if is_first else ports.solver
    plan = ports.last.of(
        document,
        held,
        lambda before: plan_house(
            surveyed(document, held), solver, imagined, effort=ON_A_PHONE, before=before
        ),
        with_outlook=imagined is not None,
        is_first=is_first,
    )
    fresh = AfterChange(state=nothing_cut(plan.cut_plan), cut_otherwise=(), cut_in_vain=())
    kept, shapes = _kept(saw, plan) if saw else (fresh, {})
    again = PlannedAgain(state=kept.state, new=())
    if saw and (kept.state.loose or kept.state.open_marks - _placed(kept.state)):
        again = planned_on(kept.state, plan, ports)
    return AtPhone(
        plan=plan,
        rest=rest_of(plan, again) if saw else plan,
        again=again,
        before=kept.state,
        shapes=shapes,
        said=changed_lines(kept),
        is_first=ports.last.is_first,
    )


def planned_on(state: AtTheSaw, plan: HousePlan, ports: Ports) -> PlannedAgain:
    """Return where the cutting stands, with what is still to be cut planned again."""
    return plan_again(state, plan.pieces, plan.house, ports.solver, AT_THE_SAW_ON_A_PHONE)


def saw_text(at: AtPhone, state: AtTheSaw) -> str:
    """Return where the cutting stands as the text that is kept."""
    shapes = shapes_to_keep(at.before, state, at.shapes, at.plan.pieces)
    return json.dumps(saw_document(state, at.plan.readings_code, shapes))


def finding_of(said: Said) -> Finding:
    """Return what is said of a place as a finding."""
    return Finding(
        code=said.code,
        severity=Severity(said.severity),
        place=said.place,
        read=said.read,
        wrong=said.wrong,
        do=said.do,
    )


def said_of(findings: Iterable[Finding]) -> tuple[Said, ...]:
    """Return findings as a page takes them."""
    return tuple(
        Said(
            code=f.code,
            severity=f.severity.value,
            place=f.place,
            read=f.read,
            wrong=f.wrong,
            do=f.do,
        )
        for f in findings
    )


def _placed(state: AtTheSaw) -> frozenset[str]:
    return frozenset(laid.piece for stick in state.sticks for laid in stick.next)


def _kept(saw: str, plan: HousePlan) -> tuple[AfterChange, Mapping[str, PieceShape]]:
    try:
        document = json.loads(saw)
    except (ValueError, RecursionError):
        raise StockError(
            say("It was kept where the cutting stands."),
            say("What stands in it isn't what was written."),
            say("Undo the last piece of news, or begin the cutting again."),
        ) from None
    kept = kept_saw(document)
    return with_changed_pieces(kept.state, kept.shapes, plan.pieces), kept.shapes
