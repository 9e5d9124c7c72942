import math
from collections.abc import Callable, Iterator
from dataclasses import replace
from random import Random
from statistics import stdev

import numpy as np
import pytest
from scipy.optimize import least_squares

from longpoint.errors import Severity, ShapeError
from longpoint.shape.fitted import FittedOpening
from longpoint.shape.opening_fit import faces_of, fit_opening, fit_openings, mirrored
from longpoint.shape.point import interior_angles_deg
from longpoint.survey.house_file import read_house
from longpoint.survey.instruments import Tape
from longpoint.survey.openings import OpeningKind
from longpoint.survey.readings import AngleReading, Gauge, OpeningReadings, Place
from tests.drawn_openings import (
    NEW_LEAN_SD_MM,
    OLD_LEAN_SD_MM,
    Corners,
    drawn_door,
    drawn_window,
    exact_mm,
    house_of,
    opening_of,
    quadrilateral,
    read,
    readings_of,
)
from tests.scenarios.houses import document

pytestmark = pytest.mark.no_cover

TAPE = Tape(name="T1")
SOUND = Tape(name="T1", tape_class=None, max_error_mm=0.0)
PRIVATE_U_MM = TAPE.private_u_mm()


def fitted(readings: OpeningReadings, tape: Tape = TAPE) -> FittedOpening:
    return fit_opening("W1", readings, tape).fitted


def by_place(readings: OpeningReadings) -> dict[Place, float]:
    means = {place: readings.mean_mm(place) for place in exact_mm(SQUARE)}
    return {place: mm for place, mm in means.items() if mm is not None}


SQUARE = quadrilateral(width_mm=1203.0, height_mm=1046.0)


class Independent:
    """The same six readings fitted by scipy, with corners and weights written anew."""

    pairs = ((0, 1), (1, 2), (2, 3), (3, 0), (0, 2), (3, 1))

    def __init__(self, lengths_mm: dict[Place, float], u_mm: dict[Place, float]) -> None:
        read = np.array(list(lengths_mm.values()))
        u = np.array([u_mm[p] for p in lengths_mm])
        width, height = lengths_mm[Place.BOTTOM], lengths_mm[Place.LEFT]
        # Corner 0 is at the origin and corner 1 on the axis, as in the package.
        start = np.array([width, width, height, 0.0, height])

        def misfit(x: np.ndarray) -> np.ndarray:
            corners = np.array([[0.0, 0.0], [x[0], 0.0], [x[1], x[2]], [x[3], x[4]]])
            found = [float(np.linalg.norm(corners[b] - corners[a])) for a, b in self.pairs]
            return np.asarray((np.array(found) - read) / u)

        fit = least_squares(misfit, start, xtol=1e-14, ftol=1e-14, gtol=1e-14)
        x = fit.x
        self.corners = [(0.0, 0.0), (x[0], 0.0), (x[1], x[2]), (x[3], x[4])]
        self.chi_squared = float((fit.fun**2).sum())

    def corner_deg(self) -> list[float]:
        found = []
        for i in range(4):
            here, back, on = (np.array(self.corners[k % 4]) for k in (i, i - 1, i + 1))
            one, other = back - here, on - here
            cosine = one @ other / np.linalg.norm(one) / np.linalg.norm(other)
            found.append(math.degrees(math.acos(float(cosine))))
        return found


def agrees_with_scipy(readings: OpeningReadings, tape: Tape) -> None:
    lengths = by_place(readings)
    u = {place: tape.private_u_mm(len(readings.at(place))) for place in lengths}
    other = Independent(lengths, u)
    ours = fitted(replace(readings, angles=()), tape)
    for mine, theirs in zip(ours.corners, other.corners, strict=True):
        assert mine == pytest.approx(theirs, abs=0.02)
    assert ours.corner_deg == pytest.approx(other.corner_deg(), abs=0.005)
    assert ours.misclosure is not None
    assert ours.misclosure.chi_squared == pytest.approx(other.chi_squared, rel=1e-4, abs=1e-6)


