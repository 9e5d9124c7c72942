"""Values from memory: NOT published ones.

None of these was read in its source. They are what somebody remembers of it, kept here so that a
slip in our own arithmetic shows, and so that nobody takes them for more. Once a source is read, its
check moves to a file of its own.

- GUM (JCGM 100:2008) 4.3.7, example: a coefficient within +/- 0.40e-6 has u = 0.23e-6.
- GUM 4.3.8, example: bounds 16.40e-6 and 16.92e-6 give u = 0.15e-6.
- GUM F.2.2.1: a step of 1 gives u = 0.29.
- GUM H.1.6: the end gauge has 16 degrees of freedom, and 99 % lie within +/- 93 nm.
- GUM table G.2: with 16 degrees of freedom 95 % lie within 2.12 u, 99 % within 2.92 u.
- Victorian Guide to Standards and Tolerances 2015: the joint gaps of the NSW guide.
- NAHB Residential Construction Performance Guidelines: 1/8 in at a joint.
"""

import math
from pathlib import Path

import pytest

from longpoint.forecast.first_order import coverage_factor, effective_dof, expanded_u
from longpoint.quantities.uncertainty import u_from_limit, u_from_resolution
from longpoint.trims.tolerances import (
    TOLERANCES,
    Jurisdiction,
    Outcome,
    Standing,
    Subject,
    tolerances,
    verdict,
)
from tests.published.reference import rows


def test_rectangular_limits_give_the_remembered_figure() -> None:
    assert u_from_limit(0.40e-6) == pytest.approx(0.23e-6, abs=0.005e-6)
    assert u_from_limit((16.92e-6 - 16.40e-6) / 2.0) == pytest.approx(0.15e-6, abs=0.005e-6)


def test_a_graduation_gives_the_remembered_figure() -> None:
    assert u_from_resolution(1.0) == pytest.approx(0.289, abs=0.001)
    assert u_from_resolution(1.0) == pytest.approx(0.29, abs=0.005)


def test_factors_of_sixteen_degrees_of_freedom_are_the_remembered_ones() -> None:
    assert coverage_factor(0.95, 16.0) == pytest.approx(2.12, abs=0.005)
    assert coverage_factor(0.99, 16.0) == pytest.approx(2.92, abs=0.005)


def test_the_end_gauge_has_the_remembered_degrees_of_freedom_and_expanded_uncertainty() -> None:
    """Its budget in nm: standard, difference (readings, random, systematic), two of expansion."""
    budget = [(25.0, 18.0), (5.8, 24.0), (3.9, 5.0), (6.7, 8.0), (2.887, 50.0), (16.599, 2.0)]
    dof = effective_dof(budget)
    assert math.floor(dof) == 16
    assert expanded_u(32.0, 0.99, math.floor(dof)) == pytest.approx(93.0, abs=1.0)


def test_the_victorian_figures_are_remembered_as_those_of_new_south_wales() -> None:
    victoria = tolerances(Jurisdiction.VICTORIA, "2015", remembered=True)
    for gap_mm, month, outcome in (
        (0.8, 6.0, Outcome.PASSES),
        (1.2, 6.0, Outcome.FAILS),
        (1.2, 18.0, Outcome.PASSES),
        (2.3, 18.0, Outcome.FAILS),
    ):
        assert verdict(Subject.JOINT_GAP, gap_mm, victoria, month=month).outcome is outcome


def test_the_remembered_american_figure_is_an_eighth() -> None:
    both = tolerances(Jurisdiction.UNITED_STATES, remembered=True)
    remembered = [t for t in both if t.standing is Standing.REMEMBERED]
    assert [t.limit_mm for t in remembered] == [3.175]


def test_no_remembered_limit_is_told_without_asking() -> None:
    told = {t for place in Jurisdiction for t in tolerances(place)}
    assert told == {t for t in TOLERANCES if t.standing is Standing.READ}


def test_the_reference_values_say_that_these_are_from_memory(shared: Path) -> None:
    known = rows(shared)
    ids = ("GUM-01", "GUM-04", "GUM-05", "GUM-06", "GUM-14", "GUM-15", "TOL-17", "TOL-29")
    assert {known[row].how_known for row in ids} == {"memory"}
    assert float(known["GUM-05"].value) == 0.23e-6
    assert float(known["GUM-06"].value) == 0.15e-6
    assert known["GUM-14"].numbers() == [16, 93]
    assert known["GUM-15"].numbers() == [2.12, 2.92]
