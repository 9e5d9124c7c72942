import math
from collections.abc import Iterable

import pytest

from longpoint.errors import ShapeError
from longpoint.shape.fitted import FittedOpening, FittedOutline, SourceKind
from longpoint.shape.outline_fit import fit_outline, mirrored_outline
from longpoint.shape.point import Point, interior_angles_deg, side_lengths_mm
from longpoint.survey.instruments import Tape
from longpoint.survey.outlines import Across, OutlineReadings

TAPE = Tape(name="T1")

HOUSE = ((0.0, 0.0), (900.0, 0.0), (900.0, 1050.0), (450.0, 1500.0), (0.0, 1050.0))
"""Five corners: a square with a gable."""

RAKED = ((0.0, 0.0), (900.0, 0.0), (900.0, 1400.0), (0.0, 1050.0))


def by_corners(*corners: tuple[float, float]) -> FittedOpening | FittedOutline:
    return fit_outline("W1", OutlineReadings(corners=corners, tape="T1"), TAPE).fitted


def by_sides(
    corners: tuple[tuple[float, float], ...], angles: int, *across: tuple[int, int]
) -> OutlineReadings:
    """Return exact readings of a shape: all sides, so many angles from corner 2 on."""
    points = tuple(Point(*corner) for corner in corners)
    inside = interior_angles_deg(points)
    return OutlineReadings(
        sides_mm=side_lengths_mm(points),
        angles_deg=(*inside[1:], inside[0])[:angles],
        across=tuple(
            Across(start=i, end=j, length_mm=points[i - 1].distance_mm(points[j - 1]))
            for i, j in across
        ),
        tape="T1",
    )


def flat(corners: Iterable[tuple[float, float]]) -> list[float]:
    return [figure for corner in corners for figure in corner]


def five(*corners: tuple[float, float]) -> FittedOutline:
    found = by_corners(*corners)
    assert isinstance(found, FittedOutline)
    return found


def test_corners_are_taken_as_they_are() -> None:
    found = five(*HOUSE)
    assert found.corners == tuple(Point(*corner) for corner in HOUSE)
    assert found.corner_deg == pytest.approx((90.0, 90.0, 135.0, 90.0, 135.0))
    assert found.side_mm == pytest.approx((900.0, 1050.0, 636.396, 636.396, 1050.0), abs=0.001)


def test_corners_may_go_round_either_way_and_begin_anywhere() -> None:
    for order in (HOUSE[::-1], HOUSE[2:] + HOUSE[:2], (HOUSE[2:] + HOUSE[:2])[::-1]):
        found = five(*order)
        assert flat(found.corners) == pytest.approx(flat(HOUSE))


def test_each_corner_keeps_the_number_it_was_written_with() -> None:
    order = HOUSE[2:] + HOUSE[:2]
    found = five(*order)
    assert [order[number - 1] for number in found.written] == list(HOUSE)


def test_the_side_nearest_level_at_the_bottom_is_the_first_and_its_fall_is_kept() -> None:
    found = five((0, 10), (900, 0), (900, 1050), (450, 1500), (0, 1050))
    assert found.corners[0] == Point(0.0, 0.0)
    assert found.corners[1].y_mm == pytest.approx(0.0, abs=1e-9)
    assert found.level_deg == pytest.approx(math.degrees(math.atan2(-10, 900)))


def test_four_corners_make_an_opening_like_any_other() -> None:
    found = by_corners(*RAKED[::-1])
    assert isinstance(found, FittedOpening)
    assert found.corners == tuple(Point(*corner) for corner in RAKED)
    assert found.corner_deg == pytest.approx((90.0, 90.0, 68.75, 111.25), abs=0.005)
    assert {source.kind for source in found.sources} == {SourceKind.TAPE}
    assert len(found.sources) == 8


def test_an_error_of_a_corner_moves_that_corner_and_no_other() -> None:
    found = by_corners((0, 9), (900, 0), (900, 1400), (0, 1050))
    assert isinstance(found, FittedOpening)
    moved = by_corners((0, 9), (900, 0), (900, 1401), (0, 1050))
    assert isinstance(moved, FittedOpening)
    source = next(s for s in found.sources if s.name == "corner 3 up")
    for before, after, (dx, dy) in zip(found.corners, moved.corners, source.moves_mm, strict=True):
        assert after.x_mm - before.x_mm == pytest.approx(dx, abs=1e-9)
        assert after.y_mm - before.y_mm == pytest.approx(dy, abs=1e-9)


