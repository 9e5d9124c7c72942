"""The keys of rooms, walls and runs."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.default_tables import ACCEPT, FLOOR_COVER, TAPE_NAME
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.rooms import FloorFit, RunEnd

ASSUMED_CORNER_U_DEG: Final = 0.5

STEEPEST_RAKE_DEG: Final = 60.0
"""Steeper is a ladder."""

MOST_OFF_LEVEL_MM: Final = 300.0
"""A floor further off level within a room is a step, or its two figures were exchanged."""

LONGEST_WALL_MM: Final = 100_000.0


def _lean(name: str, meaning: str, left_out: str) -> Key:
    return Key(
        name=name,
        kind=Kind.ANGLE_READING,
        meaning=meaning,
        example=1.5,
        left_out=left_out,
        low=-45.0,
        high=45.0,
    )


def _floor(of: str, left_out: str) -> tuple[Key, Key]:
    return (
        Key(
            name="floor",
            kind=Kind.POINTS,
            meaning=(
                say(
                    "The floor along {of}: from its left end, and how high the floor "
                    "stands there, + above and - below one level line for the whole "
                    "room.",
                    of=of,
                )
            ),
            example=[[0, 9], [4188, 0]],
            left_out=left_out,
            low=-LONGEST_WALL_MM,
            high=LONGEST_WALL_MM,
        ),
        Key(
            name="floor_fit",
            kind=Kind.CHOICE,
            meaning=(
                say(
                    "How the board is set over that floor: follow, it lies as the "
                    "floor does and is scribed to its humps; level, its top is level "
                    "and what the floor rises comes off below."
                )
            ),
            example=FloorFit.FOLLOW.value,
            left_out="follow" if of == "the wall" else say("as its wall is, or follow"),
            choices=tuple(each.value for each in FloorFit),
        ),
    )


WALL_OPENING: Final = Table(
    title=say("an opening in a wall"),
    keys=(
        Key(
            name="mark",
            kind=Kind.MARK,
            meaning=say("Mark of the opening."),
            example="D1",
            required=True,
        ),
        Key(
            name="from_left",
            kind=Kind.READING,
            meaning=say("From the wall's left-hand corner to the reveal's near face."),
            example=640,
            left_out=say("not read"),
        ),
    ),
)

DIAGONAL: Final = Table(
    title=say("a room's diagonal"),
    keys=(
        Key(
            name="from",
            kind=Kind.MARK,
            meaning=say("The wall at whose right-hand end the diagonal starts."),
            example="N",
            required=True,
        ),
        Key(
            name="to",
            kind=Kind.MARK,
            meaning=say("The wall at whose right-hand end the diagonal ends."),
            example="S",
            required=True,
        ),
        Key(
            name="length",
            kind=Kind.READING,
            meaning=say("Corner to corner."),
            example=5527,
            required=True,
            above=True,
        ),
    ),
)

WALL: Final = Table(
    title=say("a wall"),
    keys=(
        Key(
            name="mark",
            kind=Kind.MARK,
            meaning=say("Its mark; no two alike in the room."),
            example="N",
            required=True,
        ),
        Key(
            name="length",
            kind=Kind.READING,
            meaning=say("Corner to corner."),
            example=[4606, 4605],
            left_out=say("not read"),
            above=True,
        ),
        Key(
            name="corner",
            kind=Kind.ANGLE_READING,
            meaning=(
                say(
                    "Corner with the next wall, at its right-hand end, in degrees "
                    "inside the room: under 180 internal, over 180 external."
                )
            ),
            example=90.5,
            left_out=say("90, and the sheets say so"),
            low=1.0,
            high=359.0,
        ),
        Key(
            name="corner_u",
            kind=Kind.ANGLE,
            meaning=say("Standard uncertainty of that corner, in degrees."),
            example=0.5,
            default=ASSUMED_CORNER_U_DEG,
            left_out=say("0.5 degrees"),
            above=True,
            high=10.0,
        ),
        Key(
            name="bow",
            kind=Kind.SIGNED_READING,
            meaning=say("Middle of the wall off a string from end to end, + into the room."),
            example=-4,
            left_out=say("not read"),
            low=-1000.0,
            high=1000.0,
        ),
        _lean(
            "lean",
            say("Degrees that the wall is off plumb, + with the top away from the room."),
            say("taken as plumb"),
        ),
        *_floor(say("the wall"), say("taken as level")),
        Key(
            name="openings",
            kind=Kind.TABLES,
            meaning=say("What stands in the wall, from left to right."),
            example=[{"mark": "D1", "from_left": 640}],
            left_out="nothing",
            table=WALL_OPENING,
        ),
        Key(
            name="skirting",
            kind=Kind.FLAG,
            meaning=say("True: its runs are worked out; a run that names the wall stands instead."),
            example=True,
            default=False,
            left_out="false",
        ),
        Key(
            name="profile",
            kind=Kind.TEXT,
            meaning=say("Profile of its skirting."),
            example="SK95",
            left_out=say("the default skirting"),
        ),
    ),
)

ROOM: Final = Table(
    title=say("a room"),
    keys=(
        Key(
            name="name",
            kind=Kind.TEXT,
            meaning=say("Its name; no two alike in the house."),
            example="Kitchen",
            required=True,
        ),
        Key(
            name="closed",
            kind=Kind.FLAG,
            meaning=say("False for a chain of walls that does not go round."),
            example=True,
            default=True,
            left_out="true",
        ),
        Key(
            name="walls",
            kind=Kind.TABLES,
            meaning=say("Its walls in order as you turn to the right, facing each from inside."),
            example=[{"mark": "N", "length": 4606, "corner": 90.5}],
            required=True,
            table=WALL,
        ),
        Key(
            name="diagonals",
            kind=Kind.TABLES,
            meaning=say(
                "Corner to corner, each corner named by the wall whose right-hand end it is."
            ),
            example=[{"from": "N", "to": "S", "length": 5527}],
            left_out="none",
            table=DIAGONAL,
        ),
        TAPE_NAME,
        FLOOR_COVER,
        ACCEPT,
    ),
)

_ENDS: Final = tuple(each.value for each in RunEnd)

RUN: Final = Table(
    title=say("a run"),
    keys=(
        Key(
            name="mark",
            kind=Kind.MARK,
            meaning=say("Its mark; no two alike in the house, openings included."),
            example="S1",
            required=True,
        ),
        Key(
            name="room",
            kind=Kind.TEXT,
            meaning=say("The room it is in."),
            example="Loft",
            left_out=say("not printed"),
        ),
        Key(
            name="wall",
            kind=Kind.MARK,
            meaning=say("The wall it lies on, so that the wall's sum can be checked."),
            example="W",
            left_out=say("the sum is not checked"),
        ),
        Key(
            name="profile",
            kind=Kind.TEXT,
            meaning=say("Its profile."),
            example="SK95",
            left_out=say("the default skirting"),
        ),
        Key(
            name="length",
            kind=Kind.READING,
            meaning=say("Its length along the wall."),
            example=2284,
            required=True,
            above=True,
        ),
        *(
            Key(
                name=end,
                kind=Kind.CHOICE,
                meaning=(
                    say(
                        "What its {end} end stops at, facing the wall; architrave: "
                        "read to the outer edge of what stands there at the floor, the "
                        "architrave or its plinth block; rake: to where its lower edge "
                        "meets that of the board along the stair.",
                        end=end,
                    )
                ),
                example="internal",
                required=True,
                choices=_ENDS,
            )
            for end in ("left", "right")
        ),
        *(
            Key(
                name=f"{end}_corner",
                kind=Kind.ANGLE_READING,
                meaning=say("Corner at its {end} end, in degrees inside the room.", end=end),
                example=90.5,
                left_out=say("the wall's corner, or 90"),
                low=1.0,
                high=359.0,
            )
            for end in ("left", "right")
        ),
        *(
            Key(
                name=f"{end}_rake",
                kind=Kind.ANGLE_READING,
                meaning=(
                    say(
                        "Pitch of the stair where its {end} end is a rake, in degrees: "
                        "+ where the stair climbs away from the run, - where it falls "
                        "away.",
                        end=end,
                    )
                ),
                example=38.0,
                left_out=say("held where that end is a rake"),
                low=-STEEPEST_RAKE_DEG,
                high=STEEPEST_RAKE_DEG,
            )
            for end in ("left", "right")
        ),
        _lean(
            "lean",
            say("Degrees that its wall is off plumb, + with the top away from the room."),
            say("the wall's, or plumb"),
        ),
        *(
            _lean(
                f"{end}_lean",
                say("The same of what stands at its {end} end.", end=end),
                say("the next wall's, or plumb, which is then said"),
            )
            for end in ("left", "right")
        ),
        *_floor(say("the run"), say("the wall's, or level")),
        TAPE_NAME,
        ACCEPT,
    ),
)
