"""What the page on cuts that go wrong promises of its example, run."""

import re
import shutil
from pathlib import Path

from tests.docs.test_documents import ROOT, commands_in, run

PAGE = (ROOT / "docs" / "how-to" / "when-a-cut-goes-wrong.md").read_text(encoding="utf-8")


def test_the_leg_that_went_wrong_becomes_another_piece_and_saves_a_stick(tmp_path: Path) -> None:
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    plan, recut = commands_in(PAGE)
    run(plan, tmp_path)
    said = run(recut, tmp_path).stdout

    quoted = re.search(r"^> (\S+ \(spoiled, 900 mm left of it\): cut )\S+ from it", PAGE, re.M)
    assert quoted is not None
    assert quoted[1] in said
    assert "No new stick is needed." in said

    (tmp_path / "sheets" / "at-the-saw.json").unlink()
    burnt = run(recut.replace(" right 900", ""), tmp_path).stdout
    assert "New timber needed" in burnt
