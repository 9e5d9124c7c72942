"""The keys of what was written down of a set once it was up."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table

WIDEST_GAP_MM: Final = 30.0
WIDEST_QUIRK_READ_MM: Final = 100.0

CORNERS: Final = {
    "bl": say("bottom left"),
    "br": say("bottom right"),
    "tr": say("top right"),
    "tl": say("top left"),
}
"""Corners in the order of an opening."""

GAPS: Final = Table(
    title=say("the gaps"),
    keys=tuple(
        Key(
            name=name,
            kind=Kind.HEEL_TOE,
            meaning=say(
                "{where}: open at the heel, at the toe; less than 0: it bound.",
                where=where.capitalize(),
            ),
            example=[0.35, 0],
            left_out=say("not read"),
            low=-WIDEST_GAP_MM,
            high=WIDEST_GAP_MM,
        )
        for name, where in CORNERS.items()
    ),
)

QUIRKS: Final = Table(
    title=say("the quirks read"),
    keys=tuple(
        Key(
            name=name,
            kind=Kind.ALONG_SIDE,
            meaning=say(
                "{side}, {run}: start, middle and end; or both ends; or the middle alone.",
                side=side,
                run=run,
            ),
            example=[5, 5.5, 5],
            left_out=say("not read"),
            low=-WIDEST_QUIRK_READ_MM,
            high=WIDEST_QUIRK_READ_MM,
        )
        for name, side, run in (
            ("head", "Head", say("from right to left")),
            ("left", say("Left leg"), "downwards"),
            ("right", say("Right leg"), "upwards"),
            ("sill", say("Sill piece"), say("from left to right")),
        )
    ),
)

STEPS: Final = Table(
    title=say("the steps"),
    keys=tuple(
        Key(
            name=name,
            kind=Kind.SPOT,
            meaning=say(
                "{where}: how far the two faces stand apart.",
                where=where.capitalize(),
            ),
            example=0.2,
            left_out=say("not read"),
            high=WIDEST_GAP_MM,
        )
        for name, where in CORNERS.items()
    ),
)

AS_BUILT_TABLE: Final = Table(
    title=say("a set as built"),
    keys=(
        Key(
            name="gaps",
            kind=Kind.TABLE,
            meaning=say("Gap of each mitre before filling, noughts too."),
            example={"bl": [0.35, 0], "br": [0.45, 0], "tr": [0.1, "?"], "tl": [0, 0]},
            left_out=say("not read"),
            table=GAPS,
        ),
        Key(
            name="quirks",
            kind=Kind.TABLE,
            meaning=say("Quirk found along each side, going round anticlockwise."),
            example={"left": [5, 5.5, 5], "head": [5, 4.5], "right": 5},
            left_out=say("not read"),
            table=QUIRKS,
        ),
        Key(
            name="steps",
            kind=Kind.TABLE,
            meaning=say("Step between the faces at each mitre."),
            example={"bl": 0.2},
            left_out=say("not read"),
            table=STEPS,
        ),
    ),
)

AS_BUILT: Final = Key(
    name="as_built",
    kind=Kind.TABLE,
    meaning=say('What the set showed once it was up; "?" where nothing was read.'),
    example={"gaps": {"bl": [0.35, 0], "br": [0.45, "?"]}, "quirks": {"left": [5, 5.5, 5]}},
    left_out=say("nothing is learned from it"),
    table=AS_BUILT_TABLE,
    apart=True,
)
