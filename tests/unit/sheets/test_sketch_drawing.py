import pytest

from longpoint.catalogue.sketch import Anchor, Label, Line, Sketch, Stroke
from longpoint.sheets.blocks import Ink, Outline, Word
from longpoint.sheets.sketch_drawing import HEIGHT_MM, WIDTH_MM, sketch_drawing

WALL = Line(points=((0.0, 0.0), (4000.0, 0.0), (4000.0, 2400.0), (0.0, 2400.0)), stroke=Stroke.EDGE)


def outlines(sketch: Sketch) -> list[Outline]:
    return [mark for mark in sketch_drawing(sketch).marks if isinstance(mark, Outline)]


def words(sketch: Sketch) -> list[Word]:
    return [mark for mark in sketch_drawing(sketch).marks if isinstance(mark, Word)]


def test_a_sketch_fills_the_room_there_is_and_no_more() -> None:
    drawing = sketch_drawing(Sketch(lines=(WALL,)))

    assert drawing.width_mm <= WIDTH_MM
    assert drawing.height_mm == pytest.approx(HEIGHT_MM)


def test_up_on_the_wall_is_up_on_the_paper_and_the_scale_is_one() -> None:
    (wall,) = outlines(Sketch(lines=(WALL,)))
    (x0, y0), (x1, _), (_, y2), _ = wall.points

    assert y2 < y0
    assert (x1 - x0) / 4000.0 == pytest.approx((y0 - y2) / 2400.0)


@pytest.mark.parametrize("anchor", list(Anchor))
def test_a_label_at_the_edge_stays_on_the_paper(anchor: Anchor) -> None:
    label = Label(x_mm=4000.0, y_mm=0.0, text="a long word at the end of the wall", anchor=anchor)
    sketch = Sketch(lines=(WALL,), labels=(label,))
    drawing = sketch_drawing(sketch)
    (word,) = words(sketch)

    assert word.text == label.text
    assert word.anchor.value == anchor.value
    assert 0.0 < word.x_mm < drawing.width_mm <= WIDTH_MM + 1e-6


def test_each_stroke_has_an_ink_of_its_own() -> None:
    lines = tuple(Line(points=((0.0, 0.0), (1.0, 1.0)), stroke=stroke) for stroke in Stroke)

    assert len({line.ink for line in outlines(Sketch(lines=lines))}) == len(Stroke)
    assert outlines(Sketch(lines=lines))[0].ink is Ink.PIECE


def test_a_flat_sketch_has_a_scale_too() -> None:
    flat = Sketch(lines=(Line(points=((0.0, 0.0), (900.0, 0.0)), stroke=Stroke.CUT),))

    assert sketch_drawing(flat).width_mm == pytest.approx(WIDTH_MM)
