"""Joints of a cornice that no cut closes, and what makes them instead."""

import math
from typing import Final

from longpoint.catalogue.cornice.cornice_runs import CorniceRun
from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Side
from longpoint.quantities.formatting import format_angle, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.trims.cornice import SprungRun, corner_misfit

JOINT_WONT_CLOSE: Final = "joint-wont-close"

HANDLING_MM: Final = 50.0
"""A level return is this much longer than the moulding reaches off the wall: our figure, so that
there is something left to hold between its two joints."""


def refused(asked: Asked, left: CorniceRun, right: CorniceRun, reach_mm: float) -> Finding:
    """Return the stop of two runs that no cut joins round their corner.

    It is the same seen from either run.

    Args:
        asked: The entry.
        left: The run left of the corner.
        right: The run right of it.
        reach_mm: How far the moulding reaches off the wall.
    """
    corner_deg, profile = left.right.corner_deg, asked.profile
    apart = corner_misfit(
        corner_deg, left.sprung, right.sprung, profile.width_mm, profile.thickness_mm
    )
    is_mixed = left.sprung.spring_deg != right.sprung.spring_deg
    return _stop(
        asked,
        read=say(
            "Wall {wall_mark}'s run {lies}, and at a corner of {corner} degrees "
            "wall {wall_mark_2}'s {lies_2}.",
            wall_mark=left.wall_mark,
            lies=_lies(left.sprung, is_mixed),
            corner=format_angle(corner_deg),
            wall_mark_2=right.wall_mark,
            lies_2=_lies(right.sprung, is_mixed),
        ),
        wrong=say(
            "No saw cut joins them: cut at half the angle they stand {halved} "
            "apart, and no other cut brings the same points of the two nearer "
            "than {least}.",
            halved=format_with_unit(apart.halved_mm, asked.units),
            least=format_with_unit(apart.least_mm, asked.units),
        ),
        do=_one_spring() if is_mixed else _level_returns(asked, left, right, reach_mm),
    )


def climbing_return(asked: Asked, run: CorniceRun, side: Side) -> Finding:
    """Return the stop of a climbing run that is to end in a return."""
    level = SprungRun(spring_deg=run.sprung.spring_deg)
    pair = (level, run.sprung) if side is Side.LEFT else (run.sprung, level)
    profile = asked.profile
    apart = corner_misfit(270.0, *pair, profile.width_mm, profile.thickness_mm)
    return _stop(
        asked,
        read=say(
            "The {side} end of wall {wall_mark}'s run is to have a return; the run {lies}.",
            side=side,
            wall_mark=run.wall_mark,
            lies=_lies(run.sprung, is_mixed=False),
        ),
        wrong=say(
            "No saw cut joins a climbing run to a level return: they stand "
            "{least} apart at the least.",
            least=format_with_unit(apart.least_mm, asked.units),
        ),
        do=say(
            "Write ends as square, or let the run go level for a short length "
            "before its end: a level piece joins both."
        ),
    )


def _lies(sprung: SprungRun, is_mixed: bool) -> str:
    if is_mixed:
        return say(
            "springs {spring} degrees from the wall",
            spring=format_angle(sprung.spring_deg),
        )
    if sprung.slope_deg == 0.0:
        return say("is level")
    way = say("climbs") if sprung.slope_deg > 0 else say("falls")
    return say(
        "{way} {slope} degrees to the right",
        way=way,
        slope=format_angle(abs(sprung.slope_deg)),
    )


def _one_spring() -> str:
    return say(
        "Give both walls one spring, or part the two runs by a block in the corner "
        "that both end square against; a level return doesn't help here."
    )


def _level_returns(asked: Asked, left: CorniceRun, right: CorniceRun, reach_mm: float) -> str:
    """Return which return joint makes the corner."""
    least_mm = math.ceil((reach_mm + HANDLING_MM) / 10.0) * 10.0
    length = format_with_unit(least_mm, asked.units)
    hints = []
    if left.sprung.slope_deg != 0.0:
        from_left = format_with_unit(left.wall_mm - least_mm, asked.units)
        hints.append(
            say(
                "for wall {wall_mark} a last climb with slope 0, from_left {from_left} or less",
                wall_mark=left.wall_mark,
                from_left=from_left,
            )
        )
    if right.sprung.slope_deg != 0.0:
        hints.append(
            say(
                "for wall {wall_mark}'s climb, from_left {length} or more",
                wall_mark=right.wall_mark,
                length=length,
            )
        )
    walls = joined(
        say(" and "), (run.wall_mark for run in (left, right) if run.sprung.slope_deg != 0.0)
    )
    return say(
        "Turn the corner level: a short level return on wall {walls}, and there a "
        "joint from level to slope on one wall, which always closes. Write {hints}.",
        walls=walls,
        hints=joined(say("; and "), hints),
    )


def _stop(asked: Asked, *, read: str, wrong: str, do: str) -> Finding:
    return Finding(
        code=JOINT_WONT_CLOSE,
        severity=Severity.STOP,
        place=asked.mark,
        read=read,
        wrong=wrong,
        do=do,
    )
