import pytest

from longpoint.survey.openings import OpeningKind, PerSide
from tests.fitted_houses import opening, rectangle

SIDES = PerSide(head="head", right="right", bottom="bottom", left="left")


def test_values_per_side_go_round_with_the_sides() -> None:
    assert SIDES.anticlockwise() == ("bottom", "right", "head", "left")


def test_the_other_face_sees_left_and_right_changed_over() -> None:
    assert SIDES.mirrored().anticlockwise() == ("bottom", "left", "head", "right")
    assert SIDES.mirrored().mirrored() == SIDES


def test_each_value_is_changed_in_its_place() -> None:
    assert SIDES.map(len).anticlockwise() == (6, 5, 4, 4)


@pytest.mark.parametrize(
    ("kind", "stands"),
    [(OpeningKind.WINDOW, False), (OpeningKind.DOOR, True), (OpeningKind.CASED, True)],
)
def test_only_a_window_does_not_stand_on_the_floor(kind: OpeningKind, stands: bool) -> None:
    assert opening(rectangle(820.0, 2040.0), kind=kind).stands_on_floor is stands
