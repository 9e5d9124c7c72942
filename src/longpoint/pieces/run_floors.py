"""How boards are set and scribed over a floor that isn't level, and what to think of before."""

import math
from collections.abc import Mapping, Sequence
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Board, Side
from longpoint.pieces.run_corners import by_corner
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
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
    said = [f"{format_length(scribe.left_mm, units)} off at the left"]
    said += [
        f"{format_length(off_mm, units)} at {format_length(at_mm, units)}"
        for at_mm, off_mm in scribe.marks[1:-1]
    ]
    said.append(f"{format_length(scribe.right_mm, units)} at the right")
    return (f"scribe the bottom edge: {', '.join(said)}",)


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
    way = "left to right" if scribe.rise_mm < 0 else "right to left"
    to_level = (
        f'floor_fit = "level": {format_length(level.left_mm, units)} comes off at the left, '
        f"{format_length(level.right_mm, units)} at the right, which leaves "
        f"{_left_over(house, board, level)} where most is gone"
    )
    return Finding(
        code=FLOOR_FOLLOWED,
        severity=Severity.NOTE,
        place=board.mark,
        read=f"The floor under {board.mark} falls {fall} {way}.",
        wrong=f"The board lies as the floor does, so its top is {fall} out of level in "
        f"{format_length(board.length_mm, units)} and meets its neighbours at their height.",
        do=f"That is the plainest. To have the top level write {to_level}; the boards it meets "
        "have to come down as much.",
    )


def _deep(house: House, board: Board, scribe: Scribe) -> Finding:
    units = house.units
    most = format_length(scribe.deepest_mm, units)
    half_mm = scribe.deepest_mm / 2.0
    bead = format_length(half_mm + BEAD_OVER_MM, units)
    following = following_scribe(board.floor, board.length_mm)
    follows = (
        'let it lie as the floor does (floor_fit = "follow": then '
        f"{format_length(following.deepest_mm, units)} comes off, its top is "
        f"{format_length(abs(following.rise_mm), units)} out of level); or "
        if board.floor_fit is FloorFit.LEVEL and following.deepest_mm <= MOST_SCRIBED_MM
        else ""
    )
    do = (
        f"{follows}split it: take off half of every figure, "
        f"{format_length(half_mm, units)} at most, which leaves "
        f"{format_length(board.profile.width_mm - half_mm, units)}, and cover the gap of up to "
        f"{format_length(half_mm, units)} that stays with a bead at least {bead} high"
    )
    return Finding(
        code=SCRIBE_DEEP,
        severity=Severity.WARNING,
        place=board.mark,
        read=f"{most} has to come off the bottom of {board.mark} {_where(house, scribe)}, which "
        f"leaves {_left_over(house, board, scribe)}.",
        wrong=f"More than about {format_length(MOST_SCRIBED_MM, units)} shows as a taper (common "
        "practice, no source).",
        do=f"{do[0].upper()}{do[1:]}.",
    )


def _where(house: House, scribe: Scribe) -> str:
    match scribe.deepest_at_mm:
        case 0.0:
            return "at its left end"
        case scribe.length_mm:
            return "at its right end"
        case at_mm:
            return f"{format_length(at_mm, house.units)} from its left end"


def _left_over(house: House, board: Board, scribe: Scribe) -> str:
    height_mm = board.profile.width_mm
    left = format_length(height_mm - scribe.deepest_mm, house.units)
    return f"{left} of {format_length(height_mm, house.units)}"


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
    unread = "" if high_board.mark in scribes else f" (no floor was read under {high_board.mark})"
    return Finding(
        code=CORNER_HEIGHTS,
        severity=Severity.WARNING,
        place=low_board.mark,
        read=f"In the corner of {low_board.mark} and {high_board.mark} their tops stand "
        f"{format_length(low_mm, units)} and {format_length(high_mm, units)} over the floor"
        f"{unread}.",
        wrong=f"They step by {format_with_unit(high_mm - low_mm, units)} there: what is scribed "
        "off one is not scribed off the other.",
        do="Set all boards of the room in one way, and read the floor under each against the same "
        'level line; with floor_fit = "follow" they meet at one height.',
    )


def _top_mm(board: Board, side: Side, scribes: Scribes) -> float:
    scribe = scribes.get(board.mark)
    off_mm = 0.0
    if scribe is not None:
        off_mm = scribe.left_mm if side is Side.LEFT else scribe.right_mm
    return board.profile.width_mm - off_mm
