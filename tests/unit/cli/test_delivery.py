import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from longpoint.cli.main import main
from tests.house_documents import house, window

STOCK = [{"profile": "OG57", "length": 5400, "supplier": "Harrow"}]


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, list(arguments))


@pytest.fixture
def sheets(tmp_path: Path) -> Path:
    file = tmp_path / "house.json"
    file.write_text(json.dumps(house(openings=[window(bottom=1187)], stock=STOCK)), "utf-8")
    done = run("plan", str(file), "--out", str(tmp_path / "sheets"), "--draws", "100")
    assert done.exit_code in (0, 1), done.output
    return tmp_path / "sheets"


def test_the_sheet_to_check_by_is_written(sheets: Path) -> None:
    done = run("delivery", str(sheets))
    assert done.exit_code == 0, done.output
    text = (sheets / "delivery.html").read_text(encoding="utf-8")
    assert "Harrow" in text
    assert not (sheets / "at-the-saw.json").exists()


def test_a_stick_that_did_not_come_is_asked_for_again(sheets: Path) -> None:
    done = run("delivery", str(sheets), "came OG57 5400 0")
    assert done.exit_code == 0, done.output
    assert "New timber needed" in done.output
    later = run("delivery", str(sheets), "came OG57 5400 2")
    assert later.exit_code == 0, later.output
    assert "No new stick is needed." in run("recut", str(sheets)).output


def test_a_near_profile_and_wet_timber_go_back_into_the_house_file(sheets: Path) -> None:
    done = run("delivery", str(sheets), "section OG57 60 18", "moisture OG57 19")
    assert done.exit_code == 1
    assert "STOP · OG57 came as 60 x 18 mm" in done.output
    assert "wetter than" in done.output
    file = sheets / "house-as-delivered.json"
    changed = json.loads(file.read_text(encoding="utf-8"))
    assert changed["profiles"]["OG57"]["face"] == 60
    assert changed["season"]["moisture"] == 19
    anew = run("plan", str(file), "--out", str(sheets / "anew"), "--draws", "100")
    assert anew.exit_code == 0, anew.output


def test_dry_timber_is_said_to_be_dry(sheets: Path) -> None:
    done = run("delivery", str(sheets), "moisture OG57 10")
    assert done.exit_code == 0, done.output
    assert "as dry as the air of this house keeps it" in done.output


def test_what_cannot_be_understood_changes_nothing(sheets: Path) -> None:
    done = run("delivery", str(sheets), "came OG57 5400 1", "came")
    assert done.exit_code == 2
    assert not (sheets / "at-the-saw.json").exists()
