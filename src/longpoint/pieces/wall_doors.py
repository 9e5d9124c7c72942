"""The doors that interrupt the skirting of a wall."""

import math
from collections import Counter
from dataclasses import dataclass, replace

from longpoint.errors import Finding
from longpoint.pieces.wall_findings import (
    door_width_missing,
    face_assumed,
    from_left_missing,
    listed_twice,
    opening_unknown,
)
from longpoint.shape.fitted import Shapes
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import Place
from longpoint.survey.rooms import Room, Wall
from longpoint.survey.trimmed_openings import TrimmedOpening, trimmed_opening


@dataclass(frozen=True, slots=True, kw_only=True)
class WallDoor:
    """A door or cased opening where it stands in a wall.

    Attributes:
        trim: Its quirks and architraves, seen from the room.
        from_left_mm: From the wall's left-hand corner to the reveal's near face.
        floor_mm: Its width at floor level.
        is_held: True when it gets no lengths itself.
    """

    trim: TrimmedOpening
    from_left_mm: float
    floor_mm: float
    is_held: bool

    @property
    def mark(self) -> str:
        """Its mark."""
        return self.trim.mark

    def left_terms_mm(self) -> tuple[float, ...]:
        """Return what adds up to the outer edge of its left architrave, from the left corner."""
        return (self.from_left_mm, -self.trim.left_quirk_mm, -self.trim.left_face_mm)

    def right_terms_mm(self) -> tuple[float, ...]:
        """Return what adds up to the outer edge of its right architrave, from the left corner."""
        return (
            self.from_left_mm,
            self.floor_mm,
            self.trim.right_quirk_mm,
            self.trim.right_face_mm,
        )


def wall_doors(
    house: House,
    shapes: Shapes,
    room: Room,
    wall: Wall,
    held: frozenset[str],
    *,
    low_mm: float = 0.0,
    only: frozenset[str] | None = None,
) -> tuple[tuple[WallDoor, ...] | None, tuple[Finding, ...]]:
    """Return the doors of a wall from left to right; windows don't interrupt skirting.

    Args:
        house: The house as read.
        shapes: Fitted openings.
        room: The room from which the wall is seen.
        wall: The wall.
        held: Marks held back.
        low_mm: Lower edge of what they interrupt, above the floor: above their plinth blocks it
            meets the legs.
        only: Marks of the openings that interrupt it; None: those that stand on the floor.

    Returns:
        The doors, None when one of them leaves the wall's runs open, and what is to be said.
    """
    twice = tuple(
        mark for mark, count in Counter(o.mark for o in wall.openings).items() if count > 1
    )
    if twice:
        return None, (listed_twice(room, wall, twice),)
    openings = {opening.mark: opening for opening in house.openings}
    fitted_mm = {fit.mark: fit.side_mm.first for fit in shapes.openings}
    unreadable = {entry.mark for entry in house.held}
    notes: list[Finding] = []
    doors: list[WallDoor] = []
    unplaced: list[str] = []
    for place in wall.openings:
        opening = openings.get(place.mark)
        if opening is None:
            stop = opening_unknown(room, wall, place.mark, is_held=place.mark in unreadable)
            return None, (stop,)
        if not (opening.stands_on_floor if only is None else place.mark in only):
            continue
        if place.from_left_mm is None:
            unplaced.append(place.mark)
            continue
        trim = trimmed_opening(house, _seen_at(opening, low_mm), room.name)
        floor_mm = trim.floor_width_mm or fitted_mm.get(place.mark)
        if floor_mm is None:
            return None, (door_width_missing(room, wall, place.mark),)
        if opening.faces == 1 and opening.room not in ("", room.name):
            notes.append(face_assumed(room, wall, place.mark, opening.room))
        doors.append(
            WallDoor(
                trim=trim,
                from_left_mm=place.from_left_mm,
                floor_mm=floor_mm,
                is_held=place.mark in held,
            )
        )
    if unplaced:
        return None, (from_left_missing(room, wall, tuple(unplaced)),)
    return tuple(sorted(doors, key=lambda door: door.from_left_mm)), tuple(notes)


def reaching(house: House, low_mm: float) -> frozenset[str]:
    """Return the openings standing on the floor whose trim reaches up to a height.

    Args:
        house: The house as read.
        low_mm: Lower edge of what would run through, above the floor. [mm]

    Returns:
        Their marks. An opening whose height wasn't read is among them. Windows never are: how high
        their sills stand isn't read.
    """
    return frozenset(
        opening.mark
        for opening in house.openings
        if opening.stands_on_floor and _top_mm(house, opening) > low_mm
    )


def _top_mm(house: House, opening: Opening) -> float:
    """Return the highest that an opening's trim stands above the floor."""
    sides = (opening.readings.side_mm(Place.LEFT), opening.readings.side_mm(Place.RIGHT))
    heights = [height_mm for height_mm in sides if height_mm is not None]
    if not heights:
        return math.inf
    crown_mm = opening.arch.rise_mm if opening.arch is not None else 0.0
    band_mm = house.profile(opening.back_band).width_mm if opening.back_band else 0.0
    face_mm = house.profile(opening.profiles.head).width_mm
    return max(heights) + crown_mm + opening.quirk_mm.head + face_mm + band_mm


def _seen_at(opening: Opening, low_mm: float) -> Opening:
    """Return an opening without the plinth blocks that end below a height."""
    return replace(opening, plinth="") if low_mm > opening.plinth_height_mm else opening
