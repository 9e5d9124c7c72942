"""The page on cuts that go wrong: its commands run, and what it promises of its example holds."""

import re
import shutil
from pathlib import Path

from tests.docs.test_documents import ROOT, commands_in, run

PAGE = (ROOT / "docs" / "how-to" / "when-a-cut-goes-wrong.md").read_text(encoding="utf-8")


def test_the_leg_that_went_wrong_becomes_another_piece_and_saves_a_stick(tmp_path: Path) -> None:
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    plan, recut = commands_in(PAGE)
    assert run(plan, tmp_path).exit_code in (0, 1)
    assert run(".venv/bin/longpoint recut sheets", tmp_path).exit_code == 0
    state = tmp_path / "sheets" / "at-the-saw.json"
    nothing_cut = state.read_text(encoding="utf-8")
    done = run(recut, tmp_path)

    quoted = re.search(
        r"^> (\S+ \(spoiled, 1200 mm left of it\): cut )\S+ from it", PAGE, flags=re.MULTILINE
    )
    assert quoted is not None
    assert done.exit_code == 0, done.stderr
    assert quoted[1] in done.stdout
    assert "No new stick is needed." in done.stdout

    state.write_text(nothing_cut, encoding="utf-8")
    burnt = run(recut.replace(" left 1200", ""), tmp_path)
    assert "New timber needed" in burnt.stdout
