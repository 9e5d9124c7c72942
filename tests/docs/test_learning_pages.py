"""The pages on proving the saw and on learning say what the commands say."""

import re
import shlex
from pathlib import Path

import pytest
from click.testing import CliRunner

from longpoint.cli.main import main
from tests.docs.test_documents import commands_in, fenced

HOW_TO = Path(__file__).parents[2] / "docs" / "how-to"


def page(name: str) -> str:
    return (HOW_TO / name).read_text(encoding="utf-8")


def quotes(text: str) -> list[str]:
    return re.findall(r"^> (.+)$", text, flags=re.MULTILINE)


def said(command: str) -> str:
    done = CliRunner().invoke(main, shlex.split(command)[1:])
    assert done.exit_code == 0, done.output
    return " ".join(done.output.split())


def test_the_proof_says_what_the_page_says() -> None:
    text = page("prove-the-saw.md")
    (quote,), (command,) = quotes(text), commands_in(text)
    answer = said(command)
    assert quote in answer
    for line in fenced(text, "toml")[0].splitlines():
        assert line in answer or line.startswith("kerf")


def test_learning_says_what_the_page_says(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    text = page("learn-from-your-own-work.md")
    monkeypatch.chdir(tmp_path)
    Path("finished.toml").write_text(fenced(text, "toml")[0], encoding="utf-8")
    learn, plan = commands_in(text)
    (quote,) = quotes(text)
    assert quote in said(learn)
    said(plan)
    assert "learned from your work" in Path("sheets/outlook.html").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["prove-the-saw.md", "learn-from-your-own-work.md"])
def test_both_pages_end_with_what_to_mind(name: str) -> None:
    assert "The rules of the place" in page(name)[page(name).index("## Cautions") :]