def scenario_readings() -> Iterator[tuple[str, OpeningReadings, Tape]]:
    for name in ("pipit", "fallow-end", "series-k"):
        house = read_house(document(name)).house
        for opening in house.openings:
            if len(by_place(opening.readings)) == 6:
                tape = house.tape(opening.readings.tape)
                yield f"{name} {opening.mark}", opening.readings, tape


def test_every_opening_of_three_houses_is_fitted_as_scipy_fits_it() -> None:
    seen = 0
    for _, readings, tape in scenario_readings():
        agrees_with_scipy(readings, tape)
        seen += 1
    assert seen > 80


@pytest.mark.parametrize("draw", [drawn_window, drawn_door])
def test_drawn_openings_are_fitted_as_scipy_fits_them(
    draw: Callable[[Random, float], Corners],
) -> None:
    rng = Random(12)
    for _ in range(150):
        agrees_with_scipy(read(draw(rng, OLD_LEAN_SD_MM), rng), TAPE)


# Geometry: for a rectangle and equal doubt u of every tape, a corner's doubt is D / (W H) u with
# both diagonals and root 2 times that with one. Worked figures, degrees for each millimetre.
@pytest.mark.parametrize(
    ("width_mm", "height_mm", "both_deg", "one_deg"),
    [(1180.0, 620.0, 0.104, 0.148), (820.0, 2040.0, 0.075, 0.107)],
)
def test_the_doubt_of_a_corner_is_as_worked_out_by_hand(
    width_mm: float, height_mm: float, both_deg: float, one_deg: float
) -> None:
    lengths = exact_mm(quadrilateral(width_mm=width_mm, height_mm=height_mm))
    both = fitted(_readings(lengths), SOUND).corner_u_deg
    del lengths[Place.FALLING]
    one = fitted(_readings(lengths), SOUND).corner_u_deg
    by_hand = math.degrees(math.hypot(width_mm, height_mm) / (width_mm * height_mm))
    assert max(both) / PRIVATE_U_MM == pytest.approx(by_hand, rel=1e-6)
    assert max(both) / PRIVATE_U_MM == pytest.approx(both_deg, abs=0.0006)
    assert max(one) / PRIVATE_U_MM == pytest.approx(one_deg, abs=0.0006)


def test_a_slip_hides_in_a_side_and_shows_in_a_diagonal() -> None:
    # By hand: four squared sides equal both squared diagonals, so 10 mm on a side moves the last
    # diagonal by 10 side / diagonal, and the doubt of that is twice a reading's.
    width_mm, diagonal_mm = 1203.0, math.hypot(1203.0, 1046.0)
    for place, worked in ((Place.BOTTOM, 5.0 * width_mm / diagonal_mm), (Place.RISING, 5.0)):
        lengths = exact_mm(SQUARE)
        lengths[place] += 10.0
        misclosure = fitted(_readings(lengths)).misclosure
        assert misclosure is not None
        assert misclosure.normalised * PRIVATE_U_MM == pytest.approx(worked, rel=0.02)


def test_redundancies_lie_where_worked_out_and_add_up_to_one() -> None:
    rng = Random(1)
    for _ in range(50):
        window = quadrilateral(
            width_mm=rng.uniform(900.0, 2400.0), height_mm=rng.uniform(450.0, 1500.0)
        )
        shares = {r.name: r.redundancy for r in fitted(_readings(exact_mm(window))).residuals}
        assert math.fsum(shares.values()) == pytest.approx(1.0)
        for diagonal in ("rising", "falling"):
            assert shares[diagonal] == pytest.approx(0.25, abs=0.01)
        for side in ("top", "bottom", "left", "right"):
            assert 0.005 < shares[side] < 0.25


def test_with_one_reading_to_spare_every_residual_is_as_large_as_any_other() -> None:
    readings = _readings({**exact_mm(SQUARE), Place.LEFT: 1056.0})
    sizes = [abs(r.over_u) for r in fitted(readings).residuals]
    assert max(sizes) == pytest.approx(min(sizes), rel=1e-6)


