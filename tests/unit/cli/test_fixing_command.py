from pathlib import Path

from tests.house_documents import window
from tests.unit.cli.house_files import longpoint, written


def test_nails_are_told_and_no_file_is_written_unasked(tmp_path: Path) -> None:
    house = written(tmp_path, window(room="Kitchen"), fixing={"nails": ["18 x 30", "16 x 57"]})
    done = longpoint("fixing", house)
    assert done.exit_code == 0, done.output
    assert "Kitchen: " in done.output
    assert "16 gauge x 57 mm" in done.output
    assert list(tmp_path.iterdir()) == [house]


def test_the_sheet_is_written_on_letter_too_and_shows_another_way(tmp_path: Path) -> None:
    house = written(tmp_path, window())
    done = longpoint(
        "fixing", house, "--out", tmp_path / "out", "--paper", "us-letter", "--way", "bench"
    )
    assert done.exit_code == 0, done.output
    assert (tmp_path / "out" / "fixing.pdf").read_bytes().startswith(b"%PDF")
    assert "(bench)" in (tmp_path / "out" / "fixing.html").read_text(encoding="utf-8")


def test_a_place_held_back_gives_status_1(tmp_path: Path) -> None:
    done = longpoint("fixing", written(tmp_path, window(rising=1174)))
    assert done.exit_code == 1
    assert "no piece to fix" in done.output


def test_a_bad_nail_is_left_out_and_the_rest_goes_on(tmp_path: Path) -> None:
    done = longpoint("fixing", written(tmp_path, window(), fixing={"nails": ["fat"]}))
    assert done.exit_code == 0, done.output
