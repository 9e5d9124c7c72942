"""How boards are set and scribed over a floor that isn't level, and what to think of before."""

import math
from collections.abc import Mapping, Sequence
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Board, Side
from longpoint.pieces.run_corners import by_corner
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, raised, say
from longpoint.survey.house import House
from longpoint.survey.rooms import FloorFit
from longpoint.trims.floor_scribe import (
    LEAST_SCRIBED_MM,
    MOST_SCRIBED_MM,
    Scribe,
    following_scribe,
    level_scribe,
)

FLOOR_FOLLOWED: Final = "floor-followed"
SCRIBE_DEEP: Final = "scribe-deep"
CORNER_HEIGHTS: Final = "corner-heights"

BEAD_OVER_MM: Final = 3.0
"""A cover bead stands this much over the gap it covers, at least; common practice, no source."""

Scribes = Mapping[str, Scribe]
"""What comes off below, by mark of the board; only of boards whose floor was read."""


def board_scribes(boards: Sequence[Board]) -> Scribes:
    """Return what comes off the lower edge of every board whose floor was read.

    Boards of one room that are set level share one level: that over the lowest floor under any of
    them, so that their tops line through.
    """
    lowest: dict[str, float] = {}
    for board in boards:
        if board.floor and board.floor_fit is FloorFit.LEVEL:
            low_mm = min(height for _, height in board.floor)
            key = board.room or board.mark
            lowest[key] = min(low_mm, lowest.get(key, low_mm))
    return {
        board.mark: following_scribe(board.floor, board.length_mm)
        if board.floor_fit is FloorFit.FOLLOW
        else level_scribe(board.floor, board.length_mm, lowest[board.room or board.mark])
        for board in boards
        if board.floor and board.length_mm > 0
    }


def climb_deg(scribe: Scribe | None, side: Side) -> float:
    """Return how far a board climbs towards one of its ends. [deg]"""
    if scribe is None:
        return 0.0
    towards = scribe.rise_mm if side is Side.RIGHT else -scribe.rise_mm
    return math.degrees(math.atan2(towards, scribe.length_mm))


def scribe_notes(scribe: Scribe, units: Units) -> tuple[str, ...]:
    """Return the line that tells what to mark on a piece; none where next to nothing comes off.

    Example:
        >>> hump = Scribe(marks=((0, 0), (1900, 6), (3640, 0)))
        >>> scribe_notes(hump, Units.MM)
        ('scribe the bottom edge: 0 off at the left, 6 at 1900, 0 at the right',)
    """
    if scribe.deepest_mm < LEAST_SCRIBED_MM:
        return ()
    said = [say("{left} off at the left", left=format_length(scribe.left_mm, units))]
    said += [
        say(
            "{off} at {at}",
            off=format_length(off_mm, units),
            at=format_length(at_mm, units),
        )
        for at_mm, off_mm in scribe.marks[1:-1]
    ]
    said.append(say("{right} at the right", right=format_length(scribe.right_mm, units)))
    return (say("scribe the bottom edge: {said}", said=joined(", ", said)),)


def floor_findings(house: House, boards: Sequence[Board], scribes: Scribes) -> tuple[Finding, ...]:
    """Return what is to be said of boards over floors that aren't level."""
    findings: list[Finding] = []
    for board in boards:
        scribe = scribes.get(board.mark)
        if scribe is None or board.is_held:
            continue
        if scribe.deepest_mm > MOST_SCRIBED_MM:
            findings.append(_deep(house, board, scribe))
        if abs(scribe.rise_mm) >= LEAST_SCRIBED_MM:
            findings.append(_followed(house, board, scribe))
    return (*findings, *_corner_heights(house, boards, scribes))


def _followed(house: House, board: Board, scribe: Scribe) -> Finding:
    units = house.units
    level = level_scribe(board.floor, board.length_mm)
    fall = format_with_unit(abs(scribe.rise_mm), units)
    way = say("left to right") if scribe.rise_mm < 0 else say("right to left")
    to_level = say(
        'floor_fit = "level": {left} comes off at the left, {right} at the right, '
        "which leaves {left_over} where most is gone",
        left=format_length(level.left_mm, units),
        right=format_length(level.right_mm, units),
        left_over=_left_over(house, board, level),
    )
    return Finding(
        code=FLOOR_FOLLOWED,
        severity=Severity.NOTE,
        place=board.mark,
        read=say(
            "The floor under {mark} falls {fall} {way}.",
            mark=board.mark,
            fall=fall,
            way=way,
        ),
        wrong=say(
            "The board lies as the floor does, so its top is {fall} out of level "
            "in {length} and meets its neighbours at their height.",
            fall=fall,
            length=format_length(board.length_mm, units),
        ),
        do=say(
            "That is the plainest. To have the top level write {to_level}; the "
            "boards it meets have to come down as much.",
            to_level=to_level,
        ),
    )


