"""The keys of what is read of one face of an opening."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.as_built_tables import AS_BUILT
from longpoint.survey.house_file.default_tables import TAPE_NAME
from longpoint.survey.house_file.keys import Key, Kind, Table

LONGEST_SIDE_MM: Final = 20_000.0
"""No opening in a small house is wider or higher than twenty metres."""
SHORTEST_SIDE_MM: Final = 10.0
"""Anything shorter is no opening: a figure in metres or a slip of the pen."""
ASSUMED_LEVEL_U_DEG: Final = 0.1
ASSUMED_BEVEL_U_DEG: Final = 0.25


def _reading(name: str, meaning: str, example: object) -> Key:
    return Key(
        name=name,
        kind=Kind.READING,
        meaning=meaning,
        example=example,
        left_out=say("not read"),
        low=SHORTEST_SIDE_MM,
        high=LONGEST_SIDE_MM,
    )


def _doubt(name: str, of: str, default_deg: float) -> Key:
    return Key(
        name=name,
        kind=Kind.ANGLE,
        meaning=say("Standard uncertainty of {of}, in degrees.", of=of),
        example=default_deg,
        default=default_deg,
        left_out=say("{default_deg} degrees", default_deg=default_deg),
        above=True,
        high=10.0,
    )


PLANE: Final = Table(
    title=say("the plane readings"),
    keys=tuple(
        Key(
            name=name,
            kind=Kind.SIGNED_READING,
            meaning=say(
                "Reveal's edge against the wall's lining at the {where}: + proud, - shy.",
                where=where,
            ),
            example=example,
            default=0.0,
            left_out="0",
            low=-100.0,
            high=100.0,
        )
        for name, where, example in (
            ("tl", say("top left"), 0),
            ("tr", say("top right"), 0),
            ("br", say("bottom right"), 0),
            ("bl", say("bottom left"), 1),
        )
    ),
)

MIDDLE: Final = Table(
    title=say("the readings in the middle"),
    keys=(
        _reading("width", say("Width half-way up."), 1186),
        _reading("height", say("Height half-way across."), 462),
    ),
)


def _lean(name: str, meaning: str, example: float) -> Key:
    return Key(
        name=name,
        kind=Kind.ANGLE_READING,
        meaning=meaning,
        example=example,
        left_out=say("not read"),
        low=-45.0,
        high=45.0,
    )


PLUMB: Final = Table(
    title=say("the plumb readings"),
    keys=(
        _lean("left", say("Degrees that the left side is off plumb, + leans clockwise."), 0.1),
        _lean("right", say("Degrees that the right side is off plumb, + leans clockwise."), -0.2),
    ),
)

LEVEL: Final = Table(
    title=say("the level readings"),
    keys=(
        _lean("head", say("Degrees that the head is off level, + turned clockwise."), 0.0),
        _lean(
            "floor", say("Degrees that the floor or sill is off level, + turned clockwise."), 0.4
        ),
    ),
)

BEVEL: Final = Table(
    title=say("the bevel gauge readings"),
    keys=tuple(
        Key(
            name=name,
            kind=Kind.ANGLE_READING,
            meaning=say(
                "Angle of the {where} corner inside the opening, in degrees.",
                where=where,
            ),
            example=90.5,
            left_out=say("not read"),
            low=1.0,
            high=179.0,
        )
        for name, where in (
            ("bl", say("bottom left")),
            ("br", say("bottom right")),
            ("tr", say("top right")),
            ("tl", say("top left")),
        )
    ),
)

READING_KEYS: Final = (
    _reading("top", say("Width between the reveal faces at the head."), 1187),
    _reading(
        "bottom",
        say("Width between the reveal faces at the bottom; of a door, at the floor."),
        1186,
    ),
    _reading("left", say("Height of the left side; of a door, from finished floor to head."), 462),
    _reading(
        "right",
        say("Height of the right side; of a door, from finished floor to head."),
        [462, 461],
    ),
    _reading("rising", say("Diagonal from bottom left to top right."), 1274),
    _reading("falling", say("Diagonal from top left to bottom right."), 1272),
    _reading("width", say("One width for top and bottom; squareness is then assumed."), 1187),
    _reading("height", say("One height for left and right; squareness is then assumed."), 462),
    Key(
        name="middle",
        kind=Kind.TABLE,
        meaning=say("Width and height read in the middle, to see a bow."),
        example={"width": 1186, "height": 462},
        left_out=say("not read"),
        table=MIDDLE,
    ),
    Key(
        name="plane",
        kind=Kind.TABLE,
        meaning=say("Reveal's edge against the wall's lining at the four corners: + proud, - shy."),
        example={"tl": 0, "tr": 0, "br": 0, "bl": 1},
        left_out=say("not read"),
        table=PLANE,
    ),
    Key(
        name="plumb",
        kind=Kind.TABLE,
        meaning=say("Degrees off plumb, + leans clockwise."),
        example={"left": 0.1, "right": -0.2},
        left_out=say("not read"),
        table=PLUMB,
    ),
    _doubt("plumb_u", say("a plumb reading"), ASSUMED_LEVEL_U_DEG),
    Key(
        name="level",
        kind=Kind.TABLE,
        meaning=say("Degrees off level, + turned clockwise."),
        example={"head": 0.0, "floor": 0.4},
        left_out=say("not read"),
        table=LEVEL,
    ),
    _doubt("level_u", say("a level reading"), ASSUMED_LEVEL_U_DEG),
    Key(
        name="bevel",
        kind=Kind.TABLE,
        meaning=say("Corners read with a bevel gauge, in degrees."),
        example={"bl": 90.5},
        left_out=say("not read"),
        table=BEVEL,
    ),
    _doubt("bevel_u", say("a bevel gauge reading"), ASSUMED_BEVEL_U_DEG),
    TAPE_NAME,
    Key(
        name="by",
        kind=Kind.TEXT,
        meaning=say("Who read it."),
        example=say("the second reader"),
        left_out=say("not printed"),
    ),
)

FACE_B: Final = Table(title=say("the second face"), keys=(*READING_KEYS, AS_BUILT))
