"""What is written in a notebook comes back as it was meant, or not at all."""

from collections.abc import Callable
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from longpoint.errors import QuantityError
from longpoint.quantities.formatting import format_length, format_tenth, round_half_mm
from longpoint.quantities.length import Units, parse_length, parse_signed_length

sixty_fourths = st.integers(min_value=0, max_value=12 * 12 * 64)


def _read(parse: Callable[[object, Units], float], written: object, units: Units) -> float | None:
    try:
        return parse(written, units)
    except QuantityError:
        return None


def _as_written(count: int) -> str:
    whole, rest = divmod(count, 64)
    part = Fraction(rest, 64)
    if not rest:
        return f"{whole}"
    return f"{whole} {part}" if whole else f"{part}"


@given(count=sixty_fourths)
def test_inches_come_back_exact_to_the_sixty_fourth(count: int) -> None:
    expected = float(Fraction(count, 64) * Fraction(254, 10))
    written = _as_written(count)
    assert parse_length(written, Units.INCH) == expected
    assert parse_length(f'{written}"', Units.MM) == expected
    assert parse_length(written.replace(" ", "-"), Units.INCH) == expected
    feet, rest = divmod(count, 12 * 64)
    assert parse_length(f"{feet}' {_as_written(rest)}\"", Units.MM) == expected


@given(count=st.integers(min_value=0, max_value=12 * 12 * 16))
def test_a_printed_sixteenth_reads_back_the_same(count: int) -> None:
    length_mm = float(Fraction(count, 16) * Fraction(254, 10))
    printed = format_length(length_mm, Units.INCH)
    assert parse_length(printed, Units.INCH) == length_mm
    assert format_length(-length_mm, Units.INCH).removeprefix("-") == printed


@given(length_mm=st.floats(min_value=0.0, max_value=100_000.0))
def test_printing_moves_a_length_by_no_more_than_half_a_step(length_mm: float) -> None:
    on_sheet = parse_length(format_length(length_mm), Units.MM)
    assert abs(on_sheet - length_mm) <= 0.25 + 1e-6
    assert on_sheet == round_half_mm(length_mm)
    assert abs(parse_length(format_tenth(length_mm), Units.MM) - length_mm) <= 0.05 + 1e-6
    inches = parse_length(format_length(length_mm, Units.INCH), Units.INCH)
    assert abs(inches - length_mm) <= 25.4 / 32 + 1e-6


@given(half_mm=st.integers(min_value=-200_000, max_value=200_000))
def test_a_printed_half_millimetre_reads_back_the_same(half_mm: int) -> None:
    assert parse_signed_length(format_length(half_mm / 2), Units.MM) == half_mm / 2


@given(
    written=st.text(alphabet="0123456789 .,/-+'\"mcinft½e", max_size=12),
    units=st.sampled_from(Units),
)
def test_any_text_is_a_length_or_a_refusal(written: str, units: Units) -> None:
    length_mm = _read(parse_length, written, units)
    signed_mm = _read(parse_signed_length, written, units)
    assert length_mm is None or 0.0 <= length_mm <= 100_000.0
    assert signed_mm is None or abs(signed_mm) <= 100_000.0
    assert length_mm in (None, signed_mm)


@given(
    written=st.one_of(
        st.none(),
        st.booleans(),
        st.integers(),
        st.floats(),
        st.lists(st.integers(), max_size=2),
        st.dates(),
    ),
    units=st.sampled_from(Units),
)
def test_any_value_of_a_file_is_a_length_or_a_refusal(written: object, units: Units) -> None:
    length_mm = _read(parse_length, written, units)
    assert length_mm is None or 0.0 <= length_mm <= 100_000.0
    assert length_mm is None or (isinstance(written, int | float) and written >= 0)
