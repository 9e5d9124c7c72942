"""Lengths that a steel square shows, as printed in inches and fractions.

Source: a public-domain handbook on the steel square from the early twentieth century, figures 38
and 55 to 58. Read. It gives the common rafter for a foot of run, and the hip for 17 in of run.

Only what lies in one plane is checked here: the slant of a tape, and an inch printed in fractions.
The side and backing cuts of the same figures await compound joints.
"""

from pathlib import Path

import pytest

from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.trims.joints import slant_mm
from tests.published.reference import rows

# Run and rise [in], the length as the handbook prints it, how far it rounds [in].
PUBLISHED = [
    (12.0, 9.0, 15.0, 0.001),
    (12.0, 10.0, 15.625, 0.03),
    (12.0, 8.0, 14.5, 0.125),
    (17.0, 9.0, 19.25, 0.03),
    (17.0, 10.0, 19.75, 0.05),
]


@pytest.mark.parametrize(("run_in", "rise_in", "published_in", "rounded_in"), PUBLISHED)
def test_the_slant_of_run_and_rise_is_the_printed_length(
    run_in: float, rise_in: float, published_in: float, rounded_in: float
) -> None:
    run_mm, rise_mm = run_in * MM_PER_INCH, rise_in * MM_PER_INCH
    ours_in = (run_mm + slant_mm(run_mm, rise_mm)) / MM_PER_INCH
    assert ours_in == pytest.approx(published_in, abs=rounded_in)


def test_12_and_10_is_printed_as_15_and_five_eighths() -> None:
    run_mm, rise_mm = 12.0 * MM_PER_INCH, 10.0 * MM_PER_INCH
    assert format_length(run_mm + slant_mm(run_mm, rise_mm), Units.INCH) == "15 5/8"


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    for row, words in (
        ("CMP-02", "square 12 and 15"),
        ("CMP-03", "12 and 15 5/8"),
        ("CMP-04", "12 and nearly 14 1/2"),
        ("CMP-05", "17 and 19 1/4"),
        ("CMP-06", "19 3/4"),
    ):
        assert known[row].value.startswith(words)
        assert known[row].how_known == "read"
