import re
from xml.etree import ElementTree as ET

import pytest

from longpoint.sheets.blocks import Anchor, Drawing, Ink, Outline, Word
from longpoint.sheets.inks import ink_style
from longpoint.sheets.opening_drawings import opening_drawings
from longpoint.sheets.svg import drawing_svg
from tests.unit.sheets.sample import PLAN

SQUARE = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0))
SVG = "{http://www.w3.org/2000/svg}"


def one(ink: Ink, *, closed: bool = True) -> Drawing:
    return Drawing(
        width_mm=10.0,
        height_mm=10.0,
        marks=(Outline(points=SQUARE, ink=ink, closed=closed),),
        described=ink.value,
    )


@pytest.mark.parametrize("ink", list(Ink))
def test_every_ink_is_drawn(ink: Ink) -> None:
    root = ET.fromstring(drawing_svg(one(ink)))
    (shape,) = root.iter(f"{SVG}polygon")
    assert shape.get("fill") != "none" or shape.get("stroke")


def grey(colour: str) -> float:
    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return 0.299 * red + 0.587 * green + 0.114 * blue


def test_inks_stay_apart_in_grey() -> None:
    seen = set()
    for ink in Ink:
        style = ink_style(ink)
        fill = None if style.fill is None else round(grey(style.fill) / 16)
        line = (round(grey(style.stroke) / 16), style.weight_mm, bool(style.dash_mm))
        seen.add((fill, style.is_hatched, line if style.weight_mm else None))
    assert len(seen) == len(Ink)


def test_an_open_line_is_not_closed() -> None:
    root = ET.fromstring(drawing_svg(one(Ink.CUT, closed=False)))
    assert [child.tag for child in root if child.tag != f"{SVG}title"] == [f"{SVG}polyline"]


def test_words_are_escaped_and_turned() -> None:
    word = Word(
        x_mm=1.0, y_mm=2.0, text="</text><script>", turn_deg=-90.0, anchor=Anchor.END, bold=True
    )
    text = drawing_svg(Drawing(width_mm=5.0, height_mm=5.0, marks=(word,), described="<&>"))
    root = ET.fromstring(text)
    (found,) = root.iter(f"{SVG}text")
    assert found.text == "</text><script>"
    assert found.get("transform") == "rotate(-90 1 2)"
    assert found.get("text-anchor") == "end"
    (title,) = root.iter(f"{SVG}title")
    assert title.text == "<&>"


def test_a_drawing_without_a_description_is_hidden_from_readers_of_the_screen() -> None:
    plain = Drawing(width_mm=5.0, height_mm=5.0, marks=())
    assert 'aria-hidden="true"' in drawing_svg(plain)


def test_ids_differ_between_drawings_and_repeat_between_runs() -> None:
    texts = [drawing_svg(drawing) for _, drawing in opening_drawings(PLAN)]
    ids = [name for text in texts for name in re.findall(r'id="([^"]+)"', text)]
    assert len(ids) == len(set(ids))
    assert texts == [drawing_svg(drawing) for _, drawing in opening_drawings(PLAN)]