def test_the_misclosure_is_what_the_last_diagonal_misses_by() -> None:
    readings = _readings({**exact_mm(SQUARE), Place.FALLING: exact_mm(SQUARE)[Place.FALLING] - 7.0})
    misclosure = fitted(readings).misclosure
    assert misclosure is not None
    assert misclosure.misclosure_mm == pytest.approx(-7.0, abs=0.02)


@pytest.mark.parametrize(
    "corners",
    [
        quadrilateral(width_mm=1200.0, height_mm=450.0, lean_mm=3.0),
        quadrilateral(width_mm=819.0, height_mm=2034.0, floor_rise_mm=8.0),
    ],
)
def test_the_doubt_is_what_a_thousand_readings_spread_by(corners: Corners) -> None:
    rng = Random(3)
    exact = exact_mm(corners)
    fits = [
        fitted(_readings({p: mm + rng.gauss(0.0, PRIVATE_U_MM) for p, mm in exact.items()}))
        for _ in range(1500)
    ]
    claimed = fitted(_readings(exact), SOUND)
    for i in range(4):
        # The spread of 1500 draws is itself sure to 2 %.
        assert stdev(f.corner_deg[i] for f in fits) == pytest.approx(
            claimed.corner_u_deg[i], rel=0.08
        )
        assert stdev(f.side_mm[i] for f in fits) == pytest.approx(claimed.side_u_mm[i], rel=0.08)


def test_clean_readings_miss_by_1_15_whatever_the_shape() -> None:
    rng = Random(4)
    for draw in (drawn_window, drawn_door):
        missed = []
        for _ in range(600):
            misclosure = fitted(read(draw(rng, NEW_LEAN_SD_MM), rng)).misclosure
            assert misclosure is not None
            missed.append(misclosure.misclosure_mm or 0.0)
        assert stdev(missed) == pytest.approx(1.15, rel=0.08)


def test_the_tapes_own_error_adds_to_lengths_and_not_to_corners() -> None:
    readings = _readings(exact_mm(SQUARE))
    poor, sound = (
        fitted(readings, Tape(name="T1", tape_class=None, max_error_mm=mm)) for mm in (3.0, 0.0)
    )
    assert poor.side_u_mm.first > sound.side_u_mm.first + 0.5
    assert poor.corner_u_deg == pytest.approx(sound.corner_u_deg, rel=0.1)
    assert poor.corners == sound.corners


def test_a_gauge_that_contradicts_a_tape_that_closes_is_left_out_and_said() -> None:
    # Heights 1124 and 1642 over 1386 slope 20.5 degrees; the gauge was held off the lining.
    raked = readings_of(bottom=1386, left=1124, right=1642, top=1480, rising=2149, falling=1784)
    head = AngleReading(gauge=Gauge.LEVEL_HEAD, value_deg=-22.5, u_deg=0.1)
    with_gauge = replace(raked, angles=(head,))
    assert fitted(with_gauge).corners == fitted(raked).corners
    _, findings = fit_openings(house_of(opening_of("W9", with_gauge)))
    (found,) = [f for f in findings if f.code == "gauge-disagrees"]
    assert found.severity is Severity.WARNING
    assert "2.0 degrees" in found.read


def test_a_gauge_that_agrees_joins_the_fit() -> None:
    head = AngleReading(gauge=Gauge.BEVEL_BL, value_deg=90.05, u_deg=0.05)
    square = _readings(exact_mm(SQUARE))
    alone, both = fitted(square), fitted(replace(square, angles=(head,)))
    assert both.corner_u_deg.first < alone.corner_u_deg.first
    assert 90.0 < both.corner_deg.first < 90.05


def test_width_and_height_alone_make_a_square_opening_that_says_so() -> None:
    found = fitted(readings_of(width=1187, height=462))
    assert found.corner_deg == pytest.approx((90.0,) * 4)
    assert len(found.assumed) == 3
    assert min(found.corner_u_deg) > 0.1
    assert found.misclosure is None


