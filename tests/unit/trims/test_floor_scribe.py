import pytest

from longpoint.trims.floor_scribe import (
    Scribe,
    floor_under,
    following_scribe,
    height_at,
    level_scribe,
)


def test_a_level_top_takes_all_the_floor_s_rise_off_below() -> None:
    scribe = level_scribe([(0, 12), (3402, 0)], 3402)
    assert (scribe.left_mm, scribe.right_mm, scribe.rise_mm) == (12.0, 0.0, 0.0)
    assert (scribe.deepest_mm, scribe.deepest_at_mm) == (12.0, 0.0)


def test_boards_of_one_level_share_the_lowest_floor() -> None:
    assert level_scribe([(0, 9)], 1206, datum_mm=0.0).marks == ((0.0, 9.0), (1206.0, 9.0))


def test_an_even_fall_is_followed_without_scribing() -> None:
    scribe = following_scribe([(0, 12), (3402, 0)], 3402)
    assert scribe.deepest_mm == pytest.approx(0.0)
    assert scribe.rise_mm == pytest.approx(-12.0)


def test_a_hump_comes_off_in_the_middle_and_the_ends_keep_their_height() -> None:
    scribe = following_scribe([(0, 0), (1900, 6), (3640, 0)], 3640)
    assert scribe.marks == ((0.0, 0.0), (1900.0, 6.0), (3640.0, 0.0))
    assert scribe.rise_mm == 0.0


def test_a_hollow_comes_off_at_both_ends_alike() -> None:
    scribe = following_scribe([(0, 0), (1900, -5), (3640, 0)], 3640)
    assert scribe.marks == ((0.0, 5.0), (1900.0, 0.0), (3640.0, 5.0))


def test_a_bump_at_one_end_does_not_tilt_the_board() -> None:
    scribe = following_scribe([(0, 6), (300, 0), (4000, 0)], 4000)
    assert scribe.rise_mm == 0.0
    assert (scribe.left_mm, scribe.right_mm) == (6.0, 0.0)


def test_a_board_never_stands_below_its_floor() -> None:
    floor = [(0, 4), (500, -2), (1700, 7), (2600, 1), (3900, -6)]
    for scribe in (following_scribe(floor, 3900), level_scribe(floor, 3900)):
        offs = [off_mm for _, off_mm in scribe.marks]
        assert min(offs) == pytest.approx(0.0, abs=1e-9)


def test_the_floor_goes_on_level_past_the_last_reading() -> None:
    floor = [(500, 2), (1500, 6)]
    assert [height_at(floor, x) for x in (0, 500, 1000, 1500, 9000)] == [2, 2, 4, 6, 6]
    assert floor_under(floor, 1000, 2000) == ((0.0, 4.0), (500, 6), (1000, 6.0))


def test_a_part_of_a_board_keeps_its_part_of_the_scribe() -> None:
    whole = Scribe(marks=((0.0, 0.0), (1900.0, 6.0), (3800.0, 0.0)), rise_mm=-8.0)
    part = whole.part(950.0, 3800.0)
    assert part.marks == ((0.0, 3.0), (950.0, 6.0), (2850.0, 0.0))
    assert part.rise_mm == pytest.approx(-6.0)
