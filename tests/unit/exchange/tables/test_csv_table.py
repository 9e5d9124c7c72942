"""CSV files as they come from spreadsheet programs of several countries."""

from pathlib import Path

import pytest

from longpoint.errors import ExchangeError
from longpoint.exchange.tables.csv_table import csv_text, guarded, read_csv_table
from longpoint.exchange.tables.open_tables import open_tables
from longpoint.exchange.tables.records import LONGEST_CELL, MOST_COLUMNS, MOST_ROWS


def texts(path: Path) -> list[list[str]]:
    return [[cell.text for cell in row] for row in read_csv_table(path).rows]


def written(folder: Path, data: bytes, name: str = "a.csv") -> Path:
    path = folder / name
    path.write_bytes(data)
    return path


@pytest.mark.parametrize("sign", [",", ";", "\t", "|"])
def test_the_sign_between_cells_is_found(tmp_path: Path, sign: str) -> None:
    text = f"mark{sign}top{sign}left\nW1{sign}1187{sign}462\nW2{sign}594{sign}593\n"
    table = read_csv_table(written(tmp_path, text.encode()))
    assert [[c.text for c in row] for row in table.rows][1] == ["W1", "1187", "462"]
    assert "parted by" in table.notes[-1]


def test_a_decimal_comma_is_not_taken_for_the_sign_between_cells(tmp_path: Path) -> None:
    rows = texts(written(tmp_path, b"mark;top;left\nW1;1187,5;462\nW2;594;593,5\n"))
    assert rows[1] == ["W1", "1187,5", "462"]


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16"])
def test_letters_with_accents_are_read_in_each_encoding(tmp_path: Path, encoding: str) -> None:
    rows = texts(written(tmp_path, "mark,room\nW1,Küche\n".encode(encoding)))
    assert rows == [["mark", "room"], ["W1", "Küche"]]


def test_windows_text_is_read_and_said(tmp_path: Path) -> None:
    table = read_csv_table(written(tmp_path, "mark,room\nW1,Küche\n".encode("cp1252")))
    assert table.rows[1][1].text == "Küche"
    assert any("Windows text" in note for note in table.notes)


def test_a_line_that_names_the_sign_is_obeyed_and_addresses_stay(tmp_path: Path) -> None:
    table = read_csv_table(written(tmp_path, b"sep=;\nmark;a,b,c,d\nW1;1,2,3,4\n"))
    assert [cell.text for cell in table.rows[2]] == ["W1", "1,2,3,4"]
    assert table.address(2, 1) == "B3"


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"mark,top\nW1,\x00\x00\n",
        b"mark,top\nW1,\x81\n",
        b"\xff\xfem",
        b"PK\x03\x04 not a csv",
        b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1 an old workbook",
        b"%PDF-1.7",
        b'mark,top\nW1,"1187\nW2,594\n',
        b'mark,top\nW1,"1187"x\n',
        b"mark,top\nW1," + b"1" * (LONGEST_CELL + 1) + b"\n",
        b"mark,top\nW1," + b"1" * 200_000 + b"\n",
        b"mark,top\n" + b"W1,1187\n" * (MOST_ROWS + 1),
        b"mark" + b",x" * (MOST_COLUMNS + 1) + b"\n",
        b"mark,top\n" + b"x" * 5_000_000,
    ],
    ids=[
        *("empty", "nul", "no text", "half a sign", "zip", "old workbook", "pdf", "open quote"),
        *("behind a quote", "giant cell", "cell over the parser's limit", "rows", "columns"),
        "megabytes",
    ],
)
def test_a_hostile_csv_is_refused_in_three_sentences(tmp_path: Path, data: bytes) -> None:
    with pytest.raises(ExchangeError) as caught:
        read_csv_table(written(tmp_path, data))
    assert caught.value.read
    assert caught.value.wrong
    assert caught.value.do


def test_a_folder_a_missing_file_and_a_device_are_refused(tmp_path: Path) -> None:
    (tmp_path / "folder.csv").mkdir()
    (tmp_path / "device.csv").symlink_to("/dev/zero")
    for name in ("folder.csv", "missing.csv", "device.csv"):
        with pytest.raises(ExchangeError):
            open_tables(tmp_path / name)


@pytest.mark.parametrize("name", ["a.xlsm", "a.xls", "a.ods", "a", "a.toml"])
def test_another_ending_is_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(ExchangeError, match="ending"):
        open_tables(written(tmp_path, b"mark,top\nW1,1187\n", name))


def test_nothing_that_is_written_starts_a_formula_and_all_of_it_reads_back(tmp_path: Path) -> None:
    cells = ("=1+1", "+cmd|' /C calc'!A0", "-x", "@SUM(A1)", "'=1", "-3", "+1/16", "'", "W1", "'x")
    text = csv_text([("a",) * len(cells), cells])
    for cell in text.splitlines()[1].split(","):
        assert cell.strip('"')[:1] not in {"=", "@", "+"}
    assert guarded("-3") == "-3"
    assert tuple(texts(written(tmp_path, text.encode()))[1]) == cells
