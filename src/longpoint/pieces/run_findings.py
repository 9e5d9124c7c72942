"""What is to be said of runs when their pieces are cut."""

from collections.abc import Sequence
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Board
from longpoint.pieces.scarfs import Reach
from longpoint.quantities.formatting import format_with_unit
from longpoint.survey.house import House

RUN_TOO_SHORT: Final = "run-too-short"
SCARF_JOINT: Final = "scarf-joint"


def too_short(house: House, board: Board) -> Finding:
    """Return the finding of a run whose two end cuts cross."""
    return Finding(
        code=RUN_TOO_SHORT,
        severity=Severity.STOP,
        place=board.mark,
        read=f"Run {board.mark} is {format_with_unit(board.length_mm, house.units)} long.",
        wrong="Its two end cuts meet before its ends are reached.",
        do="Read it again, or fit a block of the section there by hand.",
    )


MOST_JOINTS: Final = 4
"""So many joints are told one by one."""


def scarf_note(house: House, board: Board, parts: Sequence[Reach]) -> Finding:
    """Return the note of a run that is cut in parts."""
    ends = [format_with_unit(part.face_end_mm, house.units) for part in parts[:-1]]
    joints = ", ".join(ends[:MOST_JOINTS])
    if len(ends) > MOST_JOINTS:
        joints += f" and so on, {len(ends)} joints in all, the last {ends[-1]}"
    thickness = format_with_unit(board.profile.thickness_mm, house.units)
    return Finding(
        code=SCARF_JOINT,
        severity=Severity.NOTE,
        place=board.mark,
        read=f"Run {board.mark} is {format_with_unit(board.length_mm, house.units)}, longer than "
        "one piece can be.",
        wrong=f"It is cut in {len(parts)} parts, scarfed at 45; on the face the joint stands "
        f"{joints} from the left end, and the right-hand part laps over the left.",
        do="Move the joint over the nearest stud: what one part loses there the other gains. "
        "The lap should point away from the entry: if you come in from the left, turn both scarfs "
        f"round, which makes the right part's back {thickness} longer instead of the left's.",
    )
