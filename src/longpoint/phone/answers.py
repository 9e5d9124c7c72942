"""One way in: a request as text, its answer as text."""

import json
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import asdict
from typing import Any, Final

from longpoint.catalogue.all_trims import trim_tables
from longpoint.errors import LongpointError, QuantityError, SurveyError
from longpoint.forecast.on_the_wall import tap_advice
from longpoint.forecast.records import Verdict
from longpoint.forecast.verdicts import in_hundred
from longpoint.house_plan import HousePlan
from longpoint.journal import Entry
from longpoint.linear.simplex import SimplexSolver
from longpoint.phone.cut_steps import cut_steps
from longpoint.phone.fold import fold
from longpoint.phone.forms import forms
from longpoint.phone.hand_over import FORMAT, handed_over, joined, journal_in
from longpoint.phone.house_text import house_text
from longpoint.phone.label_read import label_read
from longpoint.phone.labelled import house_codes, labelled
from longpoint.phone.looked import looked
from longpoint.phone.looked_places import looked_at_place
from longpoint.phone.messages import (
    Answer,
    AtSaw,
    File,
    Fold,
    GoalSaid,
    LabelRead,
    Limits,
    Look,
    Opened,
    OpeningState,
    Plan,
    ProofLine,
    Refusal,
    Said,
    SheetPage,
    Sheets,
    ToBuy,
    Wall,
)
from longpoint.phone.opening_lines import limits
from longpoint.phone.passing import came, passing
from longpoint.phone.planned import AtPhone, Ports, planned, planned_on, said_of, saw_text
from longpoint.phone.ways import with_gaps
from longpoint.pipeline import check_house
from longpoint.quantities.formatting import format_with_unit
from longpoint.sheets.again_sheet import again_sheet
from longpoint.sheets.book import house_sheets
from longpoint.sheets.bought import bought, money_of
from longpoint.sheets.dialects import words_for
from longpoint.sheets.goal_words import cost_lines, cost_words, goal_sentences
from longpoint.sheets.html import sheet_html
from longpoint.sheets.in_tongue import in_tongue
from longpoint.sheets.outlook_words import safe_line, verdicts
from longpoint.sheets.plan_json import plan_document
from longpoint.sheets.profile_words import section_words
from longpoint.sheets.verdict_pictures import verdict_words
from longpoint.speech.said import say
from longpoint.sticks.news.changed_pieces import pieces_as_cut
from longpoint.sticks.news.news_words import told_in_words
from longpoint.survey.house import Dialect
from longpoint.survey.house_file import read_house
from longpoint.survey.house_file.parsed_text import parsed_house

Asked = Mapping[str, Any]


def answer(request_json: str, ports: Ports) -> str:
    """Return the answer to a request; a refusal where there is no other.

    Args:
        request_json: One of `messages.Request`, as JSON.
        ports: Engines of the page.
    """
    try:
        asked = json.loads(request_json)
        said: Answer = _ANSWERS.get(asked["ask"], _unknown)(asked, ports)
        said = in_tongue(said, ports.tongue(_dialect(asked, said)))
    except LongpointError as error:
        said = Refusal(read=error.read, wrong=error.wrong, do=error.do)
    return json.dumps(asdict(said), ensure_ascii=False, default=str)


def _dialect(asked: Asked, said: Answer) -> Dialect:
    document = asked.get("document")
    of_house = document.get("dialect") if isinstance(document, dict) else None
    told = said.dialect if isinstance(said, Fold) else of_house
    return Dialect(told) if told in list(Dialect) else Dialect.UK


def _limits(asked: Asked) -> Limits:
    words = words_for(Dialect(asked["dialect"]))
    return limits(forms(words), words)


def _held(asked: Asked) -> tuple[Said, ...]:
    return tuple(Said(**each) for each in asked["held"])


def _at(asked: Asked, ports: Ports, *, forecast: bool = True, is_first: bool = False) -> AtPhone:
    document, held, saw = asked["document"], _held(asked), asked["saw"]
    return planned(document, held, saw, ports, forecast=forecast, is_first=is_first)


def _plan(asked: Asked, ports: Ports) -> Plan:
    at = _at(asked, ports, is_first=asked.get("is_first", False))
    plan = at.plan
    to_buy, money = _to_buy(plan)
    return Plan(
        code=plan.readings_code,
        cut_code=at.rest.cut_plan.code,
        summary=safe_line(plan),
        openings=_states(plan),
        held=tuple(sorted(plan.held)),
        findings=said_of((*plan.findings, *at.again.findings)),
        cuts=cut_steps(plan, at.rest),
        done=tuple(sorted(at.again.state.done)),
        pieces=len(plan.pieces),
        to_buy=to_buy,
        money=money,
        proofs=tuple(
            ProofLine(profile=line.profile, is_proved=line.is_proved, words=cost_words(line))
            for line in cost_lines(plan.cut_plan, plan.house.units)
        ),
        goals=tuple(
            GoalSaid(words=goal.text, is_proved=goal.is_proved)
            for goal in goal_sentences(plan.cut_plan, plan.house.units)
        ),
        saw=saw_text(at, at.again.state),
        again=(
            *at.said,
            *(say("One more stick is needed: {name}.", name=name) for name in at.again.new),
        ),
        document=plan_document(plan),
        is_first=at.is_first,
    )


