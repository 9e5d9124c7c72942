"""One house of a street, planned on another machine: content goes there, sheets come back.

No folder is shared. The worker plans in a folder that it throws away, and only this machine writes
below --out: nobody has to give the workers rights on a disk, nor agree on its paths. What comes
back is packed, a quarter of its size.
"""

import gc
import json
import tempfile
import threading
import zlib
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Final

from longpoint.cli.plan_folder import DRAWINGS, clear_old, void_sheets
from longpoint.cli.sheet_folder import make_folder
from longpoint.cli.spoken import choose, tongue
from longpoint.cli.street_house import RECORD, HouseTask, plan_task, task_key
from longpoint.errors import LongpointError
from longpoint.exchange.safe_files import write_bytes_safely
from longpoint.sheets.street_rows import HouseRow, HouseState, refused_row
from longpoint.solvers.one_thread import hold_to_one_thread
from longpoint.speech.said import say

MOST_SENT: Final = 20_000_000
"""A larger file isn't sent: it is looked at here, and refused in the usual words. [bytes]"""
_ONE_AT_A_TIME: Final = threading.Lock()
"""A worker may be started with several threads; a house wants a process of its own."""
_MEMORY: Final = Path("/dev/shm")
"""Where Linux keeps files in memory: what is thrown away needn't wait for a disk."""
_QUICK: Final = 1
"""How hard zlib tries: 3 ms a house, and hardly larger than at its best."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SentHouse:
    """A house as it goes to a worker: what it is planned from, and nothing of this machine's disk.

    Attributes:
        task: How it is planned; its paths are names only.
        house: Bytes of the house file.
        crew: Bytes of the crew file; None: none.
        tongue: Language of the sheets.
    """

    task: HouseTask
    house: bytes
    crew: bytes | None
    tongue: str


@dataclass(frozen=True, slots=True)
class SentSheets:
    """What comes back: the row of the summary, and every file, packed by zlib, by its name."""

    row: HouseRow
    files: Mapping[str, bytes]


def sent_house(task: HouseTask) -> SentHouse | None:
    """Return a house ready to be sent; None where its files can't be read or are too large."""
    try:
        house = _bytes(task.file)
        crew = _bytes(task.crew) if task.crew is not None else None
    except OSError:
        return None
    if house is None or (crew is None) != (task.crew is None):
        return None
    bare = replace(
        task,
        file=Path(task.file.name),
        out=Path(task.out.name),
        crew=Path(task.crew.name) if task.crew is not None else None,
    )
    return SentHouse(task=bare, house=house, crew=crew, tongue=tongue().code)


def plan_sent(sent: SentHouse) -> SentSheets:
    """Plan a house in a folder of its own and return all that was written; done by a worker."""
    hold_to_one_thread()
    _settle()
    within = _MEMORY if _MEMORY.is_dir() else None
    with _ONE_AT_A_TIME, tempfile.TemporaryDirectory(prefix="longpoint-", dir=within) as place:
        choose(sent.tongue)
        house, crew, sheets = (Path(place) / name for name in ("house", "crew", "sheets"))
        for folder in (house, crew, sheets):
            folder.mkdir()
        file, out = house / sent.task.file.name, sheets / sent.task.out.name
        file.write_bytes(sent.house)
        crew_file = None
        if sent.task.crew is not None:
            crew_file = crew / sent.task.crew.name
            crew_file.write_bytes(sent.crew or b"")
        row = plan_task(replace(sent.task, file=file, out=out, crew=crew_file))
        written = sorted(path for path in out.rglob("*") if path.is_file())
        return SentSheets(row, {_name(path, out): _packed(path) for path in written})


@cache
def _settle() -> None:
    # Once in a process: as in `workers`, what was imported isn't looked through for garbage.
    gc.freeze()


def _name(path: Path, folder: Path) -> str:
    return path.relative_to(folder).as_posix()


def _packed(path: Path) -> bytes:
    return zlib.compress(path.read_bytes(), _QUICK)


def landed(sent: SentSheets, task: HouseTask) -> HouseRow:
    """Write what came back below the house's own folder, its record last, and return its row.

    A house that was refused voids the sheets that lie there, as it does when planned here.
    """
    try:
        if sent.row.state is HouseState.REFUSED:
            void_sheets(task.out, task.paper)
            return sent.row
        files = _unpacked(sent.files)
        if _key(files) != task_key(task):
            return _other_program(task)
        _write(files, task.out)
    except LongpointError as error:
        return refused_row(task.file.name, task.out.name, (error.read, error.wrong, error.do))
    return sent.row


def unanswered_row(task: HouseTask) -> HouseRow:
    """Return the row of a house that no worker answered for."""
    return refused_row(
        task.file.name,
        task.out.name,
        (
            say("The house in {file} was being planned on a cluster.", file=task.file.name),
            say(
                "No worker gave an answer: each that had it was ended, was cut off, or lacks this "
                "program."
            ),
            say("Look at the workers, then call the same command again: it plans what is missing."),
        ),
    )


def _write(files: Mapping[str, bytes], out: Path) -> None:
    inside = {name: data for name, data in files.items() if _is_inside(name)}
    make_folder(out / DRAWINGS)
    # From here on what lies there is no longer what the old record says.
    with suppress(OSError):
        (out / RECORD).unlink(missing_ok=True)
    drawings = {name.rpartition("/")[2] for name in inside if name.startswith(f"{DRAWINGS}/")}
    clear_old(out, drawings, inside.keys())
    for name in sorted(inside, key=lambda name: name == RECORD):
        write_bytes_safely(out / name, inside[name])


def _is_inside(name: str) -> bool:
    """Say whether a name that came over the network stays below the house's folder."""
    folder, _, file = name.rpartition("/")
    return folder in ("", DRAWINGS) and file not in ("", ".", "..") and "\\" not in file


def _unpacked(files: Mapping[str, bytes]) -> dict[str, bytes]:
    try:
        return {name: zlib.decompress(data) for name, data in files.items()}
    except zlib.error:
        # As from a worker with another version: without its record nothing is written.
        return {}


def _key(files: Mapping[str, bytes]) -> str | None:
    try:
        key = json.loads(files[RECORD])["key"]
    except (ValueError, KeyError, TypeError):
        return None
    return key if isinstance(key, str) else None


def _other_program(task: HouseTask) -> HouseRow:
    return refused_row(
        task.file.name,
        task.out.name,
        (
            say("The house in {file} came back planned from a cluster.", file=task.file.name),
            say(
                "The worker has other versions of this program or of its engines than this "
                "machine, or the file changed meanwhile; its sheets weren't written."
            ),
            say("Install the same versions on both, and call the same command again."),
        ),
    )


def _bytes(path: Path) -> bytes | None:
    return path.read_bytes() if path.stat().st_size <= MOST_SENT and path.is_file() else None
