"""Joints of a cornice that no cut closes."""

from tests.house_documents import wall
from tests.unit.catalogue.cornice_houses import pieces, planned, stops


def test_level_round_a_corner_into_a_slope_is_refused_with_how_far_it_would_stand_open() -> None:
    walls = (wall("N", length=2000, corner=90), wall("E", length=1500))
    plan = planned(walls, closed=False, climb=[{"wall": "E", "slope": -15}])
    assert [stop.code for stop in stops(plan)] == ["joint-wont-close"]
    assert plan.trims[0].plan.pieces == ()
    stop = stops(plan)[0]
    assert "31 mm apart" in stop.wrong
    assert "16 mm" in stop.wrong
    assert "level return on wall E" in stop.do
    assert "from_left 120 mm or more" in stop.do


def test_what_the_refusal_asks_for_is_planned() -> None:
    walls = (wall("N", length=2000, corner=90), wall("E", length=1500))
    for slope in (-15, 15):
        plan = planned(walls, closed=False, climb=[{"wall": "E", "from_left": 120, "slope": slope}])
        assert stops(plan) == []
        assert list(pieces(plan)) == ["N", "E-1", "E-2"]
    walls = (wall("N", length=2000, corner=90), wall("E", length=1500))
    climb = [{"wall": "N", "slope": 12}, {"wall": "N", "from_left": 1880, "slope": 0}]
    asked_for = planned(walls, closed=False, climb=climb[:1])
    assert "from_left 1880 mm or less" in stops(asked_for)[0].do
    assert stops(planned(walls, closed=False, climb=climb)) == []


def test_two_springs_at_a_corner_are_refused_and_no_return_is_promised() -> None:
    walls = (wall("N", length=2000, corner=90), wall("E", length=1500))
    plan = planned(walls, closed=False, springs=[{"wall": "E", "spring": 45}])
    assert [stop.code for stop in stops(plan)] == ["joint-wont-close"]
    assert "9 mm" in stops(plan)[0].wrong
    assert "13.5 mm" in stops(plan)[0].wrong
    assert "block" in stops(plan)[0].do


def test_a_climbing_run_gets_no_return() -> None:
    walls = (wall("N", length=2000),)
    plan = planned(walls, closed=False, ends="return", climb=[{"wall": "N", "slope": 10}])
    assert [stop.code for stop in stops(plan)] == ["joint-wont-close"] * 2
