"""Skirting pieces: runs read on their own, and walls whose runs are worked out."""

from dataclasses import dataclass
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Board, Stop, corner_angles
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.pieces.read_boards import read_boards
from longpoint.pieces.run_corners import Meeting, Meetings, Side, corner_findings, meetings
from longpoint.pieces.run_ends import RETURN_BEVEL_DEG, CutEnd, cut_end
from longpoint.pieces.run_sums import run_sum
from longpoint.pieces.scarfs import (
    OVER_CUT,
    UNDER_CUT,
    Reach,
    longest_piece_mm,
    split_reach,
)
from longpoint.pieces.wall_boards import wall_boards
from longpoint.quantities.formatting import format_angle, format_with_unit
from longpoint.shape.fitted import Shapes
from longpoint.survey.house import House
from longpoint.survey.rooms import RunEnd

RUN_TOO_SHORT: Final = "run-too-short"
SCARF_JOINT: Final = "scarf-joint"
RETURN_SMALL: Final = "return-small"

LEAST_SAID_MM: Final = 0.05
"""A smaller step between wall, back and face is not worth a line of the sum."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _CutBoard:
    """A board with its two ends cut."""

    board: Board
    left: CutEnd
    right: CutEnd
    words: str

    @property
    def reach(self) -> Reach:
        return Reach(
            back_start_mm=self.left.back_mm,
            face_start_mm=self.left.face_mm,
            back_end_mm=self.board.length_mm - self.right.back_mm,
            face_end_mm=self.board.length_mm - self.right.face_mm,
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
    angles = corner_angles(house, shapes, held)
    read, read_said = read_boards(house, angles, held)
    made, made_said = wall_boards(house, shapes, angles, held)
    boards = (*read, *made)
    met = meetings(boards)
    pieces: list[Piece] = []
    findings = [*read_said, *made_said, *corner_findings(house, boards, met)]
    for board in boards:
        if not board.is_held:
            cut, said = _pieces(house, _cut_board(board, met))
            pieces += cut
            findings += said
    return tuple(pieces), tuple(findings)


def _cut_board(board: Board, met: Meetings) -> _CutBoard:
    left_met, right_met = (met.get((board.mark, side)) for side in Side)
    thickness_mm = board.profile.thickness_mm
    words = (
        _end_words("left", board.left, left_met),
        _end_words("right", board.right, right_met),
    )
    return _CutBoard(
        board=board,
        left=cut_end(board.left, thickness_mm, runs_through=_runs_through(left_met)),
        right=cut_end(board.right, thickness_mm, runs_through=_runs_through(right_met)),
        words="; ".join(word for word in words if word),
    )


def _runs_through(meeting: Meeting | None) -> bool:
    return meeting is not None and meeting.runs_through


def _end_words(side: str, stop: Stop, meeting: Meeting | None) -> str:
    other = meeting.other if meeting is not None else ""
    match stop.kind:
        case RunEnd.INTERNAL if _runs_through(meeting):
            return f"{side} end runs through" + ("" if other else ", assumed")
        case RunEnd.INTERNAL:
            over = f"over {other}" if other else "over the next, assumed"
            return f"{side} end scribed {over}, corner {format_angle(stop.corner_deg)}"
        case RunEnd.EXTERNAL:
            return f"{side} end mitred, corner {format_angle(stop.corner_deg)} in the room"
        case RunEnd.RETURN:
            return f"{side} end mitred to its return"
        case RunEnd.SQUARE | RunEnd.ARCHITRAVE:
            return ""


def _pieces(house: House, cut: _CutBoard) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
    board = cut.board
    if min(cut.reach.face_mm, cut.reach.back_mm) <= 0:
        return (), (_too_short(house, board),)
    limit_mm = longest_piece_mm(house, board.profile.name)
    parts = split_reach(cut.reach, board.profile.thickness_mm, limit_mm)
    pieces = [_part(house, cut, parts, index) for index in range(len(parts))]
    findings = [_scarf_note(house, board, parts)] if len(parts) > 1 else []
    returns = [
        _return(board, side)
        for side, stop in zip(Side, (board.left, board.right), strict=True)
        if stop.kind is RunEnd.RETURN
    ]
    if returns:
        findings.append(_return_caution(house, board, len(returns)))
    return (*pieces, *returns), tuple(findings)


def _part(house: House, cut: _CutBoard, parts: tuple[Reach, ...], index: int) -> Piece:
    board, part = cut.board, parts[index]
    last = len(parts) - 1
    return Piece(
        mark=board.mark if last == 0 else f"{board.mark}-{index + 1}",
        role=Role.RUN,
        run=board.mark,
        room=board.room,
        profile=board.profile.name,
        width_mm=board.profile.width_mm,
        thickness_mm=board.profile.thickness_mm,
        inner_mm=part.face_mm,
        outer_mm=part.face_mm,
        back_mm=part.back_mm,
        left=cut.left.cut if index == 0 else OVER_CUT,
        right=cut.right.cut if index == last else UNDER_CUT,
        u_mm=board.u_mm,
        hand_sum=_hand_sum(house, cut, parts, index),
    )


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
        added = run_sum("faces", faces, house.units)
        lines.append(f"part {index + 1} of {len(parts)}, {added}")
    return "; ".join(lines)


def _return(board: Board, side: Side) -> Piece:
    """Return the small piece that closes an open end, its face as long as the board is thick."""
    thickness_mm = board.profile.thickness_mm
    joint = EndCut(kind=CutKind.BEVEL, bevel_deg=RETURN_BEVEL_DEG)
    return Piece(
        mark=f"{board.mark}-return-{side}",
        role=Role.RETURN,
        run=board.mark,
        room=board.room,
        profile=board.profile.name,
        width_mm=board.profile.width_mm,
        thickness_mm=thickness_mm,
        inner_mm=thickness_mm,
        outer_mm=thickness_mm,
        back_mm=0.0,
        left=joint if side is Side.RIGHT else SQUARE_CUT,
        right=SQUARE_CUT if side is Side.RIGHT else joint,
        hand_sum=f"face as long as {board.mark} is thick; back comes to a point",
    )


def _too_short(house: House, board: Board) -> Finding:
    return Finding(
        code=RUN_TOO_SHORT,
        severity=Severity.STOP,
        place=board.mark,
        read=f"Run {board.mark} is {format_with_unit(board.length_mm, house.units)} long.",
        wrong="Its two end cuts meet before its ends are reached.",
        do="Read it again, or fit a block of the section there by hand.",
    )


def _scarf_note(house: House, board: Board, parts: tuple[Reach, ...]) -> Finding:
    joints = ", ".join(format_with_unit(part.face_end_mm, house.units) for part in parts[:-1])
    thickness = format_with_unit(board.profile.thickness_mm, house.units)
    return Finding(
        code=SCARF_JOINT,
        severity=Severity.NOTE,
        place=board.mark,
        read=f"Run {board.mark} is {format_with_unit(board.length_mm, house.units)}, longer than "
        "one piece can be.",
        wrong=f"It is cut in {len(parts)} parts, scarfed at 45; on the face the joint stands "
        f"{joints} from the left end, and the right-hand part laps over the left.",
        do="Move the joint over the nearest stud: what one part loses there the other gains. "
        "The lap should point away from the entry: if you come in from the left, turn both scarfs "
        f"round, which makes the right part's back {thickness} longer instead of the left's.",
    )


def _return_caution(house: House, board: Board, count: int) -> Finding:
    thickness = format_with_unit(board.profile.thickness_mm, house.units)
    what = "The return" if count == 1 else "Each return"
    return Finding(
        code=RETURN_SMALL,
        severity=Severity.WARNING,
        place=board.mark,
        read=f"{what} of {board.mark} is {thickness} long on the face and comes to a point behind.",
        wrong="That is too small to hold at the saw.",
        do="Cut the 45 on the end of a longer stick, then cut the return off it with a handsaw, "
        "or let the blade stop before you reach for it.",
    )
