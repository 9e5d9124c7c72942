"""Open joints of interior trim in the United States.

Source: a US builder's limited warranty manual, page on mouldings and trim; undated. Read. Not the
law.

An open joint may be 1/8 in; the builder puts a wider one right once within the first year.
"""

from fractions import Fraction
from pathlib import Path

import pytest

from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import Units
from longpoint.trims.tolerances import Jurisdiction, Outcome, Subject, tolerances, verdict
from tests.published.reference import rows

GUIDE = tolerances(Jurisdiction.UNITED_STATES)


@pytest.mark.parametrize(
    ("gap_mm", "outcome"),
    [(3.0, Outcome.PASSES), (25.4 / 8.0, Outcome.PASSES), (3.4, Outcome.FAILS)],
)
def test_a_joint_may_stand_open_an_eighth_of_an_inch(gap_mm: float, outcome: Outcome) -> None:
    assert verdict(Subject.JOINT_GAP, gap_mm, GUIDE, month=6.0).outcome is outcome


def test_after_the_first_year_the_manual_says_nothing() -> None:
    assert verdict(Subject.JOINT_GAP, 3.4, GUIDE, month=13.0).outcome is Outcome.NO_NUMBER


def test_the_figure_here_is_that_of_the_reference_values(shared: Path) -> None:
    row = rows(shared)["TOL-25"]
    assert (Fraction(row.value), row.how_known) == (Fraction(1, 8), "read")
    (limit,) = GUIDE
    assert limit.limit_mm is not None
    assert format_length(limit.limit_mm, Units.INCH) == row.value
