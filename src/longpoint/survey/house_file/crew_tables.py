"""The keys of the crew."""

from typing import Final

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
        left_out=f"{default_min:g} minutes",
        high=LONGEST_MIN,
        unit="minutes",
        ours=True,
    )


MINUTES: Final = Table(
    title="the minutes of a reading",
    keys=tuple(
        _minutes(name, f"Minutes for {what}.", getattr(ASSUMED_CREW.minutes, name))
        for name, what in (
            ("proof", "proving the saw on a frame of offcuts"),
            ("diagonals", "both diagonals of an opening"),
            ("bevel", "one corner with a bevel gauge"),
            ("other_side", "the second width and the second height"),
            ("repeat", "the same reading once more"),
            ("stop_block", "setting a stop block for a pair"),
            ("straightedge", "a straightedge along the sides"),
        )
    ),
)

CREW: Final = Table(
    title="the crew",
    keys=(
        Key(
            name="walls",
            kind=Kind.CHOICE,
            meaning="New or old walls: how far out of square an opening is likely to be.",
            example="new",
            choices=tuple(each.value for each in WallAge),
            default=ASSUMED_CREW.walls.value,
            left_out="new",
        ),
        _minutes(
            "refit",
            "Minutes to take a misfit off, recut it and fit it again.",
            ASSUMED_CREW.refit_min,
        ),
        _minutes(
            "spoiled",
            "What the timber spoiled in a misfit is worth, in minutes.",
            ASSUMED_CREW.spoiled_min,
        ),
        _minutes(
            "batch_saves",
            "Minutes that cutting all in one batch saves at each opening.",
            ASSUMED_CREW.batch_saves_min,
        ),
        Key(
            name="stop_block",
            kind=Kind.FLAG,
            meaning="True when pairs are cut against a stop block.",
            example=False,
            default=ASSUMED_CREW.stop_block,
            left_out="false",
        ),
        Key(
            name="feeler",
            kind=Kind.LENGTH,
            meaning="Step of the feelers with which gaps are read.",
            example=ASSUMED_CREW.feeler_mm,
            default=ASSUMED_CREW.feeler_mm,
            left_out=f"{ASSUMED_CREW.feeler_mm:g} mm",
            above=True,
            high=1.0,
        ),
        Key(
            name="slips",
            kind=Kind.NUMBER,
            meaning="Pieces in a hundred that a slip at the saw or on the wall spoils; for spares.",
            example=2,
            left_out=f"{ASSUMED_SLIPS:g} in a hundred, and the order sheet says so",
            high=MOST_SLIPS,
            unit="pieces in a hundred",
            ours=True,
        ),
        Key(
            name="minutes",
            kind=Kind.TABLE,
            meaning="What each further reading takes.",
            example=MINUTES.example(),
            left_out="what is assumed of each",
            table=MINUTES,
        ),
    ),
)
