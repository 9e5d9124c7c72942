import pytest

from longpoint.catalogue.sketch import Stroke
from tests.rail_houses import (
    the_house,
    the_plan,
    walls,
)

HIGH = {"kind": "picture-rail", "height": 2200}
AT_DOOR = {"S": {"openings": [{"mark": "D1", "from_left": 1800}]}}


def test_the_drawing_shows_the_rail_between_the_doors() -> None:
    made = the_plan(the_house({**HIGH, "height": 2010}, plan=walls(**AT_DOOR)))
    (sketch,) = made.sketches
    timber = [line for line in sketch.lines if line.stroke is Stroke.TIMBER]
    assert len(timber) == 5
    lengths = sorted(line.points[1][0] - line.points[0][0] for line in timber)
    assert lengths[:2] == pytest.approx([1581, 1738])
    assert all(line.points[2][1] == 2010 for line in timber)
