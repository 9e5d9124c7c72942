"""What is to be said of runs when their pieces are cut."""

from collections.abc import Sequence
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Board
from longpoint.pieces.scarfs import Reach
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.house import House

RUN_TOO_SHORT: Final = "run-too-short"
SCARF_JOINT: Final = "scarf-joint"


def too_short(house: House, board: Board) -> Finding:
    """Return the finding of a run whose two end cuts cross."""
    return Finding(
        code=RUN_TOO_SHORT,
        severity=Severity.STOP,
        place=board.mark,
        read=say(
            "Run {mark} is {length} long.",
            mark=board.mark,
            length=format_with_unit(board.length_mm, house.units),
        ),
        wrong=say("Its two end cuts meet before its ends are reached."),
        do=say("Read it again, or fit a block of the section there by hand."),
    )


MOST_JOINTS: Final = 4
"""So many joints are told one by one."""


def scarf_note(house: House, board: Board, parts: Sequence[Reach]) -> Finding:
    """Return the note of a run that is cut in parts."""
    ends = [format_with_unit(part.face_end_mm, house.units) for part in parts[:-1]]
    joints = joined(", ", ends[:MOST_JOINTS])
    if len(ends) > MOST_JOINTS:
        joints += say(
            " and so on, {ends} joints in all, the last {ends_2}",
            ends=len(ends),
            ends_2=ends[-1],
        )
    thickness = format_with_unit(board.profile.thickness_mm, house.units)
    return Finding(
        code=SCARF_JOINT,
        severity=Severity.NOTE,
        place=board.mark,
        read=say(
            "Run {mark} is {length}, longer than one piece can be.",
            mark=board.mark,
            length=format_with_unit(board.length_mm, house.units),
        ),
        wrong=say(
            "It is cut in {parts} parts, scarfed at 45; on the face the joint "
            "stands {joints} from the left end, and the right-hand part laps "
            "over the left.",
            parts=len(parts),
            joints=joints,
        ),
        do=say(
            "Move the joint over the nearest stud: what one part loses there the "
            "other gains. The lap should point away from the entry: if you come in "
            "from the left, turn both scarfs round, which makes the right part's "
            "back {thickness} longer instead of the left's.",
            thickness=thickness,
        ),
    )
