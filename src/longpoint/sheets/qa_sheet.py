"""What was read once the work was up, judged by the guide of the place and by the crew itself."""

from collections.abc import Iterable, Sequence
from typing import Final

from longpoint.errors import Severity
from longpoint.fixing.handover.guides import ChosenGuides
from longpoint.fixing.handover.judged import Judged, What, faces_read, room_of_places
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_gap, format_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Blank, Block, Cell, Column, Heading, Note, Paragraph, Table
from longpoint.sheets.dialects import words_for
from longpoint.sheets.mark_pictures import Passed, mark_picture
from longpoint.sheets.value_words import shown
from longpoint.speech.said import joined, raised, say
from longpoint.survey.handover import Defect
from longpoint.trims.tolerances import NOT_THE_LAW, Outcome

QA_TITLE: Final = say("As built")
NO_ROOM: Final = say("No room named")


def qa_blocks(
    plan: HousePlan, guides: ChosenGuides, judged: Sequence[Judged], month: float
) -> tuple[Block, ...]:
    """Return what stands on the sheet of finished work.

    Args:
        plan: The planned house.
        guides: The limits that judge it.
        judged: What was read, judged.
        month: Months since handing over.
    """
    return (*guide_blocks(guides, month), *_openings(plan, judged), *defect_blocks(plan, judged))


def guide_blocks(guides: ChosenGuides, month: float) -> tuple[Block, ...]:
    """Return by which guide is judged and why, and that it isn't the law."""
    when = (
        say("at handing over")
        if month <= 0
        else say(
            "{month:.0f} months after handing over",
            month=month,
        )
    )
    if guides.guide is None:
        note = Note(
            severity=Severity.NOTE,
            title=say("No guide with figures"),
            text=say(
                "{why} Readings are held against the crew's own limits alone. "
                "What your contract says comes first.",
                why=guides.why,
            ),
        )
        return (note,)
    name = say("{guide} {edition}", guide=guides.guide.name, edition=guides.guide.edition)
    note = Note(
        severity=Severity.NOTE,
        title=say("Judged by {name}, {when}", name=name, when=when),
        text=say("{why} {not_the_law}", why=guides.why, not_the_law=NOT_THE_LAW),
    )
    return (note,)


def _openings(plan: HousePlan, judged: Sequence[Judged]) -> tuple[Block, ...]:
    if not plan.house.openings:
        return ()
    rows: list[tuple[str | Cell, ...]] = []
    under = []
    for opening in plan.house.openings:
        faces = [face for face, _ in faces_read(opening)]
        for face in faces or [""]:
            name = say("{mark}{face}", mark=opening.mark, face=face)
            here = [each for each in judged if (each.place, each.face) == (opening.mark, face)]
            if not here:
                blank = _mark(Passed.UNKNOWN, "")
                rows.append((Cell(text=name, small=(opening.room,)), blank, "-", "-", "-"))
                continue
            joints = [each for each in here if each.what is What.JOINT]
            worst = max(joints, key=lambda each: each.found_mm or 0.0, default=None)
            rows.append(
                (
                    Cell(text=name, small=(opening.room,)),
                    _worst(plan, worst),
                    _guide_cell(worst),
                    _own_cell(joints),
                    _others_cell(plan, here),
                )
            )
            if worst is not None:
                under.append((len(rows) - 1, _limits(plan, worst)))
    quirk = words_for(plan.house.dialect).quirk
    columns = (
        Column(title=say("Opening"), share=2.0),
        Column(title=say("Widest joint"), share=2.4),
        Column(title=say("By the guide"), share=2.0),
        Column(title=say("By your own limit"), share=2.0),
        Column(title=say("{quirk} and faces", quirk=raised(quirk)), share=3.4),
    )
    return (
        Heading(text=say("Openings")),
        Table(columns=columns, rows=tuple(rows), under=tuple(under), under_is_said=True),
    )


def _worst(plan: HousePlan, worst: Judged | None) -> str | Cell:
    if worst is None or worst.found_mm is None:
        return _mark(Passed.UNKNOWN, "")
    return Cell(text=format_gap(worst.found_mm, plan.house.units), small=(worst.where,))


def _guide_cell(worst: Judged | None) -> str | Cell:
    if worst is None or worst.by_guide is None:
        return "-"
    return _mark(passed_of(worst.by_guide), "")


def _own_cell(joints: Iterable[Judged]) -> str | Cell:
    listed = list(joints)
    if not listed:
        return "-"
    return _mark(Passed.NO if any(each.fails_own for each in listed) else Passed.YES, "")


def _others_cell(plan: HousePlan, here: Iterable[Judged]) -> str | Cell:
    others = [each for each in here if each.what in (What.QUIRK, What.STEP)]
    if not others:
        return _mark(Passed.UNKNOWN, "")
    out = [each for each in others if each.fails_own]
    small = joined(
        ", ",
        (
            say(
                "{found} at {where}",
                found=found_words(plan, each),
                where=each.where,
            )
            for each in out
        ),
    )
    return _mark(Passed.NO if out else Passed.YES, small)


