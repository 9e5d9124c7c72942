"""A seal beside a store: a sum over every byte of the file, also of those that no row needs.

A store is sealed when it is let go of. Later changes make the seal old, never wrong: it says how
many changes it has seen. So a byte that changed by itself is found wherever it stands, and so are
changes that a torn log swallowed.
"""

import hashlib
import json
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Final

from longpoint.store.disk import beside, put_in_place

_PIECE: Final = 1 << 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Seal:
    """What a store was like when it was sealed.

    Attributes:
        version: Version of its tables.
        changes: How many transactions had written to it.
        entries: How many entries it held.
        sha256: Sum over the file.
    """

    version: int
    changes: int
    entries: int
    sha256: str


def seal_path(store: Path) -> Path:
    """Return where the seal of a store lies."""
    return beside(store, "seal")


def sum_of_file(path: Path) -> str:
    """Return the sum over all bytes of a file.

    Raises:
        OSError: It can't be read.
    """
    total = hashlib.sha256()
    with path.open("rb") as file:
        while piece := file.read(_PIECE):
            total.update(piece)
    return total.hexdigest()


def write_seal(store: Path, seal: Seal) -> None:
    """Lay a seal beside a store, in the place of the one before.

    Raises:
        OSError: It can't be written.
    """
    part = beside(store, "seal.part")
    part.write_text(json.dumps(asdict(seal)) + "\n", encoding="utf-8")
    put_in_place(part, seal_path(store))


def read_seal(store: Path) -> Seal | None:
    """Return the seal of a store; None where there is none that can be read."""
    try:
        found = json.loads(seal_path(store).read_text(encoding="utf-8"))
        return Seal(
            version=int(found["version"]),
            changes=int(found["changes"]),
            entries=int(found["entries"]),
            sha256=str(found["sha256"]),
        )
    except (OSError, ValueError, KeyError, TypeError, OverflowError, RecursionError):
        return None
