from typing import Any

import pytest

from longpoint.errors import PieceError
from longpoint.pieces.other_shapes import outline_faces
from longpoint.pieces.outlined_face import OutlinedFace, outlined_face
from tests.shaped_houses import GABLE, read, shapes


def face_of(opening: dict[str, Any], **changes: Any) -> OutlinedFace:  # noqa: ANN401
    found = read({**opening, **changes})
    return outlined_face(found, found.openings[0], shapes(found).outlines[0])


def test_a_side_takes_the_quirk_and_architrave_that_its_outside_looks_towards() -> None:
    quirk = {"head": 4, "left": 5, "right": 6, "sill": 7}
    gable = face_of(GABLE, quirk=quirk, quirk_band=[2, 9])
    assert gable.quirks_mm == (7.0, 6.0, 4.0, 4.0, 5.0)
    steep = {"corners": [[0, 0], [900, 0], [450, 1400]]}
    assert face_of(steep, quirk=quirk, quirk_band=[2, 9]).quirks_mm == (7.0, 6.0, 5.0)


def test_sides_lie_clockwise_and_count_as_they_were_written() -> None:
    face = face_of(GABLE)
    assert face.clockwise == (0, 4, 3, 2, 1)
    assert [face.number(side) for side in face.clockwise] == [1, 5, 4, 3, 2]


def test_a_bare_bottom_has_no_piece() -> None:
    face = face_of(GABLE, trim="board-and-apron", board="WB150")
    assert face.has_bare_bottom
    assert 0 not in face.rings


def test_what_lies_below_is_made_as_of_a_set_with_two_legs_and_a_head() -> None:
    face = face_of(GABLE, trim="board-and-apron", board="WB150")
    left, right = face.set.rings.foot
    assert left.distance_mm(right) == pytest.approx(900.0 + 2 * 62.0)
    assert face.set.fitted.side_mm == pytest.approx((900.0, 1050.0, 900.0, 1050.0))


def test_the_second_face_changes_left_and_right() -> None:
    found = read({**GABLE, "faces": 2, "quirk": {"head": 4, "left": 5, "right": 6, "sill": 7}})
    (one,) = found.openings
    a, b = (outlined_face(found, one, f) for f in outline_faces(one, shapes(found)))
    assert (a.quirks_mm[1], a.quirks_mm[4]) == (6.0, 5.0)
    assert (b.quirks_mm[1], b.quirks_mm[4]) == (5.0, 6.0)


def test_ways_of_joining_that_need_four_sides_are_refused() -> None:
    for clash in ({"joint": "butt"}, {"joint": "blocks", "corner_block": "BD100"}):
        with pytest.raises(PieceError, match="5 sides and joint"):
            face_of(GABLE, **clash)
    door = {"kind": "door", "trim": "legs-and-head", "plinth": "PB75", "plinth_height": 180}
    with pytest.raises(PieceError, match="plinth blocks and a back band"):
        face_of(GABLE, **door, back_band="BB25")
