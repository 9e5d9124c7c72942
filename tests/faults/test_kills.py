"""A process is killed in the middle of its work: what it had acknowledged is there."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any, Final

import pytest

ROOT: Final = Path(__file__).parents[2]
MEMORY: Final = Path("/dev/shm")
"""A folder in memory, where the system has one. Whoever is killed leaves the system's own copy of
a file as it is, in memory and on a disk alike; only the waiting for the disk goes."""


def report(kills: int, seed: int, folder: Path, *more: str) -> dict[str, Any]:
    asked = ["--kills", str(kills), "--seed", str(seed), "--folder", str(folder), *more]
    done = subprocess.run(
        [sys.executable, "-m", "tests.faults.kill_many", *asked],
        cwd=ROOT,
        check=False,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def in_memory(folder: Path) -> Path:
    return MEMORY if MEMORY.is_dir() else folder


def test_fifty_kills_lose_nothing_that_was_acknowledged(tmp_path: Path) -> None:
    found = report(50, 1, in_memory(tmp_path))
    assert found["kills"] == dict.fromkeys(("backup", "migrate", "restore", "take", "write"), 10)
    assert found["lost"] == []
    assert found["corrupt"] == []
    # Not all of them died before they had done anything.
    assert found["acknowledged"]["entry"] > 20
    assert found["killed_before_anything"] < 40


@pytest.mark.long
def test_five_hundred_kills_on_the_disk_lose_nothing(tmp_path: Path) -> None:
    found = report(500, 7, tmp_path)
    print(found["kills"], found["acknowledged"], found["killed_before_anything"])  # noqa: T201
    assert sum(found["kills"].values()) == 500
    assert found["lost"] == []
    assert found["corrupt"] == []


def test_a_process_that_promises_too_early_is_found_out(tmp_path: Path) -> None:
    found = report(15, 1, in_memory(tmp_path), "--planted")
    assert found["lost"] != []
