"""The doors that interrupt the skirting of a wall."""

from collections import Counter
from dataclasses import dataclass

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
    house: House, shapes: Shapes, room: Room, wall: Wall, held: frozenset[str]
) -> tuple[tuple[WallDoor, ...] | None, tuple[Finding, ...]]:
    """Return the doors of a wall from left to right; windows don't interrupt skirting.

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
        if not opening.stands_on_floor:
            continue
        if place.from_left_mm is None:
            unplaced.append(place.mark)
            continue
        trim = trimmed_opening(house, opening, room.name)
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
