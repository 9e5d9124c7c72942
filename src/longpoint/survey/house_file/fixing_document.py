"""Write what is told of nails and walls back as a table of the house file."""

from collections.abc import Callable
from typing import Any

from longpoint.speech.said import say
from longpoint.survey.fixing import FixingSetup, Nail
from longpoint.survey.house_file.written_numbers import number_text


def fixing_document(fixing: FixingSetup, length: Callable[[float | None], Any]) -> dict[str, Any]:
    """Return what stands under fixing.

    Args:
        fixing: What is told of it.
        length: Gives a length [mm] as it is written in the house.
    """
    written = {
        "country": fixing.country or None,
        "nails": [_nail(nail) for nail in fixing.nails] or None,
        "lining": length(fixing.lining_mm),
        "packing": length(fixing.packing_mm),
        "board": length(fixing.board_mm),
        "stud_face": length(fixing.stud_face_mm),
        "stud_depth": length(fixing.stud_depth_mm),
        "stud_spacing": length(fixing.stud_spacing_mm),
        "spacing": length(fixing.spacing_mm),
        "first": length(fixing.first_mm),
        "frame_wood": fixing.frame_wood or None,
        "built": fixing.built,
    }
    return {key: value for key, value in written.items() if value is not None}


def _nail(nail: Nail) -> str:
    size = say("{gauge} x {number} mm", gauge=nail.gauge, number=number_text(nail.length_mm))
    return (
        size
        if nail.diameter_mm is None
        else say(
            "{size} x {number} mm",
            size=size,
            number=number_text(nail.diameter_mm),
        )
    )
