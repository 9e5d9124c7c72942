"""Handrail on a wall along a stair: its ends, its line over the nosings, its brackets at studs."""

import math
from typing import Final

from longpoint.catalogue.stairs.handrail_brackets import bracket_lines, bracket_places
from longpoint.catalogue.stairs.handrail_sketch import handrail_sketch
from longpoint.catalogue.stairs.stair_pitch import (
    CLIMBS,
    PITCH_KEYS,
    StairPitch,
    pitch_findings,
    stair_pitch,
)
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.pieces.returns import RETURN_CUT
from longpoint.pieces.run_sums import run_sum
from longpoint.quantities.formatting import format_angle, format_tenth
from longpoint.quantities.uncertainty import combine
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.keys import Key, Kind
from longpoint.trims.skirting_joints import plumb_height_mm

HANDRAIL_RULES: Final = "handrail-rules"

PLUMB: Final = "plumb"
RETURN: Final = "return"

KEYS: Final = (
    *PITCH_KEYS,
    Key(
        name="length",
        kind=Kind.READING,
        meaning=say(
            "Along the slope, over the longer of its two edges; of a returned end to its face."
        ),
        example=3640,
        required=True,
        above=True,
    ),
    Key(
        name="height",
        kind=Kind.READING,
        meaning=say("Plumb from the nosing line up to the rail's top."),
        example=900,
        required=True,
        above=True,
    ),
    Key(
        name="read_from",
        kind=Kind.CHOICE,
        meaning=say("Where that height was read from."),
        example="nosing",
        default="nosing",
        left_out="nosing",
        choices=("nosing", "tread"),
    ),
    Key(
        name="clear",
        kind=Kind.LENGTH,
        meaning=say("From the wall's face to the rail's back, as the brackets hold it."),
        example=45,
        left_out=say("held where an end is returned to the wall"),
    ),
    CLIMBS,
    *(
        Key(
            name=end,
            kind=Kind.CHOICE,
            meaning=say(
                "How its {end} ends: plumb: cut plumb; return: mitred and returned to the wall.",
                end=end,
            ),
            example=RETURN,
            default=PLUMB,
            left_out=PLUMB,
            choices=(PLUMB, RETURN),
        )
        for end in ("foot", "head")
    ),
    Key(
        name="studs",
        kind=Kind.READINGS,
        meaning=say("Level from the rail's lower end to the middle of every stud, as found."),
        example=[180, 630, 1080],
        left_out=say("from first_stud and stud_spacing"),
    ),
    Key(
        name="first_stud",
        kind=Kind.READING,
        meaning=say("Level from the rail's lower end to the middle of the first stud."),
        example=180,
        left_out=say("brackets are not placed"),
    ),
    Key(
        name="stud_spacing",
        kind=Kind.LENGTH,
        meaning=say("Level from the middle of one stud to the next."),
        example=450,
        left_out=say("brackets are not placed"),
        above=True,
    ),
    Key(
        name="bracket_apart",
        kind=Kind.LENGTH,
        meaning=say(
            "Most that two brackets may stand apart along the rail, as your "
            "rules or the brackets' maker say."
        ),
        example=1000,
        left_out=say("a bracket at every stud"),
        above=True,
    ),
)


def plan_handrail(asked: Asked) -> TrimPlan:
    """Return the rail with its returns, its line over the stair and where its brackets go.

    Raises:
        PieceError: Too little was read, the height was read from a tread, or no stud lies behind
            the rail.
    """
    stair = stair_pitch(asked)
    if asked.get("read_from", "nosing") == "tread":
        raise _from_tread(asked, stair)
    length_mm: float = asked.get("length")
    brackets = bracket_places(asked, stair.pitch_deg, length_mm)
    return TrimPlan(
        pieces=(_rail(asked, stair, length_mm), *_returns(asked)),
        findings=(*pitch_findings(asked, stair), _rules(asked)),
        sketches=(handrail_sketch(asked, stair, length_mm, brackets),),
        lines=(*_lines(asked, stair), *bracket_lines(asked, stair.pitch_deg, brackets)),
    )


def _cuts(asked: Asked, stair: StairPitch) -> tuple[EndCut, EndCut]:
    """Return the left and the right cut, facing the wall."""
    steep = {"foot": -stair.pitch_deg, "head": stair.pitch_deg}
    foot, head = (
        RETURN_CUT
        if asked.get(end, PLUMB) == RETURN
        else EndCut(kind=CutKind.MITRE, mitre_deg=steep[end])
        for end in ("foot", "head")
    )
    return (foot, head) if asked.get("climbs", "right") == "right" else (head, foot)


