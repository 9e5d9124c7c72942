"""Only what was confirmed goes in, and the house file keeps all else."""

import tomllib
from dataclasses import replace
from pathlib import Path

import pytest

from longpoint.errors import ExchangeError, LongpointError
from longpoint.exchange.confirm.confirm_list import merged, read_list, write_list
from longpoint.exchange.confirm.found_values import FoundValue
from longpoint.exchange.confirm.house_put import put_in_house_file
from longpoint.exchange.confirm.record_keys import RecordKind

HOUSE = """\
# readings by hand
format = "longpoint-house/1"
name = "Wren House"
[defaults]
architrave = "A"
[profiles.A]   # as delivered
face = 57
thickness = 18
[[openings]]   # the leaning one
mark = "W1"
kind = "window"
top = 1187     # read twice
left = 462
"""


def lines(mark: str, confirmed: str = "yes", **values: str) -> list[FoundValue]:
    return [
        FoundValue(
            kind=RecordKind.OPENING,
            mark=mark,
            path=path.replace("_dot_", "."),
            value=value,
            unit="" if path in {"kind", "room"} else "mm",
            written=value,
            source="a.csv B2",
            confirmed=confirmed,
        )
        for path, value in values.items()
    ]


@pytest.fixture
def house(tmp_path: Path) -> Path:
    path = tmp_path / "house.toml"
    path.write_text(HOUSE, encoding="utf-8")
    return path


def openings(path: Path) -> list[dict[str, object]]:
    found = tomllib.loads(path.read_text(encoding="utf-8"))["openings"]
    assert isinstance(found, list)
    return found


def test_a_new_opening_goes_in_below_and_remarks_stay(house: Path) -> None:
    put_in_house_file(house, tuple(lines("W2", kind="window", top="594.5", plane_dot_tl="-1")))
    text = house.read_text(encoding="utf-8")
    assert text.startswith(HOUSE)
    assert openings(house)[1] == {
        "mark": "W2",
        "kind": "window",
        "top": 594.5,
        "plane": {"tl": -1},
    }


def test_an_opening_that_is_there_gets_what_it_lacks(house: Path) -> None:
    put_in_house_file(house, tuple(lines("W1", top="1187", bottom="1186")))
    assert openings(house)[0]["bottom"] == 1186
    assert "# the leaning one" in house.read_text(encoding="utf-8")


def test_putting_twice_changes_nothing(house: Path) -> None:
    values = tuple(lines("W2", kind="window", top="594", left="593"))
    put_in_house_file(house, values)
    once = house.read_bytes()
    plan = put_in_house_file(house, values)
    assert plan.is_empty
    assert house.read_bytes() == once


def test_nothing_unconfirmed_goes_in_and_its_opening_waits_whole(house: Path) -> None:
    values = [*lines("W2", kind="window", top="594"), *lines("W2", "", left="593")]
    plan = put_in_house_file(house, tuple(values))
    assert plan.is_empty
    assert plan.waiting == ("W2 (1 of 3 lines)",)
    assert house.read_text(encoding="utf-8") == HOUSE


def test_a_line_that_says_no_is_left_out(house: Path) -> None:
    values = [*lines("W2", kind="window", top="594", left="593"), *lines("W2", "no", right="5930")]
    put_in_house_file(house, tuple(values))
    assert "right" not in openings(house)[1]


def test_a_value_written_beside_stands_instead_and_is_said(house: Path) -> None:
    values = [*lines("W2", kind="window", left="593"), *lines("W2", "594", top="549")]
    plan = put_in_house_file(house, tuple(values))
    assert openings(house)[1]["top"] == 594
    assert any('"594" as you wrote, not "549"' in said for said in plan.said)


def test_a_reading_that_differs_from_the_house_is_never_written_over(house: Path) -> None:
    plan = put_in_house_file(house, tuple(lines("W1", top="1178")))
    assert plan.is_empty
    assert "the house has 1187, the list 1178" in plan.refused[0]
    assert house.read_text(encoding="utf-8") == HOUSE


