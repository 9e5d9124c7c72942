import pytest

from longpoint.pieces.piece import HookEnd
from longpoint.sheets.blocks import Ink, Outline
from longpoint.sheets.end_pictures import HookEdge, SeenEnd, end_picture
from longpoint.sticks.order.saw_setting import SawSetting, Side
from longpoint.survey.instruments import SkirtingCut

L45 = SawSetting(swing=Side.LEFT, swing_deg=45.0)
R45 = SawSetting(swing=Side.RIGHT, swing_deg=45.0)


def body(seen: SeenEnd) -> tuple[tuple[float, float], ...]:
    (outline,) = (m for m in _outlines(seen) if m.ink is Ink.PIECE)
    return outline.points


def _outlines(seen: SeenEnd) -> list[Outline]:
    return [mark for mark in end_picture(seen).marks if isinstance(mark, Outline)]


def test_a_cut_swung_left_leans_like_a_slash_at_either_end() -> None:
    for end in HookEnd:
        points = body(SeenEnd(end=end, setting=L45))
        (far_x, far_y), (near_x, near_y) = points[1], points[2]
        assert far_y < near_y
        assert far_x - near_x == pytest.approx(near_y - far_y)


def test_the_right_end_swung_left_is_the_mirror_of_the_left_end_swung_right() -> None:
    right = end_picture(SeenEnd(end=HookEnd.RIGHT, setting=L45))
    left = body(SeenEnd(end=HookEnd.LEFT, setting=R45))
    pairs = zip(left, body(SeenEnd(end=HookEnd.RIGHT, setting=L45)), strict=True)
    for (left_x, left_y), (right_x, right_y) in pairs:
        assert (right.width_mm - left_x, left_y) == pytest.approx((right_x, right_y))


def test_a_lean_is_drawn_as_it_is_not_larger() -> None:
    small = SawSetting(swing=Side.LEFT, swing_deg=1.0)
    points = body(SeenEnd(end=HookEnd.RIGHT, setting=small))
    (far_x, far_y), (near_x, near_y) = points[1], points[2]
    assert (far_x - near_x) / (near_y - far_y) == pytest.approx(0.01746, abs=1e-5)


def test_the_hook_lies_over_the_far_edge_unless_the_piece_is_turned() -> None:
    far = SeenEnd(end=HookEnd.LEFT, setting=R45, hook=HookEdge.FAR)
    near = SeenEnd(end=HookEnd.RIGHT, setting=R45, hook=HookEdge.NEAR)
    for seen, is_above in ((far, True), (near, False)):
        (hook,) = (m for m in _outlines(seen) if m.ink is Ink.HOOK)
        middle = sum(y for _, y in hook.points) / len(hook.points)
        assert (middle < end_picture(seen).height_mm / 2) is is_above


def test_no_hook_is_drawn_where_the_tape_is_not_hooked() -> None:
    assert not [m for m in _outlines(SeenEnd(end=HookEnd.LEFT, setting=R45)) if m.ink is Ink.HOOK]


def test_a_relieved_back_is_dotted_and_a_longer_back_is_firm() -> None:
    right_tilts = {Side.LEFT: Ink.MARK, Side.RIGHT: Ink.TRUE}
    for tilt, ink in right_tilts.items():
        setting = SawSetting(tilt=tilt, tilt_deg=45.0)
        inks = [m.ink for m in _outlines(SeenEnd(end=HookEnd.RIGHT, setting=setting))]
        assert ink in inks
        assert {Ink.MARK, Ink.TRUE} - {ink} - set(inks)


def test_standing_skirting_is_drawn_thinner() -> None:
    flat = end_picture(SeenEnd(end=HookEnd.LEFT, setting=L45))
    standing = end_picture(SeenEnd(end=HookEnd.LEFT, setting=L45, hold=SkirtingCut.STANDING))
    assert standing.height_mm < flat.height_mm


@pytest.mark.parametrize("swing_deg", [0.0, 30.0, 60.0, 89.0])
@pytest.mark.parametrize("end", list(HookEnd))
def test_nothing_is_drawn_outside_the_picture(end: HookEnd, swing_deg: float) -> None:
    for side in (Side.LEFT, Side.RIGHT):
        for is_scribed in (False, True):
            setting = SawSetting(swing=side, swing_deg=swing_deg, tilt=side, tilt_deg=45.0)
            for edge in HookEdge:
                seen = SeenEnd(end=end, setting=setting, is_scribed=is_scribed, hook=edge)
                picture = end_picture(seen)
                for outline in _outlines(seen):
                    for x, y in outline.points:
                        assert 0 <= x <= picture.width_mm
                        assert 0 <= y <= picture.height_mm
