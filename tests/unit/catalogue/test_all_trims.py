"""What holds for every kind of trim, whatever it is."""

from collections.abc import Iterator

import jsonschema
import pytest

from longpoint.catalogue.all_trims import CATALOGUE, trim_tables
from longpoint.catalogue.trim import TrimKind
from longpoint.quantities.length import Units
from longpoint.survey.house_file import house_schema, read_house
from longpoint.survey.house_file.entry import read_entry
from longpoint.survey.house_file.house_table import HOUSE
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.house_file.trim_tables import trim_table
from tests.house_documents import house


def tables_in(table: Table) -> Iterator[Table]:
    yield table
    for key in table.keys:
        if key.table is not None:
            yield from tables_in(key.table)


def test_no_two_kinds_share_a_name() -> None:
    assert len({kind.name for kind in CATALOGUE}) == len(CATALOGUE) == len(trim_tables())


def test_no_two_tables_share_a_title_that_the_schema_would_mix_up() -> None:
    named: dict[str, Table] = {}
    kinds = [trim_table(kind.title, kind.asks) for kind in CATALOGUE]
    for table in (*tables_in(HOUSE), *(inner for kind in kinds for inner in tables_in(kind))):
        assert named.setdefault(table.title, table) == table, table.title


@pytest.mark.parametrize("kind", CATALOGUE, ids=lambda kind: kind.name)
def test_every_key_has_an_example_that_reads(kind: TrimKind) -> None:
    for key in kind.asks:
        table = Table(title=kind.title, keys=(key,))
        entry = read_entry(table, {key.name: key.example}, Units.MM)
        assert entry.troubles == (), key.name
        if key.kind is Kind.TABLES and key.table is not None:
            assert isinstance(key.example, list)
            for one in key.example:
                assert read_entry(key.table, one, Units.MM).troubles == (), key.name


@pytest.mark.parametrize("kind", CATALOGUE, ids=lambda kind: kind.name)
def test_every_key_says_what_it_means_and_what_holds_without_it(kind: TrimKind) -> None:
    keys: list[Key] = [
        key for table in tables_in(Table(title=kind.title, keys=kind.asks)) for key in table.keys
    ]
    for key in keys:
        assert key.meaning.endswith("."), key.name
        assert key.required or key.left_out, key.name


@pytest.mark.parametrize("kind", CATALOGUE, ids=lambda kind: kind.name)
def test_an_entry_with_nothing_but_its_kind_is_read_or_held_with_a_reason(kind: TrimKind) -> None:
    result = read_house(house(trims=[{"mark": "X1", "kind": kind.name}]), trim_tables())

    marks = [trim.mark for trim in result.house.trims] + [held.mark for held in result.house.held]
    assert marks == ["X1"]
    if result.house.held:
        assert any(finding.place == "X1" for finding in result.findings)


def test_the_schema_takes_what_the_reader_takes() -> None:
    schema = house_schema(trim_tables())
    trims = [
        {
            "mark": f"X{number}",
            "kind": kind.name,
            **{key.name: key.example for key in kind.asks},
        }
        for number, kind in enumerate(CATALOGUE, start=1)
    ]
    jsonschema.validate(house(trims=trims), schema)
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(house(trims=[{**trims[0], "colour": "red"}]), schema)
