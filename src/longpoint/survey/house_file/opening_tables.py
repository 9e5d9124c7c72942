"""The keys of an opening."""

import math
from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.as_built_tables import AS_BUILT
from longpoint.survey.house_file.default_tables import (
    ACCEPT,
    APRON_ENDS,
    ARCHITRAVE,
    BACK_BAND,
    BOARD,
    CORNER_BLOCK,
    FLOOR_COVER,
    FLUSH,
    HEAD_HORN,
    HORN,
    JOINT,
    MAX_GAP,
    METHOD,
    MITRES,
    PLINTH,
    PLINTH_HEIGHT,
    QUIRK,
    QUIRK_BAND,
    TAP_ROOM,
    WEDGE,
)
from longpoint.survey.house_file.face_tables import FACE_B, LONGEST_SIDE_MM, READING_KEYS
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.openings import Layout, OpeningKind

MOST_SEGMENTS: Final = 24
MOST_CORNERS: Final = 24

ARCH: Final = Table(
    title=say("an arch"),
    keys=(
        Key(
            name="rise",
            kind=Kind.LENGTH,
            meaning=say("How far the crown stands above the springing."),
            example=150,
            required=True,
            above=True,
            high=LONGEST_SIDE_MM,
        ),
        Key(
            name="crown",
            kind=Kind.LENGTH,
            meaning=say("Height of the crown above the sill, where it was read as well."),
            example=1350,
            left_out=say("not read"),
            above=True,
            high=LONGEST_SIDE_MM,
        ),
        Key(
            name="segments",
            kind=Kind.COUNT,
            meaning=say("How many straight-grained pieces make the arch."),
            example=4,
            left_out=say("as few as the blank is wide enough for"),
            low=2,
            high=MOST_SEGMENTS,
        ),
        Key(
            name="blank",
            kind=Kind.TEXT,
            meaning=say("Profile of the board that its segments are cut from."),
            example="BD140",
            left_out=say("the arch is held: there is nothing to cut it from"),
        ),
        Key(
            name="offsets",
            kind=Kind.POINTS,
            meaning=say(
                "Points of its edge: across from the left springing, up from the springing."
            ),
            example=[[0, 0], [450, 150], [900, 0]],
            left_out=say("not read"),
            high=LONGEST_SIDE_MM,
        ),
    ),
)

ACROSS: Final = Table(
    title=say("a length across"),
    keys=(
        *(
            Key(
                name=name,
                kind=Kind.COUNT,
                meaning=say(
                    "Corner where it {verb}, counted from 1 in the order of the sides.",
                    verb=verb,
                ),
                example=example,
                required=True,
                low=1,
                high=MOST_CORNERS,
            )
            for name, verb, example in (("from", "starts", 1), ("to", "ends", 3))
        ),
        Key(
            name="length",
            kind=Kind.READING,
            meaning=say("Corner to corner."),
            example=1664,
            required=True,
            above=True,
            high=2 * LONGEST_SIDE_MM,
        ),
    ),
)

BOARD_FIT: Final = Table(
    title=say("a board's fit"),
    keys=(
        Key(
            name="inside",
            kind=Kind.READING,
            meaning=say("Between the linings at the board."),
            example=1105,
            left_out=say("the opening's bottom"),
            above=True,
            high=LONGEST_SIDE_MM,
        ),
        *(
            Key(
                name=f"depth_{end}",
                kind=Kind.READING,
                meaning=say("From the sash to the wall's face at the {end} end.", end=end),
                example=example,
                required=True,
                above=True,
                high=2000.0,
            )
            for end, example in (("left", 140), ("right", 142))
        ),
        Key(
            name="nosing",
            kind=Kind.LENGTH,
            meaning=say("How far the board stands out past the wall's face."),
            example=45,
            default=0.0,
            left_out="0",
            high=1000.0,
        ),
    ),
)

NOMINAL: Final = Table(
    title=say("a nominal size"),
    keys=tuple(
        Key(
            name=name,
            kind=Kind.LENGTH,
            meaning=say("{name} on the drawing.", name=name.capitalize()),
            example=example,
            required=True,
            above=True,
            high=LONGEST_SIDE_MM,
        )
        for name, example in (("width", 1194), ("height", 894))
    ),
)

