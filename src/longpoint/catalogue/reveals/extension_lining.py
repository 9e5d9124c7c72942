"""Boards that bring a lining out to the wall's face: ripped to the depth read at each corner."""

from collections.abc import Iterator
from typing import Final

from longpoint.catalogue.reveals.extension_keys import ASKS, CORNERS
from longpoint.catalogue.reveals.extension_opening import (
    CORNER_NAMES,
    NO_DEPTH_MM,
    Extended,
    extended_opening,
)
from longpoint.catalogue.reveals.reveal_pictures import extension_section, rip_picture
from longpoint.catalogue.reveals.reveals import (
    AT_THE_SAW,
    SIDE_NAMES,
    board_sum,
    end_cut,
    rip_note,
    ripped,
)
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.piece import Piece, Role
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.trims.splays import RevealBoard, RevealJoint, reveal_board

THIN_MM: Final = 6.0
"""Strips thinner than this are glued, not nailed: they split (common practice, no source)."""

APART_MM: Final = 1.0
"""Depths written and plane read may differ by so much: two tapes at half a millimetre each."""


def plan_extension(asked: Asked) -> TrimPlan:
    """Return the boards that extend the linings of one or more openings.

    Args:
        asked: The entry.

    Returns:
        Left leg, head, right leg and, all round a window, the sill piece of each opening.

    Raises:
        PieceError: No depth is known, the lining stands proud, the profile is too narrow, or the
            architrave would cover nothing of the new edge.
    """
    marks = asked.entry.openings
    if asked.get("depths") and len(marks) > 1:
        raise PieceError(
            say(
                "{mark} is written with depths for {marks} openings.",
                mark=asked.mark,
                marks=len(marks),
            ),
            say("Each opening has depths of its own."),
            say(
                "Write one entry for each, or read the plane at each opening and leave depths out."
            ),
        )
    pieces: list[Piece] = []
    findings: list[Finding] = []
    lines = [*_order_of_work(asked)]
    extended = [extended_opening(asked, mark) for mark in marks]
    for each in extended:
        pieces += [_piece(asked, each, side) for side in (3, 2, 1, 0) if each.is_lined(side)]
        findings += _findings(asked, each)
        lines += _quirk_lines(asked, each)
    deepest = max(extended, key=lambda each: max(each.depths_mm))
    first = next(side for side in (2, 3, 1, 0) if deepest.is_lined(side))
    at_right_mm, at_left_mm = deepest.ends_mm(first)
    return TrimPlan(
        pieces=tuple(pieces),
        findings=tuple(findings),
        sketches=(
            extension_section(
                max(deepest.depths_mm), asked.profile.thickness_mm, deepest.step_mm, asked.units
            ),
            rip_picture(
                deepest.reveal.fitted.side_mm[first],
                at_left_mm,
                at_right_mm,
                say("{mark} {side_names}", mark=deepest.mark, side_names=SIDE_NAMES[first]),
                asked.units,
            ),
        ),
        lines=tuple(lines),
    )


def _piece(asked: Asked, each: Extended, side: int) -> Piece:
    corners = each.reveal.faces(each.step_mm)
    first_mm, second_mm = each.ends_mm(side)
    board = reveal_board(corners, each.sides, max(first_mm, second_mm), side, each.joint)
    at_left_mm, at_right_mm = _at_ends(each, side, board)
    piece = asked.piece(
        f"{each.mark}-{SIDE_NAMES[side]}",
        Role.LINING,
        board.inner_mm,
        back_mm=board.back_mm,
        left=end_cut(board.left),
        right=end_cut(board.right),
        u_mm=each.reveal.fitted.side_u_mm[side],
        room=asked.entry.room or each.reveal.opening.room,
        hand_sum=_hand_sum(asked, each, side, board),
        notes=(rip_note(at_left_mm, at_right_mm, say("the lining"), asked.units),),
    )
    return ripped(piece, max(at_left_mm, at_right_mm))


def _at_ends(each: Extended, side: int, board: RevealBoard) -> tuple[float, float]:
    """Return what the board is ripped to at its left and right ends, past the corners too."""
    at_right_mm, at_left_mm = each.ends_mm(side)
    over_mm = (board.inner_mm - each.reveal.fitted.side_mm[side]) / 2.0
    more_mm = (at_left_mm - at_right_mm) / each.reveal.fitted.side_mm[side] * over_mm
    return max(0.0, at_left_mm + more_mm), max(0.0, at_right_mm - more_mm)


