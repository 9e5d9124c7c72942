from dataclasses import replace

import pytest

from longpoint.forecast.learning.as_built import BuiltFrame
from longpoint.forecast.learning.belief import Prior
from longpoint.forecast.learning.setup import ANGLE_PRIOR, Beforehand, Learned, Term, learn
from longpoint.forecast.learning.setup_key import AngleKey, SetupKey, SizeKey
from longpoint.survey.as_built import JointRead

KEY = SetupKey(saw="S1", setting="as bought", blade="first", tape="T1", mode="hook pushed")


def frame(mark: str, heel_mm: float | None = 0.4, key: SetupKey = KEY) -> BuiltFrame:
    return BuiltFrame(
        mark=mark,
        key=key,
        mitre_length_mm=(100.0,) * 4,
        gaps=(JointRead(heel_mm=heel_mm, toe_mm=0.0),) * 4,
        planned_quirk_mm=5.0,
        quirk_mm=((5.5, None, 5.5), (5.2, None, 5.2), (5.5, None, 5.5), (5.2, None, 5.2)),
    )


def angle_term(learned: Learned, key: AngleKey = KEY.angle) -> Term:
    term = learned.term(key)
    assert term is not None
    return term


def size_term(learned: Learned) -> Term:
    term = learned.term(KEY.size)
    assert term is not None
    return term


def test_each_frame_tells_of_the_saw_and_of_both_sizes() -> None:
    learned, notes = learn([frame("W1"), frame("W2")])
    assert notes == ()
    assert angle_term(learned).frames == size_term(learned).frames == 2
    assert [x.value for x in size_term(learned).seen] == pytest.approx([0.4, 1.0, 0.4, 1.0])


def test_frames_learned_together_or_one_after_the_other_come_to_the_same() -> None:
    together, _ = learn([frame("W1", 0.4), frame("W2", 0.3)])
    after, _ = learn([frame("W2", 0.3)], learn([frame("W1", 0.4)])[0])
    assert after == together


def test_a_frame_read_again_counts_once() -> None:
    learned, _ = learn([frame("W1", 0.4), frame("W2", 0.4), frame("W1", 0.2)])
    assert angle_term(learned) == angle_term(learn([frame("W2", 0.4), frame("W1", 0.2)])[0])


def test_a_frame_with_a_joint_not_read_still_tells_its_size() -> None:
    learned, (note,) = learn([frame("W1", None)])
    assert note.code == "frame-not-closed"
    assert learned.term(KEY.angle) is None
    assert size_term(learned).frames == 1


@pytest.mark.parametrize("change", [{"blade": "second"}, {"setting": "moved"}, {"saw": "S2"}])
def test_a_new_blade_or_a_moved_stop_starts_anew(change: dict[str, str]) -> None:
    other = replace(KEY, **change)
    learned, _ = learn([frame("W1"), frame("W2", -0.4, other)])
    assert angle_term(learned).belief.mean > 0 > angle_term(learned, other.angle).belief.mean
    assert size_term(learned).frames == 2


@pytest.mark.parametrize("change", [{"tape": "T2"}, {"mode": "case added"}])
def test_another_tape_or_way_of_reading_is_learned_apart(change: dict[str, str]) -> None:
    learned, _ = learn([frame("W1"), frame("W2", key=replace(KEY, **change))])
    assert size_term(learned).frames == 1
    assert angle_term(learned).frames == 2


def test_a_saw_set_anew_starts_anew_and_its_history_is_kept() -> None:
    old, _ = learn([frame("W1"), frame("W2")])
    new, _ = learn([frame("W3", -0.4)], old.set_anew(KEY.angle))
    assert angle_term(new).frames == 1
    assert angle_term(new).set_up == 2
    assert angle_term(old) in new.terms
    assert size_term(new).frames == 3
    assert len(new.now()) == 2


def test_what_was_never_seen_can_not_be_set_anew() -> None:
    learned, _ = learn([frame("W1")])
    assert learned.set_anew(SizeKey(tape="T9")) is learned


def test_a_door_counts_less_than_a_window() -> None:
    window = frame("W1")
    door = replace(
        window, mark="D1", mitre_length_mm=(100.0,) * 2, gaps=window.gaps[:2], legs_held_mm=2040.0
    )
    weights = [x.weight for x in angle_term(learn([window, door])[0]).seen]
    assert weights[0] == 1.0
    assert 0.4 < weights[1] < 0.7


def test_coarse_feelers_make_a_frame_count_less() -> None:
    coarse, _ = learn([frame("W1")], beforehand=Beforehand(feeler_mm=0.5))
    assert angle_term(coarse).seen[0].weight < 0.5


def test_the_mean_leans_on_the_prior_until_frames_outweigh_it() -> None:
    stubborn = Beforehand(angle=Prior(mean_sd=0.02, spread=0.02))
    usual, _ = learn([frame("W1")])
    held, _ = learn([frame("W1")], beforehand=stubborn)
    told = angle_term(usual).seen[0].value
    assert angle_term(held).belief.mean == pytest.approx(told / 2)
    k = (ANGLE_PRIOR.spread / ANGLE_PRIOR.mean_sd) ** 2
    assert angle_term(usual).belief.mean == pytest.approx(told / (1 + k))
