import math

import pytest

from longpoint.quantities.uncertainty import combine, u_from_limit, u_from_resolution


def test_a_limit_is_wider_than_the_standard_uncertainty_it_stands_for() -> None:
    assert u_from_limit(1.1) == pytest.approx(1.1 / math.sqrt(3.0))


def test_a_graduation_is_a_limit_of_half_a_step_either_way() -> None:
    assert u_from_resolution(1.0) == pytest.approx(u_from_limit(0.5))


def test_independent_terms_add_as_squares() -> None:
    assert combine([3.0, 4.0]) == 5.0
    assert combine([-3.0, 4.0]) == 5.0
    assert combine([1.0] * 9) == pytest.approx(3.0)


def test_no_terms_leave_no_doubt() -> None:
    assert combine([]) == 0.0
