import pytest

from longpoint.forecast.records import Verdict
from longpoint.sheets.blocks import Ink, Outline
from longpoint.sheets.inks import ink_style
from longpoint.sheets.verdict_pictures import IN_ORDER, verdict_picture, verdict_words


def outlines(verdict: Verdict, part: float = 1.0) -> list[Outline]:
    return [mark for mark in verdict_picture(verdict, part).marks if isinstance(mark, Outline)]


def test_every_verdict_has_words_and_a_shape_of_its_own() -> None:
    assert sorted(IN_ORDER) == sorted(Verdict)
    assert len({verdict_words(verdict) for verdict in Verdict}) == len(Verdict)
    assert len({verdict_picture(verdict).marks for verdict in Verdict}) == len(Verdict)


@pytest.mark.parametrize("verdict", Verdict)
def test_a_picture_needs_neither_words_nor_hatching_which_a_cell_cannot_draw(
    verdict: Verdict,
) -> None:
    drawn = outlines(verdict)
    assert len(drawn) == len(verdict_picture(verdict).marks)
    assert not any(ink_style(mark.ink).is_hatched for mark in drawn)


@pytest.mark.parametrize("verdict", Verdict)
def test_a_picture_shows_in_black_and_white(verdict: Verdict) -> None:
    dark = {Ink.HOOK, Ink.CUT, Ink.OPENING}
    assert any(mark.ink in dark for mark in outlines(verdict))


@pytest.mark.parametrize("verdict", Verdict)
@pytest.mark.parametrize("part", [1.0, 0.6])
def test_a_picture_stays_in_its_frame_at_every_size(verdict: Verdict, part: float) -> None:
    picture = verdict_picture(verdict, part)
    for mark in outlines(verdict, part):
        for x, y in mark.points:
            assert 0.0 <= x <= picture.width_mm
            assert 0.0 <= y <= picture.height_mm
