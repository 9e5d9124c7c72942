"""Which board runs through an internal corner, and which is scribed over it.

The longest board of a room goes up first, square at both ends, then the next longest, and so on:
so at every internal corner the longer of the two boards runs through.
"""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Board, Corner
from longpoint.pieces.boards import Side as Side
from longpoint.quantities.formatting import format_length
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.rooms import RunEnd

NEIGHBOUR_ASSUMED: Final = "neighbour-assumed"
RUN_CORNER_ASSUMED: Final = "run-corner-assumed"
CORNER_PROFILES: Final = "corner-profiles"


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """How a board meets another at an internal corner.

    Attributes:
        runs_through: True when it runs through; False when it is scribed over the other.
        other: Mark of the other board; empty when none is known there.
    """

    runs_through: bool
    other: str = ""


Meetings = dict[tuple[str, Side], Meeting]


def meetings(boards: Sequence[Board]) -> Meetings:
    """Return who runs through at every internal corner end, by mark and side.

    Where no neighbour is known a board runs through at its left end and is scribed at its right:
    the same rule round a room makes every corner one of each.
    """
    found: Meetings = {}
    for entries in by_corner(boards).values():
        pair = [
            (board, side) for board, side in entries if board.stop(side).kind is RunEnd.INTERNAL
        ]
        if len(pair) == 2 and pair[0][1] is not pair[1][1]:
            (one, one_side), (two, two_side) = pair
            one_first = one.length_mm >= two.length_mm
            found[one.mark, one_side] = Meeting(runs_through=one_first, other=two.mark)
            found[two.mark, two_side] = Meeting(runs_through=not one_first, other=one.mark)
    for board in boards:
        for side in Side:
            if board.stop(side).kind is RunEnd.INTERNAL:
                found.setdefault((board.mark, side), Meeting(runs_through=side is Side.LEFT))
    return found


def by_corner(boards: Sequence[Board]) -> dict[Corner, list[tuple[Board, Side]]]:
    """Return the board ends that stand in each known corner."""
    corners: dict[Corner, list[tuple[Board, Side]]] = defaultdict(list)
    for board in boards:
        for side in Side:
            at = board.stop(side).at
            if at is not None:
                corners[at].append((board, side))
    return corners


def corner_findings(house: House, boards: Sequence[Board], met: Meetings) -> tuple[Finding, ...]:
    """Return what was assumed at corners, and boards of two sections that meet in one."""
    return (
        *(note for board in boards if not board.is_held for note in _assumed_corners(board)),
        *_assumed_neighbours(house, boards, met),
        *_mixed_profiles(house, boards),
    )


def _assumed_corners(board: Board) -> tuple[Finding, ...]:
    sides = [side for side in Side if board.stop(side).is_assumed]
    if not sides:
        return ()
    return (
        Finding(
            code=RUN_CORNER_ASSUMED,
            severity=Severity.NOTE,
            place=board.mark,
            read=say(
                "The corner at the {sides} end of {mark} was not read.",
                sides=joined(say(" and "), sides),
                mark=board.mark,
            ),
            wrong=say("It was taken as square."),
            do=say("Read it with a bevel gauge before you cut there."),
        ),
    )


def _assumed_neighbours(
    house: House, boards: Sequence[Board], met: Meetings
) -> tuple[Finding, ...]:
    """Return one note for each room in which a board's neighbour isn't known."""
    ends: dict[str, list[str]] = defaultdict(list)
    for board in boards:
        for side in Side:
            meeting = met.get((board.mark, side))
            if meeting is not None and not meeting.other and not board.is_held:
                ends[board.room].append(say("{mark} {side}", mark=board.mark, side=side))
    return tuple(
        Finding(
            code=NEIGHBOUR_ASSUMED,
            severity=Severity.NOTE,
            place=room or house.name,
            read=say(
                "No other board is known in the corner at these ends: {marks}.",
                marks=joined(", ", marks),
            ),
            wrong=say(
                "It was assumed that a board runs through, cut square, at its "
                "left end and is scribed over the next at its right."
            ),
            do=say(
                "Look which board goes up first there before you cut: a square end "
                "can still be scribed, a scribed one can't be made to run through."
            ),
        )
        for room, marks in ends.items()
    )


def _mixed_profiles(house: House, boards: Sequence[Board]) -> tuple[Finding, ...]:
    findings = []
    for entries in by_corner(boards).values():
        pair = [board for board, side in entries if board.stop(side).is_corner]
        if len(pair) == 2 and pair[0].profile != pair[1].profile:
            one, two = pair
            findings.append(
                Finding(
                    code=CORNER_PROFILES,
                    severity=Severity.WARNING,
                    place=two.mark,
                    read=say(
                        "{mark} in {section} meets {mark_2} in {section_2}.",
                        mark=one.mark,
                        section=_section(house, one),
                        mark_2=two.mark,
                        section_2=_section(house, two),
                    ),
                    wrong=say(
                        "Two sections neither scribe nor mitre into each other; "
                        "the lengths suppose that each meets its own."
                    ),
                    do=say(
                        "Let one die against the other, square, or use one section in the room."
                    ),
                )
            )
    return tuple(findings)


def _section(house: House, board: Board) -> str:
    height = format_length(board.profile.width_mm, house.units)
    thickness = format_length(board.profile.thickness_mm, house.units)
    return say(
        "{profile} ({height} x {thickness})",
        profile=board.profile.name,
        height=height,
        thickness=thickness,
    )
