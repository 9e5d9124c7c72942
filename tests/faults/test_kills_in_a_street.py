"""A street whose worker is killed, and then the command itself, goes on to the same files."""

import sys
from pathlib import Path
from typing import Any

import pytest

from tests.faults.reported import in_memory, reported

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="it reads /proc")


def report(houses: int, folder: Path, *words: str) -> dict[str, Any]:
    asked = ["--houses", str(houses), "--folder", str(in_memory(folder)), "--draws", "100"]
    return reported("kill_street", *asked, *words)


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
