"""Door stops: a piece between the jambs at the head, and a leg under each of its ends."""

from collections.abc import Iterator, Sequence
from typing import Final

from longpoint.catalogue.reveals.reveal_pictures import stop_corner, stop_section
from longpoint.catalogue.reveals.reveals import (
    AT_THE_SAW,
    SIDE_NAMES,
    Reveal,
    board_sum,
    end_cut,
    reveal_of,
)
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.piece import CutKind, EndCut, Piece, Role
from longpoint.quantities.formatting import format_tenth, format_with_unit
from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind
from longpoint.trims.joint_plane import SawAngles
from longpoint.trims.splays import RevealJoint, RevealSide, reveal_board

GAP_MM: Final = 2.0
"""Between the shut door and its stops: room for paint; common practice, no source."""

ASKS: Final = (
    Key(
        name="joint",
        kind=Kind.CHOICE,
        meaning=say(
            "How the legs meet the head piece. butt: a square-edged stop, cut "
            "to stand under it; scribe: a moulded one, shaped over it; mitre: "
            "all mitred."
        ),
        example="butt",
        default="butt",
        choices=("butt", "scribe", "mitre"),
        left_out="butt",
    ),
    Key(
        name="gap",
        kind=Kind.LENGTH,
        meaning=say("Between the shut door and the stops (common practice 2, no source)."),
        example=2,
        default=GAP_MM,
        left_out="2",
        high=10.0,
    ),
    Key(
        name="door_thickness",
        kind=Kind.READING,
        meaning=say("Thickness of the door."),
        example=35,
        left_out=say("no line is given: the stops are set to the shut door"),
        above=True,
        high=120.0,
    ),
    Key(
        name="door_back",
        kind=Kind.LENGTH,
        meaning=say("How far the shut door's face stands behind the edge of the jambs."),
        example=0,
        default=0.0,
        left_out=say("flush with the jambs' edges"),
        high=200.0,
    ),
    Key(
        name="lining_depth",
        kind=Kind.READING,
        meaning=say(
            "Depth of the jambs through the wall, to see that the stops have room on them."
        ),
        example=132,
        left_out=say("not looked at"),
        above=True,
        high=900.0,
    ),
)

_FIRST: Final = (2, 3, 1)
"""The head piece goes up first."""


def plan_stops(asked: Asked) -> TrimPlan:
    """Return the stops of one or more doors.

    Args:
        asked: The entry.

    Returns:
        Of each door the head piece, then the left and the right leg.

    Raises:
        PieceError: One of the openings is a window, or the jambs are too narrow for the stops.
    """
    reveals = [_door(asked, mark) for mark in asked.entry.openings]
    line_mm = _line_mm(asked)
    first = reveals[0]
    pieces = tuple(_piece(asked, reveal, side) for reveal in reveals for side in _FIRST)
    stop = asked.profile
    sketches = [
        stop_corner(
            first.fitted.corners,
            first.faces(-stop.thickness_mm),
            first.opening.mark,
            is_butt=asked.get("joint", "butt") == "butt",
        )
    ]
    if line_mm is not None:
        door_mm, gap_mm = line_mm - _gap_mm(asked), _gap_mm(asked)
        sketches.append(
            stop_section(stop.width_mm, stop.thickness_mm, door_mm, gap_mm, asked.units)
        )
    return TrimPlan(
        pieces=pieces,
        findings=tuple(note for reveal in reveals for note in _warped(asked, reveal)),
        sketches=tuple(sketches),
        lines=tuple(_lines(asked, reveals, line_mm)),
    )


def _door(asked: Asked, mark: str) -> Reveal:
    reveal = reveal_of(asked, mark)
    if not reveal.opening.stands_on_floor:
        raise PieceError(
            say("{mark} names {mark_2}, which is a window.", mark=asked.mark, mark_2=mark),
            say("Door stops are cut for doors and lined openings alone."),
            say("Take {mark} out of its openings.", mark=mark),
        )
    return reveal


def _gap_mm(asked: Asked) -> float:
    return float(asked.get("gap", GAP_MM))


def _line_mm(asked: Asked) -> float | None:
    """Return where the stops' edge stands from the jambs' edge on the door's side."""
    door_mm = asked.get("door_thickness")
    if door_mm is None:
        return None
    line_mm = float(asked.get("door_back", 0.0) + door_mm + _gap_mm(asked))
    depth_mm, stop_mm = asked.get("lining_depth"), asked.profile.width_mm
    if depth_mm is not None and line_mm + stop_mm > depth_mm:
        needed, had = (format_with_unit(mm, asked.units) for mm in (line_mm + stop_mm, depth_mm))
        raise PieceError(
            say(
                "{mark}: door, gap and stop need {needed} of the jambs, which are {had} deep.",
                mark=asked.mark,
                needed=needed,
                had=had,
            ),
            say("The stops would stand out past them."),
            say("Use a narrower stop, or read door and jambs again."),
        )
    return line_mm


