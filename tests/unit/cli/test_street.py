import json
from pathlib import Path
from typing import Any

from click.testing import Result

from longpoint.cli.street_house import RECORD, HouseTask, kept_row, plan_task
from longpoint.render.paper import Paper
from longpoint.sheets.street_rows import HouseState
from tests.house_documents import window
from tests.unit.cli.house_files import longpoint, written


def street_of(folder: Path, *names: str) -> Path:
    """Write a small house for each name, each a little wider than the last, and a bad file."""
    folder.mkdir()
    for number, name in enumerate(names):
        written(folder, window(top=1187 + number, bottom=1187 + number), name=name)
    (folder / "torn.toml").write_text("format = 'no house'\n", encoding="utf-8")
    return folder


def planned(folder: Path, out: Path, *options: str) -> Result:
    return longpoint("street", folder, "--out", out, "--draws", "100", *options)


def published(out: Path) -> dict[str, str]:
    """Return every text that was written, by its place below the street's folder."""
    texts = (*out.rglob("*.json"), *out.rglob("*.html"), *out.rglob("*.svg"))
    return {str(path.relative_to(out)): path.read_text(encoding="utf-8") for path in texts}


def summary(out: Path) -> dict[str, Any]:
    document: dict[str, Any] = json.loads((out / "street.json").read_text(encoding="utf-8"))
    return document


def test_one_process_two_and_plan_alone_publish_the_same(tmp_path: Path) -> None:
    folder = street_of(tmp_path / "lane", "Unit 1", "Unit 2")

    one = planned(folder, tmp_path / "one", "--at-once", "1")
    two = planned(folder, tmp_path / "two", "--at-once", "2")
    longpoint("plan", folder / "unit-2.json", "--out", tmp_path / "alone", "--draws", "100")

    assert one.exit_code == two.exit_code == 1, one.output + two.output
    first = published(tmp_path / "one")
    assert first == published(tmp_path / "two")
    alone = published(tmp_path / "alone")
    assert {"plan.json", "cut.html", "readings.json"} <= alone.keys()
    for name, text in alone.items():
        assert first[f"unit-2/{name}"] == text, name

    # A bad house is told in its three sentences, and stopped nobody.
    assert summary(tmp_path / "one")["states"] == {"ready": 2, "held": 0, "refused": 1}
    (bad,) = [each for each in summary(tmp_path / "one")["houses"] if each["refusal"]]
    assert len(bad["refusal"]) == 3
    assert all(sentence in one.stdout for sentence in bad["refusal"])
    assert "torn.toml" in first["street.html"]
    assert (tmp_path / "one" / "street.pdf").read_bytes().startswith(b"%PDF")

    # As a process killed midway leaves it: sheets, but no record of them.
    (tmp_path / "one" / "unit-1" / RECORD).unlink()
    again = planned(folder, tmp_path / "one")
    assert "1 of 3 unchanged" in again.stderr
    assert published(tmp_path / "one") == first


def test_nothing_usable_is_status_2(tmp_path: Path) -> None:
    assert planned(street_of(tmp_path / "lane"), tmp_path / "out").exit_code == 2


def test_files_of_another_kind_are_left_alone_and_named(tmp_path: Path) -> None:
    folder = street_of(tmp_path / "lane", "Unit 1")
    (folder / "rates.toml").write_text('format = "longpoint-rates/1"\n', encoding="utf-8")

    done = planned(folder, tmp_path / "out")

    assert "No house files, left alone: rates.toml." in done.output
    assert "rates.toml: refused" not in done.output
    assert [house["file"] for house in summary(tmp_path / "out")["houses"]] == [
        "torn.toml",
        "unit-1.json",
    ]


def test_folders_that_make_no_street_are_refused(tmp_path: Path) -> None:
    empty, folder = tmp_path / "empty", street_of(tmp_path / "lane")
    empty.mkdir()

    for done in (planned(empty, tmp_path / "out"), planned(folder, folder)):
        assert done.exit_code == 2
        assert len(done.stderr.splitlines()) == 3


def task(file: Path, out: Path, **changes: Any) -> HouseTask:  # noqa: ANN401
    options = {"file": file, "out": out, "paper": Paper.A4, "draws": 100, **changes}
    return HouseTask(**options)


def test_a_house_is_kept_only_while_nothing_changed(tmp_path: Path) -> None:
    file, out = written(tmp_path, window()), tmp_path / "out"
    row = plan_task(task(file, out))

    assert row.state is HouseState.READY
    assert kept_row(task(file, out)) == row
    assert kept_row(task(file, out, draws=200)) is None
    assert kept_row(task(file, out, paper=Paper.US_LETTER)) is None
    plan, pdf, read = out / "plan.json", out / "sheets.pdf", file.read_text(encoding="utf-8")
    for changed, text in ((plan, "{}"), (pdf, None), (file, f"{read}\n"), (out / RECORD, "{")):
        before = changed.read_bytes()
        changed.write_text(text) if text else changed.unlink()
        assert kept_row(task(file, out)) is None, changed
        changed.write_bytes(before)
    assert kept_row(task(file, out)) == row


def test_a_house_that_went_bad_is_refused_and_its_sheets_are_void(tmp_path: Path) -> None:
    file, out = written(tmp_path, window()), tmp_path / "out"
    plan_task(task(file, out))
    file.write_text("{", encoding="utf-8")

    row = plan_task(task(file, out))

    assert row.state is HouseState.REFUSED
    assert len(row.refusal) == 3
    assert json.loads((out / "plan.json").read_text(encoding="utf-8"))["state"] == "stale"
