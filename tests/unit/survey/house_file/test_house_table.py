"""The descriptions of all keys, table by table."""

from collections.abc import Iterator

import pytest

from longpoint.quantities.length import Units
from longpoint.survey.house_file.entry import read_entry
from longpoint.survey.house_file.house_table import HOUSE
from longpoint.survey.house_file.keys import Kind, Table


def every_table(table: Table) -> Iterator[Table]:
    yield table
    for key in table.keys:
        if key.table is not None:
            yield from every_table(key.table)


TABLES = {table.title: table for table in every_table(HOUSE)}

FIXED = {
    "the house": "format name units dialect defaults profiles tapes saws stock offcuts openings "
    "rooms runs",
    "the defaults": "quirk quirk_band architrave skirting tape saw max_gap method floor_cover "
    "floor_gap",
    "a profile": "face thickness reversible material",
    "a tape": "class max_error",
    "a saw": "kerf end_trim found keep",
    "a stick of stock": "profile length price count",
    "an offcut": "profile length count",
    "an opening": "mark room kind trim top bottom left right rising falling plane lining_edge "
    "middle plumb level bevel bevel_u tape by width height faces b corners sides angles arch",
    "an arch": "rise",
    "a room": "name closed walls",
    "a wall": "mark length corner corner_u openings skirting",
    "an opening in a wall": "mark from_left",
    "a run": "mark room wall profile length left right",
}


@pytest.mark.parametrize("title", sorted(FIXED))
def test_no_key_that_files_rely_on_is_ever_dropped(title: str) -> None:
    assert set(FIXED[title].split()) <= TABLES[title].by_name.keys()


@pytest.mark.parametrize("title", sorted(TABLES))
def test_every_key_is_described_once_in_a_plain_sentence(title: str) -> None:
    keys = TABLES[title].keys

    assert len({key.name for key in keys}) == len(keys)
    for key in keys:
        assert key.meaning.endswith(".")
        assert key.meaning[0].isupper() or key.meaning[0].isdigit()
        assert key.required or key.left_out, f"{key.name}: what happens when it is left out?"
        assert (key.kind is Kind.CHOICE) <= bool(key.choices)


@pytest.mark.parametrize("title", sorted(set(TABLES) - {"the house"}))
def test_every_example_reads(title: str) -> None:
    entry = read_entry(TABLES[title], TABLES[title].example(), Units.MM)

    assert [str(trouble) for trouble in entry.troubles] == []
    assert entry.values.keys() == TABLES[title].by_name.keys()
