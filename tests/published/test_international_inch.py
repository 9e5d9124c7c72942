"""The inch.

Source: National Physical Laboratory, FAQ on length, "On what basis is one inch exactly equal to
25.4 mm?" (updated 2015). Read in a copy: the international inch is exactly 25.4 mm since July 1959,
when the international yard was set at 0.9144 m.
"""

from fractions import Fraction

import pytest

from longpoint.quantities.length import MM_PER_INCH, Units, parse_length


def test_an_inch_is_25_4_mm_exactly() -> None:
    assert Fraction(str(MM_PER_INCH)) == Fraction(254, 10)
    assert parse_length("1", Units.INCH) == 25.4


def test_a_yard_is_914_4_mm_exactly() -> None:
    assert parse_length("3'", Units.MM) == parse_length("36", Units.INCH) == 914.4


@pytest.mark.parametrize("count", range(64))
def test_every_sixty_fourth_of_an_inch_is_the_nearest_number_to_it(count: int) -> None:
    exact_mm = Fraction(count, 64) * Fraction(254, 10)
    assert parse_length(f"{Fraction(count, 64)} in", Units.MM) == float(exact_mm)
