import math
from dataclasses import replace

import pytest

from longpoint.pieces.piece import CutKind, EndCut
from longpoint.sticks.check import check_plan
from longpoint.sticks.lay.demand import Plane, profile_demand, round_down, round_up
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.profiles import Profile
from tests.random_sticks import architrave_piece, house_of, skirting_piece

OG = Profile(name="OG", width_mm=66.0, thickness_mm=18.0, reversible=True)
SK = Profile(name="SK", width_mm=95.0, thickness_mm=18.0, reversible=True)


def test_demand_is_rounded_up_and_stock_down_to_the_hundredth() -> None:
    assert round_up(1000.001) == 100001
    assert round_down(1000.009) == 100000
    assert round_up(1000.1) == round_down(1000.1) == 100010


def test_a_head_asks_for_its_midline_and_two_ends_that_lean_apart() -> None:
    demand = profile_demand([architrave_piece("W1-head", 1000.0, 45, 45)], OG, 2.5).demands[0]
    assert demand.mid == 106600
    assert (demand.left.lean, demand.right.lean) == (-3300, 3300)
    assert demand.can_turn


def test_one_cut_at_45_takes_the_kerf_times_root_two_of_the_stick() -> None:
    demand = profile_demand([architrave_piece("W1-head", 1000.0, 45, 0)], OG, 2.5).demands[0]
    assert demand.left.kerf == math.ceil(250 * math.sqrt(2)) + 1
    assert demand.right.kerf == 250


def test_a_right_leg_leans_at_its_left_end_only() -> None:
    demand = profile_demand([architrave_piece("W1-right-leg", 2000.0, 45, 0)], OG, 2.5).demands[0]
    assert (demand.left.lean, demand.right.lean) == (-3300, 0)


def test_skirting_is_seen_in_its_thickness_and_never_turned() -> None:
    internal = skirting_piece("S1", 2000.0, 45, 45)
    found = profile_demand([internal], SK, 2.5)
    assert found.plane is Plane.THICKNESS
    assert found.demands[0].mid == 201800
    assert (found.demands[0].left.lean, found.demands[0].right.lean) == (-900, 900)
    assert not found.demands[0].can_turn


def test_an_external_skirting_corner_leans_the_other_way() -> None:
    demand = profile_demand([skirting_piece("S1", 2000.0, 0, -45)], SK, 2.5).demands[0]
    assert demand.right.lean == -900
    assert demand.mid == 199100


def test_a_piece_that_leans_in_both_planes_takes_the_room_of_its_shadow() -> None:
    flat = architrave_piece("W1-head", 1000.0, 45, 45)
    both = replace(
        flat,
        left=EndCut(kind=CutKind.COMPOUND, mitre_deg=45, bevel_deg=8),
        back_mm=flat.back_mm + 3.6,
    )
    plain, shadow = (profile_demand([piece], OG, 2.5).demands[0] for piece in (flat, both))
    hidden_mm = 18.0 * math.tan(math.radians(8)) / math.cos(math.radians(45))
    assert shadow.mid - plain.mid == pytest.approx(100 * hidden_mm, abs=1)
    assert shadow.low <= shadow.mid
    assert shadow.left.kerf > plain.left.kerf


def test_pieces_leaning_in_the_other_plane_on_one_profile_become_rectangles() -> None:
    heads = [architrave_piece(f"W{n}-head", 1000.0, 45, 45, profile="SK") for n in range(3)]
    run = skirting_piece("S1", 2000.0, 45, -45)
    found = profile_demand([*heads, run], SK, 2.5)
    assert found.plane is Plane.FACE
    rectangle = next(demand for demand in found.demands if demand.mark == "S1")
    assert (rectangle.left.lean, rectangle.right.lean) == (0, 0)
    assert rectangle.mid == 201800


def test_edges_that_do_not_agree_with_the_angles_are_covered() -> None:
    odd = replace(architrave_piece("W1-head", 1000.0, 45, 45), outer_mm=1140.0)
    demand = profile_demand([odd], OG, 2.5).demands[0]
    assert demand.mid + demand.right.lean - demand.left.lean >= 114000


def test_demand_comes_longest_first_whatever_the_order_of_the_pieces() -> None:
    pieces = [architrave_piece(f"W{n}-head", 500.0 + 100 * (n % 3), 45, 45) for n in range(5)]
    one = profile_demand(pieces, OG, 2.5)
    other = profile_demand(list(reversed(pieces)), OG, 2.5)
    assert one == other
    mids = [demand.mid for demand in one.demands]
    assert mids == sorted(mids, reverse=True)


def test_an_end_that_hardly_leans_still_has_a_point_that_needs_room() -> None:
    piece = architrave_piece("W1-head", 1010.0, -0.53, -0.84, width_mm=1.0)
    house = house_of(width_mm=1.0)
    (demand,) = profile_demand([piece], house.profiles[0], 2.5).demands

    assert demand.left.lean != 0
    check_plan(plan_sticks((piece,), house), (piece,), house)
