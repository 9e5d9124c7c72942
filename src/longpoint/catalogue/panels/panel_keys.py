"""What panelling asks for."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table

LONGEST_MM: Final = 20000.0
MOST_PANELS: Final = 40
STEEPEST_DEG: Final = 55.0

OBSTACLE: Final = Table(
    title=say("an obstacle"),
    keys=(
        Key(
            name="name",
            kind=Kind.TEXT,
            meaning=say("What it is."),
            example=say("double socket"),
            left_out=say("called by its number"),
        ),
        Key(
            name="x",
            kind=Kind.READING,
            meaning=say("Level from the left end of the field to its left edge."),
            example=1210,
            required=True,
            high=LONGEST_MM,
        ),
        Key(
            name="y",
            kind=Kind.READING,
            meaning=say("From the floor at the left end, level across, up to its lower edge."),
            example=300,
            required=True,
            high=LONGEST_MM,
        ),
        Key(
            name="width",
            kind=Kind.READING,
            meaning=say("Its width."),
            example=146,
            required=True,
            above=True,
            high=LONGEST_MM,
        ),
        Key(
            name="height",
            kind=Kind.READING,
            meaning=say("Its height."),
            example=86,
            required=True,
            above=True,
            high=LONGEST_MM,
        ),
    ),
)

PANELLING_KEYS: Final = (
    Key(
        name="length",
        kind=Kind.READING,
        meaning=say(
            "From end to end of what is panelled, along its lower edge; on a stair along the slope."
        ),
        example=4606,
        required=True,
        above=True,
        high=LONGEST_MM,
    ),
    Key(
        name="length_top",
        kind=Kind.READING,
        meaning=say("The same along its upper edge: it differs where an end wall leans."),
        example=4612,
        left_out=say("as long as below, which is then said"),
        above=True,
        high=LONGEST_MM,
    ),
    Key(
        name="height",
        kind=Kind.READING,
        meaning=say(
            "From the lower to the upper edge of what is panelled (skirting to "
            "dado rail, say), plumb."
        ),
        example=780,
        required=True,
        above=True,
        high=LONGEST_MM,
    ),
    Key(
        name="above_floor",
        kind=Kind.READING,
        meaning=say("From the floor at the left end up to the lower edge."),
        example=120,
        left_out=say("0: obstacles are then read from the lower edge"),
        default=0.0,
        high=LONGEST_MM,
    ),
    Key(
        name="panels",
        kind=Kind.COUNT,
        meaning=say("How many frames; of panels, panel_width and margin write two."),
        example=5,
        left_out=say("follows from the other two"),
        low=1,
        high=MOST_PANELS,
    ),
    Key(
        name="panel_width",
        kind=Kind.LENGTH,
        meaning=say("Wanted level width of a frame, over its outer edges."),
        example=750,
        left_out=say("follows from the other two"),
        above=True,
        high=LONGEST_MM,
    ),
    Key(
        name="margin",
        kind=Kind.LENGTH,
        meaning=say("Bare wall wanted between the frames, at the ends, above and below."),
        example=90,
        left_out=say("follows from the other two"),
        high=LONGEST_MM,
    ),
    Key(
        name="pitch",
        kind=Kind.ANGLE_READING,
        meaning=say("On a stair: how steep the lower edge climbs, off level."),
        example=38,
        left_out="level",
        above=True,
        high=STEEPEST_DEG,
        ours=True,
    ),
    Key(
        name="climbs",
        kind=Kind.CHOICE,
        meaning=say("Which way the stair climbs, facing the wall."),
        example="right",
        choices=("right", "left"),
        default="right",
        left_out="right",
    ),
    Key(
        name="obstacles",
        kind=Kind.TABLES,
        meaning=say("Sockets, switches and pipes in the field."),
        example=[{"name": "socket", "x": 1210, "y": 300, "width": 146, "height": 86}],
        left_out="none",
        table=OBSTACLE,
    ),
    Key(
        name="clear",
        kind=Kind.LENGTH,
        meaning=say("How far an obstacle has to stay clear of the moulding."),
        example=5,
        default=0.0,
        left_out="0",
        high=500,
    ),
)
