"""The rest of the cutting on the screen: what comes next off each stick, and what is new."""

from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.sheets.again_words import saving_lines, source_words
from longpoint.speech.said import joined, say, say_many
from longpoint.sticks.news.at_the_saw import AtTheSaw
from longpoint.sticks.news.changed_pieces import AfterChange
from longpoint.sticks.news.plan_again import PlannedAgain, moved_pieces


def again_text(plan: HousePlan, before: AtTheSaw, again: PlannedAgain) -> str:
    """Return what is still to be cut, stick by stick.

    Args:
        plan: The house as planned.
        before: The state before anything was told.
        again: The rest, planned again.
    """
    units, state = plan.house.units, again.state
    lines = [
        say(
            "{house}: {counted} cut and good, {open_marks} to cut.",
            house=plan.house.name,
            counted=say_many("{count} piece", "{count} pieces", count=len(state.done)),
            open_marks=len(state.open_marks),
        )
    ]
    moved = moved_pieces(before, state)
    was = {laid.piece: stick.name for stick in before.sticks for laid in stick.next}
    for stick in state.sticks:
        if not stick.next:
            continue
        spent = (
            say(", cut up to {spent}", spent=format_length(stick.spent_mm, units))
            if stick.is_begun
            else ""
        )
        what = source_words(stick)
        told = say(
            "{length}{what}{spent}",
            length=format_with_unit(stick.length_mm, units),
            what=say(", {what}", what=what) if what else "",
            spent=spent,
        )
        lines += [
            "",
            say(
                "{stick} ({told}){to_get}",
                stick=stick.name,
                told=told,
                to_get=_to_get(stick.name, again),
            ),
        ]
        for laid in stick.next:
            from_where = was.get(laid.piece, "to be cut again")
            lines.append(
                say(
                    "  {piece}{was}",
                    piece=laid.piece,
                    was=say("  (was: {from_where})", from_where=from_where) * (laid.piece in moved),
                )
            )
    saved = saving_lines(plan, before, again)
    lines += ["", *saved, *([""] if saved else []), _new_timber(plan, again)]
    lines += [str(finding) for finding in again.findings]
    return joined("\n", lines)


def changed_lines(change: AfterChange) -> tuple[str, ...]:
    """Return what is to be said of pieces that were cut before their readings changed."""
    lines = []
    if change.cut_otherwise:
        lines.append(
            say(
                "Cut before the readings changed: {cut_otherwise}. Try each in its "
                'place. Where it fits, say "fits MARK"; where it is wrong, "lost '
                'MARK", or "spoiled MARK whole" if another piece may be cut from it.',
                cut_otherwise=joined(", ", change.cut_otherwise),
            )
        )
    if change.cut_in_vain:
        lines.append(
            say(
                "Cut, and not in the plan now, held or taken out: {cut_in_vain}.",
                cut_in_vain=joined(", ", change.cut_in_vain),
            )
        )
    return tuple(lines)


def _to_get(name: str, again: PlannedAgain) -> str:
    if name in again.new:
        return say(": NEW, get one more")
    return say(": fetch it from the rack") if name in again.fetched else ""


def _new_timber(plan: HousePlan, again: PlannedAgain) -> str:
    new = [stick for stick in again.state.sticks if stick.name in again.new]
    if not new:
        return say("No new stick is needed.")
    told = joined(
        ", ",
        (
            say(
                "{profile} {length}",
                profile=stick.profile,
                length=format_with_unit(stick.length_mm, plan.house.units),
            )
            for stick in new
        ),
    )
    return say("New timber needed: {told}.", told=told)
