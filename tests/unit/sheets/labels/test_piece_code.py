import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.errors import SheetError
from longpoint.sheets.labels.piece_code import piece_code, read_piece_code


@given(mark=st.text(st.characters(categories=["L", "N", "P"]), min_size=1, max_size=40))
def test_a_code_gives_back_the_readings_and_the_mark(mark: str) -> None:
    assert read_piece_code(piece_code("K7M2QX", mark)) == ("K7M2QX", mark)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "W1-head",
        "longpoint:2:K7M2QX:W1-head",
        "longpoint:1:K7M2QX:",
        "longpoint:1::W1",
        "x" * 999,
    ],
)
def test_any_other_code_is_refused(text: str) -> None:
    with pytest.raises(SheetError):
        read_piece_code(text)
