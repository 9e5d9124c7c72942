"""Values from memory: NOT published ones.

None of these was read in its source. They are what somebody remembers of it, kept here so that a
slip in our own arithmetic shows, and so that nobody takes them for more. Once a source is read, its
check moves to a file of its own.

- GUM (JCGM 100:2008) 4.3.7, example: a coefficient within +/- 0.40e-6 has u = 0.23e-6.
- GUM 4.3.8, example: bounds 16.40e-6 and 16.92e-6 give u = 0.15e-6.
- GUM F.2.2.1: a step of 1 gives u = 0.29.
- Victorian Guide to Standards and Tolerances 2015: the joint gaps of the NSW guide.
- NAHB Residential Construction Performance Guidelines: 1/8 in at a joint.
"""

from pathlib import Path

import pytest

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
    ids = ("GUM-01", "GUM-04", "GUM-05", "GUM-06", "TOL-17", "TOL-29")
    assert {known[row].how_known for row in ids} == {"memory"}
    assert float(known["GUM-05"].value) == 0.23e-6
    assert float(known["GUM-06"].value) == 0.15e-6
