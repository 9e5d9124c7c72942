"""Figures of the steel square in a carpentry school text.

Source: a public-domain carpentry school text of 1916, chapters on hip and valley rafters, sections
20 and 35. Read. The text speaks of roofs; in the plane a roof's plan is a frame like ours.

The run of a hip for 12 in of common run is 16.97 in. On an octagon 5 in to 12 in is taken for the
cut, a little over the true half-corner.
"""

import math
from pathlib import Path

import pytest

from longpoint.quantities.length import MM_PER_INCH
from longpoint.trims.joints import mitre_pair, slant_mm
from tests.published.reference import rows

FOOT_MM = 12.0 * MM_PER_INCH


def test_across_a_square_of_12_in_it_is_16_97_in() -> None:
    ours_in = (FOOT_MM + slant_mm(FOOT_MM, FOOT_MM)) / MM_PER_INCH
    assert ours_in == pytest.approx(16.97, abs=0.005)


def test_5_on_12_is_the_mitre_of_an_octagon_to_an_eighth_of_a_degree() -> None:
    published_deg = math.degrees(math.atan2(5.0, 12.0))
    ours_deg = mitre_pair(135.0, 66.0, 66.0).first_deg
    assert published_deg == pytest.approx(22.62, abs=0.005)
    assert ours_deg == pytest.approx(22.5, abs=1e-9)
    assert abs(ours_deg - published_deg) < 0.125


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    assert (known["CMP-01"].numbers(), known["CMP-01"].how_known) == ([16.97], "read")
    assert known["CMP-08"].value.startswith("5 in 12 (22.62 vs exact 22.5")
    assert known["CMP-08"].how_known == "read"
