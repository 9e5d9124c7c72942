import json
from dataclasses import replace

import pytest

from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Note, Sheet, Table
from longpoint.sheets.street_json import row_document, row_in, street_document
from longpoint.sheets.street_rows import (
    HouseRow,
    HouseState,
    ProfileRow,
    profile_totals,
    refused_row,
    street_units,
)
from longpoint.sheets.street_sheet import street_sheet

OG57 = ProfileRow(
    profile="OG57",
    unit="m",
    pieces=8,
    buys=((5400.0, 1), (4200.0, 2)),
    offcuts=1,
    cost=13.8,
    lower_bound=12.6,
    proved=0,
)
MILL = HouseRow(
    file="mill.toml",
    folder="mill",
    house="Otter Mill",
    state=HouseState.HELD,
    readings_code="AR3333",
    pieces=8,
    held=("W3",),
    profiles=(OG57,),
    all_fit=0.88,
)
INCHES = replace(MILL, folder="wren", units=Units.INCH, state=HouseState.READY, held=())
BAD = refused_row("torn.toml", "torn", ("It was read.", "It is wrong.", "Mend it."))


def test_totals_add_up_by_profile_and_never_prices_to_metres() -> None:
    priced = replace(OG57, unit="price", cost=20.0, proved=1)
    other = replace(MILL, profiles=(replace(OG57, buys=((4200.0, 3),), proved=1), priced))

    metres, prices = profile_totals([MILL, BAD, other])

    assert (metres.pieces, metres.houses, metres.proved, metres.offcuts) == (16, 2, 1, 2)
    assert metres.buys == ((5400.0, 1), (4200.0, 5))
    assert (metres.sticks, metres.cost, metres.lower_bound) == (6, 27.6, 25.2)
    assert (prices.unit, prices.cost, prices.houses) == ("price", 20.0, 1)


def test_a_row_comes_back_as_it_was_written() -> None:
    for row in (MILL, INCHES, BAD):
        assert row_in(json.loads(json.dumps(row_document(row)))) == row


def test_a_damaged_row_is_no_row() -> None:
    with pytest.raises((KeyError, TypeError, ValueError)):
        row_in({**row_document(MILL), "state": "well"})


def test_the_document_counts_the_states() -> None:
    states = street_document("Lane", "AR3333", [MILL, INCHES, BAD])["states"]
    assert states == {"ready": 1, "held": 1, "refused": 1}


def test_inches_only_where_every_planned_house_is_in_inches() -> None:
    assert street_units([INCHES, BAD]) is Units.INCH
    assert street_units([INCHES, MILL]) is Units.MM
    assert street_units([BAD]) is Units.MM


def tables(sheet: Sheet) -> list[Table]:
    return [block for block in sheet.blocks if isinstance(block, Table)]


def test_the_sheet_says_what_is_held_and_what_is_refused() -> None:
    sheet = street_sheet("Lane", "AR3333", [MILL, BAD])

    assert tables(sheet)[0].under == ((0, "Held back: W3"),)
    (note,) = [block for block in sheet.blocks if isinstance(block, Note)]
    assert note.title == "torn.toml"
    assert note.text == "It was read. It is wrong. Mend it."


def test_a_street_of_bad_houses_has_no_totals() -> None:
    assert len(tables(street_sheet("Lane", "AR3333", [BAD]))) == 1
