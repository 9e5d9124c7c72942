"""Saw settings of sprung cornice at a square corner: NOT read, from memory and recomputed.

Tables of these settings hang in many workshops; no copy was read. The figures for 38 and 45 are
those somebody remembers of such tables, worked out again; those for 52 are worked out alone. Books
disagree whether a spring is measured from the wall or from the ceiling, which swaps 38 and 52.
"""

import math
from pathlib import Path

import pytest

from longpoint.trims.cornice import SprungRun, corner_cuts
from tests.published.reference import rows

# Spring from the wall, mitre, bevel. [deg]
REMEMBERED = [(38.0, 31.62, 33.86), (45.0, 35.26, 30.00), (52.0, 38.24, 25.81)]


@pytest.mark.parametrize(("spring_deg", "mitre_deg", "bevel_deg"), REMEMBERED)
@pytest.mark.parametrize(("corner_deg", "sign"), [(90.0, -1.0), (270.0, 1.0)])
def test_a_square_corner_is_cut_at_the_remembered_settings(
    spring_deg: float, mitre_deg: float, bevel_deg: float, corner_deg: float, sign: float
) -> None:
    run = SprungRun(spring_deg=spring_deg)
    cuts = corner_cuts(corner_deg, run, run)
    assert cuts is not None
    for cut in cuts:
        assert cut.mitre_deg == pytest.approx(sign * mitre_deg, abs=0.01)
        assert cut.bevel_deg == pytest.approx(-sign * bevel_deg, abs=0.01)


def test_spring_45_has_its_settings_in_closed_form() -> None:
    run = SprungRun(spring_deg=45.0)
    cuts = corner_cuts(270.0, run, run)
    assert cuts is not None
    assert math.tan(math.radians(cuts.left_run.mitre_deg)) == pytest.approx(math.sqrt(0.5))
    assert cuts.left_run.bevel_deg == pytest.approx(-30.0)


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    for row, (_, mitre_deg, bevel_deg) in zip(("CMP-13", "CMP-14"), REMEMBERED, strict=False):
        assert known[row].numbers() == [mitre_deg, bevel_deg]
        assert known[row].how_known == "memory"
