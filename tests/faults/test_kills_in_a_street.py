"""A street whose worker is killed, and then the command itself, goes on to the same files."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any, Final

import pytest

ROOT: Final = Path(__file__).parents[2]
MEMORY: Final = Path("/dev/shm")

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="it reads /proc")


def report(houses: int, folder: Path, *words: str) -> dict[str, Any]:
    at = MEMORY if MEMORY.is_dir() else folder
    asked = ["--houses", str(houses), "--folder", str(at), "--draws", "100", *words]
    done = subprocess.run(
        [sys.executable, "-m", "tests.faults.kill_street", *asked],
        cwd=ROOT,
        check=False,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def look(found: dict[str, Any], houses: int) -> None:
    assert found["unlike"] == []
    assert found["told_killed"] == 1
    assert found["planned_twice"] == 0
    # What was told as done is kept, and not all of it was done.
    assert 2 * houses // 3 <= found["kept"] < houses
    assert found["files"] > 10 * houses


def test_twelve_houses_come_to_the_same_files(tmp_path: Path) -> None:
    look(report(12, tmp_path), 12)


@pytest.mark.long
def test_a_thousand_houses_come_to_the_same_files(tmp_path: Path) -> None:
    found = report(1_000, tmp_path, "--openings", "1", "--apart")
    print(found)  # noqa: T201
    look(found, 1_000)
