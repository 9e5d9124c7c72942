from typing import Any

from longpoint.journal import Entry
from longpoint.phone.file_changes import file_changes, without_days
from longpoint.phone.fold import fold
from longpoint.phone.house_text import house_text

WINDOW = {"mark": "W1", "room": "Hall", "kind": "window", "trim": "all-round", "top": 1187}
DOOR = {"mark": "D1", "room": "Hall", "kind": "door", "trim": "legs-and-head", "left": 2030}
HOUSE: dict[str, Any] = {
    "format": "longpoint-house/1",
    "name": "Wren House",
    "units": "mm",
    "defaults": {"quirk": 5},
    "openings": [WINDOW, DOOR],
}


def written(*bodies: dict[str, Any], device: str = "laptop", after: int = 0) -> list[Entry]:
    head = {"device": device, "at": "", "house": "h"}
    return [{**head, "counter": after + n, **body} for n, body in enumerate(bodies, start=1)]


OPENED = written({"what": "opened-file", "text": house_text(HOUSE)})


def told(after: dict[str, Any], entries: list[Entry] = OPENED) -> list[str]:
    """Check that the changes make the house what the file says; return their kinds."""
    changes = file_changes(HOUSE, after, entries)
    assert changes is not None
    more = written(*changes, after=entries[-1]["counter"])
    assert fold([*OPENED, *more]).document == after
    return [each["what"] for each in changes]


def test_a_file_that_was_not_edited_changes_nothing() -> None:
    assert told(HOUSE) == []


def test_a_figure_that_was_mended_is_one_reading() -> None:
    assert told({**HOUSE, "openings": [{**WINDOW, "top": 1178}, DOOR]}) == ["reading"]


def test_a_line_read_twice_or_in_text_is_put_as_it_stands() -> None:
    twice = {**WINDOW, "top": [1187, 1186], "bottom": "1188"}
    assert told({**HOUSE, "openings": [twice, DOOR]}) == ["opening-changed", "opening-changed"]


def test_an_opening_more_and_one_less() -> None:
    more = {**DOOR, "mark": "D2", "left": 2031}
    assert told({**HOUSE, "openings": [WINDOW, more]}) == [
        "opening-left-out",
        "opening-added",
        "reading",
    ]


def test_settings_names_and_what_was_taken_out() -> None:
    after = {**HOUSE, "name": "Lark", "defaults": {"quirk": 4, "saw": "S1"}, "saws": {"S1": {}}}
    del after["units"]
    assert told(after).count("setting") == 4
    assert told(after)[0] == "house-named"


def test_an_opening_without_a_mark_of_its_own_cannot_be_told_from_another() -> None:
    for openings in ([WINDOW, WINDOW], [{"kind": "window"}], 3, [3]):
        assert file_changes(HOUSE, {**HOUSE, "openings": openings}, OPENED) is None


def test_a_mended_figure_takes_the_place_of_what_phones_had_read() -> None:
    read = {"opening": "W1", "line": "top", "value_text": "1190", "unit": "mm", "again": False}
    phone = written({"what": "reading", **read, "over": []}, device="phone", after=1)
    after = {**HOUSE, "openings": [{**WINDOW, "top": 1178}, DOOR]}
    (change,) = file_changes(HOUSE, after, [*OPENED, *phone]) or ()
    assert change["over"] == [{"device": "phone", "counter": 2}]
    found = fold([*OPENED, *phone, *written(change, after=2)])
    assert found.document["openings"][0]["top"] == 1178


def test_days_are_carried_as_text() -> None:
    from datetime import date

    assert without_days({"a": [date(2026, 3, 1)]}) == {"a": ["2026-03-01"]}
