"""What a run that kills processes reports, by a program of its own."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any, Final

ROOT: Final = Path(__file__).parents[2]
MEMORY: Final = Path("/dev/shm")
"""A folder in memory, where the system has one. Whoever is killed leaves the system's own copy of
a file as it is, in memory and on a disk alike; only the waiting for the disk goes."""


def reported(module: str, *words: str) -> dict[str, Any]:
    """Run a module of these tests and return its report."""
    done = subprocess.run(
        [sys.executable, "-m", f"tests.faults.{module}", *words],
        cwd=ROOT,
        check=False,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def in_memory(folder: Path) -> Path:
    """Return a folder in memory; a folder of the test's where there is none."""
    return MEMORY if MEMORY.is_dir() else folder
