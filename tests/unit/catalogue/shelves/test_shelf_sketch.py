from longpoint.catalogue.shelves.alcove import Alcove, Split, fit_shelf
from longpoint.catalogue.shelves.shelf_sketch import shelf_sketch
from longpoint.catalogue.sketch import Stroke
from longpoint.catalogue.trim import Asked
from longpoint.shape.fitted import Shapes
from longpoint.survey.trims import TrimEntry
from tests.house_documents import house, the_house


def test_the_drawing_shows_alcove_shelf_and_square() -> None:
    profiles = {**house()["profiles"], "SB250": {"face": 250, "thickness": 22}}
    entry = TrimEntry(mark="SH1", kind="shelf", profile="SB250", tape="T1", values={}, written={})
    asked = Asked(house=the_house(profiles=profiles), shapes=Shapes(), entry=entry)
    alcove = Alcove(back_mm=900, depth_mm=300, left_out_mm=6, right_out_mm=12, split=Split.READ)
    sketch = shelf_sketch(asked, "shelf 1", alcove, fit_shelf(alcove, 250, 1))
    by_stroke = {line.stroke: line for line in sketch.lines}
    assert set(by_stroke) == {Stroke.TIMBER, Stroke.EDGE, Stroke.TRUE}
    # The room is below: the front edge at -250, the alcove's front at -300.
    assert {y for _, y in by_stroke[Stroke.TIMBER].points} == {0.0, -250.0}
    assert {y for _, y in by_stroke[Stroke.EDGE].points} == {0.0, -300.0}
    left, right, back_right, back_left = by_stroke[Stroke.TIMBER].points
    assert right[0] - left[0] == 900 + 18 * 250 / 300 - 2
    assert back_right[0] - back_left[0] == 898
