"""The moisture that timber settles at in the air of a room."""

import math
from typing import Final

from longpoint.errors import QuantityError
from longpoint.speech.said import say

MIN_TEMPERATURE_C: Final = (30.0 - 32.0) / 1.8
"""Lowest row of the published table, 30 degF."""

MAX_TEMPERATURE_C: Final = (200.0 - 32.0) / 1.8
"""Highest row of the published table, 200 degF."""

MAX_HUMIDITY_PERCENT: Final = 95.0
"""Last column of the published table; beyond it the curve runs up too steeply to be of use."""


def equilibrium_moisture_percent(temperature_c: float, humidity_percent: float) -> float:
    """Return the moisture content that solid timber settles at in air that stays the same.

    It is a mean over species, good enough for work at the bench and not for physics. Boards such as
    MDF settle at other figures.

    Args:
        temperature_c: Air temperature, -1.1 to 93.3. [degC]
        humidity_percent: Relative humidity, 0 to 95. [%]

    Returns:
        Moisture content, weight of water over weight of dry wood. [%]

    Raises:
        QuantityError: Outside the range of the published table.

    Example:
        >>> round(equilibrium_moisture_percent(21.1, 50.0), 1)
        9.2
        >>> round(equilibrium_moisture_percent(21.1, 30.0), 1)
        6.2

    References:
        Wood Handbook, FPL-GTR-190 (2010), eq. 4-5 in its Celsius form; all four terms are of the
        second degree in temperature. Within 0.06 of each of the 209 cells of its table 4-2.
    """
    check_range(say("A temperature"), temperature_c, MIN_TEMPERATURE_C, MAX_TEMPERATURE_C, "degC")
    check_range(say("A humidity"), humidity_percent, 0.0, MAX_HUMIDITY_PERCENT, "%")
    t, h = temperature_c, humidity_percent / 100.0
    w = 349.0 + 1.29 * t + 0.0135 * t**2
    k = 0.805 + 0.000736 * t - 0.00000273 * t**2
    k1 = 6.27 - 0.00938 * t - 0.000303 * t**2
    k2 = 1.91 + 0.0407 * t - 0.000293 * t**2
    kh = k * h
    dissolved = kh / (1.0 - kh)
    bound = (k1 * kh + 2.0 * k1 * k2 * kh**2) / (1.0 + k1 * kh + k1 * k2 * kh**2)
    return 1800.0 / w * (dissolved + bound)


def check_range(what: str, value: float, least: float, most: float, unit: str) -> None:
    """Raise where a value can't be used.

    Args:
        what: The thing with its article, capital first.
        value: The value read.
        least: Least value accepted.
        most: Most accepted.
        unit: Its unit as printed.

    Raises:
        QuantityError: It lies outside, or is no number.
    """
    if math.isfinite(value) and least <= value <= most:
        return
    raise QuantityError(
        say("{what} of {value:g} {unit} was given.", what=what, value=value, unit=unit),
        say(
            "The figures on moisture hold from {least:.4g} to {most:.4g} {unit}.",
            least=least,
            most=most,
            unit=unit,
        ),
        say("Read it again, or leave the season out."),
    )
