"""Pieces of a cornice: edges, settings flat and nested, scarfs and returns."""

import math
from typing import Final, NamedTuple

from longpoint.catalogue.cornice.cornice_ends import CutRun
from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.boards import Side
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.pieces.returns import RETURN_SMALL
from longpoint.pieces.run_findings import SCARF_JOINT
from longpoint.pieces.run_sums import run_sum
from longpoint.pieces.scarfs import (
    OVER_CUT,
    UNDER_CUT,
    Reach,
    longest_piece_mm,
    split_reach,
)
from longpoint.quantities.formatting import format_angle, format_tenth, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.trims.cornice import end_reach
from longpoint.trims.joint_plane import SawAngles
from longpoint.trims.nested import nested_setting

LEAST_SAID_DEG: Final = 0.05
"""A smaller angle is printed as 0.0 and so not said."""


class _Edges(NamedTuple):
    """Where the four long edges of a piece end at one side, along the run. [mm]

    From the left end of the bottom edge of the run's back.
    """

    bottom_back_mm: float
    top_back_mm: float
    bottom_face_mm: float
    top_face_mm: float


def run_pieces(asked: Asked, cut: CutRun) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
    """Return the pieces of one run: its parts from left to right, then its returns.

    Raises:
        PieceError: Its two end cuts meet before its ends are reached.
    """
    starts, ends = _edges(cut)
    if min(end - start for start, end in zip(starts, ends, strict=True)) <= 0:
        raise _too_short(asked, cut)
    thickness_mm = asked.profile.thickness_mm
    whole = Reach(
        back_start_mm=min(starts),
        face_start_mm=min(starts),
        back_end_mm=max(ends),
        face_end_mm=max(ends),
    )
    parts = split_reach(whole, thickness_mm, longest_piece_mm(asked.house, asked.profile.name))
    pieces = [_part(asked, cut, parts, index) for index in range(len(parts))]
    returns = [
        _return(asked, cut, side, end.closing)
        for side, end in zip(Side, (cut.left, cut.right), strict=True)
        if end.closing is not None
    ]
    findings = [_scarf_note(asked, cut, parts)] if len(parts) > 1 else []
    findings += [_return_caution(asked, piece) for piece in returns]
    return (*pieces, *returns), tuple(findings)


def end_note(side: Side, cut: EndCut, spring_deg: float) -> str | None:
    """Return the settings of an end flat and nested, in words.

    Args:
        side: Left or right as it lies flat, face up, ceiling edge away from you.
        cut: Its cut.
        spring_deg: Spring from the wall. [deg]

    Returns:
        None for a square end, and for a scarf, which is cut flat only.
    """
    if cut.kind in (CutKind.SQUARE, CutKind.SCARF):
        return None
    angles = SawAngles(cut.mitre_deg, cut.bevel_deg)
    nested = nested_setting(spring_deg, angles, at_left=side is Side.LEFT)
    coped = say(", then cope along the line of the face") if cut.kind is CutKind.SCRIBE else ""
    table = (
        say("table square")
        if abs(nested.table_deg) < LEAST_SAID_DEG
        else say(
            "table {table} to the {right}",
            table=format_angle(abs(nested.table_deg)),
            right=say("right") if nested.table_deg > 0 else say("left"),
        )
    )
    blade = (
        say("blade upright")
        if abs(nested.lean_deg) < LEAST_SAID_DEG
        else say(
            "blade leaning {lean} to the {left}",
            lean=format_angle(abs(nested.lean_deg)),
            left=say("left") if nested.lean_deg > 0 else say("right"),
        )
    )
    return say(
        "{side} end, flat: {flat}; nested: {table}, {blade}, ceiling edge on the "
        "table, keep what is {side} of the blade{coped}",
        side=side,
        flat=_flat(angles),
        table=table,
        blade=blade,
        coped=coped,
    )


def _flat(angles: SawAngles) -> str:
    mitre, bevel = format_angle(abs(angles.mitre_deg)), format_angle(abs(angles.bevel_deg))
    words = []
    if abs(angles.mitre_deg) >= LEAST_SAID_DEG:
        words.append(
            say(
                "mitre {mitre} ({longer} edge",
                mitre=mitre,
                longer=_longer(angles.mitre_deg > 0, "ceiling", "bottom"),
            )
        )
    if abs(angles.bevel_deg) >= LEAST_SAID_DEG:
        words.append(
            say(
                "bevel {bevel} ({longer}",
                bevel=bevel,
                longer=_longer(angles.bevel_deg > 0, "back", "face"),
            )
        )
    return joined(", ", (say("{word} the longer)", word=word) for word in words)) or "square"


def _longer(is_first: bool, first: str, second: str) -> str:
    return first if is_first else second


def _edges(cut: CutRun) -> tuple[_Edges, _Edges]:
    left, right, length_mm = cut.left.reach, cut.right.reach, cut.back_bottom_mm
    return (
        _Edges(0.0, -left.top_back_mm, -left.bottom_face_mm, -left.top_face_mm),
        _Edges(
            length_mm,
            length_mm + right.top_back_mm,
            length_mm + right.bottom_face_mm,
            length_mm + right.top_face_mm,
        ),
    )


def _scarfed(back_mm: float, face_mm: float) -> _Edges:
    return _Edges(back_mm, back_mm, face_mm, face_mm)


