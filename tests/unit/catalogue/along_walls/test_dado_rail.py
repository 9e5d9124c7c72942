import pytest

from longpoint.catalogue.along_walls.dado_rail import TRIM as DADO_RAIL
from longpoint.catalogue.along_walls.picture_rail import TRIM as PICTURE_RAIL
from tests.rail_houses import by_mark, the_house, the_plan, walls


def test_a_dado_rail_stops_at_the_door_that_a_picture_rail_passes() -> None:
    plan = walls(S={"openings": [{"mark": "D1", "from_left": 1800}]})
    dado = by_mark(the_plan(the_house({"kind": "dado-rail", "height": 920}, plan=plan)))
    assert dado["S-1"].back_mm == pytest.approx(1800 - 5 - 57)
    high = by_mark(the_plan(the_house({"kind": "picture-rail", "height": 2250}, plan=plan)))
    assert high["S"].back_mm == pytest.approx(4206)


def test_both_rails_ask_the_same() -> None:
    assert DADO_RAIL.asks == PICTURE_RAIL.asks
    assert DADO_RAIL.needs_room
    assert PICTURE_RAIL.needs_room
