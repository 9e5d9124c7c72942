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
from longpoint.survey.handover import Defect
from longpoint.trims.tolerances import NOT_THE_LAW, Outcome

QA_TITLE: Final = "As built"
NO_ROOM: Final = "No room named"


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
    when = "at handing over" if month <= 0 else f"{month:.0f} months after handing over"
    if guides.guide is None:
        note = Note(
            severity=Severity.NOTE,
            title="No guide with figures",
            text=f"{guides.why} Readings are held against the crew's own limits alone. "
            "What your contract says comes first.",
        )
        return (note,)
    name = f"{guides.guide.name} {guides.guide.edition}"
    note = Note(
        severity=Severity.NOTE,
        title=f"Judged by {name}, {when}",
        text=f"{guides.why} {NOT_THE_LAW}",
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
            name = f"{opening.mark}{face}"
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
        Column(title="Opening", share=2.0),
        Column(title="Widest joint", share=2.4),
        Column(title="By the guide", share=2.0),
        Column(title="By your own limit", share=2.0),
        Column(title=f"{quirk.capitalize()} and faces", share=3.4),
    )
    return (
        Heading(text="Openings"),
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
    small = ", ".join(f"{found_words(plan, each)} at {each.where}" for each in out)
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
    return Cell(text=passed.value, small=(small,) if small else (), picture=mark_picture(passed))


def _limits(plan: HousePlan, worst: Judged) -> str:
    units = plan.house.units
    parts = []
    limit = worst.limit
    if limit is not None:
        condition = f" ({limit.condition})" if limit.condition else ""
        if limit.limit_mm is None:
            parts.append(f"{limit.source} gives no number{condition}")
        else:
            parts.append(f"{limit.source}: {format_gap(limit.limit_mm, units)} at most{condition}")
    if worst.own is not None:
        parts.append(f"your own limit {format_gap(worst.own[1], units)}")
    return "; ".join(parts) + "." if parts else ""


def found_words(plan: HousePlan, judged: Judged) -> str:
    """Return what was read, with what it is: "quirk 2", "step 0.8"."""
    if judged.found_mm is None:
        return judged.what.value
    units = plan.house.units
    size = format_length if judged.what is What.QUIRK else format_gap
    name = words_for(plan.house.dialect).quirk if judged.what is What.QUIRK else judged.what.value
    return f"{name} {size(judged.found_mm, units)}"


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
        return (Heading(text="Defects"), Paragraph(text="None read and none written down."))
    columns = (
        Column(title="Where", share=1.6),
        Column(title="What", share=4.4),
        Column(title="Found", is_number=True, share=1.0),
        Column(title="Judged", share=2.2),
        Column(title="Mended", share=1.3),
    )
    return (
        Heading(text="Defects"),
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
        What.JOINT: f"joint {judged.where} stands open",
        What.STEP: f"faces stand apart {judged.where}",
    }.get(
        judged.what,
        f"{words_for(plan.house.dialect).quirk} along the {judged.where} outside its band",
    )
    whose = "the guide" if judged.fails_guide else "your own limit"
    size = format_length if judged.what is What.QUIRK else format_gap
    return (
        f"{judged.place}{judged.face}",
        what,
        size(judged.found_mm or 0.0, units),
        _mark(Passed.NO, f"by {whose}"),
        Cell(blank=Blank.TICK),
    )


def _written_row(plan: HousePlan, defect: Defect, judged: Judged) -> tuple[str | Cell, ...]:
    units: Units = plan.house.units
    found = "" if defect.found_mm is None else format_gap(defect.found_mm, units)
    said: str | Cell = "as written"
    if judged.by_guide is not None:
        source = judged.limit.source if judged.limit is not None else "the guide says nothing"
        said = _mark(passed_of(judged.by_guide), source)
    seen = (f"seen {defect.seen.isoformat()}",) if defect.seen else ()
    mended: Cell = Cell(blank=Blank.TICK)
    if defect.mended is not None:
        mended = Cell(text=defect.mended.isoformat())
    return (defect.place, Cell(text=defect.what, small=seen), found, said, mended)
