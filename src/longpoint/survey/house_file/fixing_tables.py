"""The keys of nails and of the wall behind the trim."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.fixing import FixingSetup
from longpoint.survey.house import Dialect
from longpoint.survey.house_file.keys import Key, Kind, Table

ASSUMED_FIXING: Final = FixingSetup(assumed=True)

FRAME_WOODS: Final = (
    say("Douglas fir-larch"),
    say("eastern white pine"),
    "hem-fir",
    say("mixed oak"),
    say("red maple"),
    say("red oak"),
    "redwood",
    say("southern pine"),
    "spruce-pine-fir",
    say("western cedars"),
)
"""Timbers whose density a nail's hold is compared by; `fixing/withdrawal` gives the figures."""

NAIL_LENGTH: Final = Key(
    name="nails",
    kind=Kind.LENGTH,
    meaning=say("Length of a nail."),
    example=50,
    above=True,
    low=5.0,
    high=150.0,
    ours=True,
)
NAIL_DIAMETER: Final = Key(
    name="nails",
    kind=Kind.LENGTH,
    meaning=say("Diameter of a nail."),
    example=1.6,
    above=True,
    low=0.3,
    high=6.0,
    ours=True,
)


def _thickness(name: str, meaning: str, example: float, left_out: str, high: float) -> Key:
    return Key(
        name=name,
        kind=Kind.LENGTH,
        meaning=meaning,
        example=example,
        left_out=left_out,
        above=name != "packing",
        high=high,
        ours=True,
    )


FIXING: Final = Table(
    title=say("the fixing"),
    keys=(
        Key(
            name="country",
            kind=Kind.CHOICE,
            meaning=say("Whose building customs and cable rule hold."),
            example="uk",
            choices=tuple(each.value for each in Dialect),
            left_out=say("that of the dialect"),
        ),
        Key(
            name="nails",
            kind=Kind.CODES,
            meaning=say(
                "Nails the crew has, each as gauge x length, with x diameter "
                "where the box gives it."
            ),
            example=[say("16 x 50"), say("18 x 32"), say("15 x 64 x 1.8")],
            left_out=say("chosen among the usual lengths"),
        ),
        _thickness(
            "lining",
            say("Thickness of the linings' edge, where an opening gives no lining_edge."),
            19,
            say("19 mm; common practice, no source"),
            80.0,
        ),
        _thickness(
            "packing",
            say("Room between lining and stud."),
            10,
            say("10 mm; common practice, no source"),
            60.0,
        ),
        _thickness(
            "board",
            say("Thickness of the board on the wall."),
            12.5,
            say("as usual in the country"),
            80.0,
        ),
        _thickness(
            "stud_face",
            say("Width of the stud, or of the studs together, beside a lining."),
            38,
            say("one stud as usual in the country"),
            200.0,
        ),
        _thickness(
            "stud_depth", say("How deep the studs are."), 63, say("as usual in the country"), 400.0
        ),
        _thickness(
            "stud_spacing", say("From stud to stud."), 600, say("as usual in the country"), 1500.0
        ),
        _thickness(
            "spacing",
            say("From nail to nail along a piece."),
            300,
            say("300 mm; common practice, no source"),
            1000.0,
        ),
        _thickness(
            "first",
            say("First nail from the end of a piece or the point of a mitre."),
            50,
            say("50 mm; common practice, no source"),
            300.0,
        ),
        Key(
            name="frame_wood",
            kind=Kind.CHOICE,
            meaning=say("Timber of the studs, for comparing holds."),
            example="spruce-pine-fir",
            choices=FRAME_WOODS,
            left_out="spruce-pine-fir",
        ),
        Key(
            name="built",
            kind=Kind.COUNT,
            meaning=say("Year the house was built, for old paint and old boards."),
            example=1962,
            left_out=say("not known, so both are warned of"),
            low=1000.0,
            high=3000.0,
        ),
    ),
)
