from itertools import permutations

import pytest

from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.laying import (
    Place,
    Workload,
    left_over,
    positions_mm,
    used_length,
    workload,
)
from longpoint.survey.profiles import Profile
from tests.random_sticks import architrave_piece

OG = Profile(name="OG", width_mm=66.0, thickness_mm=18.0, reversible=True)


def legs_and_head() -> Workload:
    pieces = [
        architrave_piece("W1-left-leg", 2000.0, 0, 45),
        architrave_piece("W1-right-leg", 1900.0, 45, 0),
        architrave_piece("W1-head", 900.0, 45, 45),
    ]
    return workload(profile_demand(pieces, OG, 2.5).demands)


def test_two_left_legs_one_of_them_turned_share_their_mitre_and_lose_no_triangle() -> None:
    pieces = [architrave_piece(f"W{n}-left-leg", 2000.0, 0, 45) for n in (1, 2)]
    work = workload(profile_demand(pieces, OG, 2.5).demands)
    one_way = used_length(work, [Place(0, False), Place(1, False)])
    shared = used_length(work, [Place(0, False), Place(1, True)])
    assert shared == 2 * 203300 + 355
    assert one_way == 2 * 203300 + (355 + 3300) + 3301


def test_a_moulded_pair_of_legs_always_loses_a_whole_triangle() -> None:
    work = legs_and_head()
    points_meet = used_length(work, [Place(0, False), Place(1, False)])
    feet_meet = used_length(work, [Place(1, False), Place(0, False)])
    assert points_meet == 203300 + 193300 + 355 + 6600
    assert feet_meet == 203300 + 193300 + 250 + 2 * 3301


def test_a_stick_of_nothing_uses_nothing() -> None:
    assert used_length(legs_and_head(), []) == 0
    assert left_over(legs_and_head(), [], 538000) == 538000


def test_positions_say_the_points_of_every_piece() -> None:
    work = legs_and_head()
    (start_mm, end_mm), (head_start_mm, _) = positions_mm(
        work, [Place(0, False), Place(2, True)], 1000
    )
    assert start_mm == 10.0
    assert end_mm == pytest.approx(10.0 + 2066.0)
    assert head_start_mm == pytest.approx(10.0 + 2033.0 + 3.55 - 33.0)


def test_what_is_left_over_lies_behind_the_last_cut_and_before_the_trim() -> None:
    work = legs_and_head()
    places = [Place(0, False)]
    assert left_over(work, places, 538000) == 538000 - used_length(work, places) - 355
    assert left_over(work, places, used_length(work, places)) == 0


def test_a_piece_alone_uses_its_length_and_its_two_points() -> None:
    pieces = [architrave_piece("A", 1200.0, 45.0, 45.0), architrave_piece("B", 800.0, 0.0, -44.5)]
    work = workload(profile_demand(pieces, OG, 2.5).demands)
    assert work.alone == tuple(used_length(work, [Place(n, turned=False)]) for n in (0, 1))
    assert work.alone == tuple(used_length(work, [Place(n, turned=True)]) for n in (0, 1))


def test_only_square_ends_cut_alike_make_the_order_of_pieces_needless() -> None:
    square = [architrave_piece(f"W{number}", 700.0 + number, 0, 0) for number in range(3)]
    plain = workload(profile_demand(square, OG, 2.5).demands)
    assert plain.plain_kerf == 250
    orders = list(permutations(range(3)))
    assert (
        len({used_length(plain, [Place(n, turned=False) for n in order]) for order in orders}) == 1
    )
    one_mitre = [*square[:2], architrave_piece("W2", 702.0, 45, 0)]
    assert workload(profile_demand(one_mitre, OG, 2.5).demands).plain_kerf is None
