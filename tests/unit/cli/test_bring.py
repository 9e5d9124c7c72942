"""Other people's tables in, from the shell; and a house's tables out."""

import csv
import json
from pathlib import Path

import openpyxl
import pytest
from click.testing import CliRunner, Result

from longpoint.cli.main import main

EXAMPLE = Path(__file__).parents[3] / "examples" / "wren-house.toml"
SHEET = "Fenster;Raum;Breite oben;links;Notiz;Art\nW1;Küche;1187,5;462;schön;window\n"


def longpoint(*words: str | Path) -> Result:
    return CliRunner().invoke(main, [str(word) for word in words])


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    path = tmp_path / "sheet.csv"
    path.write_bytes(SHEET.encode("cp1252"))
    return path


def confirm(path: Path, said: str) -> None:
    rows = list(csv.reader(path.read_text(encoding="utf-8-sig").splitlines()))
    for row in rows[2:]:
        row[0] = said
    with path.open("w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows(rows)


def test_the_mapping_is_shown_and_nothing_is_used_before_it_is_confirmed(
    tmp_path: Path, sheet: Path
) -> None:
    house, to = tmp_path / "h.toml", tmp_path / "l.csv"
    longpoint("new", house)
    before = house.read_bytes()
    done = longpoint("bring", "table", sheet, "--list", to)
    assert done.exit_code == 0, done.output
    for said in ("Breite oben", "-> top", "-> not used", "Windows text", "semicolon", "for mm"):
        assert said in done.output
    put = longpoint("bring", "put", to, house)
    assert put.exit_code == 1
    assert "Still to be confirmed" in put.output
    assert house.read_bytes() == before


def test_what_is_confirmed_goes_in_and_the_list_made_again_keeps_it(
    tmp_path: Path, sheet: Path
) -> None:
    house, to = tmp_path / "h.json", tmp_path / "l.csv"
    house.write_text('{"format": "longpoint-house/1", "name": "H"}', encoding="utf-8")
    longpoint("bring", "table", sheet, "--list", to)
    confirm(to, "yes")
    again = longpoint("bring", "table", sheet, "--list", to)
    assert "4 values, 0 to be confirmed" in again.output
    put = longpoint("bring", "put", to, house)
    assert put.exit_code == 0, put.output
    (opening,) = json.loads(house.read_text(encoding="utf-8"))["openings"]
    assert opening == {"mark": "W1", "room": "Küche", "kind": "window", "top": 1187.5, "left": 462}


def test_a_reading_that_changed_has_to_be_confirmed_anew(tmp_path: Path, sheet: Path) -> None:
    to = tmp_path / "l.csv"
    longpoint("bring", "table", sheet, "--list", to)
    confirm(to, "yes")
    sheet.write_bytes(SHEET.replace("1187,5", "1178,5").encode("cp1252"))
    again = longpoint("bring", "table", sheet, "--list", to)
    assert "4 values, 1 to be confirmed" in again.output
    assert (tmp_path / "l.csv.before-1").exists()


@pytest.mark.parametrize(
    "words",
    [
        ("--column", "top"),
        ("--column", "ZZ=top"),
        ("--tab", "Kitchen"),
        ("--delimiter", ";;"),
        ("--headers", "2"),
    ],
)
def test_what_cannot_be_done_is_refused_in_three_lines(
    tmp_path: Path, sheet: Path, words: tuple[str, ...]
) -> None:
    done = longpoint("bring", "table", sheet, "--list", tmp_path / "l.csv", *words)
    assert done.exit_code == 2, done.output
    assert not (tmp_path / "l.csv").exists()


def test_a_house_is_given_as_tables_and_what_is_held_is_named(tmp_path: Path) -> None:
    done = longpoint("give", EXAMPLE, "--out", tmp_path, "--as", "csv", "--as", "xlsx")
    assert done.exit_code == 1
    assert "Held, so without pieces: W3." in done.output
    with (tmp_path / "pieces.csv").open(encoding="utf-8-sig", newline="") as file:
        pieces = list(csv.DictReader(file))
    book = openpyxl.load_workbook(tmp_path / "cutting.xlsx", read_only=True)
    assert book.sheetnames == ["pieces", "sticks", "held"]
    assert len(list(book["pieces"].iter_rows())) == len(pieces) + 1
    assert not [piece for piece in pieces if piece["opening"] == "W3"]
    head = next(piece for piece in pieces if piece["mark"] == "W1-head")
    # By hand: 1185 + 2 x 5 of quirk, and two mitres of about 45 over 57: 1195 + 114.
    assert float(head["inner (mm)"]) == pytest.approx(1195, abs=0.5)
    assert float(head["outer (mm)"]) == pytest.approx(1309, abs=1)
    with (tmp_path / "sticks.csv").open(encoding="utf-8-sig", newline="") as file:
        assert {row["piece"] for row in csv.DictReader(file)} == {p["mark"] for p in pieces}
