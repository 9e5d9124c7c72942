"""The rest of the cutting on the screen: what comes next off each stick, and what is new."""

from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.sheets.again_words import saving_lines, source_words
from longpoint.sheets.settings_table import counted
from longpoint.sticks.at_the_saw import AtTheSaw
from longpoint.sticks.changed_pieces import AfterChange
from longpoint.sticks.plan_again import PlannedAgain, moved_pieces


def again_text(plan: HousePlan, before: AtTheSaw, again: PlannedAgain) -> str:
    """Return what is still to be cut, stick by stick.

    Args:
        plan: The house as planned.
        before: The state before anything was told.
        again: The rest, planned again.
    """
    units, state = plan.house.units, again.state
    lines = [
        f"{plan.house.name}: {counted(len(state.done), 'piece')} cut and good, "
        f"{len(state.open_marks)} to cut."
    ]
    moved = moved_pieces(before, state)
    was = {laid.piece: stick.name for stick in before.sticks for laid in stick.next}
    for stick in state.sticks:
        if not stick.next:
            continue
        spent = f", cut up to {format_length(stick.spent_mm, units)}" if stick.is_begun else ""
        what = source_words(stick)
        told = f"{format_with_unit(stick.length_mm, units)}{f', {what}' if what else ''}{spent}"
        lines += ["", f"{stick.name} ({told}){_to_get(stick.name, again)}"]
        for laid in stick.next:
            from_where = was.get(laid.piece, "to be cut again")
            lines.append(f"  {laid.piece}{f'  (was: {from_where})' * (laid.piece in moved)}")
    saved = saving_lines(plan, before, again)
    lines += ["", *saved, *([""] if saved else []), _new_timber(plan, again)]
    lines += [str(finding) for finding in again.findings]
    return "\n".join(lines)


def changed_lines(change: AfterChange) -> tuple[str, ...]:
    """Return what is to be said of pieces that were cut before their readings changed."""
    lines = []
    if change.cut_otherwise:
        lines.append(
            f"Cut before the readings changed: {', '.join(change.cut_otherwise)}. Try each in its "
            'place. Where it fits, say "fits MARK"; where it is wrong, "lost MARK", or "spoiled '
            'MARK whole" if another piece may be cut from it.'
        )
    if change.cut_in_vain:
        lines.append(
            f"Cut, and not in the plan now, held or taken out: {', '.join(change.cut_in_vain)}."
        )
    return tuple(lines)


def _to_get(name: str, again: PlannedAgain) -> str:
    if name in again.new:
        return ": NEW, get one more"
    return ": fetch it from the rack" if name in again.fetched else ""


def _new_timber(plan: HousePlan, again: PlannedAgain) -> str:
    new = [stick for stick in again.state.sticks if stick.name in again.new]
    if not new:
        return "No new stick is needed."
    told = ", ".join(
        f"{stick.profile} {format_with_unit(stick.length_mm, plan.house.units)}" for stick in new
    )
    return f"New timber needed: {told}."
