import math

import pytest

from longpoint.errors import QuantityError
from longpoint.forecast.season.coefficients import Standing
from longpoint.forecast.season.movement import (
    MovementForm,
    moisture_change_percent,
    movement,
    shrink_share,
)


def test_a_board_that_dries_shrinks_and_one_that_gets_damp_swells() -> None:
    assert movement(90.0, 11.0, 7.0, 0.0025).change_mm == pytest.approx(-0.9)
    assert movement(90.0, 7.0, 11.0, 0.0025).change_mm == pytest.approx(0.9)


def test_no_change_of_moisture_no_movement() -> None:
    assert movement(90.0, 9.0, 9.0, 0.0025).change_mm == 0.0


@pytest.mark.parametrize(
    ("from_percent", "to_percent", "form"),
    [
        (6.0, 14.0, MovementForm.COEFFICIENT),
        (14.0, 6.0, MovementForm.COEFFICIENT),
        (5.9, 10.0, MovementForm.GREEN),
        (10.0, 14.1, MovementForm.GREEN),
        (18.0, 9.0, MovementForm.GREEN),
    ],
)
def test_the_form_goes_by_both_moistures(
    from_percent: float, to_percent: float, form: MovementForm
) -> None:
    assert movement(90.0, from_percent, to_percent, 0.0025).form is form


def test_the_form_from_green_is_from_memory() -> None:
    assert MovementForm.GREEN.standing is Standing.MEMORY
    assert MovementForm.COEFFICIENT.standing is Standing.READ


def test_from_green_is_a_straight_line_to_30_percent() -> None:
    # By hand: a board with 7.5 % shrinkage is 100 mm green, 92.5 mm oven-dry, a line between.
    per_percent = 7.5 / 3000.0 / (1.0 - 7.5 / 150.0)
    at_18_mm, at_8_mm = (100.0 - 7.5 / 30.0 * (30.0 - m) for m in (18.0, 8.0))
    found = shrink_share(18.0, 8.0, per_percent)
    assert found == pytest.approx((at_18_mm - at_8_mm) / at_18_mm)


def test_both_forms_agree_nearly_where_they_meet() -> None:
    inside, beyond = (shrink_share(14.0, to, 0.003) for to in (6.0, 6.0 - 1e-9))
    assert beyond == pytest.approx(inside, rel=0.015)


def test_the_moisture_is_found_back() -> None:
    change_mm = movement(120.0, 12.5, 7.2, 0.0031).change_mm
    assert moisture_change_percent(120.0, change_mm, 0.0031) == pytest.approx(-5.3)


@pytest.mark.parametrize("percent", [-0.1, 30.1, math.nan])
def test_moisture_that_no_form_covers_is_refused(percent: float) -> None:
    with pytest.raises(QuantityError):
        movement(90.0, percent, 9.0, 0.0025)
    with pytest.raises(QuantityError):
        movement(90.0, 9.0, percent, 0.0025)


@pytest.mark.parametrize(("size_mm", "per_percent"), [(0.0, 0.0025), (90.0, 0.0), (-1.0, 0.0025)])
def test_nothing_is_found_back_from_nothing(size_mm: float, per_percent: float) -> None:
    with pytest.raises(QuantityError):
        moisture_change_percent(size_mm, 1.0, per_percent)
