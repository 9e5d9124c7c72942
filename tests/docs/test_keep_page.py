"""The page on the store: its commands run, and what it quotes is what they say."""

import re
import shutil
from pathlib import Path

import pytest

from tests.docs.test_documents import ROOT, commands_in, run

PAGE = (ROOT / "docs" / "how-to" / "keep-your-houses.md").read_text(encoding="utf-8")
AT = " --at 2026-03-02T07:30:00Z"


def test_a_house_is_kept_mended_taken_back_copied_and_restored(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    (tmp_path / "stick").mkdir()
    read = (tmp_path / "examples" / "wren-house.toml").read_text(encoding="utf-8")
    # The first window's head was read as 1185.
    mended = read.replace("top = 1185", "top = 1180", 1)
    assert mended != read
    (tmp_path / "mended.toml").write_text(mended, encoding="utf-8")
    answers = []
    for command in commands_in(PAGE):
        takes_time = re.search(r" (add|plan|undo|backup) ", command)
        # Nothing here is about the forecast.
        few = " --draws 100" if " plan " in command else ""
        done = run(command + (AT if takes_time else "") + few, tmp_path)
        assert done.exit_code in (0, 1), f"{command}\n{done.output}"
        answers.append(done.stdout)
    add, _, listed, again, history, undo, write, backup, verify, restore = answers
    assert str(tmp_path / "data" / "longpoint" / "houses.store") in add
    quotes = [q.replace("{sheets}", str(tmp_path / "sheets")) for q in _quotes()]
    assert len(quotes) == 3
    assert quotes[0] in listed
    assert "marked VOID" in again
    assert quotes[1] in history
    assert quotes[2] in history
    assert "To have it back" in undo
    assert "wren-now.toml" in write
    assert "houses-2026-03-02.backup, and the copy was looked through: it is sound" in backup
    assert "3 entries, all as they were written" in verify
    assert "3 entries are in the store now" in restore


def _quotes() -> list[str]:
    return re.findall(r"^> (.+)$", PAGE, flags=re.MULTILINE)
