"""Bytes as a file, and whether they are read or refused in three sentences."""

import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Final

from longpoint.errors import LongpointError

FOLDERS: Final = [folder for folder in (Path("/dev/shm"),) if folder.is_dir()]
"""Where files lie in memory; elsewhere the folder for temporary files is taken."""


def told(work: Callable[[], object]) -> bool:
    """Return whether some work was done; what is no refusal in three sentences is raised."""
    try:
        work()
    except LongpointError as error:
        if not all((error.read, error.wrong, error.do)):
            raise AssertionError("a refusal without its three sentences") from error
        return False
    return True


def refused_or_read(work: Callable[[Path], object], data: bytes, ending: str) -> bool:
    """Return whether some bytes were read as a file; what is no proper refusal is raised."""
    with tempfile.TemporaryDirectory(dir=next(iter(FOLDERS), None)) as folder:
        path = Path(folder) / f"a{ending}"
        path.write_bytes(data)
        return told(lambda: work(path))
