import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from longpoint.cli.main import main
from tests.house_documents import house, window

STOCK = [{"profile": "OG57", "length": 3600}, {"profile": "OG57", "length": 5400}]


def told(folder: Path, *sentences: str) -> Result:
    return CliRunner().invoke(main, ["recut", str(folder), *sentences])


def write_house(path: Path, quirk: int = 5) -> Path:
    document = house(openings=[window(bottom=1187, quirk=quirk), window(mark="W2")], stock=STOCK)
    path.write_text(json.dumps(document), encoding="utf-8")
    return path


@pytest.fixture
def sheets(tmp_path: Path) -> Path:
    file = write_house(tmp_path / "house.json")
    done = CliRunner().invoke(main, ["plan", str(file), "--out", str(tmp_path / "sheets")])
    assert done.exit_code in (0, 1), done.output
    return tmp_path / "sheets"


def first_piece(sheets: Path) -> str:
    plan = json.loads((sheets / "plan.json").read_text(encoding="utf-8"))
    mark = plan["sticks"][0]["pieces"][0]
    assert isinstance(mark, str)
    return mark


def test_nothing_told_shows_the_plan_as_it_was(sheets: Path) -> None:
    done = told(sheets)

    assert done.exit_code == 0, done.output
    assert "0 pieces cut and good, 8 to cut." in done.output
    assert "No new stick is needed." in done.output
    assert (sheets / "again.pdf").exists()


def test_what_was_told_is_kept_from_call_to_call(sheets: Path) -> None:
    told(sheets, f"cut {first_piece(sheets)}")
    done = told(sheets)

    assert "1 piece cut and good, 7 to cut." in done.output
    assert "cut up to" in done.output


def test_a_spoiled_piece_is_planned_again(sheets: Path) -> None:
    mark = first_piece(sheets)
    done = told(sheets, f"spoiled {mark}")

    assert done.exit_code == 0, done.output
    assert mark in done.output
    assert "8 to cut" in done.output
    assert mark in (sheets / "again.html").read_text(encoding="utf-8")


def test_what_is_left_of_a_spoiled_head_becomes_the_next_one(sheets: Path) -> None:
    """Two windows alike: the head of one, cut 400 too long by its left end, is cut again."""
    done = told(sheets, "cut OG57-1", "spoiled W1-head whole")

    assert done.exit_code == 0, done.output
    state = json.loads((sheets / "at-the-saw.json").read_text(encoding="utf-8"))
    (rest,) = [stick for stick in state["sticks"] if stick["rest"]]
    assert rest["source"] == "rest"
    assert rest["rest"]["left"]["kind"] == "mitre"


def test_a_sentence_that_is_not_understood_changes_nothing(sheets: Path) -> None:
    told(sheets, f"cut {first_piece(sheets)}")
    before = (sheets / "at-the-saw.json").read_text(encoding="utf-8")
    done = told(sheets, "sawn W1-head")

    assert done.exit_code == 2
    assert (sheets / "at-the-saw.json").read_text(encoding="utf-8") == before


def test_a_folder_without_a_plan_is_refused(tmp_path: Path) -> None:
    assert told(tmp_path).exit_code == 2


def test_a_changed_reading_keeps_what_is_cut_and_names_what_is_cut_otherwise(
    sheets: Path, tmp_path: Path
) -> None:
    told(sheets, "cut OG57-1", "cut OG57-2")
    file = write_house(tmp_path / "house.json", quirk=6)
    planned = CliRunner().invoke(main, ["plan", str(file), "--out", str(sheets)])
    assert "recut" in planned.output
    done = told(sheets)

    assert "Cut before the readings changed: " in done.output
    assert "W1-head" in done.output
