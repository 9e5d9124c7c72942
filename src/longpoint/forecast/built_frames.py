"""The sets of a house as they went up, made ready to learn from."""

import hashlib
from typing import Final

from longpoint.forecast.fitup.frame import SLOTS, Slot
from longpoint.forecast.learning.as_built import SIDES, BuiltFrame
from longpoint.forecast.learning.setup_key import SetupKey
from longpoint.forecast.on_the_wall import as_built_of, joint_corners
from longpoint.forecast.planned_face import LEGS, PlannedFace, planned_faces
from longpoint.shape.fitted import Shapes
from longpoint.speech.said import say
from longpoint.survey.as_built import AlongSide, AsBuilt
from longpoint.survey.house import House
from longpoint.survey.instruments import Saw, Tape
from longpoint.survey.openings import Method

EVEN_MM: Final = 0.5
"""A leg whose quirk differs by no more than this from end to end was set to an even one; ours."""

CODE_SIGNS: Final = 6
NOT_READ: Final[AlongSide] = (None, None, None)

_SPOTS: Final = (Slot.REVEAL_START, Slot.REVEAL_MIDDLE, Slot.REVEAL_END)


def built_frames(house: House, shapes: Shapes) -> tuple[BuiltFrame, ...]:
    """Return every set of a house of which anything was written down once it was up.

    Args:
        house: The house; its saw says what was dialled off when the sets were cut.
        shapes: Its fitted shapes.

    Returns:
        One for each face. Its quirks are those read less those to be expected there, so that it
        is planned for none.
    """
    return tuple(
        built_frame(house, face, as_built)
        for face in planned_faces(house, shapes, frozenset())
        if (as_built := as_built_of(face)) is not None
    )


def built_frame(house: House, face: PlannedFace, as_built: AsBuilt) -> BuiltFrame:
    """Return one face's set as it went up."""
    tape = house.tape(face.readings.tape)
    corners = joint_corners(face)
    lengths_mm = dict(zip(corners, (j.length_mm for j in face.frame.joints), strict=True))
    in_order = sorted(corners)
    return BuiltFrame(
        mark=frame_mark(house, face),
        key=setup_key(house.saw, tape),
        mitre_length_mm=tuple(lengths_mm[corner] for corner in in_order),
        gaps=tuple(as_built.gaps[corner] for corner in in_order),
        quirk_mm=_over_planned(face, as_built),
        dialled_deg=taken_off_deg(house.saw),
        allowed_mm=tape.take_off_mm,
        legs_held_mm=_legs_held_mm(face, as_built),
    )


def setup_key(saw: Saw, tape: Tape) -> SetupKey:
    """Return to what the errors of a house's sets belong."""
    return SetupKey(saw=saw.name, setting=saw.setting, blade=saw.blade, tape=tape.name)


def taken_off_deg(saw: Saw) -> float:
    """Return what was taken off each mitre at the saw, mean of both swings.

    What is written is how far past 45 the saw was set, so less than 0 is taken off. Nothing
    written: cut at the stop, whatever the saw was found to give since.

    Example:
        >>> taken_off_deg(Saw(name="S1", dialled_left_deg=-0.1, dialled_right_deg=-0.2))
        0.15
    """
    return round(-(saw.dialled_left_deg + saw.dialled_right_deg) / 2.0, 9) + 0.0


def frame_mark(house: House, face: PlannedFace) -> str:
    """Return by what a set is known in a crew's figures: house, mark, face, and its readings.

    The same set read again after it was up has the same one; another house of the same name has
    other readings, and so another.
    """
    place = f"{house.name}, {face.opening.mark}{face.fitted.face}"
    return say("{place}, {readings_sign}", place=place, readings_sign=_readings_sign(face))


def _readings_sign(face: PlannedFace) -> str:
    """Return a short sign of an opening's tape readings."""
    text = ";".join(f"{r.place.value} {r.value_mm:.3f}" for r in face.readings.lengths)
    if face.opening.outline is not None:
        text = ";".join(f"{s.name} {s.read:.3f}" for s in face.fitted.sources)
    return hashlib.sha256(text.encode()).hexdigest()[:CODE_SIGNS]


def _over_planned(face: PlannedFace, as_built: AsBuilt) -> tuple[AlongSide, ...]:
    """Return how far each quirk read is over what was to be expected at that spot, by side.

    Where the trim is a true rectangle in an opening that isn't, the quirk takes the difference.
    """
    known = face.known_off()
    over: list[AlongSide] = [NOT_READ] * SIDES
    for index, side in enumerate(face.side_index):
        start, middle, end = (
            None if read is None else read - face.trim.quirks_mm[side] + known[SLOTS * index + spot]
            for spot, read in zip(_SPOTS, as_built.quirks.anticlockwise()[side], strict=True)
        )
        over[side] = (start, middle, end)
    return tuple(over) if any(each != NOT_READ for each in over) else ()


def _legs_held_mm(face: PlannedFace, as_built: AsBuilt) -> float | None:
    """Return the length of a door's legs where their quirks show that both were held evenly.

    Nailed before the head goes on is what cutting in a batch means; even is what was read.
    """
    if face.frame.is_closed or face.opening.method is not Method.BATCH:
        return None
    lengths_mm = []
    for index, side in enumerate(face.side_index):
        if side not in LEGS:
            continue
        start_mm, _, end_mm = as_built.quirks.anticlockwise()[side]
        if start_mm is None or end_mm is None or abs(start_mm - end_mm) > EVEN_MM:
            return None
        piece = face.frame.sides[index]
        lengths_mm.append(piece.start.distance_mm(piece.end))
    return sum(lengths_mm) / len(lengths_mm)
