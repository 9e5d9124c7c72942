"""Skirting pieces: runs read on their own, and walls whose runs are worked out."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import Finding
from longpoint.pieces.boards import Board, Side, Stop, corner_angles
from longpoint.pieces.piece import Piece, Role
from longpoint.pieces.read_boards import read_boards
from longpoint.pieces.returns import return_caution, return_piece
from longpoint.pieces.run_corners import Meeting, Meetings, corner_findings, meetings
from longpoint.pieces.run_ends import CutEnd, cut_end
from longpoint.pieces.run_findings import scarf_note, too_short
from longpoint.pieces.run_floors import board_scribes, climb_deg, floor_findings, scribe_notes
from longpoint.pieces.run_leans import lean_findings, seat
from longpoint.pieces.run_sums import run_sum
from longpoint.pieces.scarfs import (
    OVER_CUT,
    UNDER_CUT,
    Reach,
    longest_piece_mm,
    split_reach,
)
from longpoint.pieces.wall_boards import wall_boards
from longpoint.quantities.formatting import format_angle, format_tenth
from longpoint.shape.fitted import Shapes
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.rooms import RunEnd
from longpoint.trims.floor_scribe import Scribe

LEAST_SAID_MM: Final = 0.05
"""A smaller step between wall, back and face is not worth a line of the sum."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _CutBoard:
    """A board with its two ends cut."""

    board: Board
    left: CutEnd
    right: CutEnd
    words: str
    scribe: Scribe | None = None

    @property
    def reach(self) -> Reach:
        return Reach(
            back_start_mm=self.left.back_mm,
            face_start_mm=self.left.face_mm,
            back_end_mm=self.board.length_mm - self.right.back_mm,
            face_end_mm=self.board.length_mm - self.right.face_mm,
            top_start_mm=self.left.top_mm,
            top_end_mm=self.right.top_mm,
        )


def plan_runs(
    house: House, shapes: Shapes, held: frozenset[str] = frozenset()
) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
    """Return the skirting pieces of a house.

    Runs that were read come first, in the order of the house; then the runs of walls whose
    skirting is to be worked out, from corner to corner, interrupted by doors and cased openings.

    Args:
        house: The house as read.
        shapes: Fitted openings and rooms.
        held: Places held back so far: marks of openings and runs, rooms, "room wall". A held run
            gets no piece; a run worked out from anything held is held too.

    Returns:
        The pieces, and what is to be said of them.
    """
    boards, boards_said = house_boards(house, shapes, held)
    met = meetings(boards)
    pieces, said = board_pieces(house, boards, met)
    return pieces, (*boards_said, *corner_findings(house, boards, met), *said)


def house_boards(
    house: House, shapes: Shapes, held: frozenset[str] = frozenset()
) -> tuple[tuple[Board, ...], tuple[Finding, ...]]:
    """Return the skirting boards of a house before their ends are cut; arguments as `plan_runs`."""
    angles = corner_angles(house, shapes, held)
    read, read_said = read_boards(house, angles, held)
    made, made_said = wall_boards(house, shapes, angles, held)
    return (*read, *made), (*read_said, *made_said)


def board_parts(house: House, boards: Sequence[Board]) -> dict[str, tuple[Reach, ...]]:
    """Return from where to where the parts of each board reach, by its mark; held ones have none.

    Args:
        house: The house: its sticks tell where a board is scarfed.
        boards: All boards of the house, since neighbours tell which of two runs through.
    """
    met, scribes = meetings(boards), board_scribes(boards)
    cut = (_cut_board(b, met, scribes.get(b.mark)) for b in boards if not b.is_held)
    return {each.board.mark: _parts(house, each) for each in cut if each.reach.shortest_mm > 0}


def board_pieces(
    house: House,
    boards: Sequence[Board],
    met: Meetings,
    *,
    role: Role = Role.RUN,
    trim: str | None = None,
) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
    """Return the pieces of boards that run along walls: skirting, rails and beads alike.

    Args:
        house: The house.
        boards: Boards with their ends; a held one gets no piece.
        met: Which of two boards runs through, from `run_corners.meetings`.
        role: What the pieces are in their place.
        trim: Mark of the trim they belong to; None: each board is a run of its own.

    Returns:
        The pieces, each long board in its parts, with the returns; and what is to be said of them,
        at the trim or at the board.
    """
    pieces: list[Piece] = []
    scribes = board_scribes(boards)
    findings = [*lean_findings(house, boards, met), *floor_findings(house, boards, scribes)]
    for board in boards:
        if not board.is_held:
            cut, said = _pieces(house, _cut_board(board, met, scribes.get(board.mark)))
            pieces += cut if trim is None else (_of_trim(piece, trim, role) for piece in cut)
            findings += said
    if trim is not None:
        findings = [replace(each, place=trim) for each in findings]
    return tuple(pieces), tuple(findings)


def _of_trim(piece: Piece, trim: str, role: Role) -> Piece:
    return replace(piece, trim=trim, run=None, role=role if piece.role is Role.RUN else piece.role)


def _cut_board(board: Board, met: Meetings, scribe: Scribe | None) -> _CutBoard:
    left, right = (_cut_side(board, side, met, scribe) for side in Side)
    words = (
        _end_words(side, board.stop(side), met.get((board.mark, side)), cut)
        for side, cut in zip(Side, (left, right), strict=True)
    )
    return _CutBoard(
        board=board,
        left=left,
        right=right,
        words=joined("; ", (word for word in words if word)),
        scribe=scribe,
    )


def _cut_side(board: Board, side: Side, met: Meetings, scribe: Scribe | None) -> CutEnd:
    lies = replace(seat(board), climb_deg=climb_deg(scribe, side))
    runs_through = _runs_through(met.get((board.mark, side)))
    return cut_end(board.stop(side), lies, runs_through=runs_through)