def _states(plan: HousePlan) -> tuple[OpeningState, ...]:
    found = verdicts(plan)
    pieces = Counter(piece.opening for piece in plan.pieces)
    marks = dict.fromkeys((*(o.mark for o in plan.house.openings), *found))
    states = []
    for mark in marks:
        verdict = found.get(mark)
        advice = plan.outlook.advice_on(mark) if plan.outlook else None
        has_chance = advice is not None and advice.chance is not None and verdict != Verdict.HOLD
        states.append(
            OpeningState(
                mark=mark,
                verdict=verdict.value if verdict else "none",
                words=verdict_words(verdict) if verdict else say("no forecast"),
                why=advice.why if advice else "",
                chance=in_hundred(advice.chance or 0.0) if has_chance and advice else "",
                pieces=pieces[mark],
            )
        )
    return tuple(states)


def _to_buy(plan: HousePlan) -> tuple[tuple[ToBuy, ...], str]:
    house = plan.house
    names = {profile.name: profile for profile in house.profiles}
    sticks = bought(plan)
    total, is_priced = money_of(sticks)
    rows = tuple(
        ToBuy(
            profile=row.profile,
            section=section_words(names.get(row.profile), house.units),
            length=format_with_unit(row.length_mm, house.units),
            count=row.count,
            price="" if row.price is None else f"{row.price:.2f}",
            is_spare=row.is_spare,
        )
        for row in sticks
    )
    return rows, f"{total:.2f}" if sticks and is_priced else ""


def _look(asked: Asked) -> Look:
    if asked["place"][0] == "openings":
        return looked(asked["document"], asked["place"][1])
    return looked_at_place(asked["document"], asked["place"], _held(asked))


def _sheets(asked: Asked, ports: Ports) -> Sheets:
    at = _at(asked, ports)
    sheets = house_sheets(at.plan)
    if asked["saw"]:
        sheets = (*sheets, again_sheet(at.plan, at.before, at.again))
    sheets = in_tongue(tuple(sheets), ports.tongue(at.plan.house.dialect))
    return Sheets(
        sheets=tuple(
            SheetPage(name=sheet.name, title=sheet.title, html=sheet_html(sheet))
            for sheet in sheets
        )
    )


def _saw(asked: Asked, ports: Ports) -> AtSaw:
    at = _at(asked, ports, forecast=False)
    pieces = pieces_as_cut(at.plan.pieces, at.shapes)
    state = told_in_words(at.again.state, [asked["told"]], at.plan.house.units, pieces)
    if not state.loose:
        return AtSaw(saw=saw_text(at, state), new=(), findings=())
    again = planned_on(state, at.plan, ports)
    return AtSaw(saw=saw_text(at, again.state), new=again.new, findings=said_of(again.findings))


def _wall(asked: Asked, ports: Ports) -> Wall:
    mark = asked["opening"]
    survey = read_house(with_gaps(asked["document"], {mark: asked["gaps"]}), trim_tables())
    wrong = [f for f in survey.findings if f.place == mark and f.code == "as-built-unreadable"]
    if wrong:
        raise QuantityError(wrong[0].read, wrong[0].wrong, wrong[0].do)
    shapes, _ = check_house(survey)
    words = tap_advice(survey.house, shapes, mark, solver=ports.solver or SimplexSolver()).words
    return Wall(
        says=words.says,
        taps=words.taps,
        leaves=words.leaves,
        then=words.then,
        blind=words.blind,
    )


def _label(asked: Asked, ports: Ports) -> LabelRead:
    codes = house_codes(asked["document"], _held(asked))
    return label_read(asked["text"], _at(asked, ports, forecast=False), codes)


def _file(asked: Asked, _: Ports) -> File:
    document = asked["document"]
    name = "".join(c if c.isascii() and c.isalnum() else "-" for c in document["name"].lower())
    return File(name=f"{name.strip('-') or 'house'}.toml", text=house_text(document))


def _open(asked: Asked, _: Ports) -> Opened:
    document = parsed_house(asked["text"])
    entries: tuple[Entry, ...] = ()
    if document.get("format") == FORMAT:
        entries = journal_in(document, asked["highest"])
        document = fold(entries).document
    survey = read_house(document, trim_tables())
    return Opened(
        name=survey.house.name,
        openings=len(survey.house.openings) + len(survey.house.held),
        findings=said_of(survey.findings),
        entries=entries,  # type: ignore[arg-type]
    )


def _unknown(asked: Asked, _: Ports) -> Answer:
    raise SurveyError(
        say("{asked!r} was asked.", asked=asked.get("ask")),
        say("The core doesn't know it."),
        say("Bring the app up to date."),
    )


_ANSWERS: Final[dict[str, Callable[[Asked, Ports], Answer]]] = {
    "limits": lambda asked, _: _limits(asked),
    "fold": lambda asked, _: fold(asked["entries"]),
    "look": lambda asked, _: _look(asked),
    "label": _label,
    "plan": _plan,
    "sheets": _sheets,
    "saw": _saw,
    "wall": _wall,
    "file": _file,
    "open": _open,
    "hand-over": lambda asked, ports: handed_over(asked["entries"], ports.code_modules),
    "label-house": lambda asked, _: labelled(asked["text"], asked["journals"]),
    "passing": lambda asked, _: passing(asked["keys"], asked["there"]),
    "came": lambda asked, _: came(asked["entries"]),
    "joined": lambda asked, _: joined(asked["parts"]),
}
