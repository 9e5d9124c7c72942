"""Readings given out and brought in again are the same readings, whatever the columns' order."""

import random
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from longpoint.exchange.confirm.columns import propose_mapping
from longpoint.exchange.confirm.confirm_list import read_list, write_list
from longpoint.exchange.confirm.found_values import found_values
from longpoint.exchange.confirm.house_put import put_in_house_file
from longpoint.exchange.confirm.reading_rows import opening_rows
from longpoint.exchange.house_files import load_house
from longpoint.exchange.tables.csv_table import csv_text
from longpoint.exchange.tables.open_tables import open_tables
from longpoint.exchange.tables.write_xlsx import Tab, write_workbook
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Plane
from tests.property.test_house_document import face

HEAD = {
    "format": "longpoint-house/1",
    "name": "Wren House",
    "defaults": {"architrave": "A"},
    "profiles": {"A": {"face": 57, "thickness": 18}},
}
MARKS = st.text("abcXYZ019 -+#./", min_size=1, max_size=6).map(str.strip).filter(bool)
ROOMS = st.text(st.characters(categories=("L", "N", "P", "S")), min_size=1, max_size=12).filter(
    lambda text: text.strip() == text
)


@st.composite
def houses(draw: st.DrawFn) -> dict[str, Any]:
    units = draw(st.sampled_from(["mm", "in"]))
    marks = draw(st.lists(MARKS, min_size=1, max_size=4, unique_by=str.casefold))
    openings = [
        {
            "mark": mark,
            "kind": draw(st.sampled_from(["window", "door", "cased"])),
            "room": draw(ROOMS),
            **draw(face(units)),
        }
        for mark in marks
    ]
    return {**HEAD, "units": units, "openings": openings}


def brought(house: House, folder: Path, ending: str, seed: int) -> House:
    """Give a house's openings out, mix their columns, bring them in, confirm all, put them."""
    rows = opening_rows(house)
    order = list(range(len(rows[0])))
    random.Random(seed).shuffle(order)
    mixed = [tuple(row[n] for n in order) for row in rows]
    given = folder / f"openings{ending}"
    is_workbook = ending == ".xlsx"
    given.write_bytes(
        write_workbook([Tab(name="openings", rows=mixed)])
        if is_workbook
        else csv_text(mixed).encode()
    )
    (table,) = open_tables(given, None if is_workbook else ",")
    mapping = propose_mapping(table, {})
    assert mapping is not None
    found = found_values(table, mapping, house.units.value)
    assert not [value for value in found if value.trouble]
    listed = folder / f"list{ending}"
    listed.write_bytes(write_list(listed, [replace(each, confirmed="yes") for each in found]))
    target = folder / "house.toml"
    target.write_text(
        f'format = "longpoint-house/1"\nname = "Wren House"\nunits = "{house.units.value}"\n'
        '[defaults]\narchitrave = "A"\n[profiles.A]\nface = "57 mm"\nthickness = "18 mm"\n',
        encoding="utf-8",
    )
    put_in_house_file(target, read_list(listed))
    return load_house(target).house


def read_of(house: House) -> list[Opening]:
    """The openings; in which order and with how many noughts a reading was written says nothing."""

    def plain(readings: OpeningReadings) -> OpeningReadings:
        lengths = sorted(readings.lengths, key=lambda reading: reading.place)
        return replace(
            readings,
            lengths=tuple(
                replace(each, written="", value_mm=round(each.value_mm, 6)) for each in lengths
            ),
            angles=tuple(
                replace(each, value_deg=round(each.value_deg, 6) + 0.0, u_deg=round(each.u_deg, 6))
                for each in sorted(readings.angles, key=lambda angle: angle.gauge)
            ),
            plane=readings.plane
            and Plane(
                **{
                    name: round(getattr(readings.plane, name), 6) + 0.0
                    for name in ("tl_mm", "tr_mm", "br_mm", "bl_mm")
                }
            ),
        )

    return [
        replace(
            opening,
            readings=plain(opening.readings),
            readings_b=opening.readings_b and plain(opening.readings_b),
        )
        for opening in house.openings
    ]


@given(document=houses(), seed=st.integers(0, 10**6))
@settings(max_examples=12)
@pytest.mark.parametrize("ending", [".csv", ".xlsx"])
def test_any_readings_in_any_order_of_columns_give_the_same_house(
    ending: str, document: dict[str, Any], seed: int
) -> None:
    house = read_house(document).house
    assume(house.openings)
    with TemporaryDirectory() as folder:
        assert read_of(brought(house, Path(folder), ending, seed)) == read_of(house)
