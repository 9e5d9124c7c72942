"""Boards from runs that were read on their own."""

from dataclasses import dataclass
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import (
    SQUARE_DEG,
    Board,
    Corner,
    Side,
    Stop,
    is_possible_corner,
    left_corner,
    right_corner,
)
from longpoint.pieces.run_leans import Leans, leaning_stop, next_wall_lean, room_leans
from longpoint.pieces.run_sums import run_sum
from longpoint.quantities.formatting import format_angle
from longpoint.quantities.uncertainty import combine
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.rooms import FloorFit, Run, RunEnd, Wall

CORNER_ON_SOLID: Final = "corner-on-solid"
END_MISMATCH: Final = "end-mismatch"


@dataclass(frozen=True, slots=True, kw_only=True)
class _ReadEnd:
    """One end of a run as written, and where it stands."""

    side: Side
    kind: RunEnd
    own_deg: float | None
    at: Corner | None
    lean_deg: float | None
    rake_deg: float | None

    @property
    def name(self) -> str:
        return self.side.value


def read_boards(
    house: House, angles: dict[Corner, float], held: frozenset[str]
) -> tuple[tuple[Board, ...], tuple[Finding, ...]]:
    """Return a board for every run that was read on its own.

    Args:
        house: The house as read.
        angles: Known corners.
        held: Marks of runs that get no lengths.

    Returns:
        The boards, held ones included, and what had to be assumed of their corners.
    """
    boards: list[Board] = []
    findings: list[Finding] = []
    leans = room_leans(house)
    for run in house.runs:
        board, said = _board(house, run, angles, leans, is_held=run.mark in held)
        boards.append(board)
        findings += said
    return tuple(boards), tuple(findings)


def _board(
    house: House, run: Run, angles: dict[Corner, float], leans: Leans, *, is_held: bool
) -> tuple[Board, tuple[Finding, ...]]:
    wall = _wall(house, run)
    own_deg = run.lean_deg if run.lean_deg is not None else leans.get((run.room, run.wall))
    stops: list[Stop] = []
    findings: list[Finding] = []
    for end in _ends(house, run, leans):
        stop, said = _stop(run, end, angles, own_deg)
        stops.append(stop)
        findings += said
    tape = house.tape(run.tape)
    board = Board(
        mark=run.mark,
        room=run.room,
        profile=house.profile(run.profile),
        length_mm=run.length_mm,
        u_mm=combine((tape.wall_u_mm(), tape.shared_u_mm(run.length_mm))),
        left=stops[0],
        right=stops[1],
        sum_text=run_sum(say("as read"), (run.length_mm,), house.units),
        is_held=is_held or any(f.severity is Severity.STOP for f in findings),
        lean_deg=own_deg or 0.0,
        floor=run.floor or (wall.floor if wall is not None and _fills(house, run, wall) else ()),
        floor_fit=run.floor_fit or (wall.floor_fit if wall is not None else FloorFit.FOLLOW),
    )
    return board, () if is_held else tuple(findings)


def _ends(house: House, run: Run, leans: Leans) -> tuple[_ReadEnd, _ReadEnd]:
    left_at, right_at = _where(house, run)
    left_deg, right_deg = run.left_lean_deg, run.right_lean_deg
    if left_deg is None:
        left_deg = next_wall_lean(house.rooms, leans, left_at, Side.LEFT)
    if right_deg is None:
        right_deg = next_wall_lean(house.rooms, leans, right_at, Side.RIGHT)
    return (
        _ReadEnd(
            side=Side.LEFT,
            kind=run.left,
            own_deg=run.left_corner_deg,
            at=left_at,
            lean_deg=left_deg,
            rake_deg=run.left_rake_deg,
        ),
        _ReadEnd(
            side=Side.RIGHT,
            kind=run.right,
            own_deg=run.right_corner_deg,
            at=right_at,
            lean_deg=right_deg,
            rake_deg=run.right_rake_deg,
        ),
    )


def _wall(house: House, run: Run) -> Wall | None:
    walls = (wall for room in house.rooms if room.name == run.room for wall in room.walls)
    return next((wall for wall in walls if wall.mark == run.wall), None)


def _fills(house: House, run: Run, wall: Wall) -> bool:
    """Tell whether a run is the only one along its wall, so that the wall's floor lies under it."""
    along = [other for other in house.runs if (other.room, other.wall) == (run.room, wall.mark)]
    return len(along) == 1


def _where(house: House, run: Run) -> tuple[Corner | None, Corner | None]:
    """Return the corners a run's ends stand in: the outer ends of the runs along its wall."""
    room = next((room for room in house.rooms if room.name == run.room), None)
    marks = [wall.mark for wall in room.walls] if room is not None else []
    if room is None or run.wall not in marks:
        return None, None
    index = marks.index(run.wall)
    along = [other for other in house.runs if (other.room, other.wall) == (run.room, run.wall)]
    return (
        left_corner(room, index) if run is along[0] and run.left in SQUARE_DEG else None,
        right_corner(room, index) if run is along[-1] and run.right in SQUARE_DEG else None,
    )


def _stop(
    run: Run, end: _ReadEnd, angles: dict[Corner, float], own_lean_deg: float | None
) -> tuple[Stop, tuple[Finding, ...]]:
    if end.kind not in SQUARE_DEG:
        rake_deg = end.rake_deg or 0.0 if end.kind is RunEnd.RAKE else 0.0
        return Stop(kind=end.kind, lean_deg=end.lean_deg or 0.0, rake_deg=rake_deg), ()
    known_deg = angles.get(end.at) if end.at is not None else None
    corner_deg = end.own_deg if end.own_deg is not None else known_deg
    findings: tuple[Finding, ...] = ()
    if corner_deg is not None:
        if end.kind is RunEnd.EXTERNAL and end.own_deg is not None and end.own_deg < 180.0:
            corner_deg = 360.0 - end.own_deg
            findings = (_on_solid(run, end, end.own_deg),)
        if not is_possible_corner(end.kind, corner_deg):
            findings = (_mismatch(run, end, corner_deg),)
    stop = Stop(
        kind=end.kind,
        corner_deg=SQUARE_DEG[end.kind] if corner_deg is None else corner_deg,
        at=end.at,
        is_assumed=corner_deg is None,
    )
    return leaning_stop(stop, end.lean_deg, own_lean_deg), findings


def _on_solid(run: Run, end: _ReadEnd, own_deg: float) -> Finding:
    return Finding(
        code=CORNER_ON_SOLID,
        severity=Severity.NOTE,
        place=run.mark,
        read=say(
            "The external corner at the {end} end of {mark} is written as {own} degrees.",
            end=end.name,
            mark=run.mark,
            own=format_angle(own_deg),
        ),
        wrong=say(
            "Under 180 it can only have been read on the solid, so {own} inside the room was used.",
            own=format_angle(360.0 - own_deg),
        ),
        do=say("If that is wrong, write the corner as it is inside the room."),
    )


def _mismatch(run: Run, end: _ReadEnd, corner_deg: float) -> Finding:
    shown = say("{corner} degrees inside the room", corner=format_angle(corner_deg))
    return Finding(
        code=END_MISMATCH,
        severity=Severity.STOP,
        place=run.mark,
        read=say(
            "The {end} end of {mark} is written as {kind}; its corner is {shown}.",
            end=end.name,
            mark=run.mark,
            kind=end.kind,
            shown=shown,
        ),
        wrong=say(
            "Internal corners are between 30 and 177 degrees, external ones between 183 and 330."
        ),
        do=say("Look which of the two is meant, and write the end or the corner again."),
    )