def _part(asked: Asked, cut: CutRun, parts: tuple[Reach, ...], index: int) -> Piece:
    last = len(parts) - 1
    part, (starts, ends) = parts[index], _edges(cut)
    if index > 0:
        starts = _scarfed(part.back_start_mm, part.face_start_mm)
    if index < last:
        ends = _scarfed(part.back_end_mm, part.face_end_mm)
    left = cut.left.cut if index == 0 else OVER_CUT
    right = cut.right.cut if index == last else UNDER_CUT
    spring_deg = cut.run.sprung.spring_deg
    notes = (
        end_note(Side.LEFT, left, spring_deg),
        end_note(Side.RIGHT, right, spring_deg),
    )
    return asked.piece(
        cut.run.what
        if last == 0
        else say(
            "{what}-part-{index}",
            what=cut.run.what,
            index=index + 1,
        ),
        Role.CORNICE,
        ends.bottom_face_mm - starts.bottom_face_mm,
        outer_mm=ends.top_face_mm - starts.top_face_mm,
        back_mm=max(
            ends.bottom_back_mm - starts.bottom_back_mm, ends.top_back_mm - starts.top_back_mm
        ),
        left=left,
        right=right,
        u_mm=cut.run.u_mm / math.cos(math.radians(cut.run.sprung.slope_deg)),
        hand_sum=_hand_sum(asked, cut, parts, index),
        notes=tuple(note for note in notes if note is not None),
    )


def _hand_sum(asked: Asked, cut: CutRun, parts: tuple[Reach, ...], index: int) -> str:
    run, units = cut.run, asked.units
    level = (
        run.wall_mm,
        -run.start_mm,
        run.end_mm - run.wall_mm,
        cut.right.at_mm - run.end_mm,
        run.start_mm - cut.left.at_mm,
    )
    lines = [run_sum(say("wall {wall_mark}", wall_mark=run.wall_mark), level, units)]
    length_mm = cut.back_bottom_mm
    if run.sprung.slope_deg != 0.0:
        slope = format_angle(abs(run.sprung.slope_deg))
        lines.append(
            say(
                "over cos {slope} = {length} along the slope",
                slope=slope,
                length=format_tenth(length_mm, units),
            )
        )
    left, right = cut.left.reach, cut.right.reach
    for name, terms in (
        (say("bottom edge of the face"), (length_mm, left.bottom_face_mm, right.bottom_face_mm)),
        (say("ceiling edge of the face"), (length_mm, left.top_face_mm, right.top_face_mm)),
    ):
        lines.append(run_sum(name, terms, units))
    lines += [end.words for end in (cut.left, cut.right) if end.words]
    if len(parts) > 1:
        lines.append(
            say(
                "part {index} of {parts}, cut at 45 through the thickness, flat",
                index=index + 1,
                parts=len(parts),
            )
        )
    return joined("; ", lines)


def _return(asked: Asked, cut: CutRun, side: Side, angles: SawAngles) -> Piece:
    """Return the piece that closes an open end: mitred at one end, square at the wall."""
    is_left = side is Side.LEFT
    profile, spring_deg = asked.profile, cut.run.sprung.spring_deg
    reach = end_reach(angles, profile.width_mm, profile.thickness_mm)
    joint = EndCut(kind=CutKind.COMPOUND, mitre_deg=angles.mitre_deg, bevel_deg=angles.bevel_deg)
    note = end_note(Side.RIGHT if is_left else Side.LEFT, joint, spring_deg)
    return asked.piece(
        f"{cut.run.what}-return-{side}",
        Role.CORNICE,
        reach.bottom_face_mm,
        outer_mm=reach.top_face_mm,
        back_mm=reach.top_back_mm,
        left=SQUARE_CUT if is_left else joint,
        right=joint if is_left else SQUARE_CUT,
        hand_sum=say(
            "as long as the moulding reaches off the wall; the bottom edge of "
            "its back comes to a point"
        ),
        notes=() if note is None else (note,),
    )


def _too_short(asked: Asked, cut: CutRun) -> PieceError:
    length = format_with_unit(cut.run.level_mm, asked.units)
    return PieceError(
        say(
            "The run {mark}-{what} reaches {length} along wall {wall_mark}.",
            mark=asked.mark,
            what=cut.run.what,
            length=length,
            wall_mark=cut.run.wall_mark,
        ),
        say("Its two end cuts meet before its ends are reached."),
        say("Let it reach farther, or read the wall and the ceiling again."),
    )


def _scarf_note(asked: Asked, cut: CutRun, parts: tuple[Reach, ...]) -> Finding:
    places = joined(", ", (format_with_unit(part.face_end_mm, asked.units) for part in parts[:-1]))
    return Finding(
        code=SCARF_JOINT,
        severity=Severity.NOTE,
        place=asked.mark,
        read=say(
            "The run {mark}-{what} is {back_bottom}, longer than one piece can be.",
            mark=asked.mark,
            what=cut.run.what,
            back_bottom=format_with_unit(cut.back_bottom_mm, asked.units),
        ),
        wrong=say(
            "It is cut in {parts} parts, scarfed at 45 through the thickness as "
            "they lie flat; on the face the joint stands {places} from the left "
            "end of the bottom edge at the wall, and the right-hand part laps "
            "over the left.",
            parts=len(parts),
            places=places,
        ),
        do=say(
            "Put a block of the section's angle behind the joint, and turn the lap "
            "away from where you come in."
        ),
    )


def _return_caution(asked: Asked, piece: Piece) -> Finding:
    length = format_with_unit(piece.long_mm, asked.units)
    return Finding(
        code=RETURN_SMALL,
        severity=Severity.WARNING,
        place=asked.mark,
        read=say(
            "The return {mark} is {length} long and comes to a point behind.",
            mark=piece.mark,
            length=length,
        ),
        wrong=say("That is too small to hold at the saw."),
        do=say(
            "Cut the compound end on a longer stick, then let the blade stop before you cut it off."
        ),
    )
