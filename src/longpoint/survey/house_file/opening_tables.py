"""The keys of an opening."""

import math
from typing import Final

from longpoint.survey.house_file.as_built_tables import AS_BUILT
from longpoint.survey.house_file.default_tables import (
    ACCEPT,
    ARCHITRAVE,
    BOARD,
    FLOOR_COVER,
    HORN,
    MAX_GAP,
    METHOD,
    MITRES,
    QUIRK,
    QUIRK_BAND,
    TAP_ROOM,
)
from longpoint.survey.house_file.face_tables import FACE_B, LONGEST_SIDE_MM, READING_KEYS
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.openings import Layout, OpeningKind

ARCH: Final = Table(
    title="an arch",
    keys=(
        Key(
            name="rise",
            kind=Kind.LENGTH,
            meaning="How far the crown stands above the springing.",
            example=150,
            required=True,
            above=True,
            high=LONGEST_SIDE_MM,
        ),
        Key(
            name="crown",
            kind=Kind.LENGTH,
            meaning="Height of the crown above the sill, where it was read as well.",
            example=1350,
            left_out="not read",
            above=True,
            high=LONGEST_SIDE_MM,
        ),
    ),
)

NOMINAL: Final = Table(
    title="a nominal size",
    keys=tuple(
        Key(
            name=name,
            kind=Kind.LENGTH,
            meaning=f"{name.capitalize()} on the drawing.",
            example=example,
            required=True,
            above=True,
            high=LONGEST_SIDE_MM,
        )
        for name, example in (("width", 1194), ("height", 894))
    ),
)

OPENING: Final = Table(
    title="an opening",
    keys=(
        Key(
            name="mark",
            kind=Kind.MARK,
            meaning="Its mark, as pencilled on the reveal; no two alike in the house.",
            example="W1",
            required=True,
        ),
        Key(
            name="room",
            kind=Kind.TEXT,
            meaning="The room from which it is read.",
            example="Kitchen",
            left_out="not printed",
        ),
        Key(
            name="kind",
            kind=Kind.CHOICE,
            meaning="Window, door, or cased: a lined opening without a door.",
            example="window",
            required=True,
            choices=tuple(each.value for each in OpeningKind),
        ),
        Key(
            name="trim",
            kind=Kind.CHOICE,
            meaning="Which pieces surround it.",
            example="all-round",
            choices=tuple(each.value for each in Layout),
            left_out="all-round at a window, legs-and-head at a door or cased opening",
        ),
        *READING_KEYS,
        Key(
            name="lining_edge",
            kind=Kind.READING,
            meaning="Thickness of the reveal's edge that is seen.",
            example=19,
            left_out="not read",
            above=True,
            high=500.0,
        ),
        Key(
            name="faces",
            kind=Kind.COUNT,
            meaning="1, or 2 to trim both faces; face b is then the mirror of a.",
            example=2,
            default=1,
            left_out="1",
            low=1,
            high=2,
        ),
        Key(
            name="b",
            kind=Kind.TABLE,
            meaning="Face b's own readings, seen from its own side.",
            example={"top": 1187, "bottom": 1186, "left": 462, "right": 462},
            left_out="the mirror of face a",
            table=FACE_B,
        ),
        QUIRK,
        QUIRK_BAND,
        ARCHITRAVE,
        BOARD,
        HORN,
        METHOD,
        MITRES,
        TAP_ROOM,
        FLOOR_COVER,
        MAX_GAP,
        Key(
            name="raked",
            kind=Kind.FLAG,
            meaning="True when opposite sides are meant to differ.",
            example=False,
            default=False,
            left_out="false",
        ),
        Key(
            name="arch",
            kind=Kind.TABLE,
            meaning="An arched head over straight sides.",
            example={"rise": 150, "crown": 1350},
            left_out="a straight head",
            table=ARCH,
        ),
        Key(
            name="corners",
            kind=Kind.POINTS,
            meaning="Corners of another shape, across and up, in order round it.",
            example=[[0, 0], [900, 0], [900, 1400], [0, 1050]],
            left_out="four sides as read",
            low=-LONGEST_SIDE_MM,
            high=LONGEST_SIDE_MM,
        ),
        Key(
            name="sides",
            kind=Kind.READINGS,
            meaning="Sides of another shape, in order round it.",
            example=[900, 1400, 966, 1050],
            left_out="four sides as read",
            above=True,
            high=LONGEST_SIDE_MM,
        ),
        Key(
            name="angles",
            kind=Kind.ANGLES,
            meaning="Corners between those sides, inside the opening, in degrees.",
            example=[90, 90, 68.7, 111.3],
            left_out="not read",
            above=True,
            high=math.nextafter(360.0, 0.0),
        ),
        Key(
            name="nominal",
            kind=Kind.TABLE,
            meaning="Size on the drawing.",
            example={"width": 1194, "height": 894},
            left_out="none",
            table=NOMINAL,
        ),
        Key(
            name="batch",
            kind=Kind.TEXT,
            meaning="Name of a group of openings made alike.",
            example="Series K windows",
            left_out="what the marks tell: six or more that end alike behind a unit, or none",
        ),
        ACCEPT,
        AS_BUILT,
    ),
)
