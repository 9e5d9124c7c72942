import math

import pytest

from longpoint.survey.instruments import CLASS_LIMITS, REPEAT_U_MM, Saw, Tape, TapeClass


def test_an_unmarked_tape_is_taken_as_class_two() -> None:
    assert Tape(name="T1").tape_class is TapeClass.II


def test_every_class_has_a_limit_and_a_better_one_is_smaller() -> None:
    assert set(CLASS_LIMITS) == set(TapeClass)
    errors = [
        Tape(name=c, tape_class=c).max_permissible_error_mm(2000.0)
        for c in (TapeClass.I, TapeClass.II, TapeClass.III)
    ]
    assert errors == sorted(errors)
    assert errors == pytest.approx([0.4, 0.9, 1.7])


@pytest.mark.parametrize(
    ("length_mm", "metres"),
    [(0.0, 1), (1.0, 1), (1000.0, 1), (1000.1, 2), (2350.0, 3), (3000.0, 3), (3000.0000001, 3)],
)
def test_the_limit_counts_every_metre_begun(length_mm: float, metres: int) -> None:
    limit_mm = Tape(name="T1").max_permissible_error_mm(length_mm, from_hook=False)
    assert limit_mm == pytest.approx(0.3 + 0.2 * metres)


def test_the_hook_adds_to_the_limit() -> None:
    tape = Tape(name="T1")
    hooked, free = (tape.max_permissible_error_mm(2350.0, from_hook=h) for h in (True, False))
    assert hooked - free == pytest.approx(0.2)


def test_a_stated_limit_takes_the_place_of_the_class() -> None:
    tape = Tape(name="laser", tape_class=TapeClass.III, max_error_mm=1.5)
    assert tape.max_permissible_error_mm(400.0) == 1.5
    assert tape.max_permissible_error_mm(9000.0) == 1.5


def test_what_all_readings_share_is_the_limit_taken_as_even() -> None:
    assert Tape(name="T1").shared_u_mm(2350.0) == pytest.approx(1.1 / math.sqrt(3.0))


def test_repeats_shrink_the_private_part_and_not_the_shared_one() -> None:
    tape = Tape(name="T1")
    assert tape.private_u_mm(4) == pytest.approx(tape.private_u_mm() / 2.0)
    assert tape.private_u_mm() == pytest.approx(math.hypot(1.0 / math.sqrt(12.0), REPEAT_U_MM))


def test_a_finer_graduation_leaves_the_parallax() -> None:
    assert Tape(name="T1", resolution_mm=0.1).private_u_mm() == pytest.approx(0.47, abs=0.001)


@pytest.mark.parametrize(
    ("left_deg", "right_deg", "is_proved"),
    [(None, None, False), (45.1, None, False), (None, 45.0, False), (45.1, 44.9, True)],
)
def test_a_saw_is_proved_when_both_swings_were_tried(
    left_deg: float | None, right_deg: float | None, is_proved: bool
) -> None:
    saw = Saw(name="bench saw", found_left_deg=left_deg, found_right_deg=right_deg)
    assert saw.is_proved is is_proved


def test_a_reading_along_a_wall_is_less_sure_than_one_of_an_opening() -> None:
    tape = Tape(name="T1")
    # 0.47 repeat, 1 mm graduation, 1.5 assumed for plastered corners.
    assert tape.wall_u_mm() == pytest.approx(math.hypot(0.47, 1 / math.sqrt(12), 1.5))
    assert tape.wall_u_mm() > 2 * tape.private_u_mm()
