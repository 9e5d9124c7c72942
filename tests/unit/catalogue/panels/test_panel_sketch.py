from longpoint.catalogue.sketch import Stroke
from tests.panel_walls import the_plan


def test_the_drawing_shows_every_piece() -> None:
    (sketch,) = the_plan(panels=5, margin=90).sketches
    assert sum(line.stroke is Stroke.TIMBER for line in sketch.lines) == 20
    assert any(label.text == "813 x 600, margins 90" for label in sketch.labels)
