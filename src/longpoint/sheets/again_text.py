"""The rest of the cutting on the screen: what comes next off each stick, and what is new."""

from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_length, format_with_unit
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
        is_new = stick.name in again.new
        spent = f", cut up to {format_length(stick.spent_mm, units)}" if stick.is_begun else ""
        head = f"{stick.name} ({format_with_unit(stick.length_mm, units)}{spent})"
        lines += ["", f"{head}{': NEW, get one more' if is_new else ''}"]
        for laid in stick.next:
            from_where = was.get(laid.piece, "to be cut again")
            lines.append(f"  {laid.piece}{f'  (was: {from_where})' * (laid.piece in moved)}")
    lines += ["", _new_timber(plan, again)]
    lines += [str(finding) for finding in again.findings]
    return "\n".join(lines)


def changed_lines(change: AfterChange) -> tuple[str, ...]:
    """Return what is to be said of pieces that were cut before their readings changed."""
    lines = []
    if change.cut_otherwise:
        lines.append(
            f"Cut before the readings changed: {', '.join(change.cut_otherwise)}. Try each in its "
            'place; where it is wrong, tell it as lost: "lost MARK".'
        )
    if change.cut_in_vain:
        lines.append(
            f"Cut, and not in the plan now, held or taken out: {', '.join(change.cut_in_vain)}."
        )
    return tuple(lines)


def _new_timber(plan: HousePlan, again: PlannedAgain) -> str:
    new = [stick for stick in again.state.sticks if stick.name in again.new]
    if not new:
        return "No new stick is needed."
    told = ", ".join(
        f"{stick.profile} {format_with_unit(stick.length_mm, plan.house.units)}" for stick in new
    )
    return f"New timber needed: {told}."