def test_a_value_in_another_unit_keeps_its_unit(house: Path) -> None:
    values = [replace(v, unit="cm") if v.path == "top" else v for v in lines("W2", top="59.4")]
    values += lines("W2", kind="window", left='23 3/8"')
    put_in_house_file(house, tuple(values))
    assert openings(house)[1] == {
        "mark": "W2",
        "kind": "window",
        "top": "59.4 cm",
        "left": '23 3/8"',
    }


@pytest.mark.parametrize("said", ["59x", "-3", "", "1e3"])
def test_a_confirmed_value_that_does_not_read_stays_out(house: Path, said: str) -> None:
    values = [*lines("W2", kind="window"), *lines("W2", said or "yes", top="")]
    plan = put_in_house_file(house, tuple(values))
    assert plan.is_empty
    assert plan.refused


def test_a_new_opening_without_its_kind_stays_out(house: Path) -> None:
    plan = put_in_house_file(house, tuple(lines("W2", top="594")))
    assert plan.is_empty
    assert "kind is missing" in plan.refused[0]


@pytest.mark.parametrize(
    "change",
    [
        ('[[openings]]   # the leaning one\nmark = "W1"', "[[ openings ]]\nmark = 'W1'"),
        ("# readings by hand", 'note = """\n[[openings]]\n"""'),
    ],
)
def test_a_file_written_otherwise_is_understood_or_refused_but_never_spoiled(
    house: Path, change: tuple[str, str]
) -> None:
    text = HOUSE.replace(*change)
    house.write_text(text, encoding="utf-8")
    try:
        put_in_house_file(house, tuple(lines("W1", bottom="1186")))
    except LongpointError:
        assert house.read_text(encoding="utf-8") == text
    else:
        assert openings(house)[0]["bottom"] == 1186


def test_openings_written_as_one_list_are_refused_with_the_lines_to_write(house: Path) -> None:
    text = HOUSE[: HOUSE.index("[[openings]]")]
    text = text.replace("[defaults]", 'openings = [{ mark = "W1", kind = "window" }]\n[defaults]')
    house.write_text(text, encoding="utf-8")
    with pytest.raises(ExchangeError, match="bottom = 1186"):
        put_in_house_file(house, tuple(lines("W1", bottom="1186")))
    assert house.read_text(encoding="utf-8") == text


@pytest.mark.parametrize("ending", [".csv", ".xlsx"])
def test_a_list_reads_back_as_it_was_written(tmp_path: Path, ending: str) -> None:
    values = [
        *lines("W1", kind="window", top="1187.50", left="46 3/4"),
        *lines("7", "", top="=1+1", left="-3"),
        *lines("+1", "0594", top="594"),
    ]
    path = tmp_path / f"list{ending}"
    path.write_bytes(write_list(path, values))
    assert read_list(path) == tuple(values)


def test_a_list_made_again_keeps_what_was_said_where_nothing_changed() -> None:
    before = lines("W1", "yes", kind="window", top="1187", left="462")
    now = [replace(v, confirmed="", value="1178" if v.path == "top" else v.value) for v in before]
    kept, lost = merged(before, now)
    assert [v.confirmed for v in kept] == ["yes", "", "yes"]
    assert [v.path for v in lost] == ["top"]


@pytest.mark.parametrize(
    ("was", "now"),
    [
        (",opening,", ",opening,"),
        ("opening", "aperture"),
        (",top,", ",topp,"),
        (",mm,1,", ",mm,1.5,"),
        ("confirmed,", "said,"),
    ],
)
def test_a_list_that_was_spoiled_is_refused(tmp_path: Path, was: str, now: str) -> None:
    path = tmp_path / "list.csv"
    path.write_bytes(write_list(path, lines("W2", kind="window", top="594")))
    path.write_text(path.read_text(encoding="utf-8").replace(was, now), encoding="utf-8")
    if was == now:
        assert len(read_list(path)) == 2
    else:
        with pytest.raises(ExchangeError):
            read_list(path)