def _deep(house: House, board: Board, scribe: Scribe) -> Finding:
    units = house.units
    most = format_length(scribe.deepest_mm, units)
    half_mm = scribe.deepest_mm / 2.0
    bead = format_length(half_mm + BEAD_OVER_MM, units)
    following = following_scribe(board.floor, board.length_mm)
    follows = (
        say(
            'let it lie as the floor does (floor_fit = "follow": then {deepest} comes '
            "off, its top is {rise} out of level); or ",
            deepest=format_length(following.deepest_mm, units),
            rise=format_length(abs(following.rise_mm), units),
        )
        if board.floor_fit is FloorFit.LEVEL and following.deepest_mm <= MOST_SCRIBED_MM
        else ""
    )
    do = say(
        "{follows}split it: take off half of every figure, {half} at most, which "
        "leaves {width}, and cover the gap of up to {half} that stays with a bead "
        "at least {bead} high",
        follows=follows,
        half=format_length(half_mm, units),
        width=format_length(board.profile.width_mm - half_mm, units),
        bead=bead,
    )
    return Finding(
        code=SCRIBE_DEEP,
        severity=Severity.WARNING,
        place=board.mark,
        read=say(
            "{most} has to come off the bottom of {mark} {where}, which leaves {left_over}.",
            most=most,
            mark=board.mark,
            where=_where(house, scribe),
            left_over=_left_over(house, board, scribe),
        ),
        wrong=say(
            "More than about {most_scribed} shows as a taper (common practice, no source).",
            most_scribed=format_length(MOST_SCRIBED_MM, units),
        ),
        do=say("{do}.", do=raised(do)),
    )


def _where(house: House, scribe: Scribe) -> str:
    match scribe.deepest_at_mm:
        case 0.0:
            return say("at its left end")
        case scribe.length_mm:
            return say("at its right end")
        case at_mm:
            return say("{at} from its left end", at=format_length(at_mm, house.units))


def _left_over(house: House, board: Board, scribe: Scribe) -> str:
    height_mm = board.profile.width_mm
    left = format_length(height_mm - scribe.deepest_mm, house.units)
    return say("{left} of {height}", left=left, height=format_length(height_mm, house.units))


def _corner_heights(house: House, boards: Sequence[Board], scribes: Scribes) -> tuple[Finding, ...]:
    findings = []
    for ends in by_corner(boards).values():
        if len(ends) != 2 or any(board.is_held for board, _ in ends):
            continue
        (low, low_mm), (high, high_mm) = sorted(
            ((board, _top_mm(board, side, scribes)) for board, side in ends),
            key=lambda entry: entry[1],
        )
        if high_mm - low_mm >= LEAST_SCRIBED_MM and low.profile == high.profile:
            findings.append(_heights(house, (low, low_mm), (high, high_mm), scribes))
    return tuple(findings)


def _heights(
    house: House, low: tuple[Board, float], high: tuple[Board, float], scribes: Scribes
) -> Finding:
    units = house.units
    (low_board, low_mm), (high_board, high_mm) = low, high
    unread = (
        ""
        if high_board.mark in scribes
        else say(
            " (no floor was read under {mark})",
            mark=high_board.mark,
        )
    )
    return Finding(
        code=CORNER_HEIGHTS,
        severity=Severity.WARNING,
        place=low_board.mark,
        read=say(
            "In the corner of {mark} and {mark_2} their tops stand {low} and "
            "{high} over the floor{unread}.",
            mark=low_board.mark,
            mark_2=high_board.mark,
            low=format_length(low_mm, units),
            high=format_length(high_mm, units),
            unread=unread,
        ),
        wrong=say(
            "They step by {high} there: what is scribed off one is not scribed off the other.",
            high=format_with_unit(high_mm - low_mm, units),
        ),
        do=say(
            "Set all boards of the room in one way, and read the floor under each "
            'against the same level line; with floor_fit = "follow" they meet at '
            "one height."
        ),
    )


def _top_mm(board: Board, side: Side, scribes: Scribes) -> float:
    scribe = scribes.get(board.mark)
    off_mm = 0.0
    if scribe is not None:
        off_mm = scribe.left_mm if side is Side.LEFT else scribe.right_mm
    return board.profile.width_mm - off_mm
