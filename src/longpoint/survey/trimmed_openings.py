"""How much of a wall an opening takes up with its architraves on."""

import math
from dataclasses import dataclass

from longpoint.survey.house import House
from longpoint.survey.openings import Layout, Opening, PerSide
from longpoint.survey.readings import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimmedOpening:
    """An opening as it stands in one room's wall, seen from that room.

    Attributes:
        mark: Its mark.
        width_mm: Mean of its widths at top and bottom; None when neither was read.
        floor_width_mm: Width at floor level; None when it wasn't read.
        left_quirk_mm: Quirk of the left leg.
        left_face_mm: What stands past that quirk at the floor: the left leg and its back band, or
            its plinth block.
        right_quirk_mm: Quirk of the right leg.
        right_face_mm: The same past the right quirk.
    """

    mark: str
    width_mm: float | None
    floor_width_mm: float | None
    left_quirk_mm: float
    left_face_mm: float
    right_quirk_mm: float
    right_face_mm: float

    @property
    def left_mm(self) -> float:
        """From the reveal's face to the outer edge of what stands left of it at the floor. [mm]"""
        return self.left_quirk_mm + self.left_face_mm

    @property
    def right_mm(self) -> float:
        """From the reveal's face to the outer edge of what stands right of it at the floor. [mm]"""
        return self.right_quirk_mm + self.right_face_mm

    @property
    def outer_mm(self) -> float | None:
        """From one of these outer edges to the other. [mm]"""
        if self.width_mm is None:
            return None
        return self.left_mm + self.width_mm + self.right_mm


def is_seen_from_behind(opening: Opening, room: str) -> bool:
    """Tell whether a room sees the second face of an opening."""
    return opening.faces > 1 and opening.room not in ("", room)


def trimmed_opening(house: House, opening: Opening, room: str) -> TrimmedOpening:
    """Return what an opening takes up of a wall of one room.

    Args:
        house: The house, for its profiles.
        opening: The opening.
        room: The room from which the wall is seen: from the other room left and right swap.

    Returns:
        Its widths and trims.

    Raises:
        SurveyError: A leg names a profile that isn't described.
    """
    behind = is_seen_from_behind(opening, room)
    quirks: PerSide[float] = opening.quirk_mm.mirrored() if behind else opening.quirk_mm
    profiles = opening.profiles.mirrored() if behind else opening.profiles
    readings = (opening.readings_b if behind else None) or opening.readings
    widths = [
        width
        for width in (readings.side_mm(Place.TOP), readings.side_mm(Place.BOTTOM))
        if width is not None
    ]
    return TrimmedOpening(
        mark=opening.mark,
        width_mm=math.fsum(widths) / len(widths) if widths else None,
        floor_width_mm=readings.side_mm(Place.BOTTOM),
        left_quirk_mm=quirks.left,
        left_face_mm=_face_mm(house, opening, profiles.left),
        right_quirk_mm=quirks.right,
        right_face_mm=_face_mm(house, opening, profiles.right),
    )


def _face_mm(house: House, opening: Opening, leg: str) -> float:
    """Return how far a leg reaches past its quirk where skirting meets it.

    A plinth block stands in line with the leg's inner edge; one wider than the leg carries the
    back band too, one that isn't leaves the band to run down beside it.
    """
    leg_mm = house.profile(leg).width_mm
    has_plinth = bool(opening.plinth) and opening.layout is not Layout.ALL_ROUND
    plinth_mm = house.profile(opening.plinth).width_mm if has_plinth else 0.0
    if plinth_mm > leg_mm:
        return plinth_mm
    band_mm = house.profile(opening.back_band).width_mm if opening.back_band else 0.0
    return leg_mm + band_mm
