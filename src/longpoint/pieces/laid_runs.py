"""How the skirting lies along its walls, board by board, as far as the walls are known."""

import math
from dataclasses import dataclass

from longpoint.pieces.boards import Board, Side
from longpoint.pieces.lying import Lying, return_lying
from longpoint.pieces.run_floors import board_scribes
from longpoint.pieces.runs import board_parts, house_boards, part_mark
from longpoint.shape.fitted import FittedRoom, Shapes
from longpoint.shape.point import direction
from longpoint.survey.house import House


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidBoard:
    """One board where it goes.

    Attributes:
        mark: Its mark.
        room: Name of its room where its place in it is known; else empty.
        lies: How its wall's face lies in the room, from the board's left end: x along the wall, y
            up. The room is as it was fitted: x and y on the floor as seen from above, z up.
        parts: How its parts and returns lie on that, by mark.
    """

    mark: str
    room: str
    lies: Lying
    parts: dict[str, Lying]


STRAIGHT = Lying(origin=(0.0, 0.0, 0.0), along=(1.0, 0.0, 0.0), across=(0.0, 0.0, 1.0))
"""A wall's face that runs in x, its room in front of it."""


def laid_boards(
    house: House, shapes: Shapes, held: frozenset[str] = frozenset()
) -> tuple[LaidBoard, ...]:
    """Return how every skirting board lies that isn't held; arguments as `runs.plan_runs`.

    A board that follows a floor climbs with it. One whose place isn't known lies on a wall of its
    own, plumb and straight.
    """
    boards, _ = house_boards(house, shapes, held)
    parts = board_parts(house, boards)
    scribes = board_scribes(boards)
    rooms = {room.name: room for room in shapes.rooms if room.name not in held}
    found = []
    for board in boards:
        if board.mark not in parts:
            continue
        laid: dict[str, Lying] = {}
        scribe = scribes.get(board.mark)
        climb = math.atan2(scribe.rise_mm, scribe.length_mm) if scribe is not None else 0.0
        ux, uy = math.cos(climb), math.sin(climb)
        for index, part in enumerate(parts[board.mark]):
            # Seen on the wall's face: its left end, and which way it climbs.
            mark = part_mark(board.mark, index, len(parts[board.mark]))
            start_mm = part.face_start_mm
            laid[mark] = Lying(
                origin=(start_mm * ux, start_mm * uy, 0.0),
                along=(ux, uy, 0.0),
                across=(-uy, ux, 0.0),
            )
        first, *_, last = (*laid.values(), *laid.values())
        for side, lies, part in (
            (Side.LEFT, first, parts[board.mark][0]),
            (Side.RIGHT, last, parts[board.mark][-1]),
        ):
            thickness_mm = board.profile.thickness_mm
            returned = return_lying(lies, side, part.face_mm, thickness_mm)
            laid[f"{board.mark}-return-{side}"] = returned
        wall = _on_wall(house, board, rooms)
        found.append(
            LaidBoard(
                mark=board.mark,
                room=board.room if wall is not None else "",
                lies=wall or STRAIGHT,
                parts=laid,
            )
        )
    return tuple(found)


def wall_lying(room: FittedRoom, index: int, start_mm: float = 0.0, lean_deg: float = 0.0) -> Lying:
    """Return how a wall's face lies in its room: x along it, y up it, z into the room.

    Args:
        room: The fitted room, its walls clockwise as seen from above.
        index: Number of the wall.
        start_mm: Where x = 0 is, from the wall's left-hand corner.
        lean_deg: How far the wall is off plumb, + with the top away from the room.
    """
    start, end = room.corners[index], room.corners[(index + 1) % len(room.corners)]
    ux, uy = direction(start, end)
    lean = math.radians(lean_deg)
    return Lying(
        origin=(start.x_mm + start_mm * ux, start.y_mm + start_mm * uy, 0.0),
        along=(ux, uy, 0.0),
        across=(-uy * math.sin(lean), ux * math.sin(lean), math.cos(lean)),
    )


def _on_wall(house: House, board: Board, rooms: dict[str, FittedRoom]) -> Lying | None:
    room = rooms.get(board.room)
    if room is None:
        return None
    count = len(room.wall_mm)
    left, right = board.left.at, board.right.at
    if board.wall is not None and board.start_mm is not None:
        index, start_mm = board.wall.wall, board.start_mm
    elif left is not None:
        index, start_mm = (left.wall + 1) % count, 0.0
    elif right is not None:
        index = right.wall
        start_mm = room.wall_mm[index] - board.length_mm
    else:
        return None
    return wall_lying(room, index, start_mm, board.lean_deg)
