"""Walls and skirting by the NHBC Standards, 2019 edition.

Source: NHBC Standards 2019, chapter 9.1, clause 9.1.3. Read in a web copy. Not the law.

Skirting above a floor without a covering 5 mm; a wall 8 mm out of plumb up to 2.5 m high and 12 mm
above; 5 mm off a 2 m straight edge.
"""

from pathlib import Path

import pytest

from longpoint.trims.tolerances import Jurisdiction, Outcome, Subject, tolerances, verdict
from tests.published.reference import rows

GUIDE = tolerances(Jurisdiction.UNITED_KINGDOM, "2019")


@pytest.mark.parametrize(
    ("gap_mm", "outcome"), [(4.0, Outcome.PASSES), (5.0, Outcome.PASSES), (5.5, Outcome.FAILS)]
)
def test_skirting_may_stand_5_mm_over_a_bare_floor(gap_mm: float, outcome: Outcome) -> None:
    said = verdict(Subject.SKIRTING_GAP, gap_mm, GUIDE, on_bare_floor=True)
    assert said.outcome is outcome


def test_over_a_floor_covering_the_clause_gives_no_figure() -> None:
    assert verdict(Subject.SKIRTING_GAP, 4.0, GUIDE).outcome is Outcome.NO_NUMBER


@pytest.mark.parametrize(
    ("off_mm", "height_mm", "outcome"),
    [
        (8.0, 2400.0, Outcome.PASSES),
        (9.0, 2400.0, Outcome.FAILS),
        (9.0, 2800.0, Outcome.PASSES),
        (12.5, 2800.0, Outcome.FAILS),
    ],
)
def test_plumb_depends_on_the_height(off_mm: float, height_mm: float, outcome: Outcome) -> None:
    assert verdict(Subject.WALL_PLUMB, off_mm, GUIDE, height_mm=height_mm).outcome is outcome


def test_a_wall_may_be_5_mm_off_the_straight_edge() -> None:
    assert verdict(Subject.WALL_FLATNESS, 5.0, GUIDE).outcome is Outcome.PASSES
    assert verdict(Subject.WALL_FLATNESS, 5.1, GUIDE).outcome is Outcome.FAILS


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    for row, figure in (("TOL-04", 5.0), ("TOL-05", 8.0), ("TOL-07", 5.0)):
        assert (known[row].numbers(), known[row].how_known) == ([figure], "read")