def _runs_through(meeting: Meeting | None) -> bool:
    return meeting is not None and meeting.runs_through


def _end_words(side: Side, stop: Stop, meeting: Meeting | None, cut: CutEnd) -> str:
    other = meeting.other if meeting is not None else ""
    match stop.kind:
        case RunEnd.INTERNAL if _runs_through(meeting):
            return say("{side} end runs through", side=side) + ("" if other else say(", assumed"))
        case RunEnd.INTERNAL:
            over = say("over {other}", other=other) if other else say("over the next, assumed")
            return say(
                "{side} end scribed {over}, corner {corner}",
                side=side,
                over=over,
                corner=format_angle(stop.corner_deg),
            )
        case RunEnd.EXTERNAL:
            return say(
                "{side} end mitred, corner {corner} in the room",
                side=side,
                corner=format_angle(stop.corner_deg),
            )
        case RunEnd.RETURN:
            return say("{side} end mitred to its return", side=side)
        case RunEnd.RAKE:
            way = say("up") if stop.rake_deg > 0 else say("down")
            return say(
                "{side} end read to where the lower edges meet, cut {mitre} off "
                "square: the line turns {way} {rake} there and both boards take "
                "half",
                side=side,
                mitre=format_angle(abs(cut.cut.mitre_deg)),
                way=way,
                rake=format_angle(abs(stop.rake_deg)),
            )
        case RunEnd.SQUARE | RunEnd.ARCHITRAVE if cut.cut.mitre_deg:
            off = format_angle(abs(cut.cut.mitre_deg))
            return say(
                "{side} end cut {off} off square, along what it stops at",
                side=side,
                off=off,
            )
        case RunEnd.SQUARE | RunEnd.ARCHITRAVE:
            return ""


def _pieces(house: House, cut: _CutBoard) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
    board = cut.board
    if cut.reach.shortest_mm <= 0:
        return (), (too_short(house, board),)
    parts = _parts(house, cut)
    pieces = [_part(house, cut, parts, index) for index in range(len(parts))]
    findings = [scarf_note(house, board, parts)] if len(parts) > 1 else []
    returns = [
        return_piece(pieces[-1], board.mark, side)
        for side, stop in zip(Side, (board.left, board.right), strict=True)
        if stop.kind is RunEnd.RETURN
    ]
    if returns:
        findings.append(
            return_caution(
                board.mark, board.mark, board.profile.thickness_mm, len(returns), house.units
            )
        )
    return (*pieces, *returns), tuple(findings)


def _parts(house: House, cut: _CutBoard) -> tuple[Reach, ...]:
    profile = cut.board.profile
    limit_mm = longest_piece_mm(house, profile.name)
    return split_reach(cut.reach, profile.thickness_mm, limit_mm)


def part_mark(board: str, index: int, count: int) -> str:
    """Return the mark of one part of a board: the board's own where it is in one piece."""
    return board if count == 1 else f"{board}-{index + 1}"


def _part(house: House, cut: _CutBoard, parts: tuple[Reach, ...], index: int) -> Piece:
    board, part = cut.board, parts[index]
    last = len(parts) - 1
    return Piece(
        mark=part_mark(board.mark, index, len(parts)),
        role=Role.RUN,
        run=board.mark,
        room=board.room,
        profile=board.profile.name,
        width_mm=board.profile.width_mm,
        thickness_mm=board.profile.thickness_mm,
        inner_mm=part.face_mm,
        outer_mm=part.face_mm + part.top_mm,
        back_mm=part.back_mm,
        left=cut.left.cut if index == 0 else OVER_CUT,
        right=cut.right.cut if index == last else UNDER_CUT,
        u_mm=board.u_mm,
        hand_sum=_hand_sum(house, cut, parts, index),
        notes=_notes(house, cut, part),
    )


def _notes(house: House, cut: _CutBoard, part: Reach) -> tuple[str, ...]:
    """Return what a part's upper edge measures where its ends lean, and what comes off below."""
    notes: tuple[str, ...] = ()
    if max(abs(part.top_start_mm), abs(part.top_end_mm)) >= LEAST_SAID_MM:
        bottom, top = (
            format_tenth(length_mm, house.units)
            for length_mm in (part.back_mm, part.back_mm + part.top_mm)
        )
        notes = (
            say(
                "the back measures {bottom} along the bottom edge, {top} along the top",
                bottom=bottom,
                top=top,
            ),
        )
    if cut.scribe is None:
        return notes
    start_mm, end_mm = max(0.0, part.back_start_mm), min(cut.board.length_mm, part.back_end_mm)
    return (*notes, *scribe_notes(cut.scribe.part(start_mm, end_mm), house.units))


def _hand_sum(house: House, cut: _CutBoard, parts: tuple[Reach, ...], index: int) -> str:
    board = cut.board
    lines = [board.sum_text]
    for name, left_mm, right_mm in (
        ("back", cut.left.back_mm, cut.right.back_mm),
        ("face", cut.left.face_mm, cut.right.face_mm),
    ):
        if max(abs(left_mm), abs(right_mm)) >= LEAST_SAID_MM:
            lines.append(run_sum(name, (board.length_mm, -left_mm, -right_mm), house.units))
    if cut.words:
        lines.append(cut.words)
    if len(parts) > 1:
        faces = [part.face_mm for part in parts]
        added = run_sum(say("faces"), faces, house.units)
        lines.append(
            say(
                "part {index} of {parts}, {added}",
                index=index + 1,
                parts=len(parts),
                added=added,
            )
        )
    return joined("; ", lines)
