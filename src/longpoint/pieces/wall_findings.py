"""What is to be said about runs worked out from a wall."""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_angle, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.rooms import Room, Wall

MARK_TWICE: Final = "mark-twice"
FROM_LEFT_MISSING: Final = "from-left-missing"
RUN_HELD: Final = "run-held"
WALL_UNREAD: Final = "wall-unread"
WALL_UNSURE: Final = "wall-unsure"
OPENING_UNKNOWN: Final = "opening-unknown"
DOOR_WIDTH_MISSING: Final = "door-width-missing"
SKIRTING_UNNAMED: Final = "skirting-unnamed"
NO_ROOM_LEFT: Final = "no-room-for-run"
NO_BOARD: Final = "no-board"
CHAIN_END: Final = "chain-end"
FACE_ASSUMED: Final = "face-assumed"
CORNER_IMPOSSIBLE: Final = "corner-impossible"


def wall_place(room: Room, wall: Wall) -> str:
    """Return the place of a finding about a wall."""
    return say("{room} {mark}", room=room.name, mark=wall.mark)


def run_held(mark: str, because: str) -> Finding:
    """Return the finding of a run that something else holds."""
    return Finding(
        code=RUN_HELD,
        severity=Severity.STOP,
        place=mark,
        read=say("Run {mark} is worked out from its wall and what stands in it.", mark=mark),
        wrong=say("It is held because {because} is held.", because=because),
        do=say("Settle that first; the run follows by itself."),
    )


def listed_twice(room: Room, wall: Wall, marks: tuple[str, ...]) -> Finding:
    """Return the finding of a wall that lists an opening more than once."""
    return _stop(
        MARK_TWICE,
        room,
        wall,
        read=say(
            "Wall {mark} of {room} lists {marks} more than once.",
            mark=wall.mark,
            room=room.name,
            marks=joined(say(" and "), marks),
        ),
        wrong=say("An opening stands in a wall once, so the runs between them can't be right."),
        do=say("Take the second entry out, or give it the mark of the opening that was meant."),
    )


def from_left_missing(room: Room, wall: Wall, doors: tuple[str, ...]) -> Finding:
    """Return the finding of a wall whose doors' places were not read."""
    return _stop(
        FROM_LEFT_MISSING,
        room,
        wall,
        read=say(
            "Wall {mark} of {room} is to have skirting; {doors} {stands} in it.",
            mark=wall.mark,
            room=room.name,
            doors=joined(say(" and "), doors),
            stands=say("stands") if len(doors) == 1 else say("stand"),
        ),
        wrong=say("How far from the left-hand corner was not read."),
        do=say("Read from the corner to the reveal's near face and write it as from_left."),
    )


def wall_unread(room: Room, wall: Wall) -> Finding:
    """Return the finding of a wall without a length."""
    return _stop(
        WALL_UNREAD,
        room,
        wall,
        read=say(
            "Wall {mark} of {room} is to have skirting.",
            mark=wall.mark,
            room=room.name,
        ),
        wrong=say("Its length was not read and does not follow from the other walls."),
        do=say("Read it from corner to corner."),
    )


def wall_unsure(house: House, room: Room, wall: Wall, length_mm: float, u_mm: float) -> Finding:
    """Return the finding of a wall whose worked-out length is too unsure to cut by."""
    return _stop(
        WALL_UNSURE,
        room,
        wall,
        read=say(
            "Wall {mark} of {room} was not read; from the others it is {length}.",
            mark=wall.mark,
            room=room.name,
            length=format_with_unit(length_mm, house.units),
        ),
        wrong=say(
            "That is only good to about {u}.",
            u=format_with_unit(2.0 * u_mm, house.units),
        ),
        do=say("Read it from corner to corner."),
    )


def opening_unknown(room: Room, wall: Wall, mark: str, *, is_held: bool) -> Finding:
    """Return the finding of a wall that lists an opening that can't be used."""
    return _stop(
        OPENING_UNKNOWN,
        room,
        wall,
        read=say(
            "Wall {mark} of {room} lists the opening {mark_2}.",
            mark=wall.mark,
            room=room.name,
            mark_2=mark,
        ),
        wrong=say("{mark} could not be read.", mark=mark)
        if is_held
        else say(
            "No opening is called {mark}.",
            mark=mark,
        ),
        do=say("Mend {mark}; the runs of this wall follow by themselves.", mark=mark)
        if is_held
        else say("Write the opening, or mend its mark on the wall."),
    )


