import pytest

from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.survey.digits import COMMONNESS, SlipKind, said, slips, slips_of
from longpoint.survey.readings import Place, Reading


def values(written_mm: float, kind: SlipKind, units: Units = Units.MM) -> list[float]:
    return sorted(s.value_mm for s in slips(written_mm, units) if s.kind is kind)


def inches(written: float) -> float:
    return written * MM_PER_INCH


@pytest.mark.parametrize(
    ("written", "meant"),
    [(1187, 1178), (1096, 1069), (1947, 1974), (1049, 1094), (268, 286), (1012, 1102)],
)
def test_a_swap_of_neighbouring_digits_is_found_and_differs_by_a_multiple_of_nine(
    written: float, meant: float
) -> None:
    assert meant in values(written, SlipKind.DIGITS_SWAPPED)
    assert all((written - v) % 9 == 0 for v in values(written, SlipKind.DIGITS_SWAPPED))


def test_equal_digits_swap_to_nothing_and_a_leading_nought_is_no_figure() -> None:
    assert values(1111, SlipKind.DIGITS_SWAPPED) == []
    assert values(105, SlipKind.DIGITS_SWAPPED) == [150.0]


def test_a_half_stays_a_half() -> None:
    assert 2040.5 in values(2030.5, SlipKind.MARK_MISCOUNTED)
    assert 1094.5 in values(1049.5, SlipKind.DIGITS_SWAPPED)


def test_a_six_may_be_a_nine_each_by_itself() -> None:
    assert values(1696, SlipKind.UPSIDE_DOWN) == [1666.0, 1699.0, 1996.0]


def test_a_tape_that_starts_further_on_reads_too_much_only() -> None:
    started = values(1000, SlipKind.STARTED_FURTHER_ON)
    assert started == pytest.approx([900.0, 1000.0 - 25.4])


def test_no_slip_makes_a_length_of_nothing_or_less() -> None:
    for written_mm in range(1, 130):
        assert all(s.value_mm > 0 for s in slips(float(written_mm), Units.MM))


def test_whole_inches_swap_and_the_fraction_stays() -> None:
    found = values(inches(46.75), SlipKind.DIGITS_SWAPPED, Units.INCH)
    assert found == pytest.approx([inches(64.75)])


def test_inches_are_miscounted_by_one_and_by_a_foot() -> None:
    found = [s.value_mm / MM_PER_INCH for s in slips(inches(46.75), Units.INCH)]
    for meant in (45.75, 47.75, 34.75, 58.75):
        assert any(abs(v - meant) < 1e-9 for v in found), meant


def test_a_value_stands_once_and_the_commonest_kind_comes_first() -> None:
    # 1090 less 1 centimetre and its digits swapped: both are slips, no value twice.
    found = slips(1090.0, Units.MM)
    assert len({round(s.value_mm, 6) for s in found}) == len(found)
    ranks = [COMMONNESS[s.kind] for s in found]
    assert ranks == sorted(ranks, reverse=True)


def test_the_slip_is_looked_for_in_the_figure_as_written() -> None:
    # The tape reads 1.5 too much, which was taken off; the pencil still swapped the digits of 1049.
    reading = Reading(place=Place.RIGHT, value_mm=1047.5, written="1049")
    assert 1092.5 in [s.value_mm for s in slips_of(reading, Units.MM)]


def test_a_figure_that_no_longer_reads_as_a_length_is_taken_by_its_value() -> None:
    reading = Reading(place=Place.TOP, value_mm=1187.0, written="mean of two")
    assert 1178.0 in [s.value_mm for s in slips_of(reading, Units.MM)]


def test_a_slip_is_said_with_its_figure_unit_and_kind() -> None:
    swap = next(s for s in slips(inches(46.75), Units.INCH) if s.kind is SlipKind.DIGITS_SWAPPED)
    assert said(swap, Units.INCH) == "64 3/4 in (digits swapped)"
