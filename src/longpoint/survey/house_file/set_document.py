"""Write how a set is put together, and openings of another shape, back as the house file has it."""

from collections.abc import Callable
from typing import Any

from longpoint.survey.instruments import Tape
from longpoint.survey.openings import ApronEnds, Arch, Flush, Joint, Opening

Written = Callable[[float | None], Any]


def arch_document(arch: Arch, length: Written) -> dict[str, Any]:
    """Return the keys of an arched head.

    Args:
        arch: The arch.
        length: Writes a length in the house's units.
    """
    keys = {
        "rise": length(arch.rise_mm),
        "crown": length(arch.crown_mm),
        "segments": arch.segments,
        "blank": arch.blank,
        "offsets": [[length(x), length(y)] for x, y in arch.offsets],
    }
    return {key: value for key, value in keys.items() if value not in (None, "", [])}


def outline_document(
    opening: Opening,
    length: Written,
    tape_of: Callable[[str], Tape],
) -> dict[str, Any]:
    """Return the keys of a shape told by its corners or its sides; none for four-sided ones."""
    outline = opening.outline
    if outline is None:
        return {}
    back_mm = tape_of(outline.tape).take_off_mm

    def shown(length_mm: float) -> Any:  # noqa: ANN401
        return length(round(length_mm + back_mm, 6))

    keys = {
        "corners": [[length(x), length(y)] for x, y in outline.corners],
        "sides": [shown(side) for side in outline.sides_mm],
        "angles": list(outline.angles_deg),
        "across": [
            {"from": each.start, "to": each.end, "length": shown(each.length_mm)}
            for each in outline.across
        ],
    }
    return {key: value for key, value in keys.items() if value not in ("", [])}


def set_document(
    opening: Opening, length: Written, tape_of: Callable[[str], Tape]
) -> dict[str, Any]:
    """Return the keys of how a set is put together, as far as they say something.

    Whatever a default of the house could change is written out, so that the document needs none.
    """
    keys: dict[str, Any] = {
        "corner_block": opening.corner_block,
        "plinth": opening.plinth,
        "back_band": opening.back_band,
        "wedge": opening.wedge,
    }
    if opening.joint is not Joint.MITRE:
        keys["joint"] = opening.joint.value
    if opening.head_horn_mm:
        keys["head_horn"] = length(opening.head_horn_mm)
    if opening.plinth:
        keys["plinth_height"] = length(opening.plinth_height_mm)
    if opening.apron_ends is not ApronEnds.SQUARE:
        keys["apron_ends"] = opening.apron_ends.value
    if opening.flush is not Flush.LEAVE:
        keys["flush"] = opening.flush.value
    fit = opening.board_fit
    if fit is not None:
        back_mm = tape_of(opening.readings.tape).take_off_mm
        read = {
            "inside": fit.inside_mm,
            "depth_left": fit.depth_left_mm,
            "depth_right": fit.depth_right_mm,
        }
        keys["board_fit"] = {
            key: length(round(value + back_mm, 6))
            for key, value in read.items()
            if value is not None
        } | ({"nosing": length(fit.nosing_mm)} if fit.nosing_mm else {})
    return {key: value for key, value in keys.items() if value != ""}
