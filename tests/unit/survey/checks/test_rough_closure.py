from collections.abc import Callable
from random import Random

import pytest

from longpoint.survey.checks.rough_closure import rough_misclosure_mm
from longpoint.survey.readings import Place
from tests.drawn_openings import NEW_LEAN_SD_MM, Corners, drawn_door, drawn_window, exact_mm


@pytest.mark.parametrize("draw", [drawn_window, drawn_door])
def test_exact_readings_close_within_hundredths(
    draw: Callable[[Random, float], Corners],
) -> None:
    rng = Random(11)
    for _ in range(200):
        found = rough_misclosure_mm(dict(exact_mm(draw(rng, NEW_LEAN_SD_MM))))
        assert found == pytest.approx(0.0, abs=0.03)


def test_a_diagonal_read_10_short_misses_by_10() -> None:
    lengths = exact_mm(drawn_window(Random(3), 0.0))
    lengths[Place.RISING] -= 10.0
    assert rough_misclosure_mm(dict(lengths)) == pytest.approx(10.0, abs=0.2)


def test_five_readings_have_nothing_to_miss() -> None:
    lengths: dict[Place, float | None] = dict(exact_mm(drawn_window(Random(3), 0.0)))
    lengths[Place.FALLING] = None
    assert rough_misclosure_mm(lengths) is None
