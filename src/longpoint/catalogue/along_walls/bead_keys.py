"""What a quad or cover bead asks for."""

from typing import Final

from longpoint.catalogue.along_walls.rail_keys import HIGHEST_MM, WALLS, WINDOWS
from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind

LONGEST_MM: Final = 20000.0
THICKEST_MM: Final = 100.0

BEAD_KEYS: Final = (
    WALLS,
    Key(
        name="height",
        kind=Kind.READING,
        meaning=say("From the floor up to its lower edge, where it does not lie on the floor."),
        example=2360,
        default=0.0,
        left_out=say("on the floor"),
        high=HIGHEST_MM,
    ),
    WINDOWS,
    Key(
        name="behind",
        kind=Kind.LENGTH,
        meaning=say("Thickness of what stands between the wall and the bead."),
        example=20,
        left_out=say("that of each wall's skirting"),
        high=THICKEST_MM,
    ),
    Key(
        name="lengths",
        kind=Kind.READINGS,
        meaning=say(
            "Plain lengths, square at both ends: instead of those of the room, "
            "beside them where walls are named."
        ),
        example=[1200, 860],
        left_out="none",
        above=True,
        high=LONGEST_MM,
    ),
    Key(
        name="at_trim",
        kind=Kind.CHOICE,
        meaning=say("How the bead ends at an architrave or plinth block."),
        example="square",
        choices=("square", "return"),
        default="square",
        left_out="square",
    ),
    Key(
        name="internal",
        kind=Kind.CHOICE,
        meaning=say("How two beads meet in an internal corner."),
        example="scribe",
        choices=("scribe", "mitre"),
        default="scribe",
        left_out="scribe",
    ),
)
