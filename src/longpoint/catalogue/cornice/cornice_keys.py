"""What a cornice asks for in the house file."""

from enum import StrEnum
from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table


class SpringFrom(StrEnum):
    """What the spring is measured from."""

    WALL = "wall"
    CEILING = "ceiling"


class Corners(StrEnum):
    """How internal corners are made."""

    SCRIBE = "scribe"
    MITRE = "mitre"


class OpenEnds(StrEnum):
    """How an end is made that no wall and no other run stops."""

    SQUARE = "square"
    RETURN = "return"


LEAST_SPRING_DEG: Final = 10.0
MOST_SPRING_DEG: Final = 80.0
STEEPEST_DEG: Final = 60.0
MOST_RISE_MM: Final = 20_000.0

SPRING: Final = Key(
    name="spring",
    kind=Kind.ANGLE,
    meaning=say("Angle between the moulding's back and the wall, in degrees; see spring_from."),
    example=38,
    left_out=say("worked out from drop and projection"),
    low=LEAST_SPRING_DEG,
    high=MOST_SPRING_DEG,
    ours=True,
)

CLIMB: Final = Table(
    title=say("a climbing part of a cornice"),
    keys=(
        Key(
            name="wall",
            kind=Kind.TEXT,
            meaning=say("The wall along which the ceiling climbs."),
            example="E",
            required=True,
        ),
        Key(
            name="from_left",
            kind=Kind.READING,
            meaning=say(
                "From the wall's left-hand corner to where the slope begins, "
                "along the ceiling, level; it holds to the next one on that "
                "wall, or to the corner."
            ),
            example=1200,
            left_out=say("from the corner"),
        ),
        Key(
            name="slope",
            kind=Kind.ANGLE,
            meaning=say(
                "What the ceiling climbs to the right, in degrees; negative "
                "where it falls, 0 where it is level again."
            ),
            example=15,
            left_out=say("worked out from the rise"),
            low=-STEEPEST_DEG,
            high=STEEPEST_DEG,
            ours=True,
        ),
        Key(
            name="rise",
            kind=Kind.SIGNED_LENGTH,
            meaning=say(
                "How much higher the ceiling is at the right-hand end of that "
                "part than at its left; negative where it falls."
            ),
            example=320,
            left_out=say("slope is needed"),
            low=-MOST_RISE_MM,
            high=MOST_RISE_MM,
        ),
    ),
)

OWN_SPRING: Final = Table(
    title=say("a wall whose cornice springs otherwise"),
    keys=(
        Key(name="wall", kind=Kind.TEXT, meaning=say("The wall."), example="E", required=True),
        Key(
            name="spring",
            kind=Kind.ANGLE,
            meaning=say("Its spring, measured as that of the whole cornice."),
            example=45,
            required=True,
            low=LEAST_SPRING_DEG,
            high=MOST_SPRING_DEG,
            ours=True,
        ),
    ),
)

KEYS: Final = (
    SPRING,
    Key(
        name="spring_from",
        kind=Kind.CHOICE,
        meaning=say("What the spring is measured from."),
        example="wall",
        choices=tuple(SpringFrom),
        left_out=say("wall, and the sheet says so"),
    ),
    Key(
        name="drop",
        kind=Kind.LENGTH,
        meaning=say(
            "How far down the wall the moulding comes, ceiling to the bottom edge of its back."
        ),
        example=71,
        left_out=say("not needed where the spring is written"),
        above=True,
    ),
    Key(
        name="projection",
        kind=Kind.LENGTH,
        meaning=say("How far along the ceiling it comes, wall to the ceiling edge of its back."),
        example=55.5,
        left_out=say("not needed where the spring is written"),
        above=True,
    ),
    Key(
        name="walls",
        kind=Kind.CODES,
        meaning=say("Marks of the walls that get it."),
        example=["N", "E"],
        left_out=say("all walls of the room"),
    ),
    Key(
        name="corners",
        kind=Kind.CHOICE,
        meaning=say("How internal corners are made."),
        example="mitre",
        default="scribe",
        choices=tuple(Corners),
        left_out="scribe",
    ),
    Key(
        name="ends",
        kind=Kind.CHOICE,
        meaning=say("How an end is made that nothing stops."),
        example="return",
        default="square",
        choices=tuple(OpenEnds),
        left_out="square",
    ),
    Key(
        name="climb",
        kind=Kind.TABLES,
        meaning=say("Where the ceiling climbs or falls along a wall."),
        example=[{"wall": "E", "from_left": 1200, "slope": 15}],
        left_out=say("level everywhere"),
        table=CLIMB,
    ),
    Key(
        name="springs",
        kind=Kind.TABLES,
        meaning=say("Walls on which it springs otherwise."),
        example=[{"wall": "E", "spring": 45}],
        left_out=say("one spring everywhere"),
        table=OWN_SPRING,
    ),
)
