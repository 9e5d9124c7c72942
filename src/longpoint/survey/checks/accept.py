"""What the crew has looked at and accepts."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.speech.said import say
from longpoint.survey.house import House

ACCEPTABLE: Final = frozenset(
    {
        "arch-rise",
        "bay-open",
        "bay-wall",
        "diagonals-swapped",
        "extension-depths",
        "floor-slope",
        "misclosure",
        "off-siblings",
        "outside-sense",
        "repeats-disagree",
        "room-misclosure",
        "room-unknown",
        "rows-swapped",
        "same-readings",
        "side-unlikely",
        "sides-apart",
        "splay-apart",
        "wall-sum",
    }
)
"""Stops that doubt readings which still make a shape. Behind any other stop there is no shape or no
piece, so accepting it would not make a length right."""

ACCEPTED: Final = say("Accepted by you.")


def accepted(findings: Iterable[Finding], house: House) -> tuple[Finding, ...]:
    """Return the findings, a stop that the crew accepts at its place turned into a warning.

    An opening, room or run lists the codes it accepts; a room's list holds for its walls as well.
    Only those of `ACCEPTABLE` are lifted.

    Args:
        findings: Findings of any step.
        house: The house with what is accepted where.

    Returns:
        The same findings in the same order.
    """
    codes = _accepted_codes(house)
    return tuple(_accepted(f, codes.get(f.place, frozenset())) for f in findings)


def _accepted(finding: Finding, codes: frozenset[str]) -> Finding:
    if finding.severity is not Severity.STOP or finding.code not in codes & ACCEPTABLE:
        return finding
    return replace(
        finding,
        severity=Severity.WARNING,
        do=say(
            "{do} {accepted}",
            do=finding.do,
            accepted=ACCEPTED,
        ),
    )


def _accepted_codes(house: House) -> dict[str, frozenset[str]]:
    codes: dict[str, frozenset[str]] = {}
    for opening in house.openings:
        codes[opening.mark] = frozenset(opening.accept)
    for run in house.runs:
        codes[run.mark] = frozenset(run.accept)
    for trim in house.trims:
        codes[trim.mark] = frozenset(trim.accept)
    for room in house.rooms:
        for place in (
            room.name,
            *(say("{room} {mark}", room=room.name, mark=wall.mark) for wall in room.walls),
        ):
            codes[place] = codes.get(place, frozenset()) | frozenset(room.accept)
    return codes
