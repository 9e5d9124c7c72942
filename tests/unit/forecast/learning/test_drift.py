import re
from collections.abc import Iterator
from pathlib import Path
from random import Random

import pytest
from scipy import stats

from longpoint.forecast.learning.drift import Drift, DriftKind, alarm_after, drift, first_drift

pytestmark = pytest.mark.no_cover

PAGE = Path(__file__).parents[4] / "docs" / "explanation" / "learning.md"

LEVEL = (0.1, -0.2, 0.0, 0.2, -0.1, 0.1, 0.0, -0.1, 0.2)


def lines(
    draw: Random, count: int, units: int, at: int, step: float, slope: float
) -> Iterator[list[float]]:
    """Lines of normal noise that step by so much, or begin to rise, from a unit on."""
    for _ in range(count):
        yield [
            draw.gauss(0.0, 1.0) + (step + slope * (unit - at + 1) if unit >= at else 0.0)
            for unit in range(units)
        ]


def told(found: list[Drift | None], at: int, by: int) -> float:
    return sum(x is not None and at <= x.told < by for x in found) / len(found)


def false_alarms(seed: int, count: int, units: int) -> float:
    made = lines(Random(seed), count, units, units, 0.0, 0.0)
    return sum(first_drift(line, 0.0) is not None for line in made) / count


@pytest.mark.parametrize("step", [3.0, -3.0])
def test_a_step_is_told_with_its_size_and_where_it_began(step: float) -> None:
    found = drift([*LEVEL, step, step + 0.1, step - 0.1], 0.1)
    assert found is not None
    assert (found.kind, found.begins, found.told) == (DriftKind.STEP, 9, 11)
    assert found.size == pytest.approx(step, abs=0.1)


def test_a_ramp_is_told_as_a_ramp() -> None:
    found = drift([*LEVEL, 1.0, 2.0, 3.0, 4.0], 0.1)
    assert found is not None
    assert (found.kind, found.begins) == (DriftKind.RAMP, 9)
    assert found.size == pytest.approx(4.0, abs=0.2)


def test_the_ramp_is_that_of_an_independent_library() -> None:
    values = [*LEVEL, 1.0, 2.1, 2.9, 4.2]
    found = drift(values, 0.0)
    assert found is not None
    assert found.kind is DriftKind.RAMP
    fit = stats.linregress([max(0, n - found.begins + 1) for n in range(len(values))], values)
    assert found.t == pytest.approx(abs(fit.slope / fit.stderr))
    assert found.size == pytest.approx(fit.slope * (len(values) - found.begins))


def test_less_than_readings_can_tell_is_no_drift() -> None:
    line = [*LEVEL, 1.0, 1.1, 0.9]
    assert first_drift(line, 0.1) is not None
    assert first_drift(line, 1.0) is None


def test_before_the_sixth_unit_nothing_is_told() -> None:
    assert drift([0.0, 0.0, 0.0, 9.0, 9.0], 0.1) is None
    assert drift([], 0.1) is None


@pytest.mark.parametrize("least_spread", [0.0, 0.1])
def test_a_line_without_any_noise_is_quiet(least_spread: float) -> None:
    assert first_drift([0.0] * 20, least_spread) is None


def test_the_limit_falls_as_units_come_in() -> None:
    limits = [alarm_after(units) for units in range(6, 60)]
    assert limits == sorted(limits, reverse=True)


def test_about_one_line_of_twelve_units_in_a_hundred_is_told_wrongly() -> None:
    # The spread of a share of 0.013 in 1500 draws is 0.003.
    assert false_alarms(4, 1500, 12) <= 0.022


def test_a_step_of_five_spreads_is_mostly_told_within_three_units() -> None:
    found = [first_drift(line, 0.0) for line in lines(Random(6), 100, 12, 9, 5.0, 0.0)]
    assert told(found, 9, 12) >= 0.85


def test_a_ramp_of_two_spreads_a_unit_is_mostly_told_within_three_units() -> None:
    found = [first_drift(line, 0.0) for line in lines(Random(7), 100, 12, 9, 0.0, 2.0)]
    assert told(found, 9, 12) >= 0.75


@pytest.mark.long
@pytest.mark.parametrize("step", [3, 4, 5])
def test_the_page_shows_how_often_a_step_is_told(step: int) -> None:
    found = [first_drift(line, 0.0) for line in lines(Random(step), 1000, 12, 9, step, 0.0)]
    shown = re.search(rf"^\| {step} \| (\d+) \|$", PAGE.read_text("utf-8"), re.MULTILINE)
    assert shown is not None
    # The spread of a share of 0.43 in 1000 draws is 0.016, that of the page's draws 0.02.
    assert int(shown[1]) == pytest.approx(100 * told(found, 9, 12), abs=6)


@pytest.mark.long
def test_false_alarms_are_as_often_as_is_said() -> None:
    # The spreads of the shares are 0.001 and 0.007.
    assert false_alarms(8, 10_000, 12) == pytest.approx(0.013, abs=0.004)
    assert false_alarms(9, 1000, 40) == pytest.approx(0.06, abs=0.025)
