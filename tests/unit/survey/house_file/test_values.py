from typing import Any

import pytest

from longpoint.quantities.length import Units
from longpoint.survey.house_file.keys import Key, Kind
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.house_file.values import read_value


def read(kind: Kind, written: object, **changes: Any) -> Any:  # noqa: ANN401
    key = Key(name="k", kind=kind, meaning="A key.", example=1, **changes)
    return read_value(key, written, Units.MM, "k")


def test_a_reading_may_be_repeated() -> None:
    assert [one.value_mm for one in read(Kind.READING, [462, "461"])] == [462.0, 461.0]
    assert [one.value_mm for one in read(Kind.READING, 462)] == [462.0]
    assert read(Kind.ANGLE_READING, [0.1, 0.2], high=1.0) == (0.1, 0.2)
    assert read(Kind.SIGNED_READING, -0.5, low=-1.0) == (-0.5,)


@pytest.mark.parametrize("written", [[], [[1]], ["a"], [None], [1] * 51])
def test_a_list_that_holds_no_readings_is_refused(written: object) -> None:
    with pytest.raises(HouseFileTrouble):
        read(Kind.READING, written)


def test_what_holds_per_side_is_one_value_or_one_for_each_side_named() -> None:
    assert read(Kind.SIDE_LENGTHS, 5) == {"head": 5.0, "left": 5.0, "right": 5.0, "sill": 5.0}
    assert read(Kind.SIDE_LENGTHS, {"head": 5, "sill": 6}) == {"head": 5.0, "sill": 6.0}
    assert read(Kind.SIDE_NAMES, {"left": "A"}) == {"left": "A"}
    with pytest.raises(HouseFileTrouble, match="head, left, right and sill") as unknown:
        read(Kind.SIDE_LENGTHS, {"haed": 5})
    assert unknown.value.do == 'Did you mean "head"?'
    with pytest.raises(HouseFileTrouble, match="No side is named"):
        read(Kind.SIDE_LENGTHS, {})


def test_a_band_is_two_lengths_the_least_first() -> None:
    assert read(Kind.BAND, [3, 7]) == (3.0, 7.0)
    for written in ([7, 3], [3], [1, 2, 3], 5, "3-7"):
        with pytest.raises(HouseFileTrouble):
            read(Kind.BAND, written)


def test_a_choice_is_one_of_its_words_to_the_letter() -> None:
    choices = {"choices": ("window", "door")}
    assert read(Kind.CHOICE, "door", **choices) == "door"
    with pytest.raises(HouseFileTrouble, match='Did you mean "window"'):
        read(Kind.CHOICE, "Window", **choices)
    with pytest.raises(HouseFileTrouble):
        read(Kind.CHOICE, 1, **choices)


def test_a_flag_is_true_or_false() -> None:
    assert read(Kind.FLAG, False) is False
    for written in (0, 1, "true", None):
        with pytest.raises(HouseFileTrouble):
            read(Kind.FLAG, written)


def test_another_shape_is_told_by_lists() -> None:
    assert read(Kind.POINTS, [[0, 0], [900, -1]], low=-1000.0) == ((0.0, 0.0), (900.0, -1.0))
    assert read(Kind.ANGLES, [90, 68.7]) == (90.0, 68.7)
    assert len(read(Kind.READINGS, [900, [1400, 1401]])) == 2
    assert read(Kind.CODES, ["a", "b"]) == ("a", "b")
    for written in ([1], [[1]], [[1, 2, 3]], 7):
        with pytest.raises(HouseFileTrouble):
            read(Kind.POINTS, written)


def test_a_plain_number_lies_within_its_limits() -> None:
    limits: dict[str, Any] = {"low": 1.0, "high": 99.0, "unit": "percent"}
    assert read(Kind.NUMBER, 55, **limits) == 55.0
    for written in (0, 99.5, "55", True, None, float("nan"), [55]):
        with pytest.raises(HouseFileTrouble):
            read(Kind.NUMBER, written, **limits)
    with pytest.raises(HouseFileTrouble, match="between 1 and 99 percent"):
        read(Kind.NUMBER, 100, **limits)
