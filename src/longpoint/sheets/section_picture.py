"""A profile's cross-section, small, beside its name."""

from typing import Final

from longpoint.sheets.blocks import Drawing, Ink, Outline
from longpoint.speech.said import say
from longpoint.survey.profiles import Profile

WIDEST_MM: Final = 18.0
HIGHEST_MM: Final = 12.0
LARGEST_SCALE: Final = 0.5
"""Half of its true size at most, so that a bead stays smaller than a skirting."""
EDGE_MM: Final = 0.5


def section_picture(profile: Profile | None) -> Drawing | None:
    """Return a picture of a profile's section, its back down; None where none was given.

    Example:
        >>> plain = Profile(
        ...     name="B", width_mm=40, thickness_mm=20, section=((0, 0), (40, 0), (40, 20), (0, 20))
        ... )
        >>> drawing = section_picture(plain)
        >>> drawing.width_mm, drawing.height_mm
        (19.0, 10.0)
    """
    if profile is None or len(profile.section) < 3:
        return None
    across, up = zip(*profile.section, strict=True)
    width_mm, height_mm = max(across) - min(across), max(up) - min(up)
    if not width_mm or not height_mm:
        return None
    scale = min(LARGEST_SCALE, WIDEST_MM / width_mm, HIGHEST_MM / height_mm)
    points = tuple(
        (EDGE_MM + scale * (x - min(across)), EDGE_MM + scale * (max(up) - y))
        for x, y in profile.section
    )
    return Drawing(
        width_mm=scale * width_mm + 2 * EDGE_MM,
        height_mm=scale * height_mm + 2 * EDGE_MM,
        marks=(Outline(points=points, ink=Ink.PIECE),),
        described=say("Section of {profile}, its back down.", profile=profile.name),
    )
