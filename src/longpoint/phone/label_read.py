"""A piece's label, read off its code: which piece it is, and how it stands with it now."""

from collections.abc import Set
from typing import Final

from longpoint.errors import SheetError
from longpoint.house_plan import HousePlan
from longpoint.phone.looked import piece_rows
from longpoint.phone.messages import LabelRead, Said
from longpoint.phone.planned import AtPhone
from longpoint.sheets.dialects import piece_words, words_for
from longpoint.sheets.labels.piece_code import read_piece_code
from longpoint.speech.said import say

OLD_LABEL: Final = "label-of-other-readings"


def label_read(text: str, at: AtPhone, codes: Set[str]) -> LabelRead:
    """Return the piece that a label's code names, as the house stands now.

    Args:
        text: What the code says.
        at: The house in hand, its plan and its cutting.
        codes: Of its readings, as `labelled.house_codes` gives them.

    Raises:
        SheetError: It is no label of a piece, or of a piece that this house hasn't got.
    """
    code, mark = read_piece_code(text)
    plan = at.plan
    piece = next((each for each in plan.pieces if each.mark == mark), None)
    if piece is None:
        raise SheetError(
            say("The label is of {mark}, readings {code}.", mark=mark, code=code),
            say(
                "{house} as it is read now has no piece of that mark.",
                house=plan.house.name,
            ),
            say("Open the house that it is of; if it is this one, the label is of older readings."),
        )
    (row,) = piece_rows(plan, [piece])
    return LabelRead(
        piece=mark,
        opening=piece.place if piece.place in {o.mark for o in plan.house.openings} else "",
        what=piece_words(piece, words_for(plan.house.dialect)),
        room=piece.room,
        is_cut=mark in at.again.state.done,
        row=row,
        findings=() if code in codes else (_of_other_readings(code, mark, plan),),
    )


def _of_other_readings(code: str, mark: str, plan: HousePlan) -> Said:
    return Said(
        code=OLD_LABEL,
        severity="warning",
        place=mark,
        read=say(
            "The label is of the readings {code}; the plan is of {readings_code}.",
            code=code,
            readings_code=plan.readings_code,
        ),
        wrong=say("The piece may have been cut to other lengths than these."),
        do=say("Measure it before it goes up, or print the labels again."),
    )
