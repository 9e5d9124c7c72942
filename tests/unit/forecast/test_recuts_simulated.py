"""How many pieces are cut again, against houses gone through one by one with dice."""

import random
from dataclasses import dataclass

import pytest

from longpoint.forecast.budget.records import ErrorBudget
from longpoint.forecast.records import HouseForecast, ProfileMisfits
from longpoint.forecast.recut_counts import recut_counts
from longpoint.survey.crew import Crew
from tests.random_sticks import architrave_piece

pytestmark = pytest.mark.no_cover

HOUSES = 20_000


@dataclass(frozen=True, kw_only=True)
class Case:
    """Chances of 0, 1, ... sets that don't fit, how many pieces, and slips in a hundred."""

    misfits: tuple[float, ...]
    pieces: int
    slips: float


CASES = (
    Case(misfits=(1.0,), pieces=150, slips=1.0),
    Case(misfits=(0.5, 0.1, 0.1, 0.3), pieces=9, slips=0.0),
    Case(misfits=(0.6, 0.25, 0.1, 0.05), pieces=60, slips=2.0),
    Case(misfits=(0.2, 0.2, 0.2, 0.2, 0.2), pieces=12, slips=10.0),
)


def forecast_of(misfits: tuple[float, ...]) -> HouseForecast:
    return HouseForecast(
        faces=(),
        all_fit=misfits[0],
        misfits_mean=0.0,
        misfits_p90=0,
        draws=HOUSES,
        seed=0,
        budget=ErrorBudget(lines=()),
        by_profile=(ProfileMisfits(profile="OG", chances=misfits),),
    )


def cut_again(case: Case, dice: random.Random) -> int:
    """Go through one house: which sets miss, then each piece by itself."""
    misses = dice.choices(range(len(case.misfits)), weights=case.misfits)[0]
    return misses + sum(dice.random() * 100.0 < case.slips for _ in range(case.pieces))


@pytest.mark.parametrize("case", CASES)
def test_nine_houses_in_ten_get_by_with_the_spares_and_fewer_would_not_do(case: Case) -> None:
    dice = random.Random(20)
    seen = [cut_again(case, dice) for _ in range(HOUSES)]
    pieces = tuple(architrave_piece(f"W{n}-head", 900.0, 45, 45) for n in range(case.pieces))
    (count,) = recut_counts(pieces, Crew(slips=case.slips), forecast_of(case.misfits))
    enough = sum(number <= count.p90 for number in seen) / HOUSES
    with_one_less = sum(number < count.p90 for number in seen) / HOUSES
    doubt = 4.0 * (0.9 * 0.1 / HOUSES) ** 0.5
    assert enough >= 0.9 - doubt
    assert with_one_less < 0.9 + doubt
