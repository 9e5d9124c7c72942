"""Settings of sprung mouldings, flat and nested."""

import math

import pytest

from longpoint.trims.cornice import (
    SprungRun,
    corner_cuts,
    corner_misfit,
    drop_mm,
    end_reach,
    plumb_cut,
    projection_mm,
    spring_of,
    wall_cut,
)
from longpoint.trims.joint_plane import SawAngles


def sin(angle_deg: float) -> float:
    return math.sin(math.radians(angle_deg))


def cos(angle_deg: float) -> float:
    return math.cos(math.radians(angle_deg))


def climbing(spring_deg: float, left_deg: float, right_deg: float) -> tuple[SprungRun, SprungRun]:
    """Return two runs by what each climbs towards the corner between them."""
    return (
        SprungRun(spring_deg=spring_deg, slope_deg=left_deg),
        SprungRun(spring_deg=spring_deg, slope_deg=-right_deg),
    )


@pytest.mark.parametrize("corner_deg", [60.0, 88.5, 90.0, 135.0, 225.0, 271.5, 300.0])
@pytest.mark.parametrize("spring_deg", [30.0, 38.0, 45.0, 52.0])
def test_level_runs_follow_the_two_formulas_of_the_level_corner(
    corner_deg: float, spring_deg: float
) -> None:
    run = SprungRun(spring_deg=spring_deg)
    cuts = corner_cuts(corner_deg, run, run)
    assert cuts is not None
    half = corner_deg / 2.0
    for cut in cuts:
        assert math.tan(math.radians(cut.mitre_deg)) == pytest.approx(
            -sin(spring_deg) * cos(half) / sin(half), abs=1e-12
        )
        assert sin(cut.bevel_deg) == pytest.approx(cos(spring_deg) * cos(half), abs=1e-12)


@pytest.mark.parametrize("slope_deg", [-25.0, -8.0, 8.0, 25.0])
@pytest.mark.parametrize("corner_deg", [75.0, 90.0, 150.0, 270.0])
def test_runs_that_climb_alike_follow_the_formulas_of_the_climbing_corner(
    corner_deg: float, slope_deg: float
) -> None:
    spring_deg, half = 38.0, corner_deg / 2.0
    cuts = corner_cuts(corner_deg, *climbing(spring_deg, slope_deg, slope_deg))
    assert cuts is not None
    mitre = math.atan2(
        sin(spring_deg) * cos(half) - cos(spring_deg) * sin(slope_deg) * sin(half),
        cos(slope_deg) * sin(half),
    )
    bevel = math.asin(
        cos(spring_deg) * cos(half) + sin(spring_deg) * sin(slope_deg) * sin(half),
    )
    for cut in cuts:
        assert cut.mitre_deg == pytest.approx(-math.degrees(mitre))
        assert cut.bevel_deg == pytest.approx(math.degrees(bevel))


@pytest.mark.parametrize("slope_deg", [-42.0, -15.0, 15.0, 42.0])
def test_a_level_run_meets_a_sloping_one_on_the_same_wall(slope_deg: float) -> None:
    cuts = corner_cuts(180.0, *climbing(38.0, 0.0, -slope_deg))
    assert cuts is not None
    for cut in cuts:
        assert math.tan(math.radians(cut.mitre_deg)) == pytest.approx(
            -math.tan(math.radians(slope_deg / 2.0)) * cos(38.0)
        )
        assert sin(cut.bevel_deg) == pytest.approx(-sin(slope_deg / 2.0) * sin(38.0))


def test_where_a_ceiling_begins_to_climb_the_bottom_edge_of_the_level_run_is_the_longer() -> None:
    cuts = corner_cuts(180.0, *climbing(38.0, 0.0, -20.0))
    assert cuts is not None
    assert end_reach(cuts.left_run, 90.0, 18.0).top_back_mm < 0


@pytest.mark.parametrize(
    ("corner_deg", "left", "right"),
    [
        (90.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=38.0, slope_deg=15.0)),
        (90.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=38.0, slope_deg=-15.0)),
        (270.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=38.0, slope_deg=15.0)),
        (90.0, *climbing(38.0, 15.0, -15.0)),
        (90.0, *climbing(38.0, 15.0, 12.0)),
        (90.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=45.0)),
        (180.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=45.0)),
    ],
)
def test_what_no_cut_closes_gets_no_settings_but_a_distance(
    corner_deg: float, left: SprungRun, right: SprungRun
) -> None:
    assert corner_cuts(corner_deg, left, right) is None
    apart = corner_misfit(corner_deg, left, right, 90.0, 18.0)
    assert 0.5 < apart.least_mm <= apart.halved_mm


def test_what_closes_stands_no_distance_apart() -> None:
    runs = climbing(38.0, 15.0, 15.0)
    assert corner_misfit(90.0, *runs, 90.0, 18.0) == pytest.approx((0.0, 0.0), abs=1e-9)


def test_a_run_of_15_degrees_round_a_corner_stands_31_mm_off_with_the_halving_cut() -> None:
    apart = corner_misfit(90.0, *climbing(38.0, 0.0, 15.0), 90.0, 18.0)
    assert apart.halved_mm == pytest.approx(31.0, abs=0.05)
    assert apart.least_mm == pytest.approx(16.0, abs=0.05)


def test_drop_and_projection_give_the_spring_back() -> None:
    assert spring_of(drop_mm(90.0, 38.0), projection_mm(90.0, 38.0)) == pytest.approx(38.0)


def test_a_wall_that_is_not_square_is_met_along_itself() -> None:
    """In plan the board's ceiling edge stops short by its projection over tan(corner)."""
    cut = wall_cut(80.0, SprungRun(spring_deg=38.0), at_left=False)
    reach = end_reach(cut, 90.0, 18.0)
    short_mm = projection_mm(90.0, 38.0) / math.tan(math.radians(80.0))
    assert reach.top_back_mm == pytest.approx(-short_mm)
    assert reach.bottom_face_mm == pytest.approx(-18.0 * cos(38.0) / math.tan(math.radians(80.0)))


def test_a_plumb_end_of_a_climbing_run_is_upright() -> None:
    """Along the run the ceiling edge lies as far on as its rise in the wall makes it."""
    cut = plumb_cut(SprungRun(spring_deg=38.0, slope_deg=20.0), at_left=False)
    reach = end_reach(cut, 90.0, 18.0)
    assert reach.top_back_mm == pytest.approx(drop_mm(90.0, 38.0) * math.tan(math.radians(20.0)))


def test_both_ends_reach_their_longest_at_one_of_four_edges() -> None:
    reach = end_reach(SawAngles(-31.6, 33.9), 90.0, 18.0)
    assert reach.longest_mm == 0.0
    assert end_reach(SawAngles(31.6, -33.9), 90.0, 18.0).longest_mm == pytest.approx(
        90.0 * math.tan(math.radians(31.6))
        + 18.0 * math.tan(math.radians(33.9)) / math.cos(math.radians(31.6))
    )