def _hand_sum(asked: Asked, each: Extended, side: int, board: RevealBoard) -> str:
    over_mm = [
        asked.profile.thickness_mm
        for other in (side - 1, (side + 1) % 4)
        if each.joint is RevealJoint.BUTT and side in (0, 2) and each.is_lined(other % 4)
    ]
    stepped = 2 if side in (0, 2) or each.reveal.has_sill else 1
    cover_mm = 0.0
    if side in (1, 3) and each.reveal.opening.stands_on_floor:
        cover_mm = each.reveal.opening.floor_cover_mm
    terms = [
        each.reveal.fitted.side_mm[side],
        *over_mm,
        *([each.step_mm] * stepped),
        -cover_mm,
    ]
    return board_sum("reveal", terms, board.inner_mm, asked.units)


def _findings(asked: Asked, each: Extended) -> Iterator[Finding]:
    units = asked.units
    lined = [side for side in range(4) if each.is_lined(side)]
    thin_mm = min(min(each.ends_mm(side)) for side in lined)
    if thin_mm < THIN_MM:
        runs_out = thin_mm < NO_DEPTH_MM
        yield Finding(
            code="extension-thin",
            severity=Severity.WARNING,
            place=asked.mark,
            read=say(
                "At {mark} the thinnest end is {thin} deep.",
                mark=each.mark,
                thin=format_with_unit(thin_mm, units),
            ),
            wrong=say("It runs out to nothing and will break there.")
            if runs_out
            else say("A strip so thin splits when it is nailed through its edge."),
            do=say(
                "Plane the lining back until the strip has some depth along all of it, or glue it."
            )
            if runs_out
            else say("Glue it, and pin it only to hold it while the glue sets."),
        )
    left_out = [side for side in (3, 2, 1, 0) if not each.is_lined(side)]
    left_out = [side for side in left_out if side != 0 or each.reveal.has_sill]
    if left_out:
        yield Finding(
            code="extension-left-out",
            severity=Severity.NOTE,
            place=asked.mark,
            read=say(
                "{mark} is level with the wall along: {left_out}.",
                mark=each.mark,
                left_out=joined(", ", (SIDE_NAMES[side] for side in left_out)),
            ),
            wrong=say("No board is cut for that."),
            do=say("Look whether the neighbours still meet as you want them."),
        )
    yield from _apart(asked, each)


def _apart(asked: Asked, each: Extended) -> Iterator[Finding]:
    written, plane = asked.get("depths"), each.reveal.plane
    if not written or plane is None:
        return
    off_mm = [written[corner] + mm for corner, mm in zip(CORNERS, plane.corners_mm(), strict=True)]
    worst = max(range(4), key=lambda index: abs(off_mm[index]))
    if abs(off_mm[worst]) <= APART_MM:
        return
    depth = format_length(written[CORNERS[worst]], asked.units)
    shy = format_length(-plane.corners_mm()[worst], asked.units)
    yield Finding(
        code="extension-depths",
        severity=Severity.STOP,
        place=asked.mark,
        read=say(
            "{mark} {corner_names}: {depth} deep as written here, {shy} shy by its plane.",
            mark=each.mark,
            corner_names=CORNER_NAMES[worst],
            depth=depth,
            shy=shy,
        ),
        wrong=say("The two should be the same."),
        do=say(
            "Read that corner again, with a straightedge on the wall, and write it in both places."
        ),
    )


def _order_of_work(asked: Asked) -> Iterator[str]:
    if asked.get("joint", "butt") == "mitre":
        yield say("All pieces are mitred through their thickness; lengths are along the face seen.")
    else:
        yield (
            say(
                "The head, and a sill piece, run over the ends of the legs, out to the "
                "legs' backs; the legs stand between them."
            )
        )
    yield (
        say(
            "Cut the ends first, square off the planed edge, which goes to the room; "
            "then rip the other edge, which goes against the lining. Turned end for "
            "end the taper is wrong."
        )
    )
    yield AT_THE_SAW
    step_mm = asked.get("step", 0.0)
    if step_mm:
        step = format_with_unit(step_mm, asked.units)
        yield say("The new face stands {step} back from the lining's all round.", step=step)
    else:
        yield say("The new face is flush with the lining's; plane it in, or choose a step instead.")


def _quirk_lines(asked: Asked, each: Extended) -> Iterator[str]:
    quirks = each.reveal.opening.quirk_mm
    seen = format_with_unit(quirks.head - each.step_mm, asked.units)
    yield (
        say(
            "{mark}: from now on the architrave's quirk is taken from the new edge: "
            "{seen} at the head; its lengths stay as they are.",
            mark=each.mark,
            seen=seen,
        )
    )


TRIM: Final = TrimKind(
    name="extension-lining",
    title=say("an extension lining"),
    asks=ASKS,
    plan=plan_extension,
    needs_openings=True,
)
