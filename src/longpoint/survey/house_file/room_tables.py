"""The keys of rooms, walls and runs."""

from typing import Final

from longpoint.survey.house_file.default_tables import ACCEPT, FLOOR_COVER, TAPE_NAME
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.rooms import RunEnd

ASSUMED_CORNER_U_DEG: Final = 0.5

WALL_OPENING: Final = Table(
    title="an opening in a wall",
    keys=(
        Key(
            name="mark",
            kind=Kind.MARK,
            meaning="Mark of the opening.",
            example="D1",
            required=True,
        ),
        Key(
            name="from_left",
            kind=Kind.READING,
            meaning="From the wall's left-hand corner to the reveal's near face.",
            example=640,
            left_out="not read",
        ),
    ),
)

DIAGONAL: Final = Table(
    title="a room's diagonal",
    keys=(
        Key(
            name="from",
            kind=Kind.MARK,
            meaning="The wall at whose right-hand end the diagonal starts.",
            example="N",
            required=True,
        ),
        Key(
            name="to",
            kind=Kind.MARK,
            meaning="The wall at whose right-hand end the diagonal ends.",
            example="S",
            required=True,
        ),
        Key(
            name="length",
            kind=Kind.READING,
            meaning="Corner to corner.",
            example=5527,
            required=True,
            above=True,
        ),
    ),
)

WALL: Final = Table(
    title="a wall",
    keys=(
        Key(
            name="mark",
            kind=Kind.MARK,
            meaning="Its mark; no two alike in the room.",
            example="N",
            required=True,
        ),
        Key(
            name="length",
            kind=Kind.READING,
            meaning="Corner to corner.",
            example=[4606, 4605],
            left_out="not read",
            above=True,
        ),
        Key(
            name="corner",
            kind=Kind.ANGLE_READING,
            meaning=(
                "Corner with the next wall, at its right-hand end, in degrees inside the room: "
                "under 180 internal, over 180 external."
            ),
            example=90.5,
            left_out="90, and the sheets say so",
            low=1.0,
            high=359.0,
        ),
        Key(
            name="corner_u",
            kind=Kind.ANGLE,
            meaning="Standard uncertainty of that corner, in degrees.",
            example=0.5,
            default=ASSUMED_CORNER_U_DEG,
            left_out="0.5 degrees",
            above=True,
            high=10.0,
        ),
        Key(
            name="bow",
            kind=Kind.SIGNED_READING,
            meaning="Middle of the wall off a string from end to end, + into the room.",
            example=-4,
            left_out="not read",
            low=-1000.0,
            high=1000.0,
        ),
        Key(
            name="openings",
            kind=Kind.TABLES,
            meaning="What stands in the wall, from left to right.",
            example=[{"mark": "D1", "from_left": 640}],
            left_out="nothing",
            table=WALL_OPENING,
        ),
        Key(
            name="skirting",
            kind=Kind.FLAG,
            meaning="True: its runs are worked out; a run that names the wall stands instead.",
            example=True,
            default=False,
            left_out="false",
        ),
        Key(
            name="profile",
            kind=Kind.TEXT,
            meaning="Profile of its skirting.",
            example="SK95",
            left_out="the default skirting",
        ),
    ),
)

ROOM: Final = Table(
    title="a room",
    keys=(
        Key(
            name="name",
            kind=Kind.TEXT,
            meaning="Its name; no two alike in the house.",
            example="Kitchen",
            required=True,
        ),
        Key(
            name="closed",
            kind=Kind.FLAG,
            meaning="False for a chain of walls that does not go round.",
            example=True,
            default=True,
            left_out="true",
        ),
        Key(
            name="walls",
            kind=Kind.TABLES,
            meaning="Its walls in order as you turn to the right, facing each from inside.",
            example=[{"mark": "N", "length": 4606, "corner": 90.5}],
            required=True,
            table=WALL,
        ),
        Key(
            name="diagonals",
            kind=Kind.TABLES,
            meaning="Corner to corner, each corner named by the wall whose right-hand end it is.",
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
    title="a run",
    keys=(
        Key(
            name="mark",
            kind=Kind.MARK,
            meaning="Its mark; no two alike in the house, openings included.",
            example="S1",
            required=True,
        ),
        Key(
            name="room",
            kind=Kind.TEXT,
            meaning="The room it is in.",
            example="Loft",
            left_out="not printed",
        ),
        Key(
            name="wall",
            kind=Kind.MARK,
            meaning="The wall it lies on, so that the wall's sum can be checked.",
            example="W",
            left_out="the sum is not checked",
        ),
        Key(
            name="profile",
            kind=Kind.TEXT,
            meaning="Its profile.",
            example="SK95",
            left_out="the default skirting",
        ),
        Key(
            name="length",
            kind=Kind.READING,
            meaning="Its length along the wall.",
            example=2284,
            required=True,
            above=True,
        ),
        *(
            Key(
                name=end,
                kind=Kind.CHOICE,
                meaning=(
                    f"What its {end} end stops at, facing the wall; architrave: read to the "
                    "architrave's outer edge."
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
                meaning=f"Corner at its {end} end, in degrees inside the room.",
                example=90.5,
                left_out="the wall's corner, or 90",
                low=1.0,
                high=359.0,
            )
            for end in ("left", "right")
        ),
        TAPE_NAME,
        ACCEPT,
    ),
)
