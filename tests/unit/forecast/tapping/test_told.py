from longpoint.forecast.tapping.told import AngleTold, LengthTold


def angle(left_mm: float, u_left_mm: float, joint: int | None = None) -> AngleTold:
    return AngleTold(joint=joint, over_deg=1.0, u_deg=0.1, left_mm=left_mm, u_left_mm=u_left_mm)


def test_an_angle_is_wrong_when_it_leaves_more_than_is_felt_and_than_is_doubted() -> None:
    assert angle(0.2, 0.02).is_wrong
    assert not angle(0.09, 0.02).is_wrong
    assert not angle(0.2, 0.09).is_wrong


def test_an_angle_in_doubt_is_not_told_unless_it_stands_out() -> None:
    assert angle(0.0, 0.05).is_told
    assert not angle(0.2, 0.15).is_told
    assert angle(0.6, 0.15).is_told


def test_at_a_single_joint_twice_the_doubt_is_allowed() -> None:
    assert angle(0.0, 0.15, joint=1).is_told


def test_a_length_is_wrong_to_either_side() -> None:
    for over_mm in (-3.0, 3.0):
        told = LengthTold(pieces=(0, 2), is_difference=True, over_mm=over_mm, u_mm=1.0)
        assert told.is_wrong
    assert not LengthTold(pieces=(0, 2), is_difference=True, over_mm=2.0, u_mm=1.0).is_wrong
    assert not LengthTold(pieces=(0, 2), is_difference=True, over_mm=2.0, u_mm=1.1).is_told
