"""What holds for every opening that can be read."""

import math
from random import Random

import pytest
from hypothesis import assume, given, reject
from hypothesis import strategies as st

from longpoint.errors import ShapeError
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.shape.opening_fit import fit_opening, mirrored
from longpoint.shape.point import Point, interior_angles_deg
from longpoint.survey.digits import slips
from longpoint.survey.instruments import Tape
from longpoint.survey.readings import OpeningReadings, Place
from tests.drawn_openings import Corners, exact_mm, readings_of

TAPE = Tape(name="T1")
SHAPE_MM = 0.001

shares = st.floats(-0.2, 0.2)


@st.composite
def convex_corners(draw: st.DrawFn) -> Corners:
    """Draw four corners, any convex shape far from flat, the bottom side along x."""
    width_mm, height_mm = draw(st.floats(300.0, 3000.0)), draw(st.floats(300.0, 3000.0))
    return _corners(width_mm, height_mm, tuple(draw(shares) for _ in range(4)))


def _corners(width_mm: float, height_mm: float, off: tuple[float, ...]) -> Corners:
    right = Point(width_mm * (1 + off[0]), height_mm * (1 + off[1]))
    left = Point(width_mm * off[2], height_mm * (1 + off[3]))
    return (Point(0.0, 0.0), Point(width_mm, 0.0), right, left)


def _readings(corners: Corners) -> OpeningReadings:
    return readings_of(**{place.value: mm for place, mm in exact_mm(corners).items()})


def _is_returned(corners: Corners) -> bool:
    found = fit_opening("W1", _readings(corners), TAPE).fitted.corners
    return all(
        abs(a.x_mm - b.x_mm) < SHAPE_MM and abs(a.y_mm - b.y_mm) < SHAPE_MM
        for a, b in zip(found, corners, strict=True)
    )


@given(convex_corners())
def test_exact_readings_return_the_exact_shape(corners: Corners) -> None:
    assume(max(interior_angles_deg(corners)) < 165.0)
    assert _is_returned(corners)


def test_exact_readings_of_a_thousand_shapes_return_each_of_them() -> None:
    rng = Random(20)
    seen = 0
    while seen < 1000:
        off = tuple(rng.uniform(-0.2, 0.2) for _ in range(4))
        corners = _corners(rng.uniform(300.0, 3000.0), rng.uniform(300.0, 3000.0), off)
        if max(interior_angles_deg(corners)) < 165.0:
            assert _is_returned(corners), corners
            seen += 1


@given(convex_corners(), st.lists(st.floats(-3.0, 3.0), min_size=6, max_size=6), st.randoms())
def test_the_order_of_readings_does_not_matter(
    corners: Corners, noise_mm: list[float], rng: Random
) -> None:
    noisy = {
        place.value: mm + off
        for (place, mm), off in zip(exact_mm(corners).items(), noise_mm, strict=True)
    }
    names = list(noisy)
    rng.shuffle(names)
    try:
        one = fit_opening("W1", readings_of(**noisy), TAPE).fitted
    except ShapeError:
        reject()
    other = fit_opening("W1", readings_of(**{n: noisy[n] for n in names}), TAPE).fitted
    for a, b in zip(one.corners, other.corners, strict=True):
        assert a == pytest.approx(b, abs=1e-6)
    assert one.corner_u_deg == pytest.approx(other.corner_u_deg, rel=1e-6)


@given(convex_corners())
def test_an_opening_read_from_the_other_side_is_its_mirror(corners: Corners) -> None:
    assume(max(interior_angles_deg(corners)) < 165.0)
    swap = {
        Place.LEFT: Place.RIGHT,
        Place.RIGHT: Place.LEFT,
        Place.RISING: Place.FALLING,
        Place.FALLING: Place.RISING,
    }
    behind = readings_of(
        **{swap.get(place, place).value: mm for place, mm in exact_mm(corners).items()}
    )
    front = fit_opening("D1", _readings(corners), TAPE).fitted
    assert fit_opening("D1", behind, TAPE).fitted.corner_deg == pytest.approx(
        mirrored(front).corner_deg, abs=1e-6
    )


@given(convex_corners(), st.floats(0.5, 2.0))
def test_corners_do_not_depend_on_the_size_of_the_tapes_millimetre(
    corners: Corners, scale: float
) -> None:
    assume(max(interior_angles_deg(corners)) < 165.0)
    grown = tuple(Point(p.x_mm * scale, p.y_mm * scale) for p in corners)
    one = fit_opening("W1", _readings(corners), TAPE).fitted.corner_deg
    other = fit_opening("W1", _readings((grown[0], grown[1], grown[2], grown[3])), TAPE).fitted
    assert other.corner_deg == pytest.approx(one, abs=1e-6)
    assert math.fsum(one) == pytest.approx(360.0)


@given(st.integers(100, 6000), st.booleans())
def test_a_slip_of_a_slip_may_be_the_figure_again(whole: int, has_half: bool) -> None:
    written_mm = whole + 0.5 * has_half
    for slip in slips(written_mm, Units.MM):
        assert slip.value_mm > 0
        assert slip.value_mm != written_mm
        if "swapped" in slip.words or "upside" in slip.words:
            back = [s.value_mm for s in slips(slip.value_mm, Units.MM)]
            # A swap that brings a nought to the front can't be undone by another.
            assert written_mm in back or str(whole).find("0") >= 0


@given(st.integers(5, 200), st.integers(0, 15))
def test_a_slip_in_inches_keeps_the_fraction(whole: int, sixteenths: int) -> None:
    written_mm = (whole + sixteenths / 16) * MM_PER_INCH
    for slip in slips(written_mm, Units.INCH):
        inches = slip.value_mm / MM_PER_INCH
        assert inches - math.floor(inches + 1e-9) == pytest.approx(sixteenths / 16, abs=1e-6)
