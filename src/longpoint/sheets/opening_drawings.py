"""Each opening's drawing by itself, under a name fit for a file."""

from collections.abc import Sequence
from typing import Final

from longpoint.house_plan import HousePlan
from longpoint.sheets.blocks import Drawing, SheetState
from longpoint.sheets.dialects import kind_words
from longpoint.sheets.hold_picture import hold_picture, voided
from longpoint.sheets.opening_faces import face_echo, fitted_faces
from longpoint.speech.said import say
from longpoint.survey.house import EntryKind

LONGEST_NAME: Final = 60
"""Signs of a mark that its drawing's file name keeps."""


def opening_drawings(
    plan: HousePlan, state: SheetState = SheetState.CURRENT
) -> tuple[tuple[str, Drawing], ...]:
    """Return each opening's drawing with a name fit for a file: its mark, and face if it has two.

    Args:
        plan: The planned house.
        state: Stale when the readings have changed since; every drawing is then struck through.
    """
    drawn: list[tuple[str, Drawing]] = []
    for opening in plan.house.openings:
        if opening.mark in plan.held:
            drawn.append((opening.mark, hold_picture(opening.mark, kind_words(opening.kind))))
            continue
        drawn += [
            (
                say("{mark}{face}", mark=opening.mark, face=fitted.face),
                face_echo(plan, opening, fitted).drawing,
            )
            for fitted in fitted_faces(plan, opening)
        ]
    drawn += [
        (entry.mark, hold_picture(entry.mark, say("opening")))
        for entry in plan.house.held
        if entry.kind is EntryKind.OPENING
    ]
    names: list[str] = []
    for mark, _ in drawn:
        names.append(_file_name(mark, names))
    return tuple(
        (name, voided(drawing) if state is SheetState.STALE else drawing)
        for name, (_, drawing) in zip(names, drawn, strict=True)
    )


def _file_name(mark: str, taken: Sequence[str]) -> str:
    """Return a mark as a name that any file system takes, not taken yet."""
    plain = "".join(sign if sign.isascii() and sign.isalnum() else "-" for sign in mark)
    plain = plain[:LONGEST_NAME] or say("opening")
    name, count = plain, 2
    while name.lower() in {other.lower() for other in taken}:
        name, count = say("{plain}-{count}", plain=plain, count=count), count + 1
    return name
