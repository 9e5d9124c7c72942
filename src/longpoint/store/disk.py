"""What makes a file last through a power cut: the file itself, then the folder that names it."""

import contextlib
import os
from pathlib import Path


def settle(path: Path) -> None:
    """Have the system write a file to the disk.

    Raises:
        OSError: It can't.
    """
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def settle_folder(folder: Path) -> None:
    """Have the system write the names in a folder to the disk, where it offers that."""
    with contextlib.suppress(OSError):
        settle(folder)


def put_in_place(part: Path, target: Path) -> None:
    """Give a whole file its name, in the place of what had it; both steps are on the disk.

    Raises:
        OSError: It can't be done; what had the name has it still.
    """
    settle(part)
    part.replace(target)
    settle_folder(target.parent)


def beside(path: Path, ending: str) -> Path:
    """Return the name of a file that belongs to another.

    Example:
        >>> beside(Path("houses.store"), "seal").name
        'houses.store.seal'
    """
    return path.with_name(f"{path.name}.{ending}")
