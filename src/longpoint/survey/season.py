"""The air that the trim meets: on the day it is fitted, and in the driest and dampest season."""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True, kw_only=True)
class Air:
    """Air as it stands in the house.

    Attributes:
        humidity_percent: Relative humidity. [%]
        temperature_c: Temperature. [degrees Celsius]
    """

    humidity_percent: float
    temperature_c: float = 20.0


FITTING: Final = Air(humidity_percent=55.0)
DRIEST: Final = Air(humidity_percent=35.0)
DAMPEST: Final = Air(humidity_percent=65.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseSeasons:
    """How dry and how damp the house gets around what was fitted in it.

    Attributes:
        fitting: Air in which the trim lies and is fitted; None when the wood was read instead.
        fitting_moisture_percent: Moisture of the wood at fitting, read with a meter, as a share
            of its dry weight; None when the air stands for it. [%]
        driest: Air of the driest season.
        dampest: Air of the dampest season.
        assumed: True when the file tells nothing of the seasons.
    """

    fitting: Air | None = FITTING
    fitting_moisture_percent: float | None = None
    driest: Air = DRIEST
    dampest: Air = DAMPEST
    assumed: bool = False
