"""Calibration of an end gauge, the first example of the GUM.

Source: JCGM 100:2008, H.1. Inputs, budget, 32 nm and 34 nm were read in the
documentation of an open library for uncertainties, which works the example through. What second
order adds (5.1.2, note) is put together here; its formula is from memory, its result was read.

    l = ls + d - ls (d_alpha theta + alpha_s d_theta), d = d0 + d1 + d2
"""

import math
from pathlib import Path
from typing import Final

import pytest

from longpoint.forecast.first_order import combined_u
from longpoint.quantities.uncertainty import combine, u_from_limit
from tests.published.reference import rows

LS_NM: Final = 50_000_623.0
ALPHA_S: Final = 11.5e-6
THETA: Final = -0.1

U_LS_NM, U_D0_NM, U_D1_NM, U_D2_NM = 25.0, 5.8, 3.9, 6.7
U_D_ALPHA: Final = u_from_limit(1e-6)
U_D_THETA: Final = u_from_limit(0.05)
U_ALPHA_S: Final = u_from_limit(2e-6)
# A mean that drifts by 0.2, and a cycle of amplitude 0.5.
U_THETA: Final = combine([0.2, 0.5 / math.sqrt(2.0)])

# Published terms of the budget, in nm: ls, d_theta, d2, d0, d1, d_alpha.
PUBLISHED_TERMS_NM: Final = (25.0, 16.599, 6.7, 5.8, 3.9, 2.88679)
PUBLISHED_L_NM: Final = 50_000_838
PUBLISHED_UC_NM: Final = 32
PUBLISHED_SECOND_ORDER_NM: Final = 34


def terms_nm() -> tuple[float, ...]:
    return (
        U_LS_NM,
        LS_NM * ALPHA_S * U_D_THETA,
        U_D2_NM,
        U_D0_NM,
        U_D1_NM,
        LS_NM * abs(THETA) * U_D_ALPHA,
    )


def test_every_term_of_the_budget_is_the_published_one() -> None:
    assert terms_nm() == pytest.approx(PUBLISHED_TERMS_NM, abs=0.001)


def test_the_combined_uncertainty_rounds_to_32_nm() -> None:
    assert combine(terms_nm()) == pytest.approx(31.66, abs=0.005)
    assert round(combine(terms_nm())) == PUBLISHED_UC_NM


def length_nm(values: tuple[float, ...]) -> float:
    ls_nm, d0_nm, d1_nm, d2_nm, d_alpha, theta, alpha_s, d_theta = values
    return ls_nm + d0_nm + d1_nm + d2_nm - ls_nm * (d_alpha * theta + alpha_s * d_theta)


def test_sensitivities_of_the_model_give_the_published_length_and_uncertainty() -> None:
    """Slopes by differences: nothing of the budget is put in but the model and its inputs."""
    values = (LS_NM, 215.0, 0.0, 0.0, 0.0, THETA, ALPHA_S, 0.0)
    us = (U_LS_NM, U_D0_NM, U_D1_NM, U_D2_NM, U_D_ALPHA, U_THETA, U_ALPHA_S, U_D_THETA)
    slopes = []
    for place, u in enumerate(us):
        up, down = (
            length_nm((*values[:place], values[place] + step, *values[place + 1 :]))
            for step in (u / 2.0, -u / 2.0)
        )
        slopes.append((up - down) / u)
    assert length_nm(values) == pytest.approx(PUBLISHED_L_NM, abs=0.5)
    assert round(combined_u(slopes, us)) == PUBLISHED_UC_NM
    # theta and alpha_s stand beside a difference that is nought: they enter in second order only.
    assert slopes[5:7] == pytest.approx([0.0, 0.0], abs=1e-3)


def test_with_second_order_it_rounds_to_34_nm() -> None:
    second_nm = (LS_NM * U_D_ALPHA * U_THETA, LS_NM * U_ALPHA_S * U_D_THETA)
    with_second_nm = combine([*terms_nm(), *second_nm])
    assert with_second_nm == pytest.approx(33.81, abs=0.005)
    assert round(with_second_nm) == PUBLISHED_SECOND_ORDER_NM


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    assert known["GUM-08"].numbers()[:2] == [LS_NM, U_LS_NM]
    assert known["GUM-11"].numbers() == [PUBLISHED_L_NM, PUBLISHED_UC_NM]
    assert known["GUM-12"].numbers() == list(PUBLISHED_TERMS_NM)
    assert known["GUM-13"].numbers() == [PUBLISHED_SECOND_ORDER_NM]
    assert {known[f"GUM-{n:02}"].how_known for n in (8, 11, 12, 13)} == {"read"}
