import math
from itertools import pairwise

import pytest

from longpoint.sheets.blocks import Ink, Outline, Word
from longpoint.sheets.cut_pictures import (
    FACE_MM,
    HALF_MM,
    LEAST_MM,
    changes_words,
    cuts_picture,
    with_cuts,
)
from longpoint.sheets.stick_pictures import PAPER_MM, scale_of
from longpoint.sticks.order.saw_order import saw_steps, setting_changes
from longpoint.sticks.order.saw_setting import SawSetting, Side
from longpoint.sticks.order.stick_cuts import StickCut, cuts_by_stick
from tests.unit.sheets.sample import PIECES, PLAN, STICKS, by_mark, stick

STEPS = saw_steps(PLAN.cut_plan, PLAN.pieces, PLAN.house.saw)
CUTS = cuts_by_stick(STEPS)
ONE = stick("T", 2700.0, by_mark("W1-head"))


def cut(setting: SawSetting, left: str | None = None, right: str | None = None) -> StickCut:
    return StickCut(number=1, setting=setting, is_set_anew=True, left=left, right=right)


def drawn(*cuts: StickCut) -> dict[Ink, list[Outline]]:
    picture = cuts_picture(ONE, cuts, scale_of([ONE]))
    found: dict[Ink, list[Outline]] = {}
    for mark in picture.marks:
        if isinstance(mark, Outline):
            found.setdefault(mark.ink, []).append(mark)
    return found


MITRE = SawSetting(swing=Side.LEFT, swing_deg=45.0)


@pytest.mark.parametrize(("side", "sign"), [(Side.LEFT, 1.0), (Side.RIGHT, -1.0)])
def test_a_cut_leans_as_the_saw_is_swung(side: Side, sign: float) -> None:
    """Handle to the left: the cut leans like a slash, its far edge to the right; true to scale."""
    setting = SawSetting(swing=side, swing_deg=22.5)
    (kept,) = drawn(cut(setting, left="W1-head"))[Ink.PIECE]
    (_, far, near, _) = kept.points
    assert far[0] - near[0] == pytest.approx(sign * FACE_MM * math.tan(math.radians(22.5)))


def test_the_saw_takes_its_width_off_the_side_that_is_not_kept() -> None:
    for setting in (SawSetting(), MITRE):
        right_end = drawn(cut(setting, left="W1-head"))
        left_end = drawn(cut(setting, right="W1-head"))
        (kept,), strip = right_end[Ink.PIECE], right_end[Ink.HOOK][0]
        assert min(x for x, _ in strip.points) >= min(x for x, _ in kept.points[1:3]) - 1e-9
        (kept,), strip = left_end[Ink.PIECE], left_end[Ink.HOOK][0]
        assert max(x for x, _ in strip.points) <= kept.points[1][0]


def test_a_shared_cut_is_filled_on_both_sides_and_a_tilted_one_dotted() -> None:
    assert len(drawn(cut(MITRE, left="W1-head", right="W1-head"))[Ink.PIECE]) == 2
    tilted = SawSetting(tilt=Side.LEFT, tilt_deg=45.0)
    assert len(drawn(cut(tilted, left="W1-head"))[Ink.TRUE]) == 1
    assert Ink.TRUE not in drawn(cut(MITRE, left="W1-head"))


def test_every_cut_has_its_number_and_none_covers_another() -> None:
    for name, cuts in CUTS.items():
        own = next(each for each in STICKS if each.name == name)
        picture = cuts_picture(own, cuts, scale_of(STICKS))
        numbers = [m for m in picture.marks if isinstance(m, Word) and m.bold]
        assert [word.text for word in numbers] == [str(each.number) for each in cuts]
        for first, second in pairwise(numbers):
            assert second.x_mm - first.x_mm >= LEAST_MM - 1e-6 or second.y_mm > first.y_mm
        assert all(HALF_MM - 1e-6 <= w.x_mm <= PAPER_MM - HALF_MM + 1e-6 for w in numbers)


def test_a_stick_of_many_cuts_goes_on_in_a_second_row() -> None:
    one = stick("T", 5400.0, PIECES[:1])
    many = [
        StickCut(number=n, setting=MITRE, is_set_anew=False, left=PIECES[0].mark, right=None)
        for n in range(1, 31)
    ]
    picture = cuts_picture(one, many, scale_of([one]))
    rows = {m.y_mm for m in picture.marks if isinstance(m, Word) and m.bold}
    assert len(rows) == 3
    assert max(rows) < picture.height_mm


def test_changes_are_counted_by_profile_and_add_up_to_those_of_the_plan() -> None:
    said = changes_words(PLAN.cut_plan, CUTS)
    assert said.endswith(f"in all {setting_changes(STEPS)} times.")
    for profile in dict.fromkeys(each.profile for each in STICKS):
        assert f"{profile} " in said


def test_a_stick_and_its_cuts_are_one_picture_with_all_said() -> None:
    lower = cuts_picture(ONE, [cut(MITRE, left="W1-head")], 1.0)
    both = with_cuts(lower, lower)
    assert both.height_mm == 2 * lower.height_mm
    assert len(both.marks) == 2 * len(lower.marks)
    assert both.described.count("cut 1 L 45.0, set anew for W1-head") == 2


def test_a_compound_setting_is_written_in_two_lines_large_enough_to_read() -> None:
    setting = SawSetting(swing=Side.RIGHT, swing_deg=1.0, tilt=Side.RIGHT, tilt_deg=44.9)
    picture = cuts_picture(ONE, [cut(setting, left="W1-head")], 1.0)
    words = [mark for mark in picture.marks if isinstance(mark, Word) and not mark.bold]
    assert [word.text for word in words] == ["R 1.0", "tilt R 44.9"]
    assert min(word.size_mm for word in words) > 2.0
    assert words[1].y_mm < picture.height_mm
