"""From a table to a list of values, each with its cell and its trouble."""

import pytest

from longpoint.errors import ExchangeError
from longpoint.exchange.confirm.columns import propose_mapping
from longpoint.exchange.confirm.found_values import FoundValue, found_values
from longpoint.exchange.confirm.record_keys import RecordKind
from longpoint.exchange.tables.records import ForeignTable, TableCell
from longpoint.exchange.tables.xlsx_table import DATE, FORMULA


def table(*rows: str) -> ForeignTable:
    cells = (tuple(TableCell(text=text.strip()) for text in row.split("|")) for row in rows)
    return ForeignTable(file="a.csv", rows=tuple(cells))


def found(*rows: str, unit: str = "mm", **told: str) -> tuple[FoundValue, ...]:
    made = table(*rows)
    mapping = propose_mapping(made, told)
    assert mapping is not None
    return found_values(made, mapping, unit)


def one(values: tuple[FoundValue, ...], mark: str, path: str, number: int = 1) -> FoundValue:
    return next(v for v in values if (v.mark, v.path, v.number) == (mark, path, number))


def test_headers_below_a_title_are_found_and_their_words_understood() -> None:
    values = found(
        "Readings of the house|||",
        "Window no.|Width at head (mm)|Sill width|LH|Type",
        "W1|1187|1186|462|window",
    )
    assert [v.path for v in values] == ["kind", "top", "bottom", "left"]
    assert one(values, "W1", "bottom").source == "a.csv C3"


def test_a_unit_in_the_header_is_that_of_its_column() -> None:
    values = found("mark|kind|width (cm)|height", "W1|window|118.7|462")
    assert (one(values, "W1", "width").value, one(values, "W1", "width").unit) == ("118.7", "cm")
    assert one(values, "W1", "height").unit == "mm"


def test_two_columns_of_one_thing_are_two_readings_of_it() -> None:
    values = found("mark|kind|right|right 2", "W1|window|462|461")
    assert [one(values, "W1", "right", n).value for n in (1, 2)] == ["462", "461"]


def test_a_column_nobody_knows_is_named_and_not_used() -> None:
    made = table("mark|top|colour", "W1|1187|red")
    mapping = propose_mapping(made, {})
    assert mapping is not None
    assert [(c.header, c.path) for c in mapping.columns] == [
        ("mark", "mark"),
        ("top", "top"),
        ("colour", ""),
    ]


def test_any_words_can_be_told_by_header_or_by_letters() -> None:
    values = found(
        "Ding|Art|oberhalb|daneben",
        "W1|window|1187|462",
        **{"Ding": "mark", "B": "kind", "oberhalb": "top (mm)", "D": "left"},
    )
    assert [v.path for v in values] == ["kind", "top", "left"]


@pytest.mark.parametrize(
    "told",
    [{"mark": "mark", "nowhere": "top"}, {"top": "topp"}, {"top": "top (furlongs)"}],
)
def test_what_is_told_wrongly_is_refused(told: dict[str, str]) -> None:
    with pytest.raises(ExchangeError):
        propose_mapping(table("mark|top", "W1|1187"), told)


def test_two_columns_cannot_both_be_the_room() -> None:
    with pytest.raises(ExchangeError, match="room"):
        propose_mapping(table("mark|raum|location|top", "W1|a|b|1187"), {})


def test_a_table_without_marks_is_no_table_of_readings() -> None:
    assert propose_mapping(table("name|price", "nail|3"), {}) is None


def test_rows_with_a_length_and_two_ends_are_runs() -> None:
    mapping = propose_mapping(table("run|wall|length|left end|right end", "S1|N|2284|square"), {})
    assert mapping is not None
    assert mapping.kind is RecordKind.RUN


@pytest.mark.parametrize(
    ("cell", "says"),
    [
        (TableCell(text="=B2+1", trouble=FORMULA), "formula"),
        (TableCell(text="2026-02-01", trouble=DATE), "day"),
        (TableCell(text="1,187"), "decimal"),
        (TableCell(text="11x7"), "not a length"),
        (TableCell(text="-5"), "not a length"),
        (TableCell(text="1.187", is_number=True), "10 mm"),
        (TableCell(text="46 1/2"), "half"),
        (TableCell(text="1" * 300), "too large"),
        (TableCell(text="99999"), "more than"),
    ],
)
def test_a_cell_that_is_no_reading_says_why(cell: TableCell, says: str) -> None:
    made = ForeignTable(
        file="a.xlsx",
        tab="T",
        rows=(
            (TableCell(text="mark"), TableCell(text="kind"), TableCell(text="top")),
            (TableCell(text="W1"), TableCell(text="window"), cell),
        ),
    )
    mapping = propose_mapping(made, {})
    assert mapping is not None
    value = one(found_values(made, mapping), "W1", "top")
    assert says in value.trouble
    assert value.source == "a.xlsx T!C2"
    assert not value.confirmed


def test_both_decimal_signs_are_refused_until_one_is_named() -> None:
    with pytest.raises(ExchangeError, match="--decimal"):
        found("mark|kind|top|left", "W1|window|1187,5|462.5")


def test_what_an_opening_cannot_do_without_gets_a_line_to_fill_in() -> None:
    line = one(found("mark|top|left", "D1|764|2030"), "D1", "kind")
    assert line.value == ""
    assert "window, door, cased" in line.trouble


def test_a_mark_that_stands_twice_is_said_at_each_value_of_the_second() -> None:
    values = found("mark|kind|top", "W1|window|1187", "W1|window|1186")
    assert not one(values, "W1", "top").trouble
    assert "stands in row 2" in one(values, "W1 (row 3)", "top").trouble


def test_a_row_without_a_mark_is_not_passed_over() -> None:
    values = found("mark|kind|top", "|window|1187", "||", "W2|window|594")
    assert "no mark" in one(values, "row 2", "top").trouble
