"""The core's unit, property and published tests once more, on the Python that a phone runs.

Every file is loaded; of each its first test and a fixed tenth of the others are run, a property by
three examples. `make long` runs them all, a property by thirty.
"""

import importlib.metadata
import json
import re
import shutil
import subprocess
import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import pytest

from tests.browser.conftest import ROOT

RUNNER: Final = ROOT / "app/tests/core/run.mjs"
PIN: Final = ROOT / "app/tests/core/requirements.txt"
PACKAGES: Final = ROOT / "build/phone-core"
LIST: Final = ROOT / "build/left-out-on-the-phone.txt"
PURE: Final = ("pytest", "pluggy", "iniconfig", "packaging", "pygments", "sortedcontainers")
"""As the lock has them; hypothesis has become partly native, and an older one is pinned."""

SHELLS: Final = {"cli", "exchange", "render", "serve", "solvers", "store"}
OURS: Final = frozenset({"app", "longpoint", "tests", *sys.stdlib_module_names})
"""Whatever else a file wants to import isn't on a phone: it is left out, and named."""
LEAST_SHARE: Final = 0.8
"""Of the files, this many can be run: more tests that lean on a native package hide the core."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ran:
    """What came of the files of two runs."""

    files: Mapping[str, Mapping[str, Any]]

    def left_out(self) -> dict[str, str]:
        return {name: file["left_out"] for name, file in self.files.items() if file["left_out"]}

    def failed(self) -> dict[str, str]:
        return {t: why for file in self.files.values() for t, why in file["failed"].items()}

    def passed(self) -> int:
        return sum(file["passed"] for file in self.files.values())


def core_files() -> tuple[list[str], list[str]]:
    """Return the files of unit tests of the core; those of property and published tests."""
    unit = [
        path
        for path in sorted((ROOT / "tests/unit").rglob("test_*.py"))
        if path.relative_to(ROOT / "tests/unit").parts[0] not in {*SHELLS, "test_repository.py"}
    ]
    others = [
        p for kind in ("property", "published") for p in (ROOT / "tests" / kind).glob("test_*")
    ]
    return named(unit), named(sorted(others))


def named(paths: Sequence[Path]) -> list[str]:
    return [path.relative_to(ROOT).as_posix() for path in paths]


def get_packages() -> None:
    """Put pure packages into a folder: those of the environment, and the pinned hypothesis."""
    stamp = PACKAGES / "complete"
    if stamp.is_file() and stamp.read_text("utf-8") == PIN.read_text("utf-8"):
        return
    shutil.rmtree(PACKAGES, ignore_errors=True)
    pip = [sys.executable, "-m", "pip", "install", "-qq", "--disable-pip-version-check"]
    subprocess.run(
        [*pip, "--no-deps", "--require-hashes", "--target", str(PACKAGES), "-r", str(PIN)],
        check=True,
    )
    for package in PURE:
        for file in importlib.metadata.files(package) or ():
            if ".." not in file.parts and file.suffix != ".pyc":
                (PACKAGES / file).parent.mkdir(parents=True, exist_ok=True)
                shutil.copyfile(str(file.locate()), PACKAGES / file)
    stamp.write_text(PIN.read_text("utf-8"), "utf-8")


def run(node_env: dict[str, str], folder: Path, one_in: int) -> Ran:
    """Run all files in two processes side by side."""
    get_packages()
    began = []
    for number, files in enumerate(core_files()):
        command = ["node", str(RUNNER), str(PACKAGES), str(folder / f"{number}.json"), str(one_in)]
        began.append(
            subprocess.Popen(
                [*command, *files],
                cwd=ROOT,
                env=node_env,
                text=True,
                stdout=subprocess.PIPE,
                stderr=subprocess.STDOUT,
            )
        )
    found: dict[str, Any] = {}
    for number, process in enumerate(began):
        said, _ = process.communicate()
        assert process.returncode == 0, said[-4000:]
        found |= json.loads((folder / f"{number}.json").read_text("utf-8"))["files"]
    return Ran(files=found)


@pytest.fixture(scope="module")
def ran(node_env: dict[str, str], tmp_path_factory: pytest.TempPathFactory) -> Ran:
    return run(node_env, tmp_path_factory.mktemp("ran"), one_in=10)


def lacking(said: str) -> str:
    """Return the foreign package for want of which something wasn't run; empty: another reason."""
    found = re.findall(r"ModuleNotFoundError: No module named '(\w+)", said)
    return found[-1] if found and found[-1] not in OURS else ""


def check(ran: Ran) -> None:
    """Hold that nothing failed, and what was left out for what reason."""
    out = {name: lacking(why) or why for name, why in ran.left_out().items()}
    told = "".join(f"{name}: no {why}\n" for name, why in sorted(out.items()))
    LIST.write_text(told, "utf-8")
    assert all(map(lacking, ran.left_out().values())), told
    failed = {t: why for t, why in ran.failed().items() if not lacking(why)}
    assert failed == {}
    assert len(out) <= (1 - LEAST_SHARE) * len(ran.files), told


def test_a_tenth_of_the_cores_tests_passes(ran: Ran, capsys: pytest.CaptureFixture[str]) -> None:
    check(ran)
    assert ran.passed() > 600
    with capsys.disabled():
        told = (
            f"{ran.passed()} tests of {len(ran.files)} files, {len(ran.left_out())} files left out"
        )
        sys.stdout.write(f"\nOn the phone's Python: {told}: {LIST.relative_to(ROOT)}\n")


def test_every_file_was_loaded_or_named(ran: Ran) -> None:
    unit, others = core_files()
    assert set(unit) | set(others) == set(ran.files)


@pytest.mark.long
def test_all_of_the_cores_tests_pass(node_env: dict[str, str], tmp_path: Path) -> None:
    ran = run(node_env, tmp_path, one_in=1)
    check(ran)
    assert ran.passed() > 4000
