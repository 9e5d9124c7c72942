import pytest

from longpoint.quantities.length import Units
from longpoint.survey.house_file.as_built_tables import AS_BUILT_TABLE
from longpoint.survey.house_file.entry import as_list, as_table, read_entry, read_parts
from longpoint.survey.house_file.opening_tables import ARCH, OPENING
from longpoint.survey.house_file.trouble import HouseFileTrouble


def test_values_come_in_the_order_written() -> None:
    entry = read_entry(ARCH, {"crown": 1350, "rise": "150"}, Units.MM)

    assert list(entry.values.items()) == [("crown", 1350.0), ("rise", 150.0)]
    assert entry.troubles == ()


def test_every_trouble_of_a_table_is_told_not_only_the_first() -> None:
    entry = read_entry(ARCH, {"crown": -1, "raise": 150}, Units.MM)

    assert [trouble.code for trouble in entry.troubles] == [
        "unreadable-value",
        "unknown-key",
        "missing-key",
    ]
    assert 'Did you mean "rise"?' in entry.troubles[1].do
    assert entry.spoiled(ARCH) == {"crown", "rise"}


def test_trouble_in_an_inner_table_names_the_whole_path() -> None:
    written = {"mark": "W1", "kind": "window", "bevel": {"bl": 200}}

    (trouble,) = read_entry(OPENING, written, Units.MM).troubles

    assert trouble.read == "bevel.bl is written as 200."
    assert trouble.key == "bevel"


def test_read_in_parts_a_table_loses_only_what_is_bad() -> None:
    written = {"gaps": {"bl": [1, 2], "br": [1, "x"], "tr": "x"}, "steps": 1, "quirk": {}}

    entry = read_parts(AS_BUILT_TABLE, written, Units.MM, "as_built.")

    assert entry.values == {"gaps": {"bl": (1.0, 2.0), "br": (1.0, None)}}
    assert [trouble.read for trouble in entry.troubles] == [
        'The key "quirk" stands under as_built.',
        'as_built.gaps.br is written as "x".',
        'as_built.gaps.tr is written as "x".',
        "as_built.steps is written as 1.",
    ]


def test_a_table_that_is_read_apart_stands_as_written() -> None:
    written = {"mark": "W1", "kind": "window", "as_built": {"gasp": 1}}

    entry = read_entry(OPENING, written, Units.MM)

    assert (entry.values["as_built"], entry.troubles) == ({"gasp": 1}, ())


def test_a_key_that_is_no_text_is_unknown() -> None:
    entry = read_entry(ARCH, {"rise": 150, 7: 1}, Units.MM)

    assert [trouble.code for trouble in entry.troubles] == ["unknown-key"]


def test_what_has_to_be_a_table_or_a_list_is_nothing_else() -> None:
    with pytest.raises(HouseFileTrouble, match="table of keys"):
        as_table([1], "arch")
    with pytest.raises(HouseFileTrouble, match=r"\[\[runs\]\]"):
        as_list({"a": 1}, "runs")
    assert as_list((1, 2), "runs") == [1, 2]
