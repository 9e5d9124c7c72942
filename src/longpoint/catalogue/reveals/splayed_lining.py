"""Boards of a splayed reveal: compound joints between faces that turn away from square."""

import math
from collections.abc import Iterator
from typing import Final

from longpoint.catalogue.reveals.reveal_pictures import splay_section
from longpoint.catalogue.reveals.reveals import (
    SIDE_NAMES,
    board_sum,
    check_width,
    end_cut,
    ripped,
)
from longpoint.catalogue.reveals.splayed_keys import ASKS
from longpoint.catalogue.reveals.splayed_reveal import Splayed, height_mm, splayed_reveal
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, Severity
from longpoint.pieces.piece import Piece, Role
from longpoint.quantities.formatting import format_angle, format_length, format_with_unit
from longpoint.speech.said import say
from longpoint.trims.splays import (
    RevealBoard,
    RevealJoint,
    back_corners,
)

APART_MM: Final = 3.0
"""Size at the frame as read and as the splays give it may differ by this; common practice, no
source. One degree over a depth of 170 makes as much."""


def plan_splayed(asked: Asked) -> TrimPlan:
    """Return the boards of one splayed reveal.

    Args:
        asked: The entry.

    Returns:
        Left leg, head, right leg and, where one is wanted, the sill board.

    Raises:
        PieceError: The size or the splays aren't known, a reveal that is narrower at the room, no
            length left at the frame, or a profile that is too narrow.
    """
    splayed = splayed_reveal(asked)
    boards = {
        side: splayed.board(side) for side in (3, 2, 1, 0) if splayed.sides[side].thickness_mm
    }
    widest_mm = max(board.blank_mm for board in boards.values())
    check_width(
        asked,
        widest_mm,
        format_with_unit(widest_mm, asked.units),
        format_with_unit(asked.profile.width_mm, asked.units),
    )
    (left_x, _), (right_x, _) = splayed.corners[0], splayed.corners[1]
    splays = (splayed.sides[3].splay_deg, splayed.sides[1].splay_deg)
    return TrimPlan(
        pieces=tuple(_piece(asked, splayed, side, board) for side, board in boards.items()),
        findings=tuple(_findings(asked, splayed)),
        sketches=(
            splay_section(
                right_x - left_x,
                splayed.depth_mm,
                splays,
                asked.profile.thickness_mm,
                asked.units,
            ),
        ),
        lines=tuple(_lines(asked, splayed)),
    )


def _piece(asked: Asked, splayed: Splayed, side: int, board: RevealBoard) -> Piece:
    reveal = splayed.reveal
    piece = asked.piece(
        SIDE_NAMES[side],
        Role.LINING,
        board.inner_mm,
        outer_mm=board.outer_mm,
        back_mm=board.back_mm,
        left=end_cut(board.left),
        right=end_cut(board.right),
        u_mm=0.0 if reveal is None else reveal.fitted.side_u_mm[side],
        room=asked.entry.room or ("" if reveal is None else reveal.opening.room),
        hand_sum=_hand_sum(asked, splayed, side, board),
        notes=_notes(asked, board),
    )
    return ripped(piece, board.blank_mm)


def _notes(asked: Asked, board: RevealBoard) -> tuple[str, ...]:
    face, blank, front = (
        format_length(mm, asked.units) for mm in (board.face_mm, board.blank_mm, board.front_mm)
    )
    if board.rip_deg < 0.05:
        return (say("rip to {face} before its ends are cut", face=face),)
    tilt = format_angle(board.rip_deg)
    return (
        say("rip to {blank} before its ends are cut", blank=blank),
        say(
            "then rip both edges at {tilt}°, parallel, to {face} across the face: "
            "outer edge off the face, inner edge off the back",
            tilt=tilt,
            face=face,
        ),
        say("its face is then {front} along the wall's face", front=front),
    )