OPENING: Final = Table(
    title=say("an opening"),
    keys=(
        Key(
            name="mark",
            kind=Kind.MARK,
            meaning=say("Its mark, as pencilled on the reveal; no two alike in the house."),
            example="W1",
            required=True,
        ),
        Key(
            name="room",
            kind=Kind.TEXT,
            meaning=say("The room from which it is read."),
            example="Kitchen",
            left_out=say("not printed"),
        ),
        Key(
            name="kind",
            kind=Kind.CHOICE,
            meaning=say("Window, door, or cased: a lined opening without a door."),
            example="window",
            required=True,
            choices=tuple(each.value for each in OpeningKind),
        ),
        Key(
            name="trim",
            kind=Kind.CHOICE,
            meaning=say("Which pieces surround it."),
            example="all-round",
            choices=tuple(each.value for each in Layout),
            left_out=say("all-round at a window, legs-and-head at a door or cased opening"),
        ),
        *READING_KEYS,
        Key(
            name="lining_edge",
            kind=Kind.READING,
            meaning=say("Thickness of the reveal's edge that is seen."),
            example=19,
            left_out=say("not read"),
            above=True,
            high=500.0,
        ),
        Key(
            name="faces",
            kind=Kind.COUNT,
            meaning=say("1, or 2 to trim both faces; face b is then the mirror of a."),
            example=2,
            default=1,
            left_out="1",
            low=1,
            high=2,
        ),
        Key(
            name="b",
            kind=Kind.TABLE,
            meaning=say("Face b's own readings, seen from its own side."),
            example={"top": 1187, "bottom": 1186, "left": 462, "right": 462},
            left_out=say("the mirror of face a"),
            table=FACE_B,
        ),
        QUIRK,
        QUIRK_BAND,
        ARCHITRAVE,
        BOARD,
        HORN,
        Key(
            name="board_fit",
            kind=Kind.TABLE,
            meaning=say(
                "How the window board sits between the linings: its notches and its width."
            ),
            example=BOARD_FIT.example(),
            left_out=say("the board is cut to length, its notches are marked in place"),
            table=BOARD_FIT,
        ),
        APRON_ENDS,
        JOINT,
        HEAD_HORN,
        CORNER_BLOCK,
        PLINTH,
        PLINTH_HEIGHT,
        BACK_BAND,
        FLUSH,
        WEDGE,
        METHOD,
        MITRES,
        TAP_ROOM,
        FLOOR_COVER,
        MAX_GAP,
        Key(
            name="raked",
            kind=Kind.FLAG,
            meaning=say("True when opposite sides are meant to differ."),
            example=False,
            default=False,
            left_out="false",
        ),
        Key(
            name="arch",
            kind=Kind.TABLE,
            meaning=say("An arched head over straight sides."),
            example={"rise": 150, "crown": 1350},
            left_out=say("a straight head"),
            table=ARCH,
        ),
        Key(
            name="corners",
            kind=Kind.POINTS,
            meaning=say("Corners of another shape, across and up, in order round it."),
            example=[[0, 0], [900, 0], [900, 1400], [0, 1050]],
            left_out=say("four sides as read"),
            low=-LONGEST_SIDE_MM,
            high=LONGEST_SIDE_MM,
        ),
        Key(
            name="sides",
            kind=Kind.READINGS,
            meaning=say("Sides of another shape, in order round it."),
            example=[900, 1400, 966, 1050],
            left_out=say("four sides as read"),
            above=True,
            high=LONGEST_SIDE_MM,
        ),
        Key(
            name="angles",
            kind=Kind.ANGLES,
            meaning=say("Corners between those sides, inside the opening, in degrees."),
            example=[90, 68.7, 111.3, 90],
            left_out=say("not read"),
            above=True,
            high=math.nextafter(360.0, 0.0),
        ),
        Key(
            name="across",
            kind=Kind.TABLES,
            meaning=say("Lengths of that shape from corner to corner."),
            example=[{"from": 1, "to": 3, "length": 1664}],
            left_out="none",
            table=ACROSS,
        ),
        Key(
            name="nominal",
            kind=Kind.TABLE,
            meaning=say("Size on the drawing."),
            example={"width": 1194, "height": 894},
            left_out="none",
            table=NOMINAL,
        ),
        Key(
            name="batch",
            kind=Kind.TEXT,
            meaning=say("Name of a group of openings made alike."),
            example=say("Series K windows"),
            left_out=say("what the marks tell: six or more that end alike behind a unit, or none"),
        ),
        ACCEPT,
        AS_BUILT,
    ),
)
