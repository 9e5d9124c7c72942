"""How far each room is: what is held, what is planned, what is up, what is left to mend."""

from collections.abc import Iterable
from dataclasses import dataclass

from longpoint.fixing.handover.judged import room_of_places
from longpoint.pieces.piece import Piece
from longpoint.survey.house import House


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomProgress:
    """How far one room is.

    Attributes:
        room: Its name; empty for what names no room.
        up: Places that are up, in the order of the house.
        to_do: Places planned and not up.
        held: Places without lengths.
        mends: Defects not mended.
        is_wet: True when glue, filler, caulk or paint is wet there.
    """

    room: str
    up: tuple[str, ...]
    to_do: tuple[str, ...]
    held: tuple[str, ...]
    mends: int
    is_wet: bool

    @property
    def is_ready(self) -> bool:
        """Tell whether the painter can start: all is up, nothing to mend, nothing wet."""
        return bool(self.up) and not (self.to_do or self.held or self.mends or self.is_wet)


def house_progress(
    house: House, pieces: Iterable[Piece], held: frozenset[str], mends: Iterable[str] = ()
) -> tuple[RoomProgress, ...]:
    """Return how far each room is, in the order in which the house names them.

    Args:
        house: The house.
        pieces: Its pieces.
        held: Places that get no lengths.
        mends: Room of each thing that is still to be mended, one entry for each.
    """
    known = room_of_places(house)
    places: dict[str, str] = {}
    for piece in pieces:
        places.setdefault(piece.place, piece.room)
    for mark in sorted(held):
        places.setdefault(mark, known.get(mark) or _room_named_in(house, mark))
    # Rooms come as the house names them, not as pieces are cut.
    rooms = dict.fromkeys((*(r for r in known.values() if r), *places.values()))
    up = up_places(house, places)
    to_mend = list(mends)
    return tuple(
        RoomProgress(
            room=room,
            up=tuple(p for p, where in places.items() if where == room and p in up - held),
            to_do=tuple(p for p, where in places.items() if where == room and p not in up | held),
            held=tuple(p for p, where in places.items() if where == room and p in held),
            mends=to_mend.count(room),
            is_wet=room in house.handover.wet,
        )
        for room in rooms
        if room in places.values()
    )


def up_places(house: House, places: dict[str, str]) -> frozenset[str]:
    """Return the places that are up: told so, in a room told so, or read once they were up.

    Args:
        house: The house.
        places: The room of each place.
    """
    told = frozenset(house.handover.fixed)
    read = frozenset(o.mark for o in house.openings if o.as_built or o.as_built_b)
    return read | frozenset(p for p, room in places.items() if p in told or room in told)


def unknown_places(house: House, pieces: Iterable[Piece]) -> tuple[str, ...]:
    """Return what is told to be up or wet and is no mark or room of the house."""
    known = {*room_of_places(house), *(room for room in room_of_places(house).values())}
    for piece in pieces:
        known |= {piece.place, piece.room}
    told = (*house.handover.fixed, *house.handover.wet)
    return tuple(dict.fromkeys(each for each in told if each not in known))


def _room_named_in(house: House, mark: str) -> str:
    """Return the room whose name a wall's place starts with ("Kitchen N"); may be empty."""
    names = (room.name for room in house.rooms if mark.startswith(f"{room.name} "))
    return max(names, key=len, default="")
