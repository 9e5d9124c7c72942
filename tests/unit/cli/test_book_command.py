from pathlib import Path

from tests.house_documents import window
from tests.unit.cli.house_files import longpoint, written


def test_the_book_is_written_and_its_sheets_are_named(tmp_path: Path) -> None:
    done = longpoint("book", written(tmp_path, window()), "--out", tmp_path / "out")
    assert done.exit_code == 0, done.output
    assert (tmp_path / "out" / "book.pdf").read_bytes().startswith(b"%PDF")
    assert "before you cut" in done.output
    assert "cutting" in done.output


def test_what_is_held_back_is_named_and_the_status_is_1(tmp_path: Path) -> None:
    house = written(tmp_path, window(), window(mark="W2", rising=1174))
    done = longpoint("book", house, "--out", tmp_path / "out")
    assert done.exit_code == 1
    assert "Held back, so without lengths: W2" in done.output


def test_a_folder_that_cant_be_made_is_refused_with_what_to_do(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    done = longpoint("book", written(tmp_path, window()), "--out", tmp_path / "file" / "out")
    assert done.exit_code == 2
    assert "--out" in done.output


def test_a_file_that_is_no_house_is_refused(tmp_path: Path) -> None:
    house = tmp_path / "x.toml"
    house.write_text("a = 1", encoding="utf-8")
    assert longpoint("book", house, "--out", tmp_path / "out").exit_code == 2
    assert not (tmp_path / "out").exists()
