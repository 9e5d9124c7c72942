"""The golden-file machinery itself: it must be able to fail."""

from pathlib import Path

from tests.golden_files import difference, unowned


def test_a_text_as_approved_passes_silently(tmp_path: Path) -> None:
    (tmp_path / "saw.txt").write_bytes(b"W3 left leg 2071.5\n")
    assert difference("saw.txt", "W3 left leg 2071.5\n", expected=tmp_path) == ""


def test_a_changed_line_is_shown_beside_the_approved_one(tmp_path: Path) -> None:
    (tmp_path / "saw.txt").write_bytes(b"W3 left leg 2071.5\nW3 head 866.0\n")
    told = difference("saw.txt", "W3 left leg 2072.0\nW3 head 866.0\n", expected=tmp_path)
    assert "\n-W3 left leg 2071.5\n+W3 left leg 2072.0\n" in told


def test_a_lost_last_newline_and_a_carriage_return_are_differences(tmp_path: Path) -> None:
    (tmp_path / "saw.txt").write_bytes(b"W3\n")
    assert "+W3  (no newline at the end)" in difference("saw.txt", "W3", expected=tmp_path)
    assert "+W3\N{SYMBOL FOR CARRIAGE RETURN}" in difference("saw.txt", "W3\r\n", expected=tmp_path)


def test_a_sheet_never_approved_fails(tmp_path: Path) -> None:
    assert "never been approved" in difference("saw.txt", "W3\n", expected=tmp_path)


def test_accepting_writes_the_text_byte_for_byte(tmp_path: Path) -> None:
    assert difference("wren/saw.txt", "½ W3\r\nend", expected=tmp_path, accept=True) == ""
    assert (tmp_path / "wren" / "saw.txt").read_bytes() == "½ W3\r\nend".encode()


def test_a_name_that_leaves_the_folder_is_refused_even_when_accepting(tmp_path: Path) -> None:
    folder = tmp_path / "expected"
    assert "stays inside" in difference("../saw.txt", "W3", expected=folder, accept=True)
    assert not (tmp_path / "saw.txt").exists()


def test_a_long_difference_is_cut_and_says_so(tmp_path: Path) -> None:
    (tmp_path / "saw.txt").write_bytes(b"old\n" * 200)
    told = difference("saw.txt", "new\n" * 200, expected=tmp_path)
    assert told.splitlines()[-1] == "... and 323 more lines of difference"


def test_a_file_no_test_asks_for_is_found(tmp_path: Path) -> None:
    (tmp_path / "wren").mkdir()
    for name in ("wren/saw.txt", "wren/old.txt", ".gitkeep"):
        (tmp_path / name).write_bytes(b"")
    assert unowned(["wren/saw.txt"], expected=tmp_path) == ["wren/old.txt"]
