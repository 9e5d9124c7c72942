"""What SQLite and the system refuse, told to a person."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Final

from longpoint.errors import StoreError

_READ_ONLY: Final = frozenset(
    {sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM, sqlite3.SQLITE_AUTH}
)
_DAMAGED: Final = frozenset(
    {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_FORMAT, sqlite3.SQLITE_MISMATCH}
)
_NO_ROOM: Final = frozenset({sqlite3.SQLITE_FULL, sqlite3.SQLITE_TOOBIG})
_IN_USE: Final = frozenset({sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED})
_MASK: Final = 0xFF
"""SQLite's extended codes have the plain one in their last byte."""


@contextmanager
def told(path: Path, act: str) -> Iterator[None]:
    """Turn what SQLite and the system raise inside into a `StoreError`.

    Args:
        path: The file of the store.
        act: What was to be done to it: "read", "written", "copied".
    """
    try:
        yield
    # Python fails to read SQLite's own words where they quote a damaged name.
    except (sqlite3.Error, sqlite3.Warning, OSError, UnicodeError) as error:
        raise refused(path, act, error) from None


def refused(path: Path, act: str, error: Exception) -> StoreError:
    """Return what to say of an error of SQLite or the system."""
    wrong, do = _words(error)
    return StoreError(f"The store {path.name} was to be {act}.", wrong, do)


def _words(error: Exception) -> tuple[str, str]:
    code = getattr(error, "sqlite_errorcode", None)
    plain = code & _MASK if isinstance(code, int) else None
    if plain in _NO_ROOM or (plain == sqlite3.SQLITE_IOERR and _is_write(error)):
        return (
            "There is no room for it on the disk, or no more may be written there.",
            "Make room, then do it again. What was kept before is kept.",
        )
    if plain in _READ_ONLY:
        return (
            "That isn't allowed: the file, its folder or the whole disk can't be written to.",
            "Make it yours to write in, or name another place with --store. What was kept before "
            "is kept.",
        )
    if plain in _DAMAGED or isinstance(error, UnicodeError):
        return (
            "It is damaged, or is something else than a store.",
            "Write nothing more to it. `longpoint restore` takes your last backup and what is "
            "still sound here.",
        )
    if plain in _IN_USE:
        return (
            "Another longpoint is writing to it and doesn't finish.",
            "Wait until it is done, or stop it, then do it again.",
        )
    if isinstance(error, sqlite3.IntegrityError):
        return (
            "What was to be kept doesn't go with what is kept.",
            "Nothing was written. Please report this, with the command.",
        )
    reason = getattr(error, "strerror", None) or str(error)
    return (
        f"The system refuses: {str(reason).lower()}.",
        "Check that its folder is there and the disk is sound. What was kept before is kept.",
    )


def _is_write(error: Exception) -> bool:
    name = str(getattr(error, "sqlite_errorname", ""))
    return any(part in name for part in ("WRITE", "FSYNC", "TRUNCATE", "SHM", "FULL"))
