"""What walls that lean mean for a cornice that is planned on plumb ones."""

import math
from collections.abc import Collection
from typing import Final

from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding, Severity
from longpoint.pieces.run_leans import room_leans
from longpoint.quantities.formatting import format_angle, format_tenth, format_with_unit
from longpoint.speech.said import joined, say

CORNICE_LEAN: Final = "cornice-lean"

PLUMB_ENOUGH_DEG: Final = 0.25
"""A smaller lean is within what a level tells: our limit, no source."""


def lean_findings(asked: Asked, walls: Collection[str]) -> tuple[Finding, ...]:
    """Return the warning for walls of the room that lean.

    Args:
        asked: The cornice.
        walls: Marks of all walls of its room: a wall without cornice ends a run all the same.
    """
    leans = room_leans(asked.house)
    found = {
        mark: leans[asked.entry.room, mark]
        for mark in walls
        if abs(leans.get((asked.entry.room, mark), 0.0)) >= PLUMB_ENOUGH_DEG
    }
    if not found:
        return ()
    told = joined(
        ", ",
        (
            say(
                "{mark} {lean} {away} the room",
                mark=mark,
                lean=format_angle(abs(lean)),
                away=say("away from") if lean > 0 else say("into"),
            )
            for mark, lean in found.items()
        ),
    )
    most = max(map(abs, found.values()))
    off = format_tenth(1000.0 * math.tan(math.radians(most)), asked.units)
    return (
        Finding(
            code=CORNICE_LEAN,
            severity=Severity.WARNING,
            place=asked.mark,
            read=say("Walls of {room} lean: {told}.", room=asked.entry.room, told=told),
            wrong=say(
                "The cornice is planned on plumb walls, but for each "
                "{format_with_unit} of height such a wall makes its neighbours "
                "up to {off} longer or shorter at the ceiling, and its own "
                "corner with the ceiling isn't square, so the spring there is "
                "another.",
                format_with_unit=format_with_unit(1000.0, asked.units),
                off=off,
            ),
            do=say(
                "Read the walls again up at the ceiling and write those lengths, "
                "and offer up a short length in each corner before you cut."
            ),
        ),
    )
