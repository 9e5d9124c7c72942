"""A process is killed in the middle of its work: what it had acknowledged is there."""

from pathlib import Path
from typing import Any

import pytest

from tests.faults.reported import in_memory, reported


def report(kills: int, seed: int, folder: Path, *more: str) -> dict[str, Any]:
    asked = ["--kills", str(kills), "--seed", str(seed), "--folder", str(folder)]
    return reported("kill_many", *asked, *more)


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