def test_a_corner_s_doubt_is_that_of_the_tape_over_its_sides() -> None:
    found = five((0, 0), (1000, 0), (1000, 1000), (500, 1500), (0, 1000))
    u_mm = TAPE.private_u_mm()
    # Corner 1 lies off by u both ways, and so do its neighbours, each over 1000 mm.
    by_hand = math.degrees(math.hypot(u_mm * math.sqrt(2.0), u_mm, u_mm) / 1000.0)
    assert found.corner_u_deg[0] == pytest.approx(by_hand, rel=1e-3)


@pytest.mark.parametrize(
    ("angles", "across"),
    [(5, ()), (4, ()), (3, ()), (2, ()), (0, ((1, 3), (1, 4))), (1, ((2, 4),)), (5, ((1, 3),))],
)
def test_exact_sides_and_angles_return_the_shape(
    angles: int, across: tuple[tuple[int, int], ...]
) -> None:
    found = fit_outline("W1", by_sides(HOUSE, angles, *across), TAPE).fitted
    assert isinstance(found, FittedOutline)
    for point, corner in zip(found.corners, HOUSE, strict=True):
        assert tuple(point) == pytest.approx(corner, abs=1e-4)


def test_a_triangle_is_fixed_by_its_sides_and_an_opening_of_four_needs_one_reading_more() -> None:
    triangle = fit_outline("W1", by_sides(((0, 0), (900, 0), (300, 700)), 0), TAPE).fitted
    assert triangle.corners[2] == pytest.approx(Point(300, 700))
    with pytest.raises(ShapeError, match="1 more reading is needed"):
        fit_outline("W1", by_sides(RAKED, 0), TAPE)
    found = fit_outline("W1", by_sides(RAKED, 1), TAPE).fitted
    assert isinstance(found, FittedOpening)
    assert found.corner_deg == pytest.approx((90.0, 90.0, 68.75, 111.25), abs=0.005)


def test_a_shape_left_open_is_refused_with_how_many_readings_it_wants() -> None:
    octagon = tuple((1000 * math.cos(k), 1000 * math.sin(k)) for k in map(float, range(6)))
    with pytest.raises(ShapeError, match="2 more readings are needed"):
        fit_outline("W1", by_sides(octagon, 1), TAPE)


def test_readings_that_differ_a_little_are_shared_out() -> None:
    read = by_sides(HOUSE, 5)
    sides = (read.sides_mm[0] + 2.0, *read.sides_mm[1:])
    off = OutlineReadings(sides_mm=sides, angles_deg=read.angles_deg, tape="T1")
    found = fit_outline("W1", off, TAPE).fitted
    assert 900.0 < found.side_mm[0] < 902.0
    assert found.misclosure is not None
    assert found.misclosure.spare == 3
    first = next(r for r in found.residuals if r.name == "side 1-2")
    assert first.residual > 0.0


def test_a_second_solution_that_turns_a_corner_in_is_not_taken() -> None:
    # Three sides of 500 and one angle at the bottom: the far corner may lie on either side.
    read = by_sides(((0, 0), (800, 0), (800, 500), (350, 600)), 1)
    found = fit_outline("W1", read, TAPE).fitted
    assert max(found.corner_deg) < 180.0


def test_a_corner_that_points_in_is_named() -> None:
    with pytest.raises(ShapeError, match=r"Corner 3 .* points into the opening"):
        by_corners((0, 0), (0, 1050), (450, 800), (900, 1050), (900, 0))
    with pytest.raises(ShapeError, match="Corner 4"):
        fit_outline(
            "W1",
            OutlineReadings(
                sides_mm=(900, 1050, 636, 636, 1050), angles_deg=(90, 135, 270), tape="T1"
            ),
            TAPE,
        )


def test_the_mirror_of_a_shape_is_what_its_mirrored_corners_make() -> None:
    lopsided = ((0, 0), (900, 0), (950, 1000), (300, 1500), (0, 1050))
    here = mirrored_outline(five(*lopsided))
    there = five(*((900 - x, y) for x, y in lopsided))
    assert flat(here.corners) == pytest.approx(flat(there.corners))
    assert here.corner_deg == pytest.approx(there.corner_deg)
    assert here.corner_u_deg == pytest.approx(there.corner_u_deg)
    assert here.side_mm == pytest.approx(there.side_mm)
    assert here.face == "b"
