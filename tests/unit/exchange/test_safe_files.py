import os
from pathlib import Path

import pytest

from longpoint.errors import ExchangeError
from longpoint.exchange.safe_files import write_bytes_safely, write_new_text, write_text_safely


def written(folder: Path, text: str, name: str) -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_text_is_written_whole_and_nothing_is_left_beside(tmp_path: Path) -> None:
    path = written(tmp_path, "old", "plan.json")

    write_text_safely(path, "naïve\n")

    assert path.read_bytes() == "naïve\n".encode()
    assert [each.name for each in tmp_path.iterdir()] == ["plan.json"]


def test_a_write_that_fails_leaves_the_old_file_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = written(tmp_path, "old", "plan.json")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(ExchangeError, match="no space left"):
        write_text_safely(path, "new")

    assert path.read_text(encoding="utf-8") == "old"
    assert [each.name for each in tmp_path.iterdir()] == ["plan.json"]


def test_text_that_no_file_holds_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ExchangeError, match="no text at place 1"):
        write_text_safely(tmp_path / "plan.json", "a\ud800")

    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(ExchangeError, match="folder is there"):
        write_text_safely(tmp_path / "none" / "plan.json", "text")


def test_the_permissions_of_the_old_file_are_kept_and_a_link_is_followed(tmp_path: Path) -> None:
    target = written(tmp_path, "old", "real.json")
    target.chmod(0o640)
    link = tmp_path / "link.json"
    link.symlink_to(target)

    write_text_safely(link, "new")

    assert link.is_symlink()
    assert target.read_text(encoding="utf-8") == "new"
    assert target.stat().st_mode & 0o777 == 0o640


def test_bytes_are_written_as_they_are(tmp_path: Path) -> None:
    write_bytes_safely(tmp_path / "sheets.pdf", b"\x00\xff")

    assert (tmp_path / "sheets.pdf").read_bytes() == b"\x00\xff"


def test_a_new_file_never_takes_the_place_of_one_that_is_there(tmp_path: Path) -> None:
    path = tmp_path / "house.toml"

    write_new_text(path, "first")
    with pytest.raises(ExchangeError, match="may hold readings"):
        write_new_text(path, "second")

    assert path.read_text(encoding="utf-8") == "first"
