"""What the page on offcuts promises, run command after command."""

import re
import shutil
import tomllib
from pathlib import Path

import pytest

from longpoint.survey.rack import read_rack
from tests.docs.test_documents import ROOT, commands_in, run

PAGE = (ROOT / "docs" / "how-to" / "use-up-offcuts.md").read_text(encoding="utf-8")


def test_offcuts_are_put_up_fetched_settled_listed_and_thrown_away(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    put, plan, settle, listed, take, add, kept = (run(c, tmp_path) for c in commands_in(PAGE))

    label = re.search(r"such as `(\w{4})`", PAGE)
    assert label is not None
    assert label[1] in put.stdout
    (quote,) = re.findall(r"^> ([^:]+: )\w+", PAGE, flags=re.MULTILINE)
    assert quote in plan.stdout
    assert "Out of the rack: " in settle.stdout
    assert "Put up; write on each its label:" in settle.stdout
    assert (tmp_path / "rack-on-paper" / "rack.pdf").exists()
    assert "OLD: 457 days" in listed.stdout
    assert take.exit_code == 0, take.stderr
    assert "EMKR gone: thrown" in add.stdout
    assert kept.stdout.startswith("On the rack: ")
    assert "EMKR" not in kept.stdout

    rack = read_rack(tomllib.loads((tmp_path / "rack.toml").read_text(encoding="utf-8")))
    gone = {piece.label: piece.gone.why.value for piece in rack.pieces if piece.gone}
    assert gone["EMKR"] == "thrown"
    assert "used" in gone.values()
