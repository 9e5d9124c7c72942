"""Skirting along a stair's wall string, and how it meets the level skirting at foot and head."""

import math
from dataclasses import dataclass, replace
from typing import Final

from longpoint.catalogue.stairs.stair_findings import (
    heights_differ,
    length_worked_out,
    plumb_step,
    runs_disagree,
)
from longpoint.catalogue.stairs.stair_pitch import (
    CLIMBS,
    PITCH_KEYS,
    StairPitch,
    pitch_findings,
    stair_pitch,
)
from longpoint.catalogue.stairs.stair_sketch import stair_sketch
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, PieceError
from longpoint.pieces.boards import Board, Stop
from longpoint.pieces.piece import Role
from longpoint.pieces.run_sums import run_sum
from longpoint.pieces.runs import board_pieces
from longpoint.quantities.formatting import format_angle, format_length, format_tenth
from longpoint.quantities.uncertainty import combine
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.keys import Key, Kind
from longpoint.survey.instruments import Tape
from longpoint.survey.profiles import Profile
from longpoint.survey.rooms import RunEnd
from longpoint.trims.skirting_joints import plumb_height_mm, rake_joint_mm

BISECT: Final = "bisect"
PLUMB: Final = "plumb"
NEWEL: Final = "newel"
SQUARE: Final = "square"
SAME_HEIGHT_MM: Final = 0.5
"""Boards whose heights differ by less meet: our limit, no source."""

_ENDS: Final = (BISECT, PLUMB, NEWEL, SQUARE)

