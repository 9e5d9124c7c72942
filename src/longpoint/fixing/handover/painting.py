"""What the painter gets: metres to paint and to caulk, and nail holes, by room and profile."""

from dataclasses import dataclass

from longpoint.fixing.nailing import Nailing
from longpoint.fixing.supplies import caulk_edges_mm, nails_in


@dataclass(frozen=True, slots=True, kw_only=True)
class PaintLine:
    """What one profile in one room comes to.

    Attributes:
        room: The room; may be empty.
        profile: Name of the profile.
        pieces: How many pieces.
        paint_mm: Their lengths together, each at its longest edge. [mm]
        caulk_mm: Edges to caulk. [mm]
        holes: Nail holes to fill.
        face_mm2: Face to paint: length by width, edges and mouldings not counted. [mm2]
    """

    room: str
    profile: str
    pieces: int
    paint_mm: float
    caulk_mm: float
    holes: int
    face_mm2: float


def paint_lines(nailing: Nailing) -> tuple[PaintLine, ...]:
    """Return what there is to paint, in the order of rooms and profiles in the house."""
    keys = dict.fromkeys((each.piece.room, each.piece.profile) for each in nailing.pieces)
    rooms = list(dict.fromkeys(room for room, _ in keys))
    ordered = sorted(keys, key=lambda key: rooms.index(key[0]))
    return tuple(_line(nailing, room, profile) for room, profile in ordered)


def _line(nailing: Nailing, room: str, profile: str) -> PaintLine:
    here = [n for n in nailing.pieces if (n.piece.room, n.piece.profile) == (room, profile)]
    return PaintLine(
        room=room,
        profile=profile,
        pieces=len(here),
        paint_mm=sum(n.piece.long_mm for n in here),
        caulk_mm=sum(caulk_edges_mm(n) for n in here),
        holes=sum(nails_in(nailing, n) for n in here),
        face_mm2=sum(n.piece.long_mm * n.piece.width_mm for n in here),
    )
