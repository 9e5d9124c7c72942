import math
from itertools import pairwise

import pytest

from longpoint.pieces.scarfs import LEAST_PART_MM, Reach, longest_piece_mm, split_reach
from longpoint.survey.profiles import Stock
from tests.room_builder import a_house


def plain(length_mm: float) -> Reach:
    return Reach(back_start_mm=0, face_start_mm=0, back_end_mm=length_mm, face_end_mm=length_mm)


def test_the_long_run_of_the_prefab_takes_one_joint_and_one_thickness_more() -> None:
    # Geometry C: stock = run + (n - 1) t tan 45 = 5894 + 18.
    parts = split_reach(plain(5894), 18.0, 5380.0)
    assert len(parts) == 2
    assert math.fsum(part.face_mm for part in parts) == pytest.approx(5894)
    assert math.fsum(part.back_mm for part in parts) == pytest.approx(5894)
    assert math.fsum(part.extent_mm for part in parts) == pytest.approx(5912)


@pytest.mark.parametrize("length_mm", [5381, 5400, 5900, 6000, 8000, 10760, 12345, 21000])
def test_no_part_is_too_long_or_too_short(length_mm: float) -> None:
    parts = split_reach(plain(length_mm), 18.0, 5380.0)
    assert all(LEAST_PART_MM - 1e-6 <= part.extent_mm <= 5380.0 + 1e-6 for part in parts)
    assert math.fsum(p.extent_mm for p in parts) == pytest.approx(length_mm + 18 * (len(parts) - 1))
    assert len(parts) == math.ceil((length_mm - 18.0) / (5380.0 - 18.0))


def test_a_run_that_fits_stays_whole() -> None:
    assert split_reach(plain(5380), 18.0, 5380.0) == (plain(5380),)
    assert split_reach(plain(9000), 18.0, None) == (plain(9000),)


def test_an_external_corner_counts_with_its_face() -> None:
    corner = Reach(back_start_mm=0, face_start_mm=-19, back_end_mm=5370, face_end_mm=5370)
    assert len(split_reach(corner, 19.0, 5380.0)) == 2


def test_each_joint_fits_the_next_part_on_face_and_back() -> None:
    parts = split_reach(plain(15000), 18.0, 5380.0)
    for left, right in pairwise(parts):
        assert left.face_end_mm == right.face_start_mm
        assert left.back_end_mm == right.back_start_mm
        assert left.back_end_mm - left.face_end_mm == pytest.approx(18.0)


def test_when_sticks_are_short_the_parts_are_even() -> None:
    parts = split_reach(plain(1100), 18.0, 1000.0)
    assert [part.face_mm for part in parts] == pytest.approx([550, 550])


def test_the_longest_stick_less_both_trims_is_the_limit() -> None:
    assert longest_piece_mm(a_house(), "SK90") == 5379.0
    assert longest_piece_mm(a_house(), "AR57") is None


def test_what_the_crew_will_carry_limits_too() -> None:
    assert longest_piece_mm(a_house(longest_run_mm=3600), "SK90") == 3600
    longer = a_house(longest_run_mm=3600, stock=[Stock(profile="SK90", length_mm=2400)])
    assert longest_piece_mm(longer, "SK90") == 2379


def test_upper_edges_that_reach_further_count_for_what_a_stick_has_to_hold() -> None:
    whole = Reach(
        back_start_mm=0.0,
        face_start_mm=18.0,
        back_end_mm=1000.0,
        face_end_mm=1000.0,
        top_start_mm=4.0,
        top_end_mm=-6.0,
    )
    assert (whole.start_mm, whole.end_mm, whole.extent_mm) == (-4.0, 1000.0, 1004.0)
    assert whole.top_mm == -2.0
    # The face is the shorter below, and both upper edges are 2 shorter than the lower ones.
    assert whole.shortest_mm == 980.0


def test_parts_of_a_board_keep_the_lean_of_its_two_ends_only() -> None:
    whole = Reach(
        back_start_mm=0.0,
        face_start_mm=0.0,
        back_end_mm=6000.0,
        face_end_mm=6000.0,
        top_start_mm=3.0,
        top_end_mm=5.0,
    )
    first, second = split_reach(whole, 18.0, 5000.0)
    assert (first.top_start_mm, first.top_end_mm) == (3.0, 0.0)
    assert (second.top_start_mm, second.top_end_mm) == (0.0, 5.0)
    assert max(first.extent_mm, second.extent_mm) <= 5000.0
