"""Rails and beads that run along the walls of a room: their boards, ends and pieces."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.catalogue.trim import TRIM_WAITS, Asked
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.boards import Board, Corner, Side, Stop, corner_angles
from longpoint.pieces.piece import CutKind, EndCut, Piece, Role
from longpoint.pieces.run_corners import Meeting, Meetings, corner_findings, meetings
from longpoint.pieces.runs import board_pieces
from longpoint.pieces.wall_boards import Course, room_boards
from longpoint.pieces.wall_findings import RUN_HELD
from longpoint.speech.said import joined, say
from longpoint.survey.rooms import Room, RunEnd

BARE_WALL: Final = say("the bare wall")
"""What a board runs into where the next wall gets none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ends:
    """How a crew wants the ends of its rails and beads.

    Attributes:
        what: What runs, in one word: "rail".
        role: What its pieces are in their place.
        is_mitred: True when internal corners are mitred; otherwise one board is scribed.
        is_returned: True when a board is returned to the wall where it meets an architrave.
    """

    what: str
    role: Role
    is_mitred: bool = False
    is_returned: bool = False


def the_room(asked: Asked) -> Room:
    """Return the room of an entry, which the catalogue has made sure is there."""
    return next(room for room in asked.house.rooms if room.name == asked.entry.room)


def chosen_walls(asked: Asked, room: Room) -> frozenset[str]:
    """Return the walls that an entry names, all of the room where it names none.

    Raises:
        PieceError: It names one that the room hasn't, or names none in an empty list.
    """
    marks = tuple(wall.mark for wall in room.walls)
    chosen: tuple[str, ...] = asked.get("walls", marks)
    for mark in chosen:
        check_wall(asked, room, mark)
    if not chosen:
        raise PieceError(
            say("{mark} runs along no wall.", mark=asked.mark),
            say("Its list of walls is empty."),
            say("Name the walls, or take the list out: it then runs along all."),
        )
    return frozenset(chosen)


def check_wall(asked: Asked, room: Room, mark: str) -> None:
    """Raise PieceError where a room has no wall of that mark."""
    marks = [wall.mark for wall in room.walls]
    if mark not in marks:
        raise PieceError(
            say(
                "{mark} names wall {mark_2} of {room}.",
                mark=asked.mark,
                mark_2=mark,
                room=room.name,
            ),
            say("That room has {marks}.", marks=joined(", ", marks)),
            say("Name one of these."),
        )


def course_boards(
    asked: Asked, room: Room, course: Course, walls: frozenset[str], ends: Ends
) -> tuple[tuple[Board, ...], tuple[Finding, ...]]:
    """Return the boards of a course with their ends as the crew wants them.

    Args:
        asked: The entry.
        room: Its room.
        course: What runs, at which height.
        walls: Marks of the walls it runs along.
        ends: How its ends are wanted.

    Returns:
        The boards, those beside a held opening held; and what is to be said.

    Raises:
        PieceError: A wall's length or a door's place is not known: which board runs through at a
            corner hangs on all of them.
    """
    angles = corner_angles(asked.house, asked.shapes, asked.held)
    boards, said = room_boards(
        asked.house, asked.shapes, room, course, angles, asked.held, walls=walls
    )
    findings = tuple(_said(asked, ends.what, finding) for finding in said)
    for finding in findings:
        if finding.severity is Severity.STOP:
            raise PieceError(finding.read, finding.wrong, finding.do)
    return tuple(_ended(board, room, walls, ends) for board in boards), findings


def course_pieces(
    asked: Asked, boards: Sequence[Board], ends: Ends
) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
    """Return the pieces of boards whose ends are settled, and what is to be said of them."""
    met = _met(boards, ends)
    pieces, said = board_pieces(asked.house, boards, met, role=ends.role, trim=asked.mark)
    if ends.is_mitred:
        pieces = tuple(_mitred(piece) for piece in pieces)
    corners = corner_findings(asked.house, boards, met)
    return pieces, tuple(_said(asked, ends.what, finding) for finding in (*corners, *said))


def order_of_work(boards: Sequence[Board], ends: Ends) -> str:
    """Return the line that says which board goes up first."""
    marks = [board.mark for board in sorted(boards, key=lambda board: -board.length_mm)]
    order = joined(", ", marks)
    if ends.is_mitred:
        return say(
            "Internal corners are mitred: fix each {what} with its neighbour in hand.",
            what=ends.what,
        )
    return say(
        "The longest goes up first, square into its corners, the next scribed over it: {order}.",
        order=order,
    )


def _ended(board: Board, room: Room, walls: frozenset[str], ends: Ends) -> Board:
    """Return a board whose ends at architraves and at bare walls are settled."""
    return replace(
        board,
        left=_stop(board.left, Side.LEFT, room, walls, ends),
        right=_stop(board.right, Side.RIGHT, room, walls, ends),
    )


def _stop(stop: Stop, side: Side, room: Room, walls: frozenset[str], ends: Ends) -> Stop:
    if stop.kind is RunEnd.ARCHITRAVE and ends.is_returned:
        return Stop(kind=RunEnd.RETURN)
    if stop.at is None or _neighbour(stop.at, side, room) in walls:
        return stop
    if stop.kind is RunEnd.EXTERNAL:
        return replace(stop, kind=RunEnd.RETURN)
    return replace(stop, at=None)


def _neighbour(at: Corner, side: Side, room: Room) -> str:
    """Return the wall round a corner: a corner is known by the wall whose right-hand end it is."""
    index = at.wall if side is Side.LEFT else (at.wall + 1) % len(room.walls)
    return room.walls[index].mark


def _met(boards: Sequence[Board], ends: Ends) -> Meetings:
    """Return who runs through: at a bare wall the board does, at a mitre neither."""
    met = meetings(boards)
    for board in boards:
        for side, stop in ((Side.LEFT, board.left), (Side.RIGHT, board.right)):
            if stop.kind is not RunEnd.INTERNAL:
                continue
            if stop.at is None:
                met[board.mark, side] = Meeting(runs_through=True, other=BARE_WALL)
            elif ends.is_mitred:
                met[board.mark, side] = replace(met[board.mark, side], runs_through=False)
    return met


def _mitred(piece: Piece) -> Piece:
    """Return a piece whose scribed ends are mitred: the same lengths and settings."""
    return replace(
        piece,
        left=_plain(piece.left),
        right=_plain(piece.right),
        hand_sum=re.sub(r"end scribed over", "end mitred with", piece.hand_sum),
    )


def _plain(cut: EndCut) -> EndCut:
    if cut.kind is not CutKind.SCRIBE:
        return cut
    return replace(cut, kind=CutKind.COMPOUND if cut.mitre_deg else CutKind.BEVEL)


def _said(asked: Asked, what: str, finding: Finding) -> Finding:
    """Return a finding of the walls' boards as one of this trim.

    A board beside a held opening is left out, the others stand; so that is a warning here.
    """
    told = replace(
        finding,
        place=asked.mark,
        read=finding.read.removeprefix("Run ").replace("skirting", f"a {what}"),
        wrong=finding.wrong.replace("the skirting", f"the {what}"),
    )
    if finding.code != RUN_HELD:
        return told
    return replace(
        told,
        code=TRIM_WAITS,
        severity=Severity.WARNING,
        read=say(
            "{place} is worked out from its wall and what stands in it.",
            place=finding.place,
        ),
        wrong=finding.wrong.replace("It is held because", "It is left out because"),
        do=say("Settle that first, then plan again before you order."),
    )