def _hand_sum(asked: Asked, splayed: Splayed, side: int, board: RevealBoard) -> str:
    """Return the sum of the length at the frame, and that of the width where it is splayed."""
    terms = [board.front_mm]
    depth_mm = splayed.depth_mm
    for neighbour in (splayed.sides[side - 1], splayed.sides[(side + 1) % 4]):
        terms.append(-depth_mm * math.tan(math.radians(neighbour.splay_deg)))
    length = board_sum("wall", terms, board.inner_mm, asked.units)
    if board.rip_deg < 0.05:
        return length
    depth, face = (format_length(mm, asked.units) for mm in (depth_mm, board.face_mm))
    return say(
        "{length}; {depth} / cos {rip}° = {face} across",
        length=length,
        depth=depth,
        rip=format_angle(board.rip_deg),
        face=face,
    )


def _findings(asked: Asked, splayed: Splayed) -> Iterator[Finding]:
    sides = splayed.sides
    if asked.get("splay_left") is None and asked.get("splay_right") is None:
        yield _note(
            asked,
            "splay-shared",
            say(
                "{mark} has its widths at the wall and at the frame, and no splay.",
                mark=asked.mark,
            ),
            say(
                "It was assumed that both sides turn alike, by {splay}°.",
                splay=format_angle(sides[3].splay_deg),
            ),
            say("Read the splay of one side before you cut."),
        )
    back = back_corners(splayed.corners, sides, splayed.depth_mm)
    width_mm = (back[0].distance_mm(back[1]) + back[3].distance_mm(back[2])) / 2.0
    yield from _apart(asked, "wide", asked.get("back_width"), width_mm)
    yield from _apart(asked, "high", asked.get("back_height"), height_mm(back))


def _apart(asked: Asked, what: str, read_mm: float | None, given_mm: float) -> Iterator[Finding]:
    if read_mm is None or abs(read_mm - given_mm) <= APART_MM:
        return
    read, given = (format_length(mm, asked.units) for mm in (read_mm, given_mm))
    yield Finding(
        code="splay-apart",
        severity=Severity.STOP,
        place=asked.mark,
        read=say(
            "{mark} is {read} {what} at the frame as read; by its splays it is {given}.",
            mark=asked.mark,
            read=read,
            what=what,
            given=given,
        ),
        wrong=say("Boards cut to one of them will not fit the other."),
        do=say(
            "Read the splays again with a bevel off the wall's face, and the size at the frame."
        ),
    )


def _note(asked: Asked, code: str, read: str, wrong: str, do: str) -> Finding:
    return Finding(
        code=code, severity=Severity.NOTE, place=asked.mark, read=read, wrong=wrong, do=do
    )


def _lines(asked: Asked, splayed: Splayed) -> Iterator[str]:
    yield (
        say(
            "Every board lies face up, its edge at the frame towards you (inner), its "
            "edge at the wall away from you (outer). Mitre: off square across the "
            "face, + where the outer edge is the longer. Bevel: off square through the "
            "thickness, - where the face is longer than the back."
        )
    )
    if splayed.joint is RevealJoint.BUTT:
        yield (
            say(
                "The legs end under the face of the head; the head (and a sill board) "
                "runs over them, cut along their backs."
            )
        )
    else:
        yield say(
            "All boards of one thickness: the joints are cut along where faces and backs cross."
        )
    yield (
        say(
            "Rip a square-edged blank, cut both its ends, then bevel the long edges: "
            "they lie flat on the frame and level with the wall's face. Cut one corner "
            "in waste first."
        )
    )
    if not splayed.sides[0].thickness_mm:
        slope_deg = splayed.sides[0].splay_deg
        slope = (
            say("falling {slope}° to the room", slope=format_angle(slope_deg))
            if slope_deg
            else say("level")
        )
        yield say(
            "The legs' feet stand on the window board, taken as {slope} through the wall.",
            slope=slope,
        )


TRIM: Final = TrimKind(
    name="splayed-lining",
    title=say("a splayed lining"),
    asks=ASKS,
    plan=plan_splayed,
)
