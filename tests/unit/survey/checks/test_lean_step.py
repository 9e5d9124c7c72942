from random import Random

import pytest

from longpoint.errors import Finding, Severity
from longpoint.survey.checks.lean_step import (
    alarm_t,
    check_lean_step,
    largest_step,
    lean_mm_per_m,
)
from tests.drawn_openings import (
    batch_openings,
    exact_mm,
    house_of,
    opening_of,
    quadrilateral,
    readings_of,
)


def said(lean: float, seed: int = 3, units: int = 12) -> tuple[Finding, ...]:
    leans = dict.fromkeys((10, 11, 12), lean)
    drawn = batch_openings(Random(seed), units, leans_mm_per_m=leans)
    return check_lean_step(house_of(*drawn))


@pytest.mark.parametrize("lean_mm", [-6.0, 0.0, 4.0])
def test_the_lean_is_that_of_the_drawn_opening(lean_mm: float) -> None:
    corners = quadrilateral(width_mm=1200.0, height_mm=900.0, lean_mm=lean_mm)
    lengths = {place.value: mm for place, mm in exact_mm(corners).items()}
    # For a parallelogram the difference of the squared diagonals gives the lean exactly.
    assert lean_mm_per_m(opening_of("W1", readings_of(**lengths))) == pytest.approx(
        lean_mm / 0.9, rel=1e-4
    )


def test_a_lean_needs_both_diagonals() -> None:
    assert lean_mm_per_m(opening_of("W1", width=900, height=600, rising=1082)) is None


def test_windows_that_begin_to_lean_are_told_with_the_unit_where_it_began() -> None:
    (found,) = said(6.0)
    assert (found.code, found.severity) == ("lean-step", Severity.WARNING)
    assert "Unit 10" in found.read
    assert "right" in found.wrong


def test_a_lean_to_the_left_is_told_as_left() -> None:
    (found,) = said(-6.0)
    assert "to the left and stays" in found.wrong


def test_units_before_the_step_raise_no_alarm() -> None:
    assert not any(said(6.0, seed, units=9) for seed in range(20))


def test_five_units_are_too_few() -> None:
    assert not said(6.0, units=5)


def test_the_step_is_found_where_it_is() -> None:
    step = largest_step([0.1, -0.1, 0.0, 0.1, 0.0, 5.0, 5.1], 0.1)
    assert step is not None
    assert (step.begins, round(step.size, 2)) == (5, 5.03)


def test_noise_without_a_step_stays_under_the_alarm_99_times_in_100() -> None:
    rng = Random(8)
    rung = 0
    for _ in range(1000):
        step = largest_step([rng.gauss(0.0, 1.0) for _ in range(12)], 0.6)
        rung += step is not None and step.t > alarm_t(12)
    assert rung < 25
