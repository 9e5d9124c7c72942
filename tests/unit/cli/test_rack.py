import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from longpoint.cli.main import main
from longpoint.exchange.rack_files import load_rack
from longpoint.survey.rack import Out
from tests.house_documents import house, window

STOCK = [{"profile": "OG57", "length": 3600}, {"profile": "OG57", "length": 5400}]
DAY = ("--on", "2026-03-01")


def run(*words: str | Path) -> Result:
    return CliRunner().invoke(main, [str(word) for word in words])


@pytest.fixture
def file(tmp_path: Path) -> Path:
    document = house(openings=[window(bottom=1187), window(mark="W2")], stock=STOCK)
    path = tmp_path / "house.json"
    path.write_text(json.dumps(document), encoding="utf-8")
    return path


@pytest.fixture
def rack(tmp_path: Path, file: Path) -> Path:
    path = tmp_path / "rack.toml"
    done = run("rack", "put", path, file, "OG57", "1400", "1400", "250", *DAY)
    assert done.exit_code == 0, done.output
    return path


@pytest.fixture
def sheets(tmp_path: Path, file: Path, rack: Path) -> Path:
    folder = tmp_path / "sheets"
    done = run("plan", file, "--out", folder, "--rack", rack, *DAY)
    assert done.exit_code == 0, done.output
    assert "Fetch from the rack: EMKR (OG57 1400 mm), QC7R (OG57 1400 mm)." in done.output
    return folder


def test_offcuts_are_put_up_under_labels_and_listed(rack: Path) -> None:
    done = run("rack", "list", rack, "--on", "2026-03-03")

    assert "On the rack: 3 offcuts." in done.output
    assert "EMKR       1400  rough / rough; put up by hand; 2 days" in done.output


def test_the_list_goes_on_paper_with_its_labels(rack: Path, tmp_path: Path) -> None:
    done = run("rack", "list", rack, "--out", tmp_path / "paper", "--label", "em-kr", *DAY)

    assert done.exit_code == 0, done.output
    labels = (tmp_path / "paper" / "rack-labels.html").read_text(encoding="utf-8")
    assert "EMKR" in labels
    assert "QC7R" not in labels
    assert (tmp_path / "paper" / "rack.pdf").exists()


def test_planning_changes_nothing_on_the_rack(rack: Path, sheets: Path) -> None:
    assert sheets.exists()
    assert len(load_rack(rack).there) == 3


def test_settling_takes_out_what_was_used_and_puts_up_what_is_left(
    rack: Path, sheets: Path
) -> None:
    done = run("rack", "settle", rack, sheets, "--on", "2026-03-09")

    assert done.exit_code == 0, done.output
    assert "Out of the rack: EMKR, QC7R." in done.output
    after = load_rack(rack)
    assert len(after.pieces) >= 3
    kept = {stick["name"]: stick["left_mm"] for stick in _plan(sheets)["sticks"]}
    for piece in after.there[1:]:
        assert piece.length_mm == kept[piece.origin.split()[1]] >= 300.0
    again = run("rack", "settle", rack, sheets, "--on", "2026-03-10")
    assert load_rack(rack) == after
    assert "Out of the rack" not in again.output


def test_what_was_told_at_the_saw_counts_when_it_is_settled(rack: Path, sheets: Path) -> None:
    labelled = {s["label"]: s["name"] for s in _plan(sheets)["sticks"] if s["label"]}
    told = run("recut", sheets, f"missing {labelled['QC7R']}")
    assert told.exit_code == 0, told.output
    run("rack", "settle", rack, sheets, *DAY)

    gone = {piece.label: piece.gone.why for piece in load_rack(rack).pieces if piece.gone}
    assert gone == {"EMKR": Out.USED, "QC7R": Out.MISSING}


def test_a_rack_that_changes_voids_no_sheets(file: Path, rack: Path, sheets: Path) -> None:
    run("rack", "take", rack, "EMKR", *DAY)
    done = run("check", file, "--sheets", sheets)

    assert "VOID" not in done.output


def test_what_is_taken_out_is_said_and_a_misread_label_is_refused(rack: Path) -> None:
    thrown = run("rack", "take", rack, "emkr", *DAY)
    misread = run("rack", "take", rack, "QC7P", *DAY)

    assert "Out of the rack, thrown: 1 offcut." in thrown.output
    assert misread.exit_code == 2
    assert "QC7R" in misread.output
    assert len(load_rack(rack).there) == 2


def test_of_several_labels_one_misread_takes_none(rack: Path) -> None:
    before = load_rack(rack)

    assert run("rack", "take", rack, "EMKR", "QC7P", *DAY).exit_code == 2
    assert load_rack(rack) == before


def test_an_old_offcut_is_said_when_a_house_is_planned(
    file: Path, rack: Path, tmp_path: Path
) -> None:
    folder = tmp_path / "old"
    run(
        *("plan", file, "--out", folder, "--rack", rack),
        *("--on", "2027-03-02", "--old-after", "365"),
    )
    (found,) = (f for f in _plan(folder)["findings"] if f["code"] == "offcut-old")

    assert "EMKR (1400 mm, 366 days)" in found["read"]


