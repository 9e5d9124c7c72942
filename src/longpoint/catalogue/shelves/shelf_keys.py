"""What shelves in an alcove ask for."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table

LONGEST_MM: Final = 6000.0

USUAL_GAP_MM: Final = 1.0
"""Left open at each end where nothing is written; common practice, no source."""

_CORNER: Final = say("as told by a diagonal, or both cheeks alike")

SHELF: Final = Table(
    title=say("a shelf"),
    keys=(
        Key(
            name="height",
            kind=Kind.LENGTH,
            meaning=say("How high it is; it only stands on the sheet."),
            example=450,
            left_out=say("not printed"),
            high=LONGEST_MM,
        ),
        Key(
            name="back",
            kind=Kind.READING,
            meaning=say("Width of the alcove along its back wall, at that height."),
            example=904,
            required=True,
            above=True,
            high=LONGEST_MM,
        ),
        Key(
            name="front",
            kind=Kind.READING,
            meaning=say("Width of the alcove at its front, at that height."),
            example=912,
            required=True,
            above=True,
            high=LONGEST_MM,
        ),
        Key(
            name="left_corner",
            kind=Kind.ANGLE_READING,
            meaning=say(
                "Angle in the back left corner, by bevel gauge; over 90 opens to the front."
            ),
            example=91,
            left_out=_CORNER,
            low=60,
            high=120,
            ours=True,
        ),
        Key(
            name="right_corner",
            kind=Kind.ANGLE_READING,
            meaning=say("Angle in the back right corner, by bevel gauge."),
            example=90.5,
            left_out=_CORNER,
            low=60,
            high=120,
            ours=True,
        ),
        Key(
            name="from_back_left",
            kind=Kind.READING,
            meaning=say("Diagonal from the back left corner to the right end of the front."),
            example=956.5,
            left_out=say("not read"),
            above=True,
            high=LONGEST_MM,
        ),
        Key(
            name="from_back_right",
            kind=Kind.READING,
            meaning=say("Diagonal from the back right corner to the left end of the front."),
            example=958,
            left_out=say("not read"),
            above=True,
            high=LONGEST_MM,
        ),
    ),
)

SHELF_KEYS: Final = (
    Key(
        name="depth",
        kind=Kind.READING,
        meaning=say(
            "From the back wall to the line on which the fronts were read, square to the back."
        ),
        example=300,
        left_out=say("as deep as the board"),
        above=True,
        high=LONGEST_MM,
    ),
    Key(
        name="gap",
        kind=Kind.LENGTH,
        meaning=say("Left open at each end, along the shelf."),
        example=1,
        default=USUAL_GAP_MM,
        left_out=say("1, common practice"),
        high=50,
    ),
    Key(
        name="shelves",
        kind=Kind.TABLES,
        meaning=say("The alcove at the height of each shelf."),
        example=[{"height": 450, "back": 904, "front": 912, "left_corner": 91}],
        required=True,
        table=SHELF,
    ),
)
