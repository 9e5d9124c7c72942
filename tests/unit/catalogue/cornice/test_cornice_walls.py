"""The walls that get a cornice, and the ceiling along them."""

import math

import pytest

from tests.house_documents import wall
from tests.unit.catalogue.cornice_houses import pieces, planned, stops


def test_a_wall_without_a_reading_is_refused() -> None:
    walls = ({"mark": "N", "corner": 90}, wall("E", length=3000))
    plan = planned(walls, closed=False)
    assert "from corner to corner" in stops(plan)[0].do


def test_a_held_wall_holds_it() -> None:
    plan = planned(held=frozenset({"Hall E"}))
    assert "held" in stops(plan)[0].wrong
    assert stops(planned(held=frozenset({"Hall E"}), walls=["N", "S"])) == []


def test_a_rise_is_a_slope_over_its_part() -> None:
    walls = (wall("N", length=3000),)
    rise = 2000.0 * math.tan(math.radians(20.0))
    by_rise, by_slope = (
        pieces(planned(walls, closed=False, climb=[{"wall": "N", "from_left": 1000, **how}]))
        for how in ({"rise": rise}, {"slope": 20})
    )
    assert by_rise["N-2"].inner_mm == pytest.approx(by_slope["N-2"].inner_mm)


def test_parts_of_one_slope_are_one_run() -> None:
    walls = (wall("N", length=3000),)
    climb = [{"wall": "N", "slope": 5}, {"wall": "N", "from_left": 900, "slope": 5}]
    assert list(pieces(planned(walls, closed=False, climb=climb))) == ["N"]
