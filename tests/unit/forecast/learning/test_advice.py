import re
from dataclasses import replace

import pytest

from longpoint.forecast.learning.advice import LearnedAdvice, LearnedKind, learned_advice
from longpoint.forecast.learning.as_built import BuiltFrame
from longpoint.forecast.learning.setup import Learned, learn
from longpoint.forecast.learning.setup_key import SetupKey
from longpoint.survey.as_built import JointRead

KEY = SetupKey(saw="S1", tape="T1")
HEEL = JointRead(heel_mm=0.4, toe_mm=0.0)
TOE = JointRead(heel_mm=0.0, toe_mm=0.4)
SHUT = JointRead(heel_mm=0.0, toe_mm=0.0)


def frames(joint: JointRead, quirk_mm: float | None, count: int) -> list[BuiltFrame]:
    return [
        BuiltFrame(
            mark=f"W{number}",
            key=KEY,
            mitre_length_mm=(93.34,) * 4,
            gaps=(joint,) * 4,
            planned_quirk_mm=5.0,
            quirk_mm=((quirk_mm, None, quirk_mm),) * 4,
        )
        for number in range(count)
    ]


def said(joint: JointRead, quirk_mm: float | None = 5.0, count: int = 9) -> list[LearnedAdvice]:
    return list(learned_advice(learn(frames(joint, quirk_mm, count))[0]))


def test_a_steep_saw_is_told_with_its_figure_and_how_many_frames_told_it() -> None:
    (advice,) = said(HEEL)
    assert advice.kind is LearnedKind.SAW
    assert (advice.key, advice.frames) == (KEY.angle, 9)
    assert advice.off == pytest.approx(0.123, abs=0.002)
    assert advice.words.startswith("Your 45 cuts steep by about 0.12 degrees (")
    assert "from 9 frames): move the stop, or enter it and it is allowed for." in advice.words
    assert "heels" in advice.words


def test_a_shallow_saw_is_told_as_shallow() -> None:
    (advice,) = said(TOE)
    assert advice.off < 0
    assert advice.words.startswith("Your 45 cuts shallow by about 0.12 degrees (")
    assert "toes" in advice.words


def test_open_heels_are_never_put_down_to_the_readings() -> None:
    (advice,) = said(HEEL)
    assert "The readings are not to blame" in advice.words


@pytest.mark.parametrize(
    ("quirk_mm", "way"), [(5.5, "too large"), (4.5, "too small")], ids=["large", "small"]
)
def test_quirks_off_the_plan_are_told_as_size(quirk_mm: float, way: str) -> None:
    (advice,) = said(SHUT, quirk_mm)
    assert advice.kind is LearnedKind.SIZE
    assert abs(advice.off) == pytest.approx(1.0, abs=0.1)
    assert way in advice.words
    assert ("take" in advice.words) is (quirk_mm > 5)
    assert ("add that" in advice.words) is (quirk_mm < 5)
    assert advice.frames == 9


def test_the_saw_comes_before_the_tape() -> None:
    assert [advice.kind for advice in said(HEEL, 5.5)] == [LearnedKind.SAW, LearnedKind.SIZE]


def test_the_interval_holds_the_figure_and_narrows_with_frames() -> None:
    (few,), (many,) = said(HEEL, None, 2), said(HEEL, None, 20)
    for advice in (few, many):
        assert advice.within.lowest < advice.off < advice.within.highest
    assert many.u < few.u


def test_a_sound_crew_is_told_nothing() -> None:
    assert said(SHUT) == []


def test_less_than_a_stop_is_moved_for_is_not_told() -> None:
    assert said(JointRead(heel_mm=0.08, toe_mm=0.0), None, 100) == []


def test_what_is_not_sure_yet_is_not_told() -> None:
    odd = [replace(f, gaps=((HEEL, TOE)[n % 2],) * 4) for n, f in enumerate(frames(SHUT, None, 5))]
    assert learned_advice(learn(odd)[0]) == ()


def test_a_saw_set_anew_is_told_nothing_of_its_past() -> None:
    learned, _ = learn(frames(HEEL, None, 9))
    assert learned_advice(learned.set_anew(KEY.angle)) == ()
    assert learned_advice(Learned()) == ()


def test_one_frame_is_told_as_one_frame() -> None:
    (advice,) = said(HEEL, None, 1)
    assert "from 1 frame)" in advice.words


def test_no_figure_has_more_than_two_places() -> None:
    for advice in said(HEEL, 5.5):
        assert not re.search(r"\.\d{3}", advice.words)
