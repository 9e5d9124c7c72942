"""One reading of an opening that is far from those of the openings made like it."""

import math
from statistics import median
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.checks.rows_swapped import swapped_marks
from longpoint.survey.checks.siblings import PLACES, Siblings, told_siblings
from longpoint.survey.digits import said, slips_of
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import Place

SPREAD_MM: Final = 2.5
"""Standard deviation assumed between openings made alike, where they don't spread more."""

ALARM_SPREADS: Final = 3.5

FEWEST_OTHERS: Final = 3

MENDED_MM: Final = 3.0
"""A slip mends a reading when it comes this close to its siblings' median."""


def check_off_siblings(house: House) -> tuple[Finding, ...]:
    """Return a finding for every reading far from its siblings'.

    Only a batch or a nominal size makes siblings here: openings that merely look alike support
    a proposal, but raise no alarm.
    """
    swapped = swapped_marks(house)
    return tuple(
        finding
        for group in told_siblings(house)
        for opening in group.openings
        if opening.mark not in swapped
        for place in PLACES
        for finding in _off(house, group, opening, place)
    )


def _off(house: House, group: Siblings, opening: Opening, place: Place) -> tuple[Finding, ...]:
    own_mm = opening.readings.mean_mm(place)
    others = group.others_mm(opening.mark, place)
    if own_mm is None or len(others) < FEWEST_OTHERS:
        return ()
    usual_mm = median(others)
    limit_mm = ALARM_SPREADS * _spread_mm(house, opening, others, usual_mm)
    if abs(own_mm - usual_mm) <= limit_mm:
        return ()
    units = house.units
    proposals = [
        said(slip, units)
        for reading in opening.readings.at(place)
        for slip in slips_of(reading, units)
        if abs(slip.value_mm - usual_mm) <= MENDED_MM
    ]
    off_mm = own_mm - usual_mm
    return (
        Finding(
            code="off-siblings",
            severity=Severity.STOP if proposals else Severity.WARNING,
            place=opening.mark,
            read=say(
                "The {place} is read as {own}; {others} openings made like it read {usual}.",
                place=place.value,
                own=format_with_unit(own_mm, units),
                others=len(others),
                usual=format_length(usual_mm, units),
            ),
            wrong=say(
                "It is {off} {over} the others.",
                off=format_with_unit(abs(off_mm), units),
                over=say("over") if off_mm > 0 else say("under"),
            ),
            do=say(
                "Read the {place} again: is it {proposals}?",
                place=place.value,
                proposals=joined(say(", or "), proposals[:3]),
            )
            if proposals
            else say(
                "Read the {place} again before it is cut with the batch.",
                place=place.value,
            ),
        ),
    )


def _spread_mm(house: House, opening: Opening, others: tuple[float, ...], usual_mm: float) -> float:
    """Return the spread of a reading among siblings: theirs if larger than the assumed one."""
    deviation_mm = 1.4826 * median(abs(x - usual_mm) for x in others)
    u_mm = house.tape(opening.readings.tape).private_u_mm()
    return math.hypot(max(SPREAD_MM, deviation_mm), u_mm)
