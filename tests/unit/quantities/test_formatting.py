import pytest

from longpoint.quantities.formatting import (
    format_angle,
    format_gap,
    format_length,
    format_tenth,
    format_unit,
    format_with_unit,
    round_half_mm,
)
from longpoint.quantities.length import Units


@pytest.mark.parametrize(
    ("length_mm", "printed"),
    [
        (1187.0, "1187"),
        (1187.2, "1187"),
        (1187.25, "1187.5"),
        (1187.74, "1187.5"),
        (1187.75, "1188"),
        (0.0, "0"),
        (0.24, "0"),
        (-0.24, "0"),
        (-0.25, "-0.5"),
        (-3.0, "-3"),
        (99_999.5, "99999.5"),
        (1_234_567.5, "1234567.5"),
    ],
)
def test_millimetres_are_printed_to_the_half(length_mm: float, printed: str) -> None:
    assert format_length(length_mm) == printed


@pytest.mark.parametrize(
    ("inches", "printed"),
    [
        (46.75, "46 3/4"),
        (46.0, "46"),
        (46 + 1 / 16, "46 1/16"),
        (46 + 1 / 32, "46 1/16"),
        (46 + 0.9 / 32, "46"),
        (46 + 31 / 32, "47"),
        (0.5, "1/2"),
        (0.01, "0"),
        (-0.01, "0"),
        (-0.5, "-1/2"),
        (-1.25, "-1 1/4"),
    ],
)
def test_inches_are_printed_to_the_sixteenth(inches: float, printed: str) -> None:
    assert format_length(inches * 25.4, Units.INCH) == printed


def test_the_hand_sum_is_printed_finer_than_the_sheet() -> None:
    assert format_tenth(1255.26) == "1255.3"
    assert format_tenth(-0.04) == "0"
    assert format_tenth(1_000_000.04) == "1000000"
    assert format_tenth((46 + 1 / 32) * 25.4, Units.INCH) == "46 1/32"


def test_a_length_carries_its_unit() -> None:
    assert [format_unit(unit) for unit in Units] == ["mm", "in"]
    assert format_with_unit(1187.0) == "1187 mm"
    assert format_with_unit(1187.45, Units.INCH) == "46 3/4 in"


@pytest.mark.parametrize(
    ("angle_deg", "printed"),
    [(45.0, "45.0"), (44.96, "45.0"), (44.94, "44.9"), (-0.04, "0.0"), (-1.25001, "-1.3")],
)
def test_angles_are_printed_to_the_tenth(angle_deg: float, printed: str) -> None:
    assert format_angle(angle_deg) == printed


def test_a_quarter_millimetre_is_rounded_away_from_zero() -> None:
    assert [round_half_mm(x) for x in (0.25, -0.25, 0.75, -0.75)] == [0.5, -0.5, 1.0, -1.0]


@pytest.mark.parametrize(
    ("gap_mm", "printed"),
    [
        (0.0, "0"),
        (0.1, "under 1/64"),
        (0.3, "1/64"),
        (0.5, "1/64"),
        (0.8, "1/32"),
        (1.2, "3/64"),
        (1.575, "1/16"),
        (2.0, "1/16"),
        (3.2, "1/8"),
        (26.0, "1"),
        (-0.8, "-1/32"),
    ],
)
def test_a_gap_in_inches_is_read_off_a_tape(gap_mm: float, printed: str) -> None:
    assert format_gap(gap_mm, Units.INCH) == printed


def test_a_gap_in_millimetres_is_read_with_feelers() -> None:
    assert [format_gap(gap_mm, Units.MM) for gap_mm in (0.0, 0.52, 2.0)] == ["0", "0.5", "2"]
