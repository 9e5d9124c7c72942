from dataclasses import replace

from longpoint.errors import Severity
from longpoint.quantities.length import Units
from longpoint.sticks.stock_findings import no_stock_finding
from tests.drawn_openings import house_of


def test_a_profile_without_sticks_is_told_so_even_where_its_sticks_could_not_be_read() -> None:
    found = no_stock_finding("OG57", [1200.0, 800.0], house_of())
    assert (found.code, found.severity) == ("no-stock", Severity.WARNING)
    assert "2 pieces of OG57, 2.0 m" in found.read
    assert found.wrong.startswith("No stick of OG57 that can be used is in the stock list")


def test_a_house_read_in_inches_is_told_in_feet() -> None:
    house = replace(house_of(), units=Units.INCH)
    assert "10.0 ft together" in no_stock_finding("OG57", [3048.0], house).read
