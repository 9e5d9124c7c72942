"""What accuracy is worth on this job: what is cut again, in money, as things are and if better."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction

from longpoint.forecast.chances import Imagined
from longpoint.forecast.forecast_house import Outlook, forecast_house
from longpoint.forecast.records import HouseForecast
from longpoint.linear.port import LinearSolver
from longpoint.pieces.piece import Piece
from longpoint.pricing.money import Money, rounded
from longpoint.pricing.rates import Rates, Timber
from longpoint.pricing.timber import stick_prices
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house import House
from longpoint.survey.instruments import TapeClass


class Means(StrEnum):
    """With what the job is done."""

    AS_IT_IS = "as it is"
    SAW_PROVED = "saw proved"
    BETTER_TAPE = "tape of class I"


@dataclass(frozen=True, slots=True, kw_only=True)
class Recuts:
    """What is cut again when the house is cut in one batch.

    Attributes:
        means: With what it is done.
        misfits: Sets that won't fit, on average of the imagined houses; one piece each.
        cost: What taking them off and cutting one piece again costs, before margin and tax.
    """

    means: Means
    misfits: float
    cost: Money


def misfits_of(forecast: HouseForecast) -> Mapping[str, float]:
    """Return how many sets of each profile don't fit, on average."""
    return {
        each.profile: math.fsum(count * chance for count, chance in enumerate(each.chances))
        for each in forecast.by_profile
    }


def recuts(
    means: Means, forecast: HouseForecast, pieces: Sequence[Piece], house: House, rates: Rates
) -> Recuts:
    """Return what is cut again under a forecast.

    Args:
        means: With what the job is done.
        forecast: Of the house done so.
        pieces: Its pieces; one piece of a misfit is cut again, of the mean length of its profile.
        house: Its sticks, and the minutes a refit takes.
        rates: The price of an hour.
    """
    each_refit = Fraction(house.crew.refit_min) / 60 * rates.hour.exact
    found = misfits_of(forecast)
    cost = sum(
        (
            Fraction(count) * (each_refit + _piece_worth(profile, pieces, house, rates))
            for profile, count in found.items()
        ),
        Fraction(0),
    )
    return Recuts(
        means=means, misfits=math.fsum(found.values()), cost=rounded(cost, rates.currency)
    )


def price_of_accuracy(
    house: House,
    shapes: Shapes,
    held: frozenset[str],
    pieces: Sequence[Piece],
    outlook: Outlook,
    imagined: Imagined,
    rates: Rates,
    solver: LinearSolver | None = None,
) -> tuple[Recuts, ...]:
    """Return what is cut again as things are, with the saw proved, and with a better tape.

    Args:
        house: The house as read.
        shapes: Its fitted shapes.
        held: Marks in doubt.
        pieces: Its pieces.
        outlook: Its forecast as things are.
        imagined: By whom and how often the house is imagined.
        rates: The crew's rates.
        solver: As for the forecast.

    Returns:
        As it is first; no saw proved where it is already, no tape where all are of class I.
    """
    found = [recuts(Means.AS_IT_IS, outlook.forecast, pieces, house, rates)]
    if outlook.if_proved is not None:
        found.append(recuts(Means.SAW_PROVED, outlook.if_proved, pieces, house, rates))
    if any(tape.tape_class is not TapeClass.I for tape in house.tapes):
        finer = replace(
            house,
            tapes=tuple(
                replace(tape, tape_class=TapeClass.I, max_error_mm=None) for tape in house.tapes
            ),
        )
        fitted = replace(shapes, openings=fit_openings(finer)[0])
        other = forecast_house(finer, fitted, held, imagined, solver=solver)
        found.append(recuts(Means.BETTER_TAPE, other.forecast, pieces, house, rates))
    return tuple(found)


def _piece_worth(profile: str, pieces: Sequence[Piece], house: House, rates: Rates) -> Fraction:
    """Return what the timber of one piece costs: its mean length at the cheapest price by length.

    Nought where the client buys it, or no stick of the profile has a price.
    """
    lengths = [piece.long_mm for piece in pieces if piece.profile == profile]
    by_mm = [
        Fraction(price) / Fraction(length_mm)
        for (name, length_mm), price in stick_prices(house).items()
        if name == profile
    ]
    if rates.timber is Timber.CLIENTS or not lengths or not by_mm:
        return Fraction(0)
    return Fraction(math.fsum(lengths) / len(lengths)) * min(by_mm)
