from decimal import Decimal
from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.survey.house_file import read_house
from longpoint.survey.profiles import Offcut, Stock
from tests.house_documents import codes, found, house, the_house


def stick(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"profile": "OG57", "length": 5400, **keys}


def test_stock_and_offcuts_keep_what_was_said_of_them() -> None:
    home = the_house(stock=[stick(price=14.60, count=12), stick()], offcuts=[stick(count=2)])

    assert home.stock == (
        Stock(profile="OG57", length_mm=5400.0, price=Decimal("14.6"), count=12),
        Stock(profile="OG57", length_mm=5400.0),
    )
    assert home.offcuts == (Offcut(profile="OG57", length_mm=5400.0, count=2),)


@pytest.mark.parametrize(
    "bad",
    [
        stick(price=-1),
        stick(price="dear"),
        stick(count=-1),
        stick(count=1.5),
        stick(length=0),
        stick(legnth=5400),
        {"profile": "OG57"},
        {"length": 5400},
        7,
    ],
)
def test_a_stick_that_cannot_be_read_is_left_out_and_said(bad: object) -> None:
    result = read_house(house(stock=[stick(), bad, stick(length=3600)]))

    assert [s.length_mm for s in result.house.stock] == [5400.0, 3600.0]
    (finding, *_) = found(result, "stick-unreadable")
    assert finding.severity is Severity.STOP
    assert "stock 2" in finding.read.lower()
    assert "left out" in finding.wrong


def test_a_stick_that_its_end_trims_eat_up_is_left_out() -> None:
    result = read_house(house(stock=[stick(length=22.4)], offcuts=[stick(length=4.8)]))

    assert (result.house.stock, result.house.offcuts) == ((), ())
    assert codes(result) == ["stick-too-short", "stick-too-short"]


def test_a_stick_of_a_profile_nobody_described_is_a_warning() -> None:
    result = read_house(house(offcuts=[{"profile": "OG75", "length": 900}]))

    (finding,) = found(result, "profile-unknown")
    assert finding.severity is Severity.WARNING
    assert 'Did you mean "OG57"?' in finding.do


def test_sticks_of_a_profile_that_cannot_be_read_go_with_it() -> None:
    profiles = {"OG57": {"face": 0, "thickness": 18}, "SK95": {"face": 95, "thickness": 16}}

    result = read_house(house(profiles=profiles, stock=[stick()]))

    assert result.house.stock == ()
    assert "its sticks are left out" in found(result, "profile-unreadable")[0].wrong
