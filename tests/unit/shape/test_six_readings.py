from collections.abc import Callable
from random import Random

import pytest

from longpoint.shape.opening_fit import fit_opening
from longpoint.shape.six_readings import SIX, normalised_misclosure, top_by_the_others_mm
from longpoint.survey.instruments import Tape
from longpoint.survey.readings import Place
from tests.drawn_openings import (
    NEW_LEAN_SD_MM,
    Corners,
    drawn_door,
    drawn_window,
    exact_mm,
    quadrilateral,
    read,
)

TAPE = Tape(name="T1")


@pytest.mark.parametrize("draw", [drawn_window, drawn_door])
def test_the_top_is_what_the_other_five_say(draw: Callable[[Random, float], Corners]) -> None:
    rng = Random(6)
    for _ in range(100):
        lengths = exact_mm(draw(rng, NEW_LEAN_SD_MM))
        assert top_by_the_others_mm(lengths) == pytest.approx(lengths[Place.TOP], abs=1e-6)


@pytest.mark.parametrize("draw", [drawn_window, drawn_door])
def test_it_agrees_with_the_fit_where_both_can_tell(
    draw: Callable[[Random, float], Corners],
) -> None:
    rng = Random(7)
    for _ in range(100):
        readings = read(draw(rng, NEW_LEAN_SD_MM), rng)
        lengths = {r.place: r.value_mm for r in readings.lengths}
        found = normalised_misclosure(lengths, dict.fromkeys(SIX, TAPE.private_u_mm()))
        misclosure = fit_opening("W1", readings, TAPE).fitted.misclosure
        assert misclosure is not None
        assert found == pytest.approx(misclosure.normalised, abs=0.05)


def test_a_diagonal_that_its_sides_can_not_span_gives_nothing() -> None:
    lengths = exact_mm(quadrilateral(width_mm=900.0, height_mm=600.0))
    lengths[Place.RISING] = 1600.0
    assert top_by_the_others_mm(lengths) is None
    assert normalised_misclosure(lengths, dict.fromkeys(SIX, 0.5)) is None
