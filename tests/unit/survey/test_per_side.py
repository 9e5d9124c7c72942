from longpoint.survey.per_side import PerSide

SIDES = PerSide(head="head", right="right", bottom="bottom", left="left")


def test_values_per_side_go_round_with_the_sides() -> None:
    assert SIDES.anticlockwise() == ("bottom", "right", "head", "left")


def test_the_other_face_sees_left_and_right_changed_over() -> None:
    assert SIDES.mirrored().anticlockwise() == ("bottom", "left", "head", "right")
    assert SIDES.mirrored().mirrored() == SIDES


def test_each_value_is_changed_in_its_place() -> None:
    assert SIDES.map(len).anticlockwise() == (6, 5, 4, 4)
