"""Walls and architraves by the NHBC Standards, 2020 edition.

Source: NHBC Standards 2020, clauses 9.1.3 (walls) and 9.4.4 (architraves). Read in a web copy. Not
the law.

A wall 8 mm out of plumb up to 3 m high, above that 8 mm a storey and 12 mm in all; 3 mm off a 2 m
straight edge. Of architraves it asks for tight and neat joints and an even margin, and no number.
"""

from pathlib import Path

import pytest

from longpoint.trims.tolerances import Jurisdiction, Outcome, Subject, tolerances, verdict
from tests.published.reference import rows

GUIDE = tolerances(Jurisdiction.UNITED_KINGDOM, "2020")


@pytest.mark.parametrize(
    ("off_mm", "height_mm", "outcome"),
    [
        (8.0, 2800.0, Outcome.PASSES),
        (9.0, 2800.0, Outcome.FAILS),
        (9.0, 3200.0, Outcome.PASSES),
        (12.5, 5200.0, Outcome.FAILS),
    ],
)
def test_plumb_depends_on_the_height(off_mm: float, height_mm: float, outcome: Outcome) -> None:
    assert verdict(Subject.WALL_PLUMB, off_mm, GUIDE, height_mm=height_mm).outcome is outcome


def test_in_a_tall_wall_no_storey_may_be_more_than_8_mm_out() -> None:
    said = [verdict(Subject.STOREY_PLUMB, off, GUIDE, height_mm=5200.0) for off in (8.0, 8.5)]
    assert [s.outcome for s in said] == [Outcome.PASSES, Outcome.FAILS]


def test_a_wall_may_be_3_mm_off_the_straight_edge() -> None:
    assert verdict(Subject.WALL_FLATNESS, 3.0, GUIDE).outcome is Outcome.PASSES
    assert verdict(Subject.WALL_FLATNESS, 3.1, GUIDE).outcome is Outcome.FAILS


def test_no_number_is_given_for_a_joint() -> None:
    said = verdict(Subject.JOINT_GAP, 0.4, GUIDE)
    assert said.outcome is Outcome.NO_NUMBER
    assert said.by is not None
    assert said.by.clause == "cl. 9.4.4"


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    for row, figure in (("TOL-01", 3.0), ("TOL-02", 8.0), ("TOL-03", 12.0)):
        assert (known[row].numbers(), known[row].how_known) == ([figure], "read")
    assert known["TOL-11"].how_known == "read"