def door_width_missing(room: Room, wall: Wall, mark: str) -> Finding:
    """Return the finding of a wall whose door has no width at the floor."""
    return _stop(
        DOOR_WIDTH_MISSING,
        room,
        wall,
        read=say(
            "{mark} stands in wall {mark_2} of {room}.",
            mark=mark,
            mark_2=wall.mark,
            room=room.name,
        ),
        wrong=say("Its width at the floor is not known, so the run to its right has no start."),
        do=say("Read the bottom of {mark}.", mark=mark),
    )


def skirting_unnamed(room: Room, wall: Wall, name: str) -> Finding:
    """Return the finding of a wall whose skirting isn't described."""
    return _stop(
        SKIRTING_UNNAMED,
        room,
        wall,
        read=say(
            "Wall {mark} of {room} is to have skirting.",
            mark=wall.mark,
            room=room.name,
        ),
        wrong=say("No profile {name!r} is described.", name=name)
        if name
        else say("No profile is named for it."),
        do=say("Name the wall's profile, or a default skirting, and describe it."),
    )


def corner_impossible(room: Room, wall: Wall, corner_deg: float) -> Finding:
    """Return the finding of a corner that no skirting goes round."""
    return _stop(
        CORNER_IMPOSSIBLE,
        room,
        wall,
        read=say(
            "A corner of wall {mark} of {room} is {corner} degrees.",
            mark=wall.mark,
            room=room.name,
            corner=format_angle(corner_deg),
        ),
        wrong=say("A corner under 30 degrees, or within 3 of straight, is more likely a slip."),
        do=say("Read the corner again; join two walls in one line into one."),
    )


def no_room_left(house: House, room: Room, wall: Wall, mark: str, length_mm: float) -> Finding:
    """Return the finding of a run that would have less than no length."""
    return Finding(
        code=NO_ROOM_LEFT,
        severity=Severity.STOP,
        place=mark,
        read=say(
            "Run {mark} was worked out along wall {mark_2} of {room}.",
            mark=mark,
            mark_2=wall.mark,
            room=room.name,
        ),
        wrong=say(
            "Its length comes to {length}: the doors and their architraves "
            "overlap each other or a corner.",
            length=format_with_unit(length_mm, house.units),
        ),
        do=say("Read the wall, the doors' places from the left and their widths again."),
    )


def no_board(room: Room, wall: Wall, mark: str) -> Finding:
    """Return the note of a place where an architrave fills the wall up to the corner."""
    return Finding(
        code=NO_BOARD,
        severity=Severity.NOTE,
        place=mark,
        read=say(
            "Run {mark} was worked out along wall {mark_2} of {room}.",
            mark=mark,
            mark_2=wall.mark,
            room=room.name,
        ),
        wrong=say("The architrave fills the wall to within a few millimetres, so no board is cut."),
        do=say("Look whether a sliver is wanted there."),
    )


def chain_end(room: Room, wall: Wall, side: str) -> Finding:
    """Return the note of a chain that begins or ends somewhere unread."""
    return Finding(
        code=CHAIN_END,
        severity=Severity.NOTE,
        place=wall_place(room, wall),
        read=say(
            "{room} is a chain of walls; wall {mark} is at its {side} end.",
            room=room.name,
            mark=wall.mark,
            side=side,
        ),
        wrong=say("What the skirting stops at there was not read; it is cut square."),
        do=say("Write the run on its own if it ends otherwise."),
    )


def face_assumed(room: Room, wall: Wall, mark: str, other_room: str) -> Finding:
    """Return the note of an opening trimmed on one face and listed in two rooms."""
    return Finding(
        code=FACE_ASSUMED,
        severity=Severity.NOTE,
        place=wall_place(room, wall),
        read=say(
            "{mark} is read from {other_room} and has one face to trim.",
            mark=mark,
            other_room=other_room,
        ),
        wrong=say(
            "Wall {mark} of {room} lists it as well; its runs suppose the same "
            "architraves on this side.",
            mark=wall.mark,
            room=room.name,
        ),
        do=say("Write faces = 2 if this side is trimmed; read the runs on their own if it is not."),
    )


def _stop(code: str, room: Room, wall: Wall, *, read: str, wrong: str, do: str) -> Finding:
    return Finding(
        code=code,
        severity=Severity.STOP,
        place=wall_place(room, wall),
        read=read,
        wrong=wrong,
        do=do,
    )
