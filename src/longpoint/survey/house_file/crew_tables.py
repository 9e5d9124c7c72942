"""The keys of the crew."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.crew import ASSUMED_SLIPS, Crew, WallAge
from longpoint.survey.house_file.keys import Key, Kind, Table

ASSUMED_CREW: Final = Crew(assumed=True)
LONGEST_MIN: Final = 600.0
"""No refit and no reading takes longer than ten hours; ours."""

MOST_SLIPS: Final = 50.0
"""A crew that spoils more than every other piece has misread the key; ours."""


def _minutes(name: str, meaning: str, default_min: float) -> Key:
    return Key(
        name=name,
        kind=Kind.NUMBER,
        meaning=meaning,
        example=default_min,
        default=default_min,
        left_out=say("{default_min:g} minutes", default_min=default_min),
        high=LONGEST_MIN,
        unit="minutes",
        ours=True,
    )


MINUTES: Final = Table(
    title=say("the minutes of a reading"),
    keys=tuple(
        _minutes(name, say("Minutes for {what}.", what=what), getattr(ASSUMED_CREW.minutes, name))
        for name, what in (
            ("proof", say("proving the saw on a frame of offcuts")),
            ("diagonals", say("both diagonals of an opening")),
            ("bevel", say("one corner with a bevel gauge")),
            ("other_side", say("the second width and the second height")),
            ("repeat", say("the same reading once more")),
            ("stop_block", say("setting a stop block for a pair")),
            ("straightedge", say("a straightedge along the sides")),
        )
    ),
)

CREW: Final = Table(
    title=say("the crew"),
    keys=(
        Key(
            name="walls",
            kind=Kind.CHOICE,
            meaning=say("New or old walls: how far out of square an opening is likely to be."),
            example="new",
            choices=tuple(each.value for each in WallAge),
            default=ASSUMED_CREW.walls.value,
            left_out="new",
        ),
        _minutes(
            "refit",
            say("Minutes to take a misfit off, recut it and fit it again."),
            ASSUMED_CREW.refit_min,
        ),
        _minutes(
            "spoiled",
            say("What the timber spoiled in a misfit is worth, in minutes."),
            ASSUMED_CREW.spoiled_min,
        ),
        _minutes(
            "batch_saves",
            say("Minutes that cutting all in one batch saves at each opening."),
            ASSUMED_CREW.batch_saves_min,
        ),
        Key(
            name="stop_block",
            kind=Kind.FLAG,
            meaning=say("True when pairs are cut against a stop block."),
            example=False,
            default=ASSUMED_CREW.stop_block,
            left_out="false",
        ),
        Key(
            name="feeler",
            kind=Kind.LENGTH,
            meaning=say("Step of the feelers with which gaps are read."),
            example=ASSUMED_CREW.feeler_mm,
            default=ASSUMED_CREW.feeler_mm,
            left_out=say("{feeler_mm:g} mm", feeler_mm=ASSUMED_CREW.feeler_mm),
            above=True,
            high=1.0,
        ),
        Key(
            name="slips",
            kind=Kind.NUMBER,
            meaning=say(
                "Pieces in a hundred that a slip at the saw or on the wall spoils; for spares."
            ),
            example=2,
            left_out=say(
                "{assumed_slips:g} in a hundred, and the order sheet says so",
                assumed_slips=ASSUMED_SLIPS,
            ),
            high=MOST_SLIPS,
            unit=say("pieces in a hundred"),
            ours=True,
        ),
        Key(
            name="minutes",
            kind=Kind.TABLE,
            meaning=say("What each further reading takes."),
            example=MINUTES.example(),
            left_out=say("what is assumed of each"),
            table=MINUTES,
        ),
    ),
)
