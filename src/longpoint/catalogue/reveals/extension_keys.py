"""What an extension lining asks for."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table

CORNERS: Final = ("bl", "br", "tr", "tl")


def depths_table(what: str, title: str = "a depth at each corner") -> Table:
    """Return the table of a depth at each corner.

    Args:
        what: What each depth is: "From the lining's edge to the wall's face".
        title: What the table is called.
    """
    wheres = {
        "tl": say("top left"),
        "tr": say("top right"),
        "br": say("bottom right"),
        "bl": say("bottom left"),
    }
    keys = tuple(
        _depth(name, say("{what} at the {where}.", what=what, where=where))
        for name, where in wheres.items()
    )
    return Table(title=title, keys=keys)


def _depth(name: str, meaning: str) -> Key:
    return Key(
        name=name,
        kind=Kind.READING,
        meaning=meaning,
        example=95,
        required=True,
        high=600.0,
    )


ASKS: Final = (
    Key(
        name="depths",
        kind=Kind.TABLE,
        meaning=say("From the lining's edge to the wall's face at the four corners."),
        example={"tl": 92, "tr": 95.5, "br": 95, "bl": 92},
        left_out=say("taken from the opening's plane, where it sits shy"),
        table=depths_table(say("From the lining's edge to the wall's face")),
    ),
    Key(
        name="step",
        kind=Kind.LENGTH,
        meaning=say(
            "How far the new face is set back from the lining's, so that the "
            "joint is a small step instead of a line that shows."
        ),
        example=2,
        default=0.0,
        left_out="flush",
        high=25.0,
    ),
    Key(
        name="set_back",
        kind=Kind.LENGTH,
        meaning=say("How far the new edge stays behind the wall's face."),
        example=0.5,
        default=0.0,
        left_out=say("flush with the wall's face"),
        high=10.0,
    ),
    Key(
        name="joint",
        kind=Kind.CHOICE,
        meaning=say("butt: head and sill piece over the legs' ends; mitre: all four mitred."),
        example="butt",
        default="butt",
        choices=("butt", "mitre"),
        left_out="butt",
    ),
    Key(
        name="face",
        kind=Kind.CHOICE,
        meaning=say("Which face of an opening that is trimmed on both."),
        example="a",
        default="a",
        choices=("a", "b"),
        left_out="a",
    ),
)
