import pytest

from longpoint.forecast.season.coefficients import Standing, coefficient_from_shrinkage
from longpoint.forecast.season.species import EUROPEAN_REDWOOD
from longpoint.forecast.season.timbers import TIMBERS


def test_a_board_between_quarter_and_flat_moves_in_between() -> None:
    found = [EUROPEAN_REDWOOD.per_percent(share) for share in (0.0, 0.5, 1.0)]
    assert found == pytest.approx([0.0020, 0.0025, 0.0030])


def test_a_timber_is_read_only_when_both_its_figures_are() -> None:
    by_name = {species.name: species for species in TIMBERS}
    assert by_name["white oak"].is_read
    assert not by_name["Douglas fir"].is_read
    assert by_name["Douglas fir"].tangential.standing is Standing.READ


def test_more_shrinkage_is_more_movement() -> None:
    found = [coefficient_from_shrinkage(float(s)) for s in range(1, 15)]
    assert found == sorted(set(found))
    assert coefficient_from_shrinkage(0.0) == 0.0


def test_the_coefficient_is_the_shrinkage_line_seen_from_10_percent() -> None:
    # A green 100 mm shrinks by S / 30 mm for each percent below 30: straight from the definition.
    shrinkage = 7.5
    at_10_mm, at_9_mm = (100.0 - shrinkage / 30.0 * (30.0 - m) for m in (10.0, 9.0))
    by_hand = (at_10_mm - at_9_mm) / at_10_mm
    assert coefficient_from_shrinkage(shrinkage) == pytest.approx(by_hand)
