"""What the reader sees of a value that the records name by a word."""

from collections.abc import Mapping
from typing import Final

from longpoint.speech.said import say

_SHOWN: Final[Mapping[str, str]] = {
    "left": say("left"),
    "right": say("right"),
    "top": say("top"),
    "bottom": say("bottom"),
    "head": say("head"),
    "inner": say("inner"),
    "outer": say("outer"),
    "near": say("near"),
    "far": say("far"),
    "rising": say("rising"),
    "falling": say("falling"),
    "width": say("width"),
    "height": say("height"),
    "offcut": say("offcut"),
    "heel": say("heel"),
    "toe": say("toe"),
    "middle width": say("middle width"),
    "middle height": say("middle height"),
    "saw": say("saw"),
    "single cuts": say("single cuts"),
    "readings": say("readings"),
    "tape": say("tape"),
    "marking and cutting to length": say("marking and cutting to length"),
    "face width": say("face width"),
    "bow of the timber": say("bow of the timber"),
    "shape taken for granted": say("shape taken for granted"),
    "bow of the reveal": say("bow of the reveal"),
    "thickness and lining": say("thickness and lining"),
    "carpenter": say("carpenter"),
    "painter": say("painter"),
    "passes": say("passes"),
    "FAILS": say("FAILS"),
    "no number": say("no number"),
    "not read": say("not read"),
    "held": say("held"),
    "told in the house file": say("told in the house file"),
    "published, read": say("published, read"),
    "from memory, no source read": say("from memory, no source read"),
    "common practice, no source": say("common practice, no source"),
    "lining's edge": say("lining's edge"),
    "packing between lining and stud": say("packing between lining and stud"),
    "board on the wall": say("board on the wall"),
    "stud beside a lining": say("stud beside a lining"),
    "depth of the studs": say("depth of the studs"),
    "stud to stud": say("stud to stud"),
    "nail to nail": say("nail to nail"),
    "first nail from an end or a mitre's point": say("first nail from an end or a mitre's point"),
    "spruce-pine-fir": say("spruce-pine-fir"),
}


def shown(value: str) -> str:
    """Return a value as it is shown: a word of ours said, anything else as it is.

    Example:
        >>> shown("left"), shown("OG57")
        ('left', 'OG57')
    """
    return _SHOWN.get(value, value)
