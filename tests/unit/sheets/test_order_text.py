from datetime import date
from decimal import Decimal

from longpoint.quantities.length import Units
from longpoint.sheets.order_text import OrderHead, order_text
from longpoint.sticks.order_lines import OrderLine
from longpoint.survey.profiles import Profile

OG57 = Profile(name="OG57", width_mm=57.0, thickness_mm=18.0, material="primed pine")
HEAD = OrderHead(number="XPGPPW", house="Wren House", on=date(2026, 3, 1), buyer="Tarn Joinery")


def line(count: int, spares: int = 0, price: str | None = None, code: str = "") -> OrderLine:
    return OrderLine(
        profile=OG57,
        length_mm=5400.0,
        count=count,
        spares=spares,
        code=code,
        price=None if price is None else Decimal(price),
    )


def test_an_order_says_who_what_and_how_many() -> None:
    text = order_text(HEAD, "Harrow", [line(8, 1, "15.20", "HT-1")], Units.MM)
    assert text.splitlines()[:8] == [
        "Order XPGPPW, 2026-03-01",
        "To: Harrow",
        "From: Tarn Joinery",
        "For: Wren House",
        "",
        "OG57 - 57 x 18 mm primed pine",
        "  8 lengths of 5400 mm (1 of them spare), your code HT-1, 15.20 each, 121.60",
        "",
    ]
    assert "Together 8 lengths, 43.2 m." in text
    assert "that comes to 121.60; please confirm" in text


def test_a_line_that_is_spare_alone_says_so() -> None:
    assert "1 length of 5400 mm (spare)" in order_text(HEAD, "", [line(1, 1)], Units.MM)


def test_what_has_no_price_is_asked_for() -> None:
    text = order_text(HEAD, "", [line(2, price="15.20"), line(1)], Units.MM)
    assert "The lines with a price come to 30.40; please confirm the others." in text
    assert "comes to" not in order_text(HEAD, "", [line(1)], Units.MM)


def test_in_inches_lengths_are_in_inches_and_feet() -> None:
    text = order_text(HEAD, "", [line(2)], Units.INCH)
    assert "2 lengths of 212 5/8 in" in text
    assert "35.4 ft" in text
