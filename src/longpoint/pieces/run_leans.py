"""How far the walls behind boards lean, and what shows in a corner of two that lean otherwise."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Board, Corner, Side, Stop
from longpoint.pieces.run_corners import Meetings, by_corner
from longpoint.quantities.formatting import format_angle, format_gap, format_unit
from longpoint.speech.said import figure, joined, say
from longpoint.survey.house import House
from longpoint.survey.rooms import Room, RunEnd
from longpoint.trims.skirting_joints import Seat, corner_steps

CORNER_STEP: Final = "corner-step"
LEAN_ASSUMED: Final = "lean-assumed"

LEAST_STEP_MM: Final = 0.1
"""A smaller step is under what paint covers: our limit, no source."""

SEEN_STEP_MM: Final = 0.5
"""A larger step is warned of: our limit, no source."""


Leans = Mapping[tuple[str, str], float]
"""How far walls lean, by room and wall: only those of which that was read."""


def room_leans(house: House) -> Leans:
    """Return how far every wall leans of which that was read, by room and wall.

    Returns:
        What stands at the wall; else what stands at the first run along it that has a lean.
    """
    leans: dict[tuple[str, str], float] = {}
    for room in house.rooms:
        for wall in room.walls:
            if wall.lean_deg is not None:
                leans[room.name, wall.mark] = wall.lean_deg
    for run in house.runs:
        if run.lean_deg is not None and run.wall:
            leans.setdefault((run.room, run.wall), run.lean_deg)
    return leans


def next_wall_lean(
    rooms: Sequence[Room], leans: Leans, at: Corner | None, side: Side
) -> float | None:
    """Return how far the wall beyond a board's end leans; None where that isn't known."""
    room = next((room for room in rooms if at is not None and room.name == at.room), None)
    if room is None or at is None:
        return None
    index = at.wall if side is Side.LEFT else at.wall + 1
    if index == len(room.walls) and not room.closed:
        return None
    return leans.get((room.name, room.walls[index % len(room.walls)].mark))


def leaning_stop(stop: Stop, next_deg: float | None, own_deg: float | None) -> Stop:
    """Return a corner with the lean of the wall beyond it.

    Args:
        stop: The corner.
        next_deg: How far that wall leans; None where it wasn't read. [deg]
        own_deg: The same of the board's own wall. [deg]

    A wall nobody read is plumb, in this corner as in every other sum: one wall has one lean.
    """
    if next_deg is not None:
        return replace(stop, lean_deg=next_deg)
    return replace(stop, lean_deg=0.0, is_lean_assumed=bool(own_deg))


def seat(board: Board, *, lean_deg: float | None = None) -> Seat:
    """Return how a board lies on a wall that leans as its own does, or otherwise."""
    return Seat(
        width_mm=board.profile.width_mm,
        thickness_mm=board.profile.thickness_mm,
        lean_deg=board.lean_deg if lean_deg is None else lean_deg,
    )


def lean_findings(house: House, boards: Sequence[Board], met: Meetings) -> tuple[Finding, ...]:
    """Return what was assumed of leans, and the corners whose edges step past each other."""
    partners = {
        (board.mark, side): [other for other in ends if other != (board, side)]
        for ends in by_corner(boards).values()
        for board, side in ends
    }
    findings: list[Finding] = []
    for board in boards:
        if board.is_held:
            continue
        findings += _assumed(board)
        for side in Side:
            stop = board.stop(side)
            twice = bool(partners.get((board.mark, side))) and side is Side.LEFT
            meeting = met.get((board.mark, side))
            is_cut = meeting is None or not meeting.runs_through
            if stop.is_corner and is_cut and not (stop.kind is RunEnd.EXTERNAL and twice):
                findings += _step(house, board, side, stop)
    return tuple(findings)


def _assumed(board: Board) -> tuple[Finding, ...]:
    sides = [side.value for side in Side if board.stop(side).is_lean_assumed]
    if not sides:
        return ()
    return (
        Finding(
            code=LEAN_ASSUMED,
            severity=Severity.NOTE,
            place=board.mark,
            read=say(
                "The wall behind {mark} leans {lean}; the next wall at its "
                "{sides} end was not read.",
                mark=board.mark,
                lean=_lean(board.lean_deg),
                sides=joined(say(" and "), sides),
            ),
            wrong=say("It was taken as plumb."),
            do=say("Hold a level to it and write its lean before you cut there."),
        ),
    )


def _step(house: House, board: Board, side: Side, stop: Stop) -> tuple[Finding, ...]:
    steps = corner_steps(stop.corner_deg, seat(board), seat(board, lean_deg=stop.lean_deg))
    if steps.worst_mm < LEAST_STEP_MM:
        return ()
    unit = format_unit(house.units)
    bottom = format_gap(steps.face_bottom_mm, house.units)
    top = format_gap(steps.face_top_mm, house.units)
    low = board.mark if board.lean_deg < stop.lean_deg else say("the other board")
    return (
        Finding(
            code=CORNER_STEP,
            severity=Severity.WARNING if steps.worst_mm >= SEEN_STEP_MM else Severity.NOTE,
            place=board.mark,
            read=say(
                "At the {side} end of {mark} its own wall leans {lean}, the next {lean_2}.",
                side=side,
                mark=board.mark,
                lean=_lean(board.lean_deg),
                lean_2=_lean(stop.lean_deg),
            ),
            wrong=say(
                "The cut ends close flat on each other, but at the face the "
                "lower edges step {bottom} {unit} and the upper edges {top} "
                "{unit}; no setting of the saw takes that away.",
                bottom=bottom,
                unit=unit,
                top=top,
            ),
            do=say(
                "Ease the steps with a block after fixing: {low} has its face edges "
                "lower there. Or pack one board so that both lean alike.",
                low=low,
            ),
        ),
    )


def _lean(lean_deg: float) -> str:
    if round(lean_deg, 1) == 0:
        return say("{lean} (plumb)", lean=figure("0.0"))
    return say(
        "{lean} {away} the room",
        lean=format_angle(abs(lean_deg)),
        away=say("away from") if lean_deg > 0 else say("into"),
    )
