import math
import random

import pytest

from longpoint.forecast.season.chance import (
    HUMIDITY_U_PERCENT,
    REACHED_SHARES,
    chance_over,
    lost_percents,
)
from longpoint.forecast.season.emc import equilibrium_moisture_percent

SWINGS = lost_percents(20.0, 35.0, 11.0, 1.0)
HELD = (0.2, 0.7)


def gap_mm(flat_share: float) -> float:
    return 0.15 + 0.15 * flat_share


def drawn_chance(limit_mm: float, draws: int) -> float:
    """Return the same chance by drawing every unknown."""
    dice = random.Random(20)
    over = 0
    for _ in range(draws):
        flat = dice.uniform(0.0, 90.0)
        share = dice.uniform(*REACHED_SHARES) * (1.0 - dice.uniform(*HELD))
        air = equilibrium_moisture_percent(20.0, dice.gauss(35.0, HUMIDITY_U_PERCENT))
        lost = dice.gauss(11.0, 1.0) - air
        over += gap_mm(flat_share_at(flat)) * share * abs(lost) > limit_mm
    return over / draws


def flat_share_at(angle_deg: float) -> float:
    """Return how flat a board is sawn whose rings lie at an angle."""
    return (1.0 - math.cos(2.0 * math.radians(angle_deg))) / 2.0


@pytest.mark.parametrize("limit_mm", [0.2, 0.4, 0.6])
def test_it_agrees_with_drawing(limit_mm: float) -> None:
    # 20 000 draws leave a standard uncertainty of at most 0.0036.
    found = chance_over(limit_mm, gap_mm, HELD, SWINGS)
    assert found == pytest.approx(drawn_chance(limit_mm, 20_000), abs=0.012)


def test_a_wider_limit_is_passed_less_often() -> None:
    found = [chance_over(limit / 10.0, gap_mm, HELD, SWINGS) for limit in range(12)]
    assert found == sorted(found, reverse=True)
    assert found[0] > 0.99


def test_holding_more_helps() -> None:
    assert chance_over(0.4, gap_mm, (0.6, 0.9), SWINGS) < chance_over(0.4, gap_mm, HELD, SWINGS)


def test_a_joint_that_never_opens_is_never_over() -> None:
    assert chance_over(0.0, lambda _: 0.0, HELD, SWINGS) == 0.0


def test_what_is_known_of_the_timber_leaves_the_air_alone_unknown() -> None:
    assert len(set(lost_percents(20.0, 50.0, 9.0, 0.0))) < len(
        set(lost_percents(20.0, 50.0, 9.0, 1.0))
    )


def test_air_so_damp_that_no_figure_covers_it_is_cut_off_at_the_last_one() -> None:
    most = equilibrium_moisture_percent(20.0, 95.0)
    assert min(lost_percents(20.0, 94.0, 11.0, 0.0)) == pytest.approx(11.0 - most)
