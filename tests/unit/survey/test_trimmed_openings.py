from dataclasses import replace

import pytest

from longpoint.survey.openings import Layout, Opening
from longpoint.survey.profiles import Profile
from longpoint.survey.readings import OpeningReadings
from longpoint.survey.trimmed_openings import is_seen_from_behind, trimmed_opening
from tests.room_builder import ARCHITRAVE, SKIRTING, a_door, a_house


def test_a_door_takes_its_width_two_quirks_and_two_architraves() -> None:
    # 819 + 2 x 5 + 2 x 57 = 943
    trim = trimmed_opening(a_house(), a_door(), "Den")
    assert trim.outer_mm == pytest.approx(943)
    assert (trim.left_mm, trim.right_mm) == (62, 62)


def test_the_width_along_the_wall_is_the_mean_of_top_and_bottom() -> None:
    trim = trimmed_opening(a_house(), a_door(top=819, bottom=821), "Den")
    assert (trim.width_mm, trim.floor_width_mm) == (820, 821)


def test_from_the_other_room_left_and_right_swap() -> None:
    door = a_door(faces=2, left_quirk_mm=8)
    assert is_seen_from_behind(door, "Hall")
    behind = trimmed_opening(a_house(), door, "Hall")
    front = trimmed_opening(a_house(), door, "Den")
    assert (front.left_quirk_mm, behind.left_quirk_mm) == (8, 5)
    assert behind.right_quirk_mm == 8
    assert front.outer_mm == behind.outer_mm


def test_an_opening_without_a_room_is_seen_from_the_front() -> None:
    assert not is_seen_from_behind(a_door(room="", faces=2), "Den")


def test_an_opening_whose_width_was_not_read_has_none() -> None:
    door = replace(a_door(), readings=OpeningReadings(lengths=(), tape="T1"))
    unread = trimmed_opening(a_house(), door, "Den")
    assert unread.width_mm is None
    assert unread.outer_mm is None


def left_mm(door: Opening) -> float:
    """Return how far a door reaches to the left of its reveal, with blocks and bands described."""
    plinth = Profile(name="PB65", width_mm=65.0, thickness_mm=25.0)
    narrow = Profile(name="PB50", width_mm=50.0, thickness_mm=25.0)
    band = Profile(name="BB20", width_mm=20.0, thickness_mm=28.0)
    house = a_house(openings=[door], profiles=(SKIRTING, ARCHITRAVE, plinth, narrow, band))
    trim = trimmed_opening(house, door, "Den")
    assert trim.left_mm == trim.right_mm
    return trim.left_mm


def test_at_the_floor_a_plinth_wider_than_its_leg_counts_instead_of_it() -> None:
    assert left_mm(a_door()) == 5 + 57
    assert left_mm(replace(a_door(), plinth="PB65", plinth_height_mm=200.0)) == 5 + 65
    assert left_mm(replace(a_door(), plinth="PB50", plinth_height_mm=200.0)) == 5 + 57

    round_it = replace(a_door(), layout=Layout.ALL_ROUND)
    assert left_mm(replace(round_it, plinth="PB65", plinth_height_mm=200.0)) == 5 + 57


def test_a_back_band_counts_unless_it_stands_on_the_plinth() -> None:
    banded = replace(a_door(), back_band="BB20")
    assert left_mm(banded) == 5 + 57 + 20
    assert left_mm(replace(banded, plinth="PB65", plinth_height_mm=200.0)) == 5 + 65
    assert left_mm(replace(banded, plinth="PB50", plinth_height_mm=200.0)) == 5 + 57 + 20
