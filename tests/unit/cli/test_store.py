"""The commands that work on the store."""

import json
import os
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from longpoint.cli.main import main
from longpoint.cli.store_options import default_store
from longpoint.store.sqlite_store import open_store
from tests.house_documents import house, window

AT = ("--at", "2026-03-02T07:30:00Z")


@pytest.fixture
def store(tmp_path: Path) -> Path:
    return tmp_path / "data" / "houses.store"


def run(store: Path, *words: str | Path) -> Result:
    said = [str(word) for word in words]
    if said[0] in ("undo", "backup", "plan") or "add" in said:
        said += AT
    return CliRunner().invoke(main, [*said, "--store", str(store)])


def write(folder: Path, **changes: Any) -> Path:  # noqa: ANN401
    document = house(
        openings=[window(**changes), window(mark="W2", bottom=1187)],
        stock=[{"profile": "OG57", "length": 5400}],
    )
    path = folder / "house.json"
    path.write_text(json.dumps(document), encoding="utf-8")
    return path


@pytest.fixture
def name(store: Path, tmp_path: Path) -> str:
    """Put a house into the store; return its name."""
    done = run(store, "houses", "add", write(tmp_path))
    assert done.exit_code == 0, done.output
    return str(house()["name"])


def test_a_house_file_is_put_in_and_listed(store: Path, name: str) -> None:
    done = run(store, "houses")
    assert done.exit_code == 0, done.output
    assert f"{name}: 12 of 12 lines read, revision 1, 1 entry" in done.output
    assert str(store) in done.output


def test_a_file_that_is_no_house_is_not_put_in(store: Path, tmp_path: Path) -> None:
    path = tmp_path / "bad.toml"
    path.write_text("format = 3\n", encoding="utf-8")
    assert run(store, "houses", "add", path).exit_code == 2
    assert "none yet" in run(store, "houses").output


def test_an_edited_file_is_a_revision_and_voids_the_sheets(
    store: Path, name: str, tmp_path: Path
) -> None:
    sheets = tmp_path / "sheets"
    done = run(store, "plan", name, "--from-store", "--out", sheets)
    assert done.exit_code == 0, done.output
    assert "Made from revision 1 of the readings in the store" in done.output
    done = run(store, "houses", "add", write(tmp_path, top=1183))
    assert "W1 top read: 1183 mm" in done.output
    assert "Revision 2" in done.output
    assert f"The sheets in {sheets} are of older readings; they are now marked VOID." in done.output
    assert json.loads((sheets / "plan.json").read_text())["state"] == "stale"
    assert "STALE" in run(store, "houses").output
    history = run(store, "history", name).output
    assert "2  2026-03-02 07:30  W1 top read: 1183 mm" in history
    assert f"-> sheets made from revision 1 into {sheets}; STALE" in history


def test_the_same_file_again_changes_nothing(store: Path, name: str, tmp_path: Path) -> None:
    done = run(store, "houses", "add", write(tmp_path))
    assert "nothing was changed in the file" in done.output
    assert "The readings stay as they were: revision 1" in done.output


def test_what_is_taken_back_comes_back(store: Path, name: str, tmp_path: Path) -> None:
    run(store, "houses", "add", write(tmp_path, top=1183))
    done = run(store, "undo", name)
    assert "Taken back in" in done.output
    assert "Revision 3" in done.output
    again = run(store, "undo", name, "2")
    assert again.exit_code == 2
    assert "doesn't count now" in again.output
    done = run(store, "undo", name, "3")
    assert "counts again" in done.output
    run(store, "houses", "write", name, tmp_path / "out.toml")
    assert "top = 1183" in (tmp_path / "out.toml").read_text()


def test_undo_without_an_entry_to_take_back_says_so(store: Path, name: str) -> None:
    for words in ((name,), (name, "9"), (name, "1")):
        done = run(store, "undo", *words)
        assert done.exit_code == 2, words
        assert len(done.output.splitlines()) == 3


def test_a_house_that_is_not_there_is_told_with_those_that_are(store: Path, name: str) -> None:
    done = run(store, "history", "Nowhere")
    assert done.exit_code == 2
    assert name in done.output


def test_two_houses_of_one_name_are_told_apart_by_key(
    store: Path, name: str, tmp_path: Path
) -> None:
    run(store, "houses", "add", write(tmp_path), "--as-new")
    done = run(store, "history", name)
    assert done.exit_code == 2
    key = done.output.split("key: ")[1].split(",")[0]
    assert run(store, "history", key).exit_code == 0


def test_phones_readings_stay_when_the_file_is_put_in_again(
    store: Path, name: str, tmp_path: Path
) -> None:
    kept = open_store(store, "x")
    (key,) = kept.houses()
    read = {"opening": "W2", "line": "left", "value_text": "1203", "unit": "mm", "again": False}
    head = {"device": "phone", "counter": 5, "at": "2026-03-02T08:00:00Z", "house": key}
    gaps = {"what": "wall-gaps", "opening": "W1", "gaps": {"tl": ["0.4", "0"]}}
    kept.take([{**head, "what": "reading", **read}, {**head, "counter": 6, **gaps}])
    kept.close()
    done = run(store, "houses", "add", write(tmp_path, top=1183))
    assert "W1 top read: 1183 mm" in done.output
    history = run(store, "history", name).output
    assert "W2 left read: 1203 mm (on phone)" in history
    run(store, "houses", "write", name, tmp_path / "out.toml")
    text = (tmp_path / "out.toml").read_text()
    assert "1203" in text
    assert "1183" in text
    assert '["0.4", "0"]' in text


def test_a_backup_is_named_by_its_day_and_comes_back(
    store: Path, name: str, tmp_path: Path
) -> None:
    stick = tmp_path / "stick"
    stick.mkdir()
    done = run(store, "backup", stick)
    assert done.exit_code == 0, done.output
    assert "it is sound" in done.output
    assert run(store, "backup", stick).exit_code == 0
    backups = sorted(path.name for path in stick.glob("*.backup"))
    assert backups == ["houses-2026-03-02-2.backup", "houses-2026-03-02.backup"]
    store.unlink()
    done = run(store, "restore", stick / "houses-2026-03-02.backup")
    assert done.exit_code == 0, done.output
    assert "1 entries are in the store now" in done.output
    assert name in run(store, "houses").output


def test_a_damaged_store_is_told_and_nothing_is_read_from_it(store: Path, name: str) -> None:
    assert run(store, "verify").exit_code == 0
    data = store.read_bytes()
    place = data.index(b"W2") + 1
    store.write_bytes(data[:place] + b"3" + data[place + 1 :])
    done = run(store, "verify")
    assert done.exit_code == 2
    assert "isn't as it was written" in done.output
    assert run(store, "history", name).exit_code == 2


@pytest.mark.parametrize("words", [("houses",), ("history", "x"), ("undo", "x"), ("verify",)])
def test_a_store_that_is_not_there_is_not_made_by_looking(
    store: Path, words: tuple[str, ...]
) -> None:
    done = run(store, *words)
    assert done.exit_code == 2
    assert "There is none yet." in done.output
    assert not store.exists()


def test_the_store_lies_in_the_persons_own_data(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", os.sep + "srv")
    assert default_store() == Path(os.sep, "srv", "longpoint", "houses.store")
    monkeypatch.setenv("XDG_DATA_HOME", "not/absolute")
    assert default_store().parts[-4:-2] == (".local", "share")
