import pytest

from longpoint.exchange.confirm.decimal_sign import DecimalSign, decimal_sign, with_point

COMMA, POINT = DecimalSign.COMMA, DecimalSign.POINT


@pytest.mark.parametrize(
    ("texts", "sign"),
    [
        (["1187,5"], COMMA),
        (["1187.5", "1,187"], POINT),
        (["1.187,5"], COMMA),
        (["1,187.5"], POINT),
        (["0,625"], COMMA),
        (["1.187.000"], COMMA),
        (["1,187", "462"], None),
        (["46 3/4", "W1"], None),
    ],
)
def test_the_figures_show_their_sign(texts: list[str], sign: DecimalSign | None) -> None:
    assert decimal_sign(texts) == (sign, False)


def test_both_signs_in_one_file_are_seen() -> None:
    assert decimal_sign(["1187,5", "462.5"]) == (None, True)


@pytest.mark.parametrize(
    ("text", "sign", "figure"),
    [
        ("1187,5", COMMA, "1187.5"),
        ("1 187,5", COMMA, "1187.5"),
        ("1'187.5", POINT, "1187.5"),
        ("1,187", POINT, "1187"),
        ("1.187", COMMA, "1187"),
        ("1,187", None, None),
        ("118,7", POINT, None),
        ("118,7 cm", COMMA, "118.7 cm"),
        ("−1,5", COMMA, "-1.5"),
        ("46 3/4", COMMA, "46 3/4"),
        ("3' 10 3/4\"", COMMA, "3' 10 3/4\""),
        ("11x7", COMMA, "11x7"),
        ("1,187,5", POINT, None),
    ],
)
def test_a_figure_gets_a_point_or_none_where_it_cannot_be_told(
    text: str, sign: DecimalSign | None, figure: str | None
) -> None:
    assert with_point(text, sign) == figure
