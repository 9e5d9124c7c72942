"""Nails for the terminal: what to load in each room, and what is wrong with those at hand."""

from collections import Counter

from longpoint.fixing.fixing_findings import nail_findings, nail_words
from longpoint.fixing.nailing import nail_house
from longpoint.house_plan import HousePlan
from longpoint.sheets.fixing_sheet import NO_ROOM, rooms_of
from longpoint.speech.said import joined, say
from longpoint.survey.fixing import Nail


def fixing_text(plan: HousePlan) -> str:
    """Return one line a room: each nail and how many; findings above, what is held below."""
    if not plan.pieces:
        return say("There is no piece to fix: every place is held, or none was read.")
    nailing = nail_house(plan.house, plan.pieces)
    lines = [str(finding) for finding in nail_findings(plan.house, nailing)]
    for room in rooms_of(nailing):
        counts: Counter[Nail] = Counter()
        for nailed in nailing.pieces:
            section = nailing.section(nailed.section)
            if section is None or nailed.piece.room != room:
                continue
            for line, count in zip(section.lines, nailed.counts, strict=True):
                if line.nail is not None:
                    counts[line.nail] += count
        ordered = sorted(counts, key=lambda nail: (nail.gauge, nail.length_mm))
        load = joined(
            "; ",
            (
                say(
                    "{counts} of {nail}",
                    counts=counts[n],
                    nail=nail_words(n, plan.house.units),
                )
                for n in ordered
            ),
        )
        lines.append(say("{room}: {load}.", room=room or NO_ROOM, load=load or say("no nails")))
    if plan.held:
        lines.append(
            say(
                "Held back, so not counted: {held}.",
                held=joined(", ", sorted(plan.held)),
            )
        )
    return joined("\n", lines)