KEYS: Final = (
    *PITCH_KEYS,
    Key(
        name="length",
        kind=Kind.READING,
        meaning=say(
            "Along the slope on the string, from where the lower edges of "
            "raked and level board meet at the foot to where they meet at the "
            "head."
        ),
        example=3828,
        left_out=say("worked out from risers, total_rise and going"),
        above=True,
    ),
    Key(
        name="string",
        kind=Kind.READING,
        meaning=say(
            "How far the string's top edge stands off the nosing line, square to the slope."
        ),
        example=42,
        left_out=say("not said where the joints come to lie"),
    ),
    CLIMBS,
    *(
        Key(
            name=end,
            kind=Kind.CHOICE,
            meaning=say(
                "How its {end} ends: bisect: level skirting runs on, both cut "
                "half the pitch; plumb: level skirting runs on, both cut "
                "plumb; newel: cut plumb against a newel or an architrave; "
                "square: cut square to the slope.",
                end=end,
            ),
            example=BISECT,
            default=BISECT,
            left_out=BISECT,
            choices=_ENDS,
        )
        for end in ("foot", "head")
    ),
    Key(
        name="level_profile",
        kind=Kind.TEXT,
        meaning=say("Profile of the level skirting at foot and head."),
        example="TO120",
        left_out=say("as the stair's own"),
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Length:
    """Length of the lower edge along the slope, its doubt, and the sum behind it."""

    mm: float
    u_mm: float
    text: str
    is_read: bool


def plan_stair_skirting(asked: Asked) -> TrimPlan:
    """Return the raked board of a stair with its ends.

    Raises:
        PieceError: Too little was read, or a joint is asked for that boards of these heights can't
            make.
    """
    stair = stair_pitch(asked)
    level = _level_profile(asked)
    for end in ("foot", "head"):
        if _end(asked, end) == BISECT and _heights_differ(asked.profile, level):
            raise heights_differ(asked, level, stair.pitch_deg)
    length = _length(asked, stair)
    board = _board(asked, stair, length)
    pieces, said = board_pieces(asked.house, (board,), {}, role=Role.RUN, trim=asked.mark)
    joint = _end_note(asked, stair)
    return TrimPlan(
        pieces=tuple(replace(piece, notes=(*piece.notes, *joint)) for piece in pieces),
        findings=(
            *pitch_findings(asked, stair),
            *said,
            *_findings(asked, stair, level, length),
        ),
        sketches=(
            stair_sketch(asked, stair, length.mm, {e: _end(asked, e) for e in ("foot", "head")}),
        ),
        lines=_lines(asked, stair, level),
    )


def _end(asked: Asked, end: str) -> str:
    return str(asked.get(end, BISECT))


def _level_profile(asked: Asked) -> Profile:
    name = asked.get("level_profile", "")
    return asked.house.profile(name) if name else asked.profile


def _heights_differ(one: Profile, other: Profile) -> bool:
    return abs(one.width_mm - other.width_mm) > SAME_HEIGHT_MM


def _length(asked: Asked, stair: StairPitch) -> _Length:
    tape = asked.house.tape(asked.entry.tape)
    read_mm = asked.get("length")
    if read_mm is not None:
        u_mm = combine((tape.private_u_mm(), tape.shared_u_mm(read_mm)))
        text = run_sum(say("as read along the slope"), (read_mm,), asked.units)
        return _Length(mm=read_mm, u_mm=u_mm, text=text, is_read=True)
    risers, step_mm = asked.get("risers"), stair.step_mm
    if risers is None or step_mm is None:
        raise PieceError(
            say("{mark} is written without a length.", mark=asked.mark),
            say(
                "Risers, total rise and going, from which it would follow, aren't all there either."
            ),
            say("Read along the slope from joint to joint and write it as length."),
        )
    total = format_tenth(risers * step_mm, asked.units)
    text = say(
        "{risers} steps of {step} along the slope = {total}",
        risers=risers,
        step=format_tenth(step_mm, asked.units),
        total=total,
    )
    return _Length(
        mm=risers * step_mm, u_mm=_worked_out_u_mm(stair, risers, tape), text=text, is_read=False
    )


def _worked_out_u_mm(stair: StairPitch, risers: int, tape: Tape) -> float:
    """Return the doubt of a length that was worked out.

    References:
        n hypot(rise, going): an error of the total rise counts sin(pitch) times, one of the single
        going n cos(pitch) times.
    """
    pitch = math.radians(stair.pitch_deg)
    u_mm = tape.private_u_mm()
    return combine((math.sin(pitch) * u_mm, risers * math.cos(pitch) * u_mm))


def _board(asked: Asked, stair: StairPitch, length: _Length) -> Board:
    foot, head = (_stop(asked, stair, end) for end in ("foot", "head"))
    climbs_right = asked.get("climbs", "right") == "right"
    return Board(
        mark=f"{asked.mark}-rake",
        room=asked.entry.room,
        profile=asked.profile,
        length_mm=length.mm,
        u_mm=length.u_mm,
        left=foot if climbs_right else head,
        right=head if climbs_right else foot,
        sum_text=length.text,
    )


def _stop(asked: Asked, stair: StairPitch, end: str) -> Stop:
    """Return an end of the raked board, as seen along the slope."""
    steep_deg = stair.pitch_deg if end == "foot" else -stair.pitch_deg
    match _end(asked, end):
        case "bisect":
            # At the foot the level board turns up towards this one's top edge, at the head away.
            return Stop(kind=RunEnd.RAKE, rake_deg=steep_deg)
        case "plumb" | "newel":
            return Stop(kind=RunEnd.SQUARE, lean_deg=-steep_deg)
        case _:
            return Stop(kind=RunEnd.SQUARE)


def _end_note(asked: Asked, stair: StairPitch) -> tuple[str, ...]:
    joint = format_tenth(rake_joint_mm(asked.profile.width_mm, stair.pitch_deg), asked.units)
    ends = [end for end in ("foot", "head") if _end(asked, end) == BISECT]
    if not ends:
        return ()
    return (
        say(
            "the joint at {ends} measures {joint} from lower to upper edge",
            ends=joined(say(" and "), ends),
            joint=joint,
        ),
    )


def _findings(
    asked: Asked, stair: StairPitch, level: Profile, length: _Length
) -> tuple[Finding, ...]:
    findings = []
    plumb = [end for end in ("foot", "head") if _end(asked, end) == PLUMB]
    high_mm = plumb_height_mm(asked.profile.width_mm, stair.pitch_deg)
    if plumb and abs(high_mm - level.width_mm) > SAME_HEIGHT_MM:
        findings.append(plumb_step(asked, plumb, high_mm, level))
    if not length.is_read:
        findings.append(length_worked_out(asked, length.mm, length.u_mm))
    findings += runs_disagree(asked, stair.pitch_deg)
    return tuple(findings)


def _lines(asked: Asked, stair: StairPitch, level: Profile) -> tuple[str, ...]:
    units = asked.units
    pitch = format_angle(stair.pitch_deg)
    half = format_angle(stair.pitch_deg / 2.0)
    lines = [_pitch_line(asked, stair)]
    for end, sign, edges in (("foot", "", say("shorter")), ("head", "-", say("longer"))):
        if _end(asked, end) == BISECT:
            lines.append(
                say(
                    "At the {end} level and raked board are each cut {half} off "
                    "square, half of {pitch}, their upper edges the {edges}. The level "
                    'board is a run with the end "rake" and a rake of {sign}{pitch} '
                    "there.",
                    end=end,
                    half=half,
                    pitch=pitch,
                    edges=edges,
                    sign=sign,
                )
            )
        elif _end(asked, end) == PLUMB:
            lines.append(
                say(
                    "At the {end} the raked board is cut plumb, {pitch} off square, "
                    "and the level board square.",
                    end=end,
                    pitch=pitch,
                )
            )
    string_mm = asked.get("string")
    if string_mm is not None and stair.going_mm is not None:
        before_mm = stair.going_mm + string_mm / math.sin(math.radians(stair.pitch_deg))
        over_mm = plumb_height_mm(string_mm + asked.profile.width_mm, stair.pitch_deg)
        lines.append(
            say(
                "The lower edges meet on the floor {before} in front of the first "
                "nosing, level; the board's top stands {over} plumb over the nosing "
                "line.",
                before=format_length(before_mm, units),
                over=format_length(over_mm, units),
            )
        )
    plumb_mm = plumb_height_mm(asked.profile.width_mm, stair.pitch_deg)
    lines.append(
        say(
            "Cut plumb the raked board stands {plumb} high, the level one {width}.",
            plumb=format_tenth(plumb_mm, units),
            width=format_tenth(level.width_mm, units),
        )
    )
    return tuple(lines)


def _pitch_line(asked: Asked, stair: StairPitch) -> str:
    pitch = format_angle(stair.pitch_deg)
    if stair.rise_mm is None or stair.going_mm is None:
        return say("Pitch {pitch} by gauge.", pitch=pitch)
    rise, going = (format_tenth(mm, asked.units) for mm in (stair.rise_mm, stair.going_mm))
    gauge = (
        say("; {gauge} by gauge", gauge=format_angle(stair.gauge_deg))
        if stair.gauge_deg is not None
        else ""
    )
    return say(
        "Pitch {pitch} by tape, {rise} up on {going}{gauge}.",
        pitch=pitch,
        rise=rise,
        going=going,
        gauge=gauge,
    )


TRIM: Final = TrimKind(
    name="stair-skirting",
    title=say("skirting along a stair"),
    asks=KEYS,
    plan=plan_stair_skirting,
)
