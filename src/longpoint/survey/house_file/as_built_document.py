"""Write a set as it went up back as a table of the house file."""

from collections.abc import Callable
from typing import Any

from longpoint.survey.as_built import AsBuilt
from longpoint.survey.house_file.as_built_tables import CORNERS
from longpoint.survey.house_file.written_spots import NOT_READ


def as_built_document(as_built: AsBuilt, length: Callable[[float | None], Any]) -> dict[str, Any]:
    """Return what stands under as_built.

    Args:
        as_built: The set.
        length: Gives a length [mm] as it is written in the house.
    """

    def spot(value_mm: float | None) -> Any:  # noqa: ANN401
        return NOT_READ if value_mm is None else length(value_mm)

    bottom, right, head, left = as_built.quirks.anticlockwise()
    sides = {"head": head, "left": left, "right": right, "sill": bottom}
    written = {
        "gaps": {
            corner: [spot(joint.heel_mm), spot(joint.toe_mm)]
            for corner, joint in zip(CORNERS, as_built.gaps, strict=True)
            if joint is not None
        },
        "quirks": {
            side: [spot(each) for each in along]
            for side, along in sides.items()
            if any(each is not None for each in along)
        },
        "steps": {
            corner: length(step_mm)
            for corner, step_mm in zip(CORNERS, as_built.steps_mm, strict=True)
            if step_mm is not None
        },
    }
    return {key: value for key, value in written.items() if value}
