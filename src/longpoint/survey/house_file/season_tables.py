"""The keys of the seasons."""

from typing import Final

from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.season import DAMPEST, DRIEST, FITTING, Air, HouseSeasons

ASSUMED_SEASONS: Final = HouseSeasons(assumed=True)
ASSUMED_TEMPERATURE_C: Final = 20.0

AIR: Final = Table(
    title=say("the air"),
    keys=(
        Key(
            name="humidity",
            kind=Kind.NUMBER,
            meaning=say("Relative humidity, in percent."),
            example=55,
            required=True,
            low=1.0,
            high=99.0,
            unit="percent",
            ours=True,
        ),
        Key(
            name="temperature",
            kind=Kind.NUMBER,
            meaning=say("Temperature, in degrees Celsius."),
            example=18,
            default=ASSUMED_TEMPERATURE_C,
            left_out=say("20 degrees Celsius"),
            low=-20.0,
            high=50.0,
            unit=say("degrees Celsius"),
            ours=True,
        ),
    ),
)


def _air(name: str, meaning: str, assumed: Air) -> Key:
    return Key(
        name=name,
        kind=Kind.TABLE,
        meaning=meaning,
        example={"humidity": assumed.humidity_percent, "temperature": assumed.temperature_c},
        left_out=say(
            "{humidity_percent:g} percent at {temperature_c:g} degrees",
            humidity_percent=assumed.humidity_percent,
            temperature_c=assumed.temperature_c,
        ),
        table=AIR,
    )


SEASON: Final = Table(
    title=say("the seasons"),
    keys=(
        _air("fitting", say("Air in which the trim lies before it is fitted."), FITTING),
        Key(
            name="moisture",
            kind=Kind.NUMBER,
            meaning=(
                say(
                    "Moisture of the wood at fitting, read with a meter, in percent of "
                    "its dry weight; stands instead of fitting."
                )
            ),
            example=11,
            left_out=say("what the air at fitting gives"),
            low=3.0,
            high=30.0,
            unit="percent",
            ours=True,
        ),
        _air("driest", say("Air of the driest season."), DRIEST),
        _air("dampest", say("Air of the dampest season."), DAMPEST),
    ),
)