def _rail(asked: Asked, stair: StairPitch, length_mm: float) -> Piece:
    left, right = _cuts(asked, stair)
    tape = asked.house.tape(asked.entry.tape)
    width_mm, thickness_mm = asked.profile.width_mm, asked.profile.thickness_mm
    longer = math.fsum(math.tan(math.radians(cut.mitre_deg)) for cut in (left, right))
    # An end that is cut plumb reaches as far as it was read with its foremost edge.
    upper_mm, lower_mm = (min(0.0, sign * width_mm * longer) for sign in (1.0, -1.0))
    back_mm = length_mm - thickness_mm * sum(cut is RETURN_CUT for cut in (left, right))
    return asked.piece(
        "rail",
        Role.HANDRAIL,
        length_mm + lower_mm,
        outer_mm=length_mm + upper_mm,
        back_mm=back_mm,
        left=left,
        right=right,
        u_mm=combine((tape.private_u_mm(), tape.shared_u_mm(length_mm))),
        hand_sum=run_sum(say("as read along the slope"), (length_mm,), asked.units),
    )


def _returns(asked: Asked) -> tuple[Piece, ...]:
    ends = [end for end in ("foot", "head") if asked.get(end, PLUMB) == RETURN]
    if not ends:
        return ()
    clear_mm = asked.get("clear")
    if clear_mm is None:
        raise PieceError(
            say(
                "{mark} is returned to the wall at its {ends}.",
                mark=asked.mark,
                ends=joined(say(" and "), ends),
            ),
            say("How far the brackets hold the rail off the wall isn't written."),
            say("Measure a bracket from the wall's face to the rail's back and write it as clear."),
        )
    return tuple(_return(asked, end, clear_mm) for end in ends)


def _return(asked: Asked, end: str, clear_mm: float) -> Piece:
    is_left = (end == "foot") == (asked.get("climbs", "right") == "right")
    thickness_mm = asked.profile.thickness_mm
    face_mm = clear_mm + thickness_mm
    return asked.piece(
        f"return-{end}",
        Role.RETURN,
        face_mm,
        back_mm=clear_mm,
        left=SQUARE_CUT if is_left else RETURN_CUT,
        right=RETURN_CUT if is_left else SQUARE_CUT,
        hand_sum=run_sum(say("clear of the wall"), (clear_mm, thickness_mm), asked.units),
        notes=(say("cut its mitre on the end of a longer stick, then cut it off"),),
    )


def _lines(asked: Asked, stair: StairPitch) -> tuple[str, ...]:
    units = asked.units
    height_mm: float = asked.get("height")
    pitch = math.radians(stair.pitch_deg)
    under_mm = height_mm - plumb_height_mm(asked.profile.width_mm, stair.pitch_deg)
    square_mm = height_mm * math.cos(pitch)
    lines = [
        say(
            "Pitch {pitch}. Strike the nosing line on the wall first: a straight edge "
            "over the nosings. The rail's top stands {height} plumb over it ({square} "
            "square to the slope), its underside {under} plumb.",
            pitch=format_angle(stair.pitch_deg),
            height=format_tenth(height_mm, units),
            square=format_tenth(square_mm, units),
            under=format_tenth(under_mm, units),
        ),
    ]
    ends = {end: asked.get(end, PLUMB) for end in ("foot", "head")}
    if PLUMB in ends.values():
        high = format_tenth(plumb_height_mm(asked.profile.width_mm, stair.pitch_deg), units)
        lines.append(
            say(
                "A plumb end is cut {pitch} off square across the face and stands {high} high.",
                pitch=format_angle(stair.pitch_deg),
                high=high,
            )
        )
    if RETURN in ends.values():
        lines.append(
            say(
                "A returned end is cut 45 through the thickness, square to the slope, "
                "and its return leans with the rail. A return that stands plumb is "
                "taller than the rail's own section, so no mitre closes it."
            )
        )
    return tuple(lines)


def _rules(asked: Asked) -> Finding:
    return Finding(
        code=HANDRAIL_RULES,
        severity=Severity.NOTE,
        place=asked.mark,
        read=say(
            "{mark} is planned at the height, clearance and ends that were written.",
            mark=asked.mark,
        ),
        wrong=say(
            "None of them was held against a rule: what is asked of a handrail "
            "differs from place to place."
        ),
        do=say(
            "Look up your local building code for its height over the nosings, its "
            "clearance from the wall, how its ends finish, its brackets and whether "
            "it must run on past the stair."
        ),
    )


def _from_tread(asked: Asked, stair: StairPitch) -> PieceError:
    up = (
        say(" up to {rise}", rise=format_tenth(stair.rise_mm, asked.units))
        if stair.rise_mm is not None
        else ""
    )
    return PieceError(
        say("The height of {mark} was read from a tread.", mark=asked.mark),
        say(
            "A tread lies lower than the nosing line by nothing at its front and{up} "
            "at its back, so where on it the tape stood isn't known.",
            up=up or say(" a riser"),
        ),
        say('Read plumb up from the line over the nosings and write read_from = "nosing".'),
    )


TRIM: Final = TrimKind(
    name="handrail",
    title=say("a handrail on a wall"),
    asks=KEYS,
    plan=plan_handrail,
)
