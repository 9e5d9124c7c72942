import math

import pytest

from longpoint.errors import ShapeError
from longpoint.shape.network import (
    TURN,
    Angle,
    Bearing,
    Difference,
    Distance,
    Sighting,
    fit_network,
    freedom_left,
    is_determined,
)
from longpoint.shape.point import Point

SQUARE = (Point(0, 0), Point(1000, 0), Point(1010, 800), Point(-5, 790))
STEP_MM = 1e-4


def distances(*pairs: tuple[int, int], u: float = 0.5) -> tuple[Distance, ...]:
    return tuple(
        Distance(name=f"{a}-{b}", start=a, end=b, read=SQUARE[a].distance_mm(SQUARE[b]), u=u)
        for a, b in pairs
    )


SIX = distances((0, 1), (1, 2), (2, 3), (3, 0), (0, 2), (3, 1))

SIGHTINGS: tuple[Sighting, ...] = (
    Distance(name="d", start=1, end=3, read=1.0, u=1.0),
    Difference(name="=", first=(0, 1), second=(2, 3), read=0.0, u=1.0),
    Angle(name="a", corner=2, back=1, onward=3, read=90.0, u=1.0),
    Bearing(name="b", start=3, end=2, read=0.0, u=1.0),
)


@pytest.mark.parametrize("sighting", SIGHTINGS, ids=lambda s: type(s).__name__)
def test_a_gradient_is_what_moving_a_corner_does(sighting: Sighting) -> None:
    value, gradient = sighting.predict(SQUARE, 0.2)
    for k in range(8):
        corners = list(SQUARE)
        dx, dy = (STEP_MM, 0.0) if k % 2 == 0 else (0.0, STEP_MM)
        corners[k // 2] = corners[k // 2].moved(dx, dy)
        moved, _ = sighting.predict(corners, 0.2)
        assert (moved - value) / STEP_MM == pytest.approx(gradient.get(k, 0.0), abs=1e-6)
    turned, _ = sighting.predict(SQUARE, 0.2 + STEP_MM)
    assert (turned - value) / STEP_MM == pytest.approx(gradient.get(TURN, 0.0), abs=1e-6)


def test_angles_are_taken_in_the_turn_nearest_to_what_was_read() -> None:
    bearing = Bearing(name="b", start=1, end=0, read=-179.9, u=1.0)
    assert bearing.predict(SQUARE, 0.0)[0] == pytest.approx(-180.0)


def test_six_exact_lengths_give_the_corners_back() -> None:
    start = (Point(0, 0), Point(990, 0), Point(1000, 810), Point(0, 800))
    network = fit_network(start, SIX)
    for found, true in zip(network.corners, SQUARE, strict=True):
        assert found == pytest.approx(true, abs=1e-6)
    misclosure = network.misclosure("3-1")
    assert misclosure is not None
    assert misclosure.spare == 1
    assert misclosure.misclosure_mm == pytest.approx(0.0, abs=1e-6)


def test_five_lengths_leave_nothing_open_and_nothing_to_spare() -> None:
    assert freedom_left(SQUARE, SIX[:5]) == 0
    assert fit_network(SQUARE, SIX[:5]).misclosure() is None


def test_four_sides_alone_leave_one_freedom() -> None:
    assert freedom_left(SQUARE, SIX[:4]) == 1
    assert not is_determined(SQUARE, SIX[:4])
    with pytest.raises(ShapeError):
        fit_network(SQUARE, SIX[:4])


def test_nothing_read_leaves_everything_open() -> None:
    assert freedom_left(SQUARE, ()) == 5


def test_a_bearing_brings_its_own_unknown_and_two_of_them_check() -> None:
    level = Bearing(name="level floor", start=0, end=1, read=0.3, u=0.1)
    one = fit_network(SQUARE, (*SIX, level))
    assert one.turn_deg == pytest.approx(0.3)
    without = one.misclosure()
    assert without is not None
    assert without.spare == 1
    plumb = Bearing(name="plumb left", start=0, end=3, read=90.0 + 0.3, u=0.1)
    two = fit_network(SQUARE, (*SIX, level, plumb)).misclosure()
    assert two is not None
    assert two.spare == 2


def test_an_error_of_the_tape_grows_the_shape_and_turns_no_corner() -> None:
    network = fit_network(SQUARE, SIX)
    none, shared = (0.0,) * 6, tuple(s.read * 1e-3 for s in SIX)
    assert network.angle_u_deg(0, 3, 1, shared) == pytest.approx(
        network.angle_u_deg(0, 3, 1, none), abs=1e-6
    )
    private = network.length_u_mm(0, 1, none)
    grown = network.length_u_mm(0, 1, shared)
    # A thousandth of scale adds a thousandth of the length, in quadrature.
    assert grown == pytest.approx(math.hypot(private, 1.0), rel=1e-6)


def test_an_assumption_is_no_reading() -> None:
    assumed = Difference(name="square", first=(0, 2), second=(3, 1), read=0.0, u=2.0)
    network = fit_network(SQUARE, (*SIX[:4], assumed))
    assert len(network.residuals()) == 4
