"""Where cables may run behind a wall.

Source: BS 7671, regulation 522.6.202, as summarised in guides to it. Read. Cables less than 50 mm
deep lie within 150 mm of the wall's top, within 150 mm of a corner of walls, or straight from an
accessory; on walls up to 100 mm thick the zone holds on the other face too.
"""

from pathlib import Path

import pytest

from longpoint.fixing.cable_zones import (
    CABLE_DEPTH_MM,
    THIN_WALL_MM,
    ZONE_MM,
    cable_rule,
    is_in_zone,
)
from longpoint.survey.house import Dialect
from tests.published.reference import rows


@pytest.mark.parametrize(("from_corner_mm", "inside"), [(140.0, True), (160.0, False)])
def test_a_spot_beside_a_corner(from_corner_mm: float, inside: bool) -> None:
    """Case 55 of the published checks: 140 mm from the corner warns, 160 mm doesn't."""
    assert is_in_zone(from_corner_mm, 1200.0) is inside


def test_the_rule_is_shown_where_it_holds() -> None:
    rule = cable_rule(Dialect.UK)
    assert rule.depth_mm == 50.0
    for figure in ("50 mm", "150 mm", "100 mm", "522.6.202"):
        assert figure in rule.said


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    assert (known["SAF-10"].numbers(), known["SAF-10"].how_known) == ([CABLE_DEPTH_MM], "read")
    assert (known["SAF-11"].numbers(), known["SAF-11"].how_known) == ([ZONE_MM, ZONE_MM], "read")
    assert THIN_WALL_MM == 100.0
