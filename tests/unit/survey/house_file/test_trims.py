from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.survey.house import EntryKind
from longpoint.survey.house_file import house_document, read_house, readings_code
from longpoint.survey.house_file.keys import Key, Kind, Table
from longpoint.survey.house_file.trim_tables import trim_table
from tests.house_documents import found, house, window

PEG = Table(
    title="a peg",
    keys=(
        Key(name="at", kind=Kind.READING, meaning="From the left.", example=100, required=True),
        Key(name="lean", kind=Kind.ANGLE_READING, meaning="Its lean.", example=2, left_out="0"),
    ),
)
TABLES = {
    "peg-rail": trim_table(
        "a peg rail",
        (
            Key(name="length", kind=Kind.READING, meaning="Its length.", example=900, above=True),
            Key(name="drift", kind=Kind.SIGNED_READING, meaning="Drift.", example=1, low=-9.0),
            Key(name="gaps", kind=Kind.READINGS, meaning="Gaps.", example=[1], left_out="none"),
            Key(name="first", kind=Kind.TABLE, meaning="A peg.", example={"at": 1}, table=PEG),
            Key(name="pegs", kind=Kind.TABLES, meaning="Pegs.", example=[{"at": 1}], table=PEG),
            Key(name="pitch", kind=Kind.ANGLE, meaning="Pitch.", example=1, left_out="0"),
        ),
    )
}


def rail(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"mark": "PG1", "kind": "peg-rail", **keys}


def test_repeated_readings_reach_the_catalogue_as_their_mean_less_the_tapes_offset() -> None:
    document = house(
        trims=[rail(length=[900, 902], drift=[-1, -2], gaps=[100, [101, 103]], pitch=38)],
        tapes={"T1": {"class": "II", "take_off": 1}},
    )
    (entry,) = read_house(document, TABLES).house.trims

    assert entry.values == {"length": 900.0, "drift": -1.5, "gaps": (99.0, 101.0), "pitch": 38.0}


def test_inner_tables_reach_it_as_dicts_read_by_the_same_rules() -> None:
    pegs = [{"at": [100, 102], "lean": [1, 2]}, {"at": 0}]
    (entry,) = read_house(house(trims=[rail(first={"at": 7}, pegs=pegs)]), TABLES).house.trims

    assert entry.values["first"] == {"at": 7.0}
    assert entry.values["pegs"] == ({"at": 101.0, "lean": 1.5}, {"at": 0.0})


def test_a_trim_comes_back_as_it_was_written_and_changes_the_code() -> None:
    document = house(trims=[rail(length="900.5", pegs=[{"at": 100}], room="Hall")])
    read = read_house(document, TABLES).house
    again = read_house(house_document(read), TABLES).house

    assert again.trims[0].values == read.trims[0].values
    assert readings_code(again) == readings_code(read)
    assert readings_code(read) != readings_code(read_house(house()).house)


@pytest.mark.parametrize(
    ("entry", "code"),
    [
        (rail(kind="peg-rial"), "trim-unknown"),
        (rail(kind=3), "trim-unknown"),
        ({"mark": "PG1"}, "missing-key"),
        (rail(lenght=900), "unknown-key"),
        (rail(length=0), "unreadable-value"),
        (rail(profile="NONE"), "profile-unknown"),
        (rail(pegs=[{"lean": 1}]), "missing-key"),
        (rail(pegs=[3]), "not-a-table"),
        (rail(tape="T9"), "tape-unknown"),
    ],
)
def test_a_bad_trim_holds_itself_and_nothing_else(entry: dict[str, Any], code: str) -> None:
    result = read_house(house(trims=[entry, rail(mark="PG2")], openings=[window()]), TABLES)

    assert [(f.place, f.severity) for f in found(result, code)] == [("PG1", Severity.STOP)]
    assert [(held.kind, held.mark) for held in result.house.held] == [(EntryKind.TRIM, "PG1")]
    assert [trim.mark for trim in result.house.trims] == ["PG2"]
    assert [opening.mark for opening in result.house.openings] == ["W1"]


def test_a_misspelt_kind_is_told_the_nearest() -> None:
    (finding,) = found(read_house(house(trims=[rail(kind="peg-rial")]), TABLES), "trim-unknown")

    assert '"peg-rail"' in finding.do


def test_a_mark_used_by_an_opening_is_not_free_for_a_trim() -> None:
    result = read_house(house(trims=[rail(mark="W1")], openings=[window()]), TABLES)

    assert found(result, "mark-twice")
    assert {held.kind for held in result.house.held} == {EntryKind.OPENING, EntryKind.TRIM}


def test_a_kind_may_not_ask_for_what_every_trim_has() -> None:
    with pytest.raises(AssertionError, match="mark"):
        trim_table("a rail", (Key(name="mark", kind=Kind.MARK, meaning="Its mark.", example="X1"),))