@pytest.mark.parametrize(
    "words",
    [
        ("put", "OG57", "2"),
        ("put", "OG57", "long"),
        ("put", "OG99", "900"),
    ],
)
def test_what_can_not_be_put_up_is_refused(words: tuple[str, ...], file: Path, rack: Path) -> None:
    before = load_rack(rack)
    what, *rest = words

    assert run("rack", what, rack, file, *rest, *DAY).exit_code == 2
    assert load_rack(rack) == before


def test_a_rack_that_can_not_be_read_plans_nothing(file: Path, rack: Path, tmp_path: Path) -> None:
    rack.write_text(rack.read_text("utf-8").replace('"EMKR"', '"EMKP"'), encoding="utf-8")
    done = run("plan", file, "--out", tmp_path / "s", "--rack", rack)

    assert done.exit_code == 2
    assert len(done.output.strip().splitlines()) == 3
    assert not (tmp_path / "s").exists()


def test_a_day_that_is_none_is_refused(rack: Path) -> None:
    assert "calendar" in run("rack", "list", rack, "--on", "31 June").output


def _plan(folder: Path) -> dict[str, list[dict[str, Any]]]:
    found = json.loads((folder / "plan.json").read_text(encoding="utf-8"))
    assert isinstance(found, dict)
    return found


@pytest.fixture
def kept(tmp_path: Path, rack: Path) -> tuple[str, Path]:
    """Return the words for a store into which the rack file was put."""
    words = ("--store", tmp_path / "houses.store")
    done = run("rack", "add", rack, *words)
    assert done.exit_code == 0, done.output
    assert "EMKR put up: OG57, 1400 mm" in done.output
    assert "On the rack in the store: 3 offcuts." in done.output
    return words


def test_a_rack_file_goes_into_the_store_and_comes_out_the_same(
    kept: tuple[str, Path], rack: Path, tmp_path: Path
) -> None:
    assert "All of it was in the store already." in run("rack", "add", rack, *kept).output
    out = tmp_path / "out.toml"
    assert run("rack", "write", out, *kept).exit_code == 0
    assert load_rack(out) == load_rack(rack)
    assert run("rack", "list", "store", *kept, *DAY).output == (
        run("rack", "list", rack, *DAY).output
    )


def test_a_house_of_the_store_is_planned_with_its_rack_and_settled(
    kept: tuple[str, Path], file: Path, tmp_path: Path
) -> None:
    name = json.loads(file.read_text(encoding="utf-8"))["name"]
    assert run("houses", "add", file, *kept).exit_code == 0
    sheets = tmp_path / "sheets"
    done = run("plan", name, "--from-store", "--out", sheets, *kept, *DAY)
    assert "Fetch from the rack: EMKR (OG57 1400 mm), QC7R (OG57 1400 mm)." in done.output
    assert "Out of the rack: EMKR, QC7R." in run("rack", "settle", "store", sheets, *kept).output
    assert "Out of the rack" not in run("rack", "settle", "store", sheets, *kept).output
    history = run("history", "--rack", *kept).output
    assert f"EMKR gone: used, {name}" in history
    assert run("verify", *kept).exit_code == 0


def test_what_was_done_to_the_rack_of_the_store_is_taken_back(kept: tuple[str, Path]) -> None:
    assert run("rack", "take", "store", "EMKR", *kept, *DAY).exit_code == 0
    assert "EMKR" not in run("rack", "list", "store", *kept, *DAY).output
    done = run("undo", "--rack", *kept)
    assert "EMKR gone: thrown." in done.output
    assert "EMKR" in run("rack", "list", "store", *kept, *DAY).output
    back = done.output.split()[-1]
    assert run("undo", "--rack", back, *kept).exit_code == 0
    assert "EMKR" not in run("rack", "list", "store", *kept, *DAY).output
    spoilt = run("undo", "--rack", "1", *kept)
    assert spoilt.exit_code != 0
    assert "Take back first what was put up after it" in spoilt.output
    assert run("undo", "--rack", "77", *kept).exit_code != 0
    for words in (("history",), ("history", "Wren", "--rack"), ("undo", "--rack", "x")):
        assert run(*words, *kept).exit_code == 2


def test_a_rack_in_the_store_comes_back_from_its_backup(
    kept: tuple[str, Path], tmp_path: Path
) -> None:
    before = run("rack", "list", "store", *kept, *DAY).output
    assert run("backup", tmp_path / "copy", *kept).exit_code == 0
    kept[1].unlink()
    assert run("restore", tmp_path / "copy", *kept).exit_code == 0
    assert run("rack", "list", "store", *kept, *DAY).output == before


def test_a_store_without_a_rack_says_so(file: Path, tmp_path: Path) -> None:
    words = ("--store", tmp_path / "houses.store")
    assert run("houses", "add", file, *words).exit_code == 0
    done = run("rack", "list", "store", *words)
    assert done.exit_code != 0
    assert "Nothing was put up there yet." in done.output
    assert "Nothing was written of a rack yet." in run("history", "--rack", *words).output
