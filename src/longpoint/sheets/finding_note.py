"""A finding as it stands on a sheet."""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.sheets.blocks import Note
from longpoint.speech.said import joined, say
from longpoint.survey.checks.accept import ACCEPTABLE
from longpoint.survey.house import House

TITLES: Final = {
    Severity.STOP: say("STOP"),
    Severity.WARNING: say("LOOK"),
    Severity.NOTE: say("NOTE"),
}
"""The word in front of a finding: told apart by word as well as by shape and shade."""


def finding_note(finding: Finding, house: House, *, ask: str = "") -> Note:
    """Return a finding with its place and three sentences; a stop with its code too.

    Args:
        finding: The finding.
        house: The house it is about.
        ask: What is to be written behind it by hand; empty: nothing.
    """
    sentences = (finding.read, finding.wrong, finding.do)
    code = say(" · {code}", code=finding.code) if finding.severity is Severity.STOP else ""
    return Note(
        severity=finding.severity,
        title=say(
            "{titles} · {place}{code}",
            titles=TITLES[finding.severity],
            place=finding.place,
            code=code,
        ),
        text=joined(" ", (sentence for sentence in sentences if sentence)),
        ask=ask,
        small=accept_line(finding, house),
    )


def accept_line(finding: Finding, house: House) -> str:
    """Return what to write in the house file when a stop is so; empty where it can't be accepted.

    What is accepted for a wall stands in its room.
    """
    if finding.severity is not Severity.STOP or finding.code not in ACCEPTABLE:
        return ""
    where = {
        **{
            f"{r.name} {wall.mark}": say("room {r}", r=r.name)
            for r in house.rooms
            for wall in r.walls
        },
        **{room.name: say("room {room}", room=room.name) for room in house.rooms},
        **{run.mark: run.mark for run in house.runs},
        **{trim.mark: trim.mark for trim in house.trims},
        **{opening.mark: opening.mark for opening in house.openings},
    }
    place = where.get(finding.place)
    return (
        say('If it is so: accept = ["{code}"] in {place}', code=finding.code, place=place)
        if place
        else ""
    )
