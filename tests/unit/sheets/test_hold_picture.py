from longpoint.sheets.blocks import Ink, Outline, Word
from longpoint.sheets.hold_picture import diagonal_bars, hold_picture


def area(points: tuple[tuple[float, float], ...]) -> float:
    pairs = zip(points, points[1:] + points[:1], strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs)) / 2


def test_the_bars_cover_a_third_of_the_picture_and_stay_inside() -> None:
    bars = diagonal_bars(106.0, 62.0)
    assert all(0 <= x <= 106.0 and 0 <= y <= 62.0 for bar in bars for x, y in bar)
    assert 0.30 <= sum(map(area, bars)) / (106.0 * 62.0) <= 0.37


def test_hold_is_the_largest_word_and_no_figure_stands_beside_it() -> None:
    picture = hold_picture("W3", "window")
    words = [mark for mark in picture.marks if isinstance(mark, Word)]
    assert [word.text for word in words] == ["HOLD"]
    assert words[0].size_mm >= 20.0
    assert any(isinstance(mark, Outline) and mark.ink is Ink.BAR for mark in picture.marks)
    assert "W3" in picture.described
