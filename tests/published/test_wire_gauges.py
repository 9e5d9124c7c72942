"""Diameters of nails by their gauge.

Source: wire-gauge comparison tables; three pages agree, one of them a university's dictionary of
units. Read. US steel wire gauge, standard wire gauge and Birmingham gauge, in inches.

Which of them a collated nail follows is fixed by no source that was read.
"""

from pathlib import Path

import pytest

from longpoint.fixing.gauges import GAUGES_INCH, diameters_mm
from tests.published.reference import rows


@pytest.mark.parametrize(
    ("gauge", "least_mm", "most_mm"),
    [(15, 1.829, 1.829), (16, 1.588, 1.651), (18, 1.206, 1.245), (23, 0.610, 0.655)],
)
def test_a_gauge_stands_for_the_published_range(
    gauge: int, least_mm: float, most_mm: float
) -> None:
    known = diameters_mm(gauge)
    assert known is not None
    assert known == pytest.approx((least_mm, most_mm), abs=0.0006)


@pytest.mark.parametrize("gauge", GAUGES_INCH)
def test_the_figures_here_are_those_of_the_reference_values(gauge: int, shared: Path) -> None:
    row = rows(shared)[f"GA-{gauge}"]
    assert (row.numbers(), row.how_known) == (list(GAUGES_INCH[gauge]), "read")


def test_every_gauge_of_the_reference_values_is_held(shared: Path) -> None:
    listed = {int(name[3:]) for name in rows(shared) if name.startswith("GA-")}
    assert listed == set(GAUGES_INCH)