def test_what_was_assumed_and_what_nothing_checks_is_a_note() -> None:
    house = house_of(
        opening_of("W1", width=1187, height=462),
        opening_of("W2", top=900, bottom=900, left=600, right=600, rising=1082),
    )
    _, findings = fit_openings(house)
    assert [(f.place, f.code, f.severity) for f in findings] == [
        ("W1", "shape-assumed", Severity.NOTE),
        ("W2", "nothing-checks", Severity.NOTE),
    ]


def said_of(readings: OpeningReadings) -> list[tuple[str, Severity]]:
    _, findings = fit_openings(house_of(opening_of("W1", readings)))
    return [(f.code, f.severity) for f in findings]


def test_four_sides_far_apart_without_a_diagonal_are_held() -> None:
    free = readings_of(top=1480, bottom=1386, left=1124, right=1642)
    assert said_of(free) == [("diagonal-missing", Severity.STOP)]
    _, (found,) = fit_openings(house_of(opening_of("W9", free)))
    assert "518 mm" in found.wrong
    assert "our limit" in found.wrong
    assert "at least one diagonal" in found.do


def test_a_diagonal_or_a_gauge_gives_the_shape_however_far_apart_the_sides_are() -> None:
    apart = readings_of(top=900, bottom=900, left=600, right=620, rising=1094)
    assert said_of(apart) == [("nothing-checks", Severity.NOTE)]
    sides = replace(apart, lengths=apart.lengths[:4])
    assert said_of(sides) == [("diagonal-missing", Severity.STOP)]
    plumb = AngleReading(gauge=Gauge.PLUMB_LEFT, value_deg=0.0, u_deg=0.1)
    assert "diagonal-missing" not in dict(said_of(replace(sides, angles=(plumb,))))


@pytest.mark.parametrize("right", [585, 600, 615])
def test_four_sides_that_keep_near_are_square_by_a_note(right: float) -> None:
    sides = readings_of(top=900, bottom=900, left=600, right=right)
    assert said_of(sides) == [("shape-assumed", Severity.NOTE)]


@pytest.mark.parametrize(
    "readings",
    [
        readings_of(top=1187),
        readings_of(top=900, bottom=900, left=600, right=600, rising=1082, falling=100),
    ],
)
def test_readings_that_describe_no_opening_are_refused(readings: OpeningReadings) -> None:
    with pytest.raises(ShapeError):
        fitted(readings)


def test_one_opening_without_a_shape_does_not_stop_the_others() -> None:
    house = house_of(
        opening_of("W1", top=1187),
        opening_of("W2", _readings(exact_mm(SQUARE))),
    )
    shapes, findings = fit_openings(house)
    assert [s.mark for s in shapes] == ["W2"]
    assert [(f.place, f.code, f.severity) for f in findings] == [("W1", "no-shape", Severity.STOP)]


def test_a_second_face_is_fitted_when_it_was_read_and_mirrored_when_not() -> None:
    leaning = _readings(exact_mm(quadrilateral(width_mm=819.0, height_mm=2034.0, lean_mm=9.0)))
    door = replace(opening_of("D2", leaning, kind=OpeningKind.DOOR), faces=2)
    assert [face for face, _ in faces_of(door)] == ["a"]
    assert [face for face, _ in faces_of(replace(door, readings_b=leaning))] == ["a", "b"]
    (a,), _ = fit_openings(house_of(door))
    b = mirrored(a)
    assert b.face == "b"
    assert b.corner_deg.first == pytest.approx(a.corner_deg.second)
    assert interior_angles_deg(b.corners) == pytest.approx(b.corner_deg)
    assert mirrored(b).corner_deg == pytest.approx(a.corner_deg)


def _readings(lengths_mm: dict[Place, float]) -> OpeningReadings:
    return readings_of(**{place.value: mm for place, mm in lengths_mm.items()})
