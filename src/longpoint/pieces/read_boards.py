"""Boards from runs that were read on their own."""

from dataclasses import dataclass
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import (
    SQUARE_DEG,
    Board,
    Corner,
    Stop,
    is_possible_corner,
    left_corner,
    right_corner,
)
from longpoint.pieces.run_sums import run_sum
from longpoint.quantities.formatting import format_angle
from longpoint.quantities.uncertainty import combine
from longpoint.shape.room_sightings import wall_reading_u_mm
from longpoint.survey.house import House
from longpoint.survey.rooms import Run, RunEnd

CORNER_ON_SOLID: Final = "corner-on-solid"
END_MISMATCH: Final = "end-mismatch"


@dataclass(frozen=True, slots=True, kw_only=True)
class _ReadEnd:
    """One end of a run as written, and where it stands."""

    name: str
    kind: RunEnd
    own_deg: float | None
    at: Corner | None


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
    for run in house.runs:
        board, said = _board(house, run, angles, is_held=run.mark in held)
        boards.append(board)
        findings += said
    return tuple(boards), tuple(findings)


def _board(
    house: House, run: Run, angles: dict[Corner, float], *, is_held: bool
) -> tuple[Board, tuple[Finding, ...]]:
    left_at, right_at = _where(house, run)
    ends = (
        _ReadEnd(name="left", kind=run.left, own_deg=run.left_corner_deg, at=left_at),
        _ReadEnd(name="right", kind=run.right, own_deg=run.right_corner_deg, at=right_at),
    )
    stops: list[Stop] = []
    findings: list[Finding] = []
    for end in ends:
        stop, said = _stop(run, end, angles)
        stops.append(stop)
        findings += said
    tape = house.tape(run.tape)
    board = Board(
        mark=run.mark,
        room=run.room,
        profile=house.profile(run.profile),
        length_mm=run.length_mm,
        u_mm=combine((wall_reading_u_mm(tape), tape.shared_u_mm(run.length_mm))),
        left=stops[0],
        right=stops[1],
        sum_text=run_sum("as read", (run.length_mm,), house.units),
        is_held=is_held or any(f.severity is Severity.STOP for f in findings),
    )
    return board, () if is_held else tuple(findings)


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


def _stop(run: Run, end: _ReadEnd, angles: dict[Corner, float]) -> tuple[Stop, tuple[Finding, ...]]:
    if end.kind not in SQUARE_DEG:
        return Stop(kind=end.kind), ()
    known_deg = angles.get(end.at) if end.at is not None else None
    corner_deg = end.own_deg if end.own_deg is not None else known_deg
    if corner_deg is None:
        return Stop(kind=end.kind, corner_deg=SQUARE_DEG[end.kind], at=end.at, is_assumed=True), ()
    findings: tuple[Finding, ...] = ()
    if end.kind is RunEnd.EXTERNAL and end.own_deg is not None and end.own_deg < 180.0:
        corner_deg = 360.0 - end.own_deg
        findings = (_on_solid(run, end, end.own_deg),)
    if not is_possible_corner(end.kind, corner_deg):
        findings = (_mismatch(run, end, corner_deg),)
    return Stop(kind=end.kind, corner_deg=corner_deg, at=end.at), findings


def _on_solid(run: Run, end: _ReadEnd, own_deg: float) -> Finding:
    return Finding(
        code=CORNER_ON_SOLID,
        severity=Severity.NOTE,
        place=run.mark,
        read=f"The external corner at the {end.name} end of {run.mark} is written as "
        f"{format_angle(own_deg)} degrees.",
        wrong=f"Under 180 it can only have been read on the solid, so "
        f"{format_angle(360.0 - own_deg)} inside the room was used.",
        do="If that is wrong, write the corner as it is inside the room.",
    )


def _mismatch(run: Run, end: _ReadEnd, corner_deg: float) -> Finding:
    shown = f"{format_angle(corner_deg)} degrees inside the room"
    return Finding(
        code=END_MISMATCH,
        severity=Severity.STOP,
        place=run.mark,
        read=f"The {end.name} end of {run.mark} is written as {end.kind}; its corner is {shown}.",
        wrong="Internal corners are between 30 and 177 degrees, external ones between 183 and 330.",
        do="Look which of the two is meant, and write the end or the corner again.",
    )
