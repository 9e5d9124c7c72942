"""What dado and picture rails ask for."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table

HIGHEST_MM: Final = 6000.0

LEVEL_AT: Final = Table(
    title=say("a reading of the level line"),
    keys=(
        Key(
            name="wall",
            kind=Kind.TEXT,
            meaning=say("The wall, facing it."),
            example="N",
            required=True,
        ),
        Key(
            name="left",
            kind=Kind.READING,
            meaning=say("From the floor up to the level line at the wall's left end."),
            example=1002,
            left_out=say("not read"),
            high=HIGHEST_MM,
        ),
        Key(
            name="right",
            kind=Kind.READING,
            meaning=say("The same at its right end."),
            example=1011,
            left_out=say("not read"),
            high=HIGHEST_MM,
        ),
    ),
)

SILL_AT: Final = Table(
    title=say("a window's sill"),
    keys=(
        Key(
            name="mark",
            kind=Kind.MARK,
            meaning=say("The window."),
            example="W1",
            required=True,
        ),
        Key(
            name="sill",
            kind=Kind.READING,
            meaning=say("From the floor up to the bottom of its reveal."),
            example=905,
            required=True,
            high=HIGHEST_MM,
        ),
    ),
)

WALLS: Final = Key(
    name="walls",
    kind=Kind.CODES,
    meaning=say("The walls it runs along."),
    example=["N", "E"],
    left_out=say("all walls of the room"),
)

WINDOWS: Final = Key(
    name="windows",
    kind=Kind.TABLES,
    meaning=say("How high the sills stand of windows that the walls list."),
    example=[{"mark": "W1", "sill": 905}],
    left_out=say("held where a wall in question lists a window"),
    table=SILL_AT,
)

RAIL_KEYS: Final = (
    Key(
        name="height",
        kind=Kind.READING,
        meaning=say("From the floor at the datum corner up to the rail."),
        example=2010,
        required=True,
        above=True,
        high=HIGHEST_MM,
    ),
    Key(
        name="measured_to",
        kind=Kind.CHOICE,
        meaning=say("Which edge of the rail that height is measured to."),
        example="top",
        choices=("top", "bottom"),
        default="top",
        left_out="top",
    ),
    Key(
        name="ceiling",
        kind=Kind.READING,
        meaning=say("From the floor at the datum corner up to the ceiling."),
        example=2405,
        left_out=say("not checked"),
        above=True,
        high=HIGHEST_MM,
    ),
    Key(
        name="datum",
        kind=Kind.TEXT,
        meaning=say("The wall whose left-hand end is the datum corner."),
        example="N",
        left_out=say("the first wall of level_line, or of the room"),
    ),
    Key(
        name="level_line",
        kind=Kind.TABLES,
        meaning=say("Any level line (a laser's, say), read from the floor at the walls' ends."),
        example=[{"wall": "N", "left": 1002, "right": 1011}],
        left_out=say("the walls' floor; without that the height stands for the datum corner alone"),
        table=LEVEL_AT,
    ),
    WINDOWS,
    WALLS,
    Key(
        name="at_trim",
        kind=Kind.CHOICE,
        meaning=say("How a rail ends at an architrave."),
        example="square",
        choices=("square", "return"),
        default="square",
        left_out=say("square: it dies into the architrave"),
    ),
    Key(
        name="internal",
        kind=Kind.CHOICE,
        meaning=say("How two rails meet in an internal corner."),
        example="scribe",
        choices=("scribe", "mitre"),
        default="scribe",
        left_out="scribe",
    ),
)
