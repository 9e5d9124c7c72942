"""What a jamb lining asks for."""

from typing import Final

from longpoint.catalogue.reveals.extension_keys import depths_table
from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind

PACKING_MM: Final = 10.0
"""Left at each side for packers where no width is asked for; common practice, no source."""

MOST_MM: Final = 10_000.0


def _wanted(name: str, meaning: str, example: float, left_out: str) -> Key:
    return Key(
        name=name,
        kind=Kind.LENGTH,
        meaning=meaning,
        example=example,
        left_out=left_out,
        above=True,
        high=MOST_MM,
    )


ASKS: Final = (
    Key(
        name="rough_widths",
        kind=Kind.READINGS,
        meaning=say("Width of the rough opening at the bottom, in the middle and at the top."),
        example=[838, 836, 840],
        required=True,
        above=True,
        high=MOST_MM,
    ),
    Key(
        name="rough_heights",
        kind=Kind.READINGS,
        meaning=say(
            "Height of the rough opening at the left and at the right, from what the legs stand on."
        ),
        example=[2085, 2088],
        required=True,
        above=True,
        high=MOST_MM,
    ),
    Key(
        name="depths",
        kind=Kind.TABLE,
        meaning=say("Through the wall, from face to face, at the four corners."),
        example={"tl": 118, "tr": 120, "br": 119, "bl": 118},
        required=True,
        table=depths_table(
            say("Through the wall, from face to face,"), say("a depth of the wall at each corner")
        ),
    ),
    Key(
        name="lean",
        kind=Kind.READING,
        meaning=say(
            "How far the rough sides lean off plumb over their height, the worse of the two."
        ),
        example=4,
        default=0.0,
        left_out=say("taken as plumb"),
        high=200.0,
    ),
    _wanted(
        "between",
        say("Width wanted between the legs."),
        768,
        say("as wide as 10 at each side leaves"),
    ),
    _wanted(
        "under_head",
        say("Height wanted under the head, from the floor as it will be."),
        2043,
        say("as high as 10 over the head leaves"),
    ),
    Key(
        name="floor_cover",
        kind=Kind.LENGTH,
        meaning=say("Thickness still to be laid between what the legs stand on and the floor."),
        example=15,
        default=0.0,
        left_out=say("none: the floor is down"),
        high=200.0,
    ),
    Key(
        name="housing",
        kind=Kind.LENGTH,
        meaning=say("How deep the legs are let into the head (and sill piece)."),
        example=6,
        default=0.0,
        left_out=say("not at all: the head lies on the legs"),
        high=50.0,
    ),
    Key(
        name="horn",
        kind=Kind.LENGTH,
        meaning=say("How far the head runs past the legs' backs at each end."),
        example=0,
        default=0.0,
        left_out=say("not at all"),
        high=300.0,
    ),
    Key(
        name="sill",
        kind=Kind.FLAG,
        meaning=say("Whether a piece goes along the bottom too, as at a window."),
        example=False,
        default=False,
        left_out="no",
    ),
)
