"""What was learned takes the place of what was assumed, as far as it goes and no further."""

from typing import Any

import pytest

from longpoint.forecast.budget.house_budget import house_budget
from longpoint.forecast.budget.records import BudgetLine, ErrorName, Standing
from longpoint.forecast.learned_lines import DEFAULT_SIZE_U_MM, learned_lines
from longpoint.forecast.learning.as_built import Axis
from longpoint.forecast.learning.setup import ANGLE_PRIOR, SIZE_PRIOR, Learned, Seen
from longpoint.forecast.learning.setup_key import AngleKey, SizeKey
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from tests.house_documents import house, window


def a_house(saw: dict[str, Any] | None = None, **changes: Any) -> House:  # noqa: ANN401
    saws = {"S1": {"kerf": 2.4, **(saw or {})}}
    document = house(**{"saws": saws, "openings": [window()], **changes})
    return read_house(document).house


def saw_out_by(*values: float, key: AngleKey | None = None) -> Learned:
    learned = Learned()
    for number, value in enumerate(values):
        seen = Seen(mark=f"W{number}", value=value)
        learned = learned.with_seen(key or AngleKey(saw="S1"), seen, ANGLE_PRIOR)
    return learned


def size_out_by(*values: float, tape: str = "T1") -> Learned:
    learned = Learned()
    for number, value in enumerate(values):
        seen = Seen(mark=f"W{number}", value=value, axis=Axis.WIDTH)
        learned = learned.with_seen(SizeKey(tape=tape), seen, SIZE_PRIOR)
    return learned


def by_name(lines: tuple[BudgetLine, ...]) -> dict[ErrorName, BudgetLine]:
    return {line.name: line for line in lines}


def test_nine_frames_make_the_saw_a_known_error_with_a_small_doubt() -> None:
    (line,) = learned_lines(saw_out_by(*[0.12] * 9), a_house())
    assert line.name is ErrorName.SAW_SCALE
    # Worth 0.04 frames at nothing beforehand: 9 x 0.12 / 9.04.
    assert line.bias == pytest.approx(9 * 0.12 / 9.04)
    assert 0.005 < line.u < 0.03
    assert (line.standing, line.basis) == (Standing.LEARNED, "from 9 frames")


def test_the_doubt_of_the_next_house_is_wider_than_that_of_the_mean() -> None:
    learned = saw_out_by(0.08, 0.10, 0.14, 0.16)
    (line,) = learned_lines(learned, a_house())
    (term,) = learned.now()
    assert line.u > term.belief.spread > term.belief.mean_u


def test_what_is_dialled_out_is_no_error_any_more() -> None:
    found = {"found": {"left": 45.10, "right": 45.14}}
    (line,) = learned_lines(saw_out_by(*[0.12] * 9), a_house(found))
    assert line.bias == pytest.approx(0.0, abs=0.001)


def test_a_saw_taken_for_true_against_its_own_frames_keeps_its_error() -> None:
    found = {"found": {"left": 45.0, "right": 45.0}}
    budget = house_budget(a_house(found), learned_lines(saw_out_by(*[0.12] * 9), a_house(found)))
    assert budget.line(ErrorName.SAW_SCALE).bias == pytest.approx(0.12, abs=0.001)
    assert house_budget(a_house(found)).line(ErrorName.SAW_SCALE).bias == 0.0


@pytest.mark.parametrize("saw", [{"blade": "new"}, {"setting": "moved"}])
def test_another_blade_or_setting_is_another_saw(saw: dict[str, Any]) -> None:
    assert learned_lines(saw_out_by(0.12), a_house(saw)) == ()
    assert len(learned_lines(saw_out_by(0.12, key=AngleKey(saw="S1", **saw)), a_house(saw))) == 1


def test_a_saw_set_anew_says_nothing_until_a_frame_tells() -> None:
    learned = saw_out_by(0.12).set_anew(AngleKey(saw="S1"))
    assert learned_lines(learned, a_house()) == ()


def test_the_size_stands_in_one_line_since_reading_and_marking_cannot_be_told_apart() -> None:
    lines = by_name(learned_lines(size_out_by(*[1.0] * 20), a_house()))
    assert set(lines) == {ErrorName.INSIDE_READING, ErrorName.MARK_OFFSET}
    reading, mark = lines[ErrorName.INSIDE_READING], lines[ErrorName.MARK_OFFSET]
    assert reading.bias == pytest.approx(1.0, abs=0.1)
    assert reading.u < DEFAULT_SIZE_U_MM
    assert (mark.bias, mark.u) == (0.0, 0.0)


def test_what_is_taken_off_the_tape_is_no_error_any_more() -> None:
    tapes = {"T1": {"class": "II", "take_off": 1.0}}
    (reading, _) = learned_lines(size_out_by(*[1.0] * 20), a_house(tapes=tapes))
    assert reading.bias == pytest.approx(0.0, abs=0.1)


def test_one_frame_near_nothing_tells_less_of_the_size_than_our_own_figure() -> None:
    assert learned_lines(size_out_by(0.2), a_house()) == ()


def test_few_frames_far_out_are_not_waved_away() -> None:
    (reading, _) = learned_lines(size_out_by(4.0, 4.1, 3.9), a_house())
    assert reading.bias > 2.0


def test_with_two_tapes_in_use_one_is_not_taken_for_the_other() -> None:
    tapes = {"T1": {"class": "II"}, "T2": {"class": "II"}}
    openings = [window(), window(mark="W2", tape="T2")]
    two = a_house(tapes=tapes, openings=openings)
    assert learned_lines(size_out_by(*[1.0] * 20), two) == ()
