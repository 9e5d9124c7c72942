import pytest

from longpoint.trims.long_residual import share_of_long_residuals

pytestmark = pytest.mark.no_cover


@pytest.mark.parametrize(("width_mm", "height_mm"), [(1180.0, 620.0), (820.0, 2040.0)])
def test_six_tapes_name_the_slip_about_as_often_as_a_die_does(
    width_mm: float, height_mm: float
) -> None:
    """Linear theory: a diagonal has the longest residual whichever slipped, so 1 in 6 is right."""
    # Of 600 throws 100 are right, 9 more or less; the limits are four of that.
    assert 64 <= 600 * share_of_long_residuals(width_mm, height_mm, 600) <= 136


def test_the_count_repeats() -> None:
    assert share_of_long_residuals(900.0, 700.0, 50) == share_of_long_residuals(900.0, 700.0, 50)
