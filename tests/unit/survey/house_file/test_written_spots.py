import pytest

from longpoint.quantities.length import Units
from longpoint.survey.house_file.keys import Key, Kind
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.house_file.written_spots import read_along_side, read_heel_toe, read_spot

KEY = Key(name="k", kind=Kind.SPOT, meaning="A key.", example=1, low=-30.0, high=30.0)


def test_a_spot_is_a_length_with_or_without_a_sign_or_not_read() -> None:
    for written, value_mm in ((0.35, 0.35), ("-0.2", -0.2), (0, 0.0), ("?", None), (" ? ", None)):
        assert read_spot(KEY, written, Units.MM, "k") == value_mm
    assert read_spot(KEY, "1/16", Units.INCH, "k") == pytest.approx(25.4 / 16)
    for bad in ("??", "", True, None, 31, [1]):
        with pytest.raises(HouseFileTrouble):
            read_spot(KEY, bad, Units.MM, "k")


def test_a_joint_is_two_spots() -> None:
    assert read_heel_toe(KEY, [0.3, "?"], Units.MM, "k") == (0.3, None)
    for bad in ([0.3], [1, 2, 3], 0.3, "?", {"heel": 1}):
        with pytest.raises(HouseFileTrouble, match="heel and at its toe") as trouble:
            read_heel_toe(KEY, bad, Units.MM, "k")
        assert trouble.value.kept is None


def test_one_figure_of_a_side_is_its_middle_and_two_are_its_ends() -> None:
    assert read_along_side(KEY, 5, Units.MM, "k") == (None, 5.0, None)
    assert read_along_side(KEY, [5], Units.MM, "k") == (None, 5.0, None)
    assert read_along_side(KEY, [4, 6], Units.MM, "k") == (4.0, None, 6.0)
    assert read_along_side(KEY, [4, "?", 6], Units.MM, "k") == (4.0, None, 6.0)
    for bad in ([], [1, 2, 3, 4]):
        with pytest.raises(HouseFileTrouble, match="start, its middle and its end"):
            read_along_side(KEY, bad, Units.MM, "k")


def test_what_can_be_read_of_a_row_is_kept_with_the_trouble() -> None:
    with pytest.raises(HouseFileTrouble, match='written as "x"') as trouble:
        read_along_side(KEY, [4, "x", 99], Units.MM, "k")

    assert trouble.value.kept == (4.0, None, None)
