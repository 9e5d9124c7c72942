from dataclasses import replace

import pytest

from longpoint.pieces.face_trim import face_trim, has_mitred_corners, is_true_frame
from longpoint.survey.openings import Joint, Method, Mitres
from tests.fitted_houses import fitted, house, opening, quad, rectangle

WINDOW = opening(rectangle(900.0, 600.0))


def test_only_mitred_corners_are_mitred() -> None:
    assert [has_mitred_corners(replace(WINDOW, joint=joint)) for joint in Joint] == [
        True,
        False,
        False,
    ]


@pytest.mark.parametrize("joint", Joint)
def test_the_lines_are_the_same_whatever_the_joint(joint: Joint) -> None:
    plain = face_trim(house(WINDOW), WINDOW, fitted(WINDOW))
    other = replace(WINDOW, joint=joint)
    assert face_trim(house(other), other, fitted(other)).outline == plain.outline


def test_a_true_frame_lies_on_a_rectangle() -> None:
    racked = opening(quad((0, 0), (900, 0), (912, 604), (9, 598)), method=Method.BENCH)
    trim = face_trim(house(racked), racked, fitted(racked))
    assert is_true_frame(racked)
    assert trim.outline.edges(2).start_deg == pytest.approx(45.0)
    at_stop = replace(racked, method=Method.BATCH, mitres=Mitres.AT_STOP)
    assert is_true_frame(at_stop)
    assert not is_true_frame(replace(at_stop, method=Method.IN_PLACE))
