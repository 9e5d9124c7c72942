"""How often alarms ring wrongly and rightly; the figures are in docs/explanation/alarms.md.

Seeds are fixed, so a count comes out the same each time. Limits leave room for what another draw
of the same size would give: about two standard deviations of the count.
"""

import pytest

from tests.alarm_counts import (
    BEGIN,
    CLEAN_OPENINGS,
    END,
    HANDS,
    PAGE,
    batch_count,
    detection,
    false_alarms,
    tables,
)

pytestmark = pytest.mark.no_cover

TENTH = CLEAN_OPENINGS // 10
DRAWS = 60


@pytest.mark.parametrize("hand", ["new house, careful hand", "old house, careful hand"])
def test_fewer_than_one_clean_opening_in_a_hundred_raises_an_alarm(hand: str) -> None:
    counted = false_alarms(TENTH, *HANDS[hand])
    assert counted.loud / counted.openings < 0.01, counted


def test_a_hurried_hand_raises_a_few_more() -> None:
    counted = false_alarms(TENTH // 2, *HANDS["new house, hurried hand"])
    assert counted.loud / counted.openings < 0.07, counted


@pytest.mark.parametrize(
    ("target", "slip", "least_held"),
    [
        ("window, long side", "9", 0.95),
        ("window, short side", "9", 0.80),
        ("window, diagonal", "10", 0.95),
        ("door, height", "18", 0.95),
        ("door, width", "10", 0.80),
        ("door, height", "digits swapped", 0.98),
        ("window, short side", "digits swapped", 0.95),
        ("door, diagonal", "100", 0.98),
    ],
)
def test_a_slip_is_held(target: str, slip: str, least_held: float) -> None:
    assert detection(target, slip, DRAWS).held >= least_held


@pytest.mark.parametrize("target", ["window, short side", "door, width"])
def test_a_slip_of_9_on_a_short_side_is_always_spoken_of(target: str) -> None:
    assert detection(target, "9", DRAWS).told >= 0.98


@pytest.mark.parametrize(
    ("target", "slip", "least_first"),
    [
        ("window, long side", "digits swapped", 0.92),
        ("window, diagonal", "digits swapped", 0.88),
        ("door, height", "digits swapped", 0.90),
        ("door, width", "100", 0.90),
        ("door, height", "10", 0.75),
    ],
)
def test_the_right_reading_and_figure_is_proposed_first(
    target: str, slip: str, least_first: float
) -> None:
    assert detection(target, slip, DRAWS).first >= least_first


def test_a_batch_that_is_sound_is_left_alone() -> None:
    counted = batch_count("sound", 40)
    assert counted.openings_off < 0.002
    assert counted.tape_wrong <= 0.05
    assert counted.lean <= 0.05


def test_a_batch_told_by_its_marks_alone_is_left_alone_as_well() -> None:
    counted = batch_count("sound", 40, by_marks=True)
    assert counted.openings_off < 0.002
    assert counted.tape_wrong <= 0.05
    assert counted.lean <= 0.05


def test_a_unit_read_3_long_is_told_from_its_siblings() -> None:
    assert batch_count("long", 20, shift_mm=3.0).tape_right >= 0.8


def test_windows_that_begin_to_lean_4_in_a_metre_are_told() -> None:
    counted = batch_count("lean", 30, lean_mm_per_m=4.0)
    assert counted.lean >= 0.5
    assert counted.lean_near >= 0.9


@pytest.mark.long
def test_the_page_shows_what_the_full_counts_give() -> None:
    text = PAGE.read_text(encoding="utf-8")
    shown = text.split(BEGIN)[1].split(END)[0].strip()
    assert shown == tables().strip()
