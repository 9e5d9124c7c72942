import pytest
from scipy import stats

from longpoint.errors import QuantityError
from longpoint.forecast.learning.student import chance_beyond, t_quantile


@pytest.mark.parametrize("dof", [0.4, 1.0, 2.0, 2.7, 5.0, 8.0, 30.0, 85.0, 1000.0, 1e5])
@pytest.mark.parametrize("chance", [1e-6, 0.01, 0.05, 0.3, 0.499, 0.6, 0.95, 0.995, 1 - 1e-6])
def test_quantiles_are_those_of_an_independent_library(chance: float, dof: float) -> None:
    assert t_quantile(chance, dof) == pytest.approx(float(stats.t.ppf(chance, dof)), rel=2e-8)


@pytest.mark.parametrize("t", [0.0, 1e-6, 0.3, 1.0, 2.5, 9.0, 200.0])
@pytest.mark.parametrize("dof", [1.0, 5.0, 6.5, 40.0, 1e4])
def test_chances_are_those_of_an_independent_library(t: float, dof: float) -> None:
    assert chance_beyond(t, dof) == pytest.approx(float(stats.t.sf(t, dof)), rel=1e-9)


@pytest.mark.parametrize(
    ("chance", "dof"), [(0.0, 5.0), (1.0, 5.0), (-0.1, 5.0), (0.5, 0.0), (0.9, float("inf"))]
)
def test_what_is_no_chance_has_no_quantile(chance: float, dof: float) -> None:
    with pytest.raises(QuantityError):
        t_quantile(chance, dof)


def test_the_middle_is_nought() -> None:
    assert t_quantile(0.5, 3.0) == 0.0
