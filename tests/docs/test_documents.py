"""What the documents show is run, and what they list is all there is."""

import contextlib
import os
import re
import shlex
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from longpoint.cli.main import SUBCOMMANDS, main
from longpoint.survey.checks.accept import ACCEPTABLE
from tests.docs.catalogue_page import catalogue_page
from tests.docs.codes import raised_codes
from tests.docs.columns_page import columns_page
from tests.docs.crew_page import crew_page
from tests.docs.house_file_page import house_file_page
from tests.docs.money_pages import counts_page, rates_page
from tests.docs.rack_page import rack_page

ROOT = Path(__file__).parents[2]
RUN_ELSEWHERE = {
    "keep-your-houses.md": "test_keep_page.py",
    "use-up-offcuts.md": "test_rack_page.py",
    "when-a-cut-goes-wrong.md": "test_recut_page.py",
}
"""Pages whose commands are run by a test that looks at what they answer as well."""
DOCUMENTS = sorted([ROOT / "README.md", *(ROOT / "docs").rglob("*.md")])


def fenced(text: str, language: str) -> list[str]:
    return re.findall(rf"^```{language}\n(.*?)^```$", text, flags=re.DOTALL | re.MULTILINE)


def commands_in(text: str) -> list[str]:
    lines = "\n".join(fenced(text, "sh")).splitlines()
    return [line.split("#")[0].strip() for line in lines if line.split("#")[0].strip()]


def words_of(command: str) -> list[str]:
    first, *words = shlex.split(command)
    assert first == ".venv/bin/longpoint", command
    return words


def run(command: str, folder: Path) -> Result:
    """Call a command in this process; an error that it doesn't say itself is the test's."""
    with contextlib.chdir(folder):
        return CliRunner().invoke(main, words_of(command), catch_exceptions=False)


def run_apart(command: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run a command as the shell does, in a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "longpoint.cli.main", *words_of(command)],
        cwd=folder,
        check=False,
        capture_output=True,
        text=True,
    )


def with_commands() -> list[Path]:
    here = [document for document in DOCUMENTS if document.name not in RUN_ELSEWHERE]
    return [d for d in here if any("longpoint " in c for c in commands_in(d.read_text()))]


@pytest.mark.parametrize("document", with_commands(), ids=lambda d: d.name)
def test_every_command_in_a_document_runs(document: Path, tmp_path: Path) -> None:
    text = document.read_text(encoding="utf-8")
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    for name, block in zip(
        re.findall(r"`([\w-]+\.toml)`", text), fenced(text, "toml"), strict=False
    ):
        (tmp_path / name).write_text(block, encoding="utf-8")
    for command in commands_in(text):
        if command.startswith("make "):
            continue
        done = run(command, tmp_path)
        assert done.exit_code in (0, 1), f"{command}\n{done.output}"


@pytest.mark.parametrize(("page", "test"), RUN_ELSEWHERE.items())
def test_a_page_that_is_run_elsewhere_is(page: str, test: str) -> None:
    source = (Path(__file__).parent / test).read_text(encoding="utf-8")

    assert page in source
    assert "commands_in(PAGE)" in source


def test_the_makefile_has_what_the_documents_call() -> None:
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    called = {
        c.split()[1]
        for d in (*DOCUMENTS, ROOT / "CONTRIBUTING.md")
        for c in commands_in(d.read_text(encoding="utf-8"))
        if c.startswith("make ")
    }
    assert {"demo", "test"} <= called
    for target in called:
        assert re.search(rf"^{target}:", makefile, flags=re.MULTILINE), target


def test_make_demo_plans_the_example_and_says_where_the_sheets_are() -> None:
    if not (ROOT / ".venv" / "installed").exists():
        pytest.skip("make demo would set up an environment of its own")
    done = subprocess.run(["make", "demo"], cwd=ROOT, check=False, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "build/wren-house" in done.stdout
    assert (ROOT / "build" / "wren-house" / "sheets.pdf").exists()


def test_the_tutorial_tells_what_happens(tmp_path: Path) -> None:
    text = (ROOT / "docs" / "tutorial" / "one-room.md").read_text(encoding="utf-8")
    (house,) = fenced(text, "toml")
    check, plan, pieces = commands_in(text)
    quotes = re.findall(r"^> (.+)$", text, flags=re.MULTILINE)
    (tmp_path / "kitchen.toml").write_text(house, encoding="utf-8")

    checked = run_apart(check, tmp_path)
    assert checked.returncode == 1
    assert quotes[0] in " ".join(checked.stdout.split())

    (tmp_path / "kitchen.toml").write_text(
        house.replace("top = 1187", "top = 1178"), encoding="utf-8"
    )
    planned = run_apart(plan, tmp_path)
    assert planned.returncode == 0, planned.stdout + planned.stderr
    assert (tmp_path / "kitchen-sheets" / "sheets.pdf").exists()

    shown = run_apart(pieces, tmp_path)
    assert quotes[1] in shown.stdout


def test_every_command_is_in_the_reference() -> None:
    text = (ROOT / "docs" / "reference" / "commands.md").read_text(encoding="utf-8")
    for name in SUBCOMMANDS:
        assert f"## longpoint {name}" in text


def test_every_finding_is_in_the_reference_and_none_other() -> None:
    listed = set(
        re.findall(
            r"^\| `([a-z0-9-]+)` \|",
            (ROOT / "docs" / "reference" / "findings.md").read_text(encoding="utf-8"),
            flags=re.MULTILINE,
        )
    )
    assert listed == raised_codes()


def test_the_reference_names_the_findings_that_can_be_accepted() -> None:
    page = (ROOT / "docs" / "reference" / "findings.md").read_text(encoding="utf-8")
    section = page[page.index("## What can be accepted") :]
    assert set(re.findall(r"`([a-z-]+)`", section)) == ACCEPTABLE


@pytest.mark.parametrize(
    ("name", "make"),
    [
        ("house-file", house_file_page),
        ("catalogue", catalogue_page),
        ("rack-file", rack_page),
        ("crew-api", crew_page),
        ("exchange-columns", columns_page),
        ("rates-file", rates_page),
        ("counts-file", counts_page),
    ],
)
def test_a_page_of_keys_is_that_of_the_reader(name: str, make: Callable[[], str]) -> None:
    page = ROOT / "docs" / "reference" / f"{name}.md"
    made = make()
    if os.environ.get("GOLDEN_ACCEPT") == "1":
        page.write_text(made, encoding="utf-8")
    assert page.read_text(encoding="utf-8") == made
