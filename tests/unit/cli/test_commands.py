"""What each subcommand writes, says and returns to the shell."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from longpoint.cli.main import SUBCOMMANDS, main

ROOT = Path(__file__).parents[3]
EXAMPLE = ROOT / "examples" / "wren-house.toml"
CABIN = ROOT / "tests" / "scenarios" / "pipit.toml"

SOUND = """
format = "longpoint-house/1"
name = "Sound House"
[defaults]
architrave = "A"
tape = "T"
saw = "S"
quirk = 5
[profiles.A]
face = 57
thickness = 18
[tapes.T]
class = "II"
[saws.S]
kerf = 2.4
found = { left = 45.0, right = 45.0 }
[[stock]]
profile = "A"
length = 5400
[[openings]]
mark = "W1"
kind = "window"
trim = "all-round"
top = 1187
bottom = 1186
left = 462
right = 462
rising = 1274
falling = 1272
"""


def longpoint(*words: str | Path) -> Result:
    return CliRunner().invoke(main, [str(word) for word in words])


def test_every_subcommand_has_help() -> None:
    top = longpoint("--help")
    assert top.exit_code == 0
    for name in SUBCOMMANDS:
        assert name in top.output
        assert longpoint(name, "--help").exit_code == 0


def test_a_sound_house_is_planned_with_status_0(tmp_path: Path) -> None:
    house = tmp_path / "house.toml"
    house.write_text(SOUND, encoding="utf-8")
    done = longpoint("plan", house, "--out", tmp_path / "sheets")
    assert done.exit_code == 0, done.output
    plan = json.loads((tmp_path / "sheets" / "plan.json").read_text(encoding="utf-8"))
    assert plan["format"] == "longpoint-plan/1"
    assert {p["mark"] for p in plan["pieces"]} == {
        "W1-head", "W1-left-leg", "W1-right-leg", "W1-sill",
    }  # fmt: skip
    assert plan["openings"][0]["verdict"] == "batch"
    assert 0.9 <= plan["openings"][0]["p_close"] <= 0.99
    assert plan["forecast"]["model"] is True
    assert "Will it close? 1 of 1 opening can be cut as planned." in done.output
    assert (tmp_path / "sheets" / "sheets.pdf").read_bytes().startswith(b"%PDF")
    for sheet in ("findings", "outlook", "openings", "order", "cut"):
        assert (tmp_path / "sheets" / f"{sheet}.html").exists()
    assert (tmp_path / "sheets" / "drawings" / "W1.svg").exists()


def test_a_house_is_imagined_as_often_as_asked(tmp_path: Path) -> None:
    house = tmp_path / "house.toml"
    house.write_text(SOUND, encoding="utf-8")
    done = longpoint("plan", house, "--out", tmp_path, "--draws", "300")
    assert done.exit_code == 0, done.output
    plan = json.loads((tmp_path / "plan.json").read_text(encoding="utf-8"))
    assert plan["forecast"]["draws"] == 300
    assert "300 houses imagined" in (tmp_path / "outlook.html").read_text(encoding="utf-8")
    assert longpoint("plan", house, "--out", tmp_path, "--draws", "0").exit_code == 2


def test_a_house_with_a_held_opening_is_planned_with_status_1(tmp_path: Path) -> None:
    done = longpoint("plan", EXAMPLE, "--out", tmp_path)
    assert done.exit_code == 1, done.output
    plan = json.loads((tmp_path / "plan.json").read_text(encoding="utf-8"))
    verdicts = {o["mark"]: o["verdict"] for o in plan["openings"]}
    assert verdicts["W3"] == "hold"
    assert not [p for p in plan["pieces"] if p["opening"] == "W3"]


@pytest.mark.parametrize("written", ["", "format = 3", "not toml at all [", '{"a": '])
def test_a_file_that_cannot_be_used_ends_with_status_2_and_three_sentences(
    tmp_path: Path, written: str
) -> None:
    house = tmp_path / "house.toml"
    house.write_text(written, encoding="utf-8")
    for words in (
        ("plan", house, "--out", tmp_path / "sheets"),
        ("check", house),
        ("pieces", house),
    ):
        done = longpoint(*words)
        assert done.exit_code == 2, done.output
        assert len([line for line in done.output.splitlines() if line.strip()]) >= 3
        assert "Traceback" not in done.output


def test_a_file_that_is_not_there_ends_with_status_2(tmp_path: Path) -> None:
    assert longpoint("check", tmp_path / "nothing.toml").exit_code == 2


def test_check_says_the_findings_and_makes_no_pieces() -> None:
    done = longpoint("check", CABIN)
    assert done.exit_code == 1
    assert "1178" in done.output
    assert "W1-head" not in done.output


def test_check_voids_sheets_of_older_readings(tmp_path: Path) -> None:
    house = tmp_path / "house.toml"
    house.write_text(SOUND, encoding="utf-8")
    sheets = tmp_path / "sheets"
    longpoint("plan", house, "--out", sheets)
    assert "VOID" not in (sheets / "cut.html").read_text(encoding="utf-8")
    assert "VOID" not in longpoint("check", house, "--sheets", sheets).output
    house.write_text(SOUND.replace("top = 1187", "top = 1186"), encoding="utf-8")
    done = longpoint("check", house, "--sheets", sheets)
    assert "VOID" in done.output
    assert "VOID" in (sheets / "cut.html").read_text(encoding="utf-8")
    longpoint("plan", house, "--out", sheets)
    assert "VOID" not in (sheets / "cut.html").read_text(encoding="utf-8")


def test_plan_of_a_broken_file_voids_the_sheets_that_are_there(tmp_path: Path) -> None:
    house = tmp_path / "house.toml"
    house.write_text(SOUND, encoding="utf-8")
    longpoint("plan", house, "--out", tmp_path / "sheets")
    house.write_text(SOUND + "\n[oops", encoding="utf-8")
    done = longpoint("plan", house, "--out", tmp_path / "sheets")
    assert done.exit_code == 2
    assert "VOID" in done.output
    for sheet in ("order", "outlook"):
        assert "VOID" in (tmp_path / "sheets" / f"{sheet}.html").read_text(encoding="utf-8")


def test_no_drawing_of_an_opening_that_is_gone_stays(tmp_path: Path) -> None:
    house = tmp_path / "house.toml"
    house.write_text(SOUND, encoding="utf-8")
    longpoint("plan", house, "--out", tmp_path / "sheets")
    house.write_text(SOUND.replace('mark = "W1"', 'mark = "W2"'), encoding="utf-8")
    longpoint("plan", house, "--out", tmp_path / "sheets")
    assert [p.name for p in (tmp_path / "sheets" / "drawings").iterdir()] == ["W2.svg"]


def test_pieces_of_one_opening_are_shown_alone() -> None:
    done = longpoint("pieces", CABIN, "--of", "W1")
    assert "W1-head" in done.output
    assert "W2-head" not in done.output


def test_pieces_of_a_held_opening_show_why_and_point_to_the_first_sheet() -> None:
    done = longpoint("pieces", CABIN, "--of", "W3")
    assert done.exit_code == 1
    assert "HOLD, no lengths given: W3" in done.output
    assert "! STOP W3 [misclosure]" in done.output
    assert 'accept = ["misclosure"] in W3' in done.output
    assert "first sheet, Before you cut" in done.output


def test_pieces_of_an_unknown_mark_say_which_there_are() -> None:
    done = longpoint("pieces", CABIN, "--of", "W99")
    assert done.exit_code == 2
    assert "W1" in done.output


def test_new_writes_a_file_that_plans_and_never_overwrites(tmp_path: Path) -> None:
    house = tmp_path / "my-house.toml"
    assert longpoint("new", house, "--name", "My House").exit_code == 0
    written = house.read_text(encoding="utf-8")
    assert longpoint("plan", house, "--out", tmp_path / "sheets").exit_code in (0, 1)
    assert longpoint("new", house).exit_code == 2
    assert house.read_text(encoding="utf-8") == written


def test_schema_prints_json() -> None:
    done = longpoint("schema")
    assert done.exit_code == 0
    assert json.loads(done.output)["title"]
