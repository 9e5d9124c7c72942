"""How large a slip in a wall the readings of a room let pass.

References:
    Internal reliability: the least error of an observation that the test of its standardised
    residual tells, as in any text on the adjustment of observations; from memory.
"""

import math
from statistics import NormalDist
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_with_unit
from longpoint.shape.network import Distance, Network
from longpoint.shape.room_doubt import LOOK_AT
from longpoint.shape.room_findings import what_was_read
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.rooms import Room

SLIPS_UNSEEN: Final = "slips-unseen"

SEEN: Final = 0.8
"""An error is called seen when it is told so often, whatever else the readings are out by."""

UNSEEN_MM: Final = 30.0
"""A wall in which a larger slip would not be seen is named: our limit, no source.

Two diagonals of a room of 4 by 3 m show slips from 25 mm on.
"""

_TENS_MM: Final = 10.0


def least_seen_mm(network: Network) -> dict[str, float]:
    """Return of every length read the least error that is told, by the length's name. [mm]

    Told is told in `SEEN` of all cases; where no other reading checks a length, it is infinite.
    """
    fit, tail = network.adjustment, math.erfc(LOOK_AT / math.sqrt(2.0))
    told_at = NormalDist().inv_cdf(1.0 - tail / (2.0 * len(network.sightings)))
    over_u = told_at + NormalDist().inv_cdf(SEEN)
    return {
        sighting.name: over_u * sighting.u / math.sqrt(share) if share > 1e-6 else math.inf
        for sighting, share in zip(network.sightings, fit.redundancy, strict=True)
        if isinstance(sighting, Distance) and not sighting.is_assumed
    }


def unseen_finding(house: House, room: Room, network: Network) -> Finding | None:
    """Return the note of a wall that is cut to, and in which a slip would not be seen.

    Args:
        house: The house.
        room: The room; its readings agree as far as they go.
        network: All of them, fitted.
    """
    seen_mm = least_seen_mm(network)
    # What is fixed to openings isn't cut to a wall.
    is_trimmed = any(trim.room == room.name and not trim.openings for trim in house.trims)
    least_mm = {
        wall.mark: seen_mm[f"wall {wall.mark}"]
        for wall in room.walls
        if wall.length_mm is not None and not wall.read_twice and (wall.skirting or is_trimmed)
    }
    if max(least_mm.values(), default=0.0) < UNSEEN_MM:
        return None
    mark = max(least_mm, key=least_mm.__getitem__)
    is_checked = math.isfinite(least_mm[mark])
    return Finding(
        code=SLIPS_UNSEEN,
        severity=Severity.NOTE,
        place=room.name,
        read=what_was_read(house, room),
        wrong=say(
            "They check one another only so far: a slip of less than {least} in wall {mark} would "
            "not be seen.",
            least=format_with_unit(math.ceil(least_mm[mark] / _TENS_MM) * _TENS_MM, house.units),
            mark=mark,
        )
        if is_checked
        else say(
            "Nothing checks the length of wall {mark}: a slip there would not be seen.", mark=mark
        ),
        do=say("Read the diagonals between opposite corners, or the wall a second time.")
        if is_checked and not room.diagonals
        else say("Read the wall a second time and write both figures."),
    )
