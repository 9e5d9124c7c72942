"""What a splayed lining asks for."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind

MOST_SPLAY_DEG: Final = 60.0
"""Ours: past this a board is a shelf rather than a reveal, and the depth no longer fixes it."""


def _splay(name: str, what: str, left_out: str) -> Key:
    return Key(
        name=name,
        kind=Kind.ANGLE_READING,
        meaning=say(
            "How far the {what} turns off square to the wall, the reveal wider at the room.",
            what=what,
        ),
        example=12.5,
        left_out=left_out,
        high=MOST_SPLAY_DEG,
        ours=True,
    )


def _size(name: str, meaning: str, example: float, left_out: str) -> Key:
    return Key(
        name=name,
        kind=Kind.READING,
        meaning=meaning,
        example=example,
        left_out=left_out,
        above=True,
        high=6000.0,
    )


_FROM_WIDTHS: Final = say("worked out from the widths at the wall and at the frame")

ASKS: Final = (
    Key(
        name="depth",
        kind=Kind.READING,
        meaning=say("From the wall's face to the frame, square to the wall."),
        example=140,
        required=True,
        above=True,
        high=1000.0,
    ),
    _size("width", say("Between the boards' faces at the wall."), 900, say("the opening named")),
    _size(
        "height", say("Between head and sill faces at the wall."), 1200, say("the opening named")
    ),
    _size("back_width", say("Between the boards' faces at the frame."), 838, say("not read")),
    _size("back_height", say("Between head and sill faces at the frame."), 1138, say("not read")),
    _splay("splay_left", say("left board"), _FROM_WIDTHS),
    _splay("splay_right", say("right board"), _FROM_WIDTHS),
    _splay("splay_head", "head", say("from the two heights; without them square to the wall")),
    _splay("splay_sill", say("sill board"), say("square to the wall")),
    Key(
        name="sill",
        kind=Kind.FLAG,
        meaning=say("Whether a board goes along the bottom too."),
        example=False,
        default=False,
        left_out=say("no: the legs stand on the window board, level through the wall"),
    ),
    Key(
        name="joint",
        kind=Kind.CHOICE,
        meaning=say(
            "mitre: faces and backs meet in one plane; butt: head and sill "
            "board over the legs' ends."
        ),
        example="mitre",
        default="mitre",
        choices=("butt", "mitre"),
        left_out="mitre",
    ),
)
