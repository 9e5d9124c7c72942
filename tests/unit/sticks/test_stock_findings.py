from dataclasses import replace

from longpoint.errors import Severity
from longpoint.pieces.piece import Role
from longpoint.quantities.length import Units
from longpoint.sticks.stock_findings import (
    TooLong,
    longer_than_stock_finding,
    no_stock_finding,
)
from tests.drawn_openings import house_of


def test_a_profile_without_sticks_is_told_so_even_where_its_sticks_could_not_be_read() -> None:
    found = no_stock_finding("OG57", [1200.0, 800.0], house_of())
    assert (found.code, found.severity) == ("no-stock", Severity.WARNING)
    assert "2 pieces of OG57, 2.0 m" in found.read
    assert found.wrong.startswith("No stick of OG57 that can be used is in the stock list")


def test_a_house_read_in_inches_is_told_in_feet() -> None:
    house = replace(house_of(), units=Units.INCH)
    assert "10.0 ft together" in no_stock_finding("OG57", [3048.0], house).read


def too_long(mark: str, role: Role, needed_mm: float, longest_mm: float = 5400.0) -> TooLong:
    return TooLong(
        place="W1",
        piece=mark,
        role=role,
        profile="OG57",
        thickness_mm=18.0,
        needed_mm=needed_mm,
        longest_mm=longest_mm,
        trims_mm=20.0,
    )


def test_of_two_legs_too_long_the_longer_says_what_to_buy_and_no_scarf_is_offered() -> None:
    legs = [
        too_long("W1-left-leg", Role.LEFT_LEG, 5500.0),
        too_long("W1-right-leg", Role.RIGHT_LEG, 5600.0),
    ]
    said = longer_than_stock_finding(legs, house_of()).do
    assert "stick of 5600 mm or more" in said
    assert "5500" not in said
    assert "in a leg it shows" in said
    assert "parts" not in said


def test_a_rail_three_sticks_long_is_scarfed_twice() -> None:
    rail = too_long("P1-rail", Role.RAIL, 12020.0)
    said = longer_than_stock_finding([rail], house_of()).do
    # 12000 and two laps of 18: 5379 + 5379 + 1278.
    assert "in 3 parts, 5379 mm + 5379 mm + 1278 mm" in said
    assert "stick of 12020 mm or more" in said


def test_a_bead_on_very_short_sticks_is_not_cut_into_bits() -> None:
    bead = too_long("B1", Role.BEAD, 1020.0, longest_mm=900.0)
    said = longer_than_stock_finding([bead], house_of()).do
    assert "No scarf helps B1" in said
    assert "stick of 1020 mm or more" in said


def test_inches_are_told_in_inches() -> None:
    house = replace(house_of(), units=Units.INCH)
    said = longer_than_stock_finding([too_long("P1-rail", Role.RAIL, 6020.0)], house).do
    assert "mm" not in said