def _sides(asked: Asked) -> tuple[RevealSide, ...]:
    floor = RevealSide(thickness_mm=0.0)
    leg = RevealSide(thickness_mm=asked.profile.thickness_mm)
    head = RevealSide(thickness_mm=asked.profile.thickness_mm, runs_over=True)
    return (floor, leg, head, leg)


def _piece(asked: Asked, reveal: Reveal, side: int) -> Piece:
    joint = asked.get("joint", "butt")
    is_head = side == _FIRST[0]
    is_square = joint == "butt" or (is_head and joint == "scribe")
    board = reveal_board(
        reveal.faces(-asked.profile.thickness_mm),
        _sides(asked),
        asked.profile.width_mm,
        side,
        RevealJoint.BUTT if is_square else RevealJoint.MITRE,
    )
    scribed = joint == "scribe" and not is_head
    at_head = {"left": scribed and side == 1, "right": scribed and side == 3}
    return asked.piece(
        f"{reveal.opening.mark}-{SIDE_NAMES[side]}",
        Role.STOP,
        board.inner_mm,
        back_mm=board.back_mm,
        left=_cut(board.left, is_scribed=at_head["left"]),
        right=_cut(board.right, is_scribed=at_head["right"]),
        u_mm=reveal.fitted.side_u_mm[side],
        room=asked.entry.room or reveal.opening.room,
        hand_sum=_hand_sum(asked, reveal, side, board.inner_mm, is_square=is_square),
    )


def _cut(angles: SawAngles, *, is_scribed: bool) -> EndCut:
    if is_scribed:
        return EndCut(kind=CutKind.SCRIBE, bevel_deg=angles.bevel_deg)
    return end_cut(angles)


def _hand_sum(asked: Asked, reveal: Reveal, side: int, inner_mm: float, *, is_square: bool) -> str:
    side_mm, thick_mm = reveal.fitted.side_mm[side], asked.profile.thickness_mm
    if side == _FIRST[0]:
        terms = [side_mm] if is_square else [side_mm, -thick_mm, -thick_mm]
        return board_sum("head", terms, inner_mm, asked.units)
    terms = [side_mm, -reveal.opening.floor_cover_mm, -thick_mm]
    return board_sum("jamb", terms, inner_mm, asked.units)


def _warped(asked: Asked, reveal: Reveal) -> Iterator[Finding]:
    """Warn where the jambs' edges lie in no one plane: a flat door leaves one corner open."""
    if reveal.plane is None:
        return
    bl_mm, br_mm, tr_mm, tl_mm = reveal.plane.corners_mm()
    warp_mm = abs(tl_mm - tr_mm + br_mm - bl_mm)
    if warp_mm <= _gap_mm(asked):
        return
    warp, gap = (format_tenth(mm, asked.units) for mm in (warp_mm, _gap_mm(asked)))
    yield Finding(
        code="stop-warped",
        severity=Severity.WARNING,
        place=asked.mark,
        read=say(
            "The edges of the jambs of {mark} are {warp} out of one plane.",
            mark=reveal.opening.mark,
            warp=warp,
        ),
        wrong=say(
            "A flat door follows three corners and stands off the fourth by more "
            "than its gap of {gap}, so stops fixed to a line will not meet it.",
            gap=gap,
        ),
        do=say("Fix these stops to the shut door, not to a line; tell whoever hung it."),
    )


def _lines(asked: Asked, reveals: Sequence[Reveal], line_mm: float | None) -> Iterator[str]:
    yield say(
        "Fix them when the lock is set and the door shuts on it, not before: the latch decides."
    )
    match asked.get("joint", "butt"):
        case "butt":
            yield say("The head piece goes up first, between the jambs; the legs stand under it.")
        case "scribe":
            yield (
                say(
                    "The head piece goes up first, between the jambs; each leg is "
                    "scribed over it. The bevel of its upper end exposes the profile; "
                    "the length on its back is the jamb's."
                )
            )
        case _:
            yield say(
                "Head and legs are mitred through their thickness; lengths are along the face."
            )
    gap = format_with_unit(_gap_mm(asked), asked.units)
    if line_mm is None:
        yield say(
            "Set each {gap} off the shut door; without the door's thickness no line is given.",
            gap=gap,
        )
    else:
        line = format_with_unit(line_mm, asked.units)
        yield (
            say(
                "The line for their edge is {line} from the jambs' edge on the door's "
                "side: door, and {gap} gap (common practice, no source). Shut the door "
                "and look before you nail.",
                line=line,
                gap=gap,
            )
        )
    covers = {reveal.opening.floor_cover_mm for reveal in reveals}
    if covers != {0.0}:
        yield say("The legs stop short for the floor still to be laid.")
    yield AT_THE_SAW
    yield say(
        "Left and right legs are a pair, not alike, where jambs or floor differ: keep the marks."
    )


TRIM: Final = TrimKind(
    name="door-stop",
    title=say("door stops"),
    asks=ASKS,
    plan=plan_stops,
    needs_openings=True,
)
