"""Plumb of masonry walls by a UK warranty technical manual.

Source: a UK warranty provider's technical manual, version 7 (2014), chapter 1, tolerances. The
start of a copy was read. Not the law.

10 mm in a storey, 20 mm over the whole height.
"""

from pathlib import Path

import pytest

from longpoint.trims.tolerances import Jurisdiction, Outcome, Subject, tolerances, verdict
from tests.published.reference import rows

GUIDE = tolerances(Jurisdiction.UNITED_KINGDOM, "2014")


@pytest.mark.parametrize(
    ("subject", "limit_mm"), [(Subject.STOREY_PLUMB, 10.0), (Subject.WALL_PLUMB, 20.0)]
)
def test_masonry_may_be_so_far_out_of_plumb(subject: Subject, limit_mm: float) -> None:
    assert verdict(subject, limit_mm, GUIDE).outcome is Outcome.PASSES
    assert verdict(subject, limit_mm + 0.5, GUIDE).outcome is Outcome.FAILS


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    for row, figure in (("TOL-18", 10.0), ("TOL-19", 20.0)):
        assert (known[row].numbers(), known[row].how_known) == ([figure], "read")
