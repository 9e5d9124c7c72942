import pytest

from longpoint.pieces.other_shapes import fitted_faces, other_shape, outline_faces
from tests.house_documents import window
from tests.shaped_houses import GABLE, HALL, read, shapes


@pytest.mark.parametrize(
    "opening", [window(), {"corners": [[0, 0], [900, 0], [900, 1400], [0, 1050]]}]
)
def test_four_straight_sides_are_left_to_others_however_they_were_read(
    opening: dict[str, object],
) -> None:
    found = read(opening)
    assert other_shape(found, shapes(found), found.openings[0]) is None
    assert len(shapes(found).openings) == 1


def test_each_face_that_is_trimmed_has_its_shape() -> None:
    found = read({**HALL, "faces": 2}, {**GABLE, "mark": "W2", "faces": 2})
    arched, gabled = found.openings
    assert [f.face for f in fitted_faces(arched, shapes(found))] == ["a", "b"]
    assert [f.face for f in outline_faces(gabled, shapes(found))] == ["a", "b"]


def test_an_opening_without_a_shape_gets_no_pieces() -> None:
    found = read({"corners": [[0, 0], [450, 400], [900, 0], [900, 900], [0, 900]]})
    assert other_shape(found, shapes(found), found.openings[0]) == ((), ())


def test_what_is_said_of_both_faces_is_said_once() -> None:
    found = read({**GABLE, "faces": 2})
    both = other_shape(found, shapes(found), found.openings[0])
    assert both is not None
    assert [f.code for f in both[1]].count("not-forecast") == 1