def passed_of(outcome: Outcome) -> Passed:
    """Return the mark for what a guide says."""
    match outcome:
        case Outcome.PASSES:
            return Passed.YES
        case Outcome.FAILS:
            return Passed.NO
        case Outcome.NO_NUMBER:
            return Passed.NO_NUMBER


def _mark(passed: Passed, small: str) -> Cell:
    return Cell(
        text=shown(passed.value), small=(small,) if small else (), picture=mark_picture(passed)
    )


def _limits(plan: HousePlan, worst: Judged) -> str:
    units = plan.house.units
    parts = []
    limit = worst.limit
    if limit is not None:
        condition = say(" ({condition})", condition=limit.condition) if limit.condition else ""
        if limit.limit_mm is None:
            parts.append(
                say(
                    "{source} gives no number{condition}",
                    source=limit.source,
                    condition=condition,
                )
            )
        else:
            parts.append(
                say(
                    "{source}: {limit} at most{condition}",
                    source=limit.source,
                    limit=format_gap(limit.limit_mm, units),
                    condition=condition,
                )
            )
    if worst.own is not None:
        parts.append(say("your own limit {own}", own=format_gap(worst.own[1], units)))
    return joined("; ", parts) + "." if parts else ""


def found_words(plan: HousePlan, judged: Judged) -> str:
    """Return what was read, with what it is: "quirk 2", "step 0.8"."""
    if judged.found_mm is None:
        return judged.what.value
    units = plan.house.units
    size = format_length if judged.what is What.QUIRK else format_gap
    name = words_for(plan.house.dialect).quirk if judged.what is What.QUIRK else judged.what.value
    return say("{name} {size}", name=name, size=size(judged.found_mm, units))


def defect_blocks(plan: HousePlan, judged: Sequence[Judged]) -> tuple[Block, ...]:
    """Return the defects room by room: what failed, and what was written down."""
    failing = [
        each
        for each in judged
        if each.what is not What.DEFECT and (each.fails_guide or each.fails_own)
    ]
    written = [each for each in judged if each.what is What.DEFECT]
    rows: list[tuple[str | Cell, ...]] = []
    groups: list[tuple[int, str]] = []
    for room in rooms_in_order(plan, (*failing, *written)):
        groups.append((len(rows), room or NO_ROOM))
        rows += [_failed_row(plan, each) for each in failing if each.room == room]
        rows += [
            _written_row(plan, defect, each)
            for defect, each in zip(plan.house.defects, written, strict=True)
            if each.room == room
        ]
    if not rows:
        return (
            Heading(text=say("Defects")),
            Paragraph(text=say("None read and none written down.")),
        )
    columns = (
        Column(title=say("Where"), share=1.6),
        Column(title=say("What"), share=4.4),
        Column(title=say("Found"), is_number=True, share=1.0),
        Column(title=say("Judged"), share=2.2),
        Column(title=say("Mended"), share=1.3),
    )
    return (
        Heading(text=say("Defects")),
        Table(columns=columns, rows=tuple(rows), groups=tuple(groups)),
    )


def rooms_in_order(plan: HousePlan, judged: Iterable[Judged]) -> tuple[str, ...]:
    """Return the rooms of some readings, in the order of the house."""
    known = list(dict.fromkeys(room_of_places(plan.house).values()))
    here = {each.room for each in judged}
    return (*(room for room in known if room in here), *sorted(here - set(known)))


def _failed_row(plan: HousePlan, judged: Judged) -> tuple[str | Cell, ...]:
    units = plan.house.units
    what = {
        What.JOINT: say("joint {where} stands open", where=judged.where),
        What.STEP: say("faces stand apart {where}", where=judged.where),
    }.get(
        judged.what,
        f"{words_for(plan.house.dialect).quirk} along the {judged.where} outside its band",
    )
    whose = say("the guide") if judged.fails_guide else say("your own limit")
    size = format_length if judged.what is What.QUIRK else format_gap
    return (
        say("{place}{face}", place=judged.place, face=judged.face),
        what,
        size(judged.found_mm or 0.0, units),
        _mark(Passed.NO, say("by {whose}", whose=whose)),
        Cell(blank=Blank.TICK),
    )


def _written_row(plan: HousePlan, defect: Defect, judged: Judged) -> tuple[str | Cell, ...]:
    units: Units = plan.house.units
    found = "" if defect.found_mm is None else format_gap(defect.found_mm, units)
    said: str | Cell = say("as written")
    if judged.by_guide is not None:
        source = judged.limit.source if judged.limit is not None else say("the guide says nothing")
        said = _mark(passed_of(judged.by_guide), source)
    seen = (say("seen {seen}", seen=defect.seen.isoformat()),) if defect.seen else ()
    mended: Cell = Cell(blank=Blank.TICK)
    if defect.mended is not None:
        mended = Cell(text=defect.mended.isoformat())
    return (defect.place, Cell(text=defect.what, small=seen), found, said, mended)
