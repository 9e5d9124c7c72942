"""What a laptop that serves its crew keeps beside its store: who was let in, and what happened."""

import json
import os
import threading
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path
from typing import Any, Final

from longpoint.cli.store_options import default_store
from longpoint.cli.store_places import Database, StorePlace
from longpoint.errors import ExchangeError
from longpoint.exchange.own_files import DAMAGED, own_json
from longpoint.exchange.safe_files import write_text_safely
from longpoint.serve.crew.members import Member, member_table
from longpoint.speech.said import say

LARGEST_LOG: Final = 1_000_000
"""Bytes; then it becomes the older of two."""
LONGEST_FACT: Final = 120


@dataclass(frozen=True, slots=True)
class CrewFolder:
    """The folder beside a store."""

    path: Path

    @property
    def members(self) -> Path:
        """Who was let in."""
        return self.path / "members.json"

    @property
    def log(self) -> Path:
        """What happened, a line each."""
        return self.path / "log.jsonl"


def crew_folder(store: StorePlace) -> CrewFolder:
    """Return the folder of the crew: beside a store, or for a database where stores lie at first.

    Example:
        >>> crew_folder(Path("houses.store")).path.name
        'houses.store.crew'
    """
    if isinstance(store, Database):
        # Each database has its own; what it is called may hold signs that no folder takes.
        code = sha256(str(store).encode()).hexdigest()[:12]
        return CrewFolder(default_store().with_name(f"database-{code}.crew"))
    return CrewFolder(store.with_name(store.name + ".crew"))


def load_members(folder: CrewFolder) -> tuple[Member, ...]:
    """Return who was let in, those put out too.

    Raises:
        ExchangeError: The file is damaged.
    """
    try:
        text = folder.members.read_text(encoding="utf-8")
    except FileNotFoundError:
        return ()
    except OSError as error:
        raise _damaged(str(error)) from error
    except ValueError as error:
        raise _damaged(say("it is damaged")) from error
    try:
        return tuple(_member(each) for each in own_json(text))  # type: ignore[attr-defined]
    except DAMAGED as error:
        raise _damaged(say("it is damaged")) from error


def _member(table: Mapping[str, Any]) -> Member:
    found = Member(**table)
    texts = (found.device, found.name, found.session_sum, found.page_sum)
    times_s = (found.since_s, found.until_s, found.shared_s)
    are_texts = all(isinstance(text, str) for text in texts)
    are_times = all(isinstance(time_s, int | float) for time_s in times_s)
    if not are_texts or not are_times or not isinstance(found.is_out, bool):
        raise TypeError(table)
    return found


class LoadedMembers:
    """The list of who was let in, read again only once another stands there.

    Each request asks for it, and another process may put a phone out meanwhile.

    Args:
        folder: Where it lies.
    """

    def __init__(self, folder: CrewFolder) -> None:
        self._folder = folder
        self._known: tuple[tuple[int, ...], tuple[Member, ...]] | None = None

    def __call__(self) -> tuple[Member, ...]:
        """Return who was let in, those put out too.

        Raises:
            ExchangeError: The file is damaged.
        """
        try:
            found = self._folder.members.stat()
        except OSError:
            self._known = None
            return load_members(self._folder)
        # Looked at before it is read: one that comes in between is read twice, never left out.
        mark = (found.st_ino, found.st_size, found.st_mtime_ns, found.st_ctime_ns)
        known = self._known
        if known is None or known[0] != mark:
            known = self._known = (mark, load_members(self._folder))
        return known[1]


def save_members(folder: CrewFolder, members: Sequence[Member]) -> None:
    """Write down who was let in; only its owner may read it.

    Raises:
        ExchangeError: It can't be written.
    """
    try:
        folder.path.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        raise _damaged(str(error)) from error
    write_text_safely(
        folder.members, json.dumps([member_table(each) for each in members], indent=1) + "\n"
    )


class AuditLog:
    """Writes down what happened: a line each, without secrets and readings, never too large."""

    def __init__(self, folder: CrewFolder) -> None:
        self._folder = folder
        self._lock = threading.Lock()

    def __call__(self, what: str, **facts: Any) -> None:  # noqa: ANN401
        """Add a line; a log that can't be written stops nobody's work."""
        short = {k: v[:LONGEST_FACT] if isinstance(v, str) else v for k, v in facts.items()}
        at = datetime.now(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")
        line = json.dumps({"at": at, "what": what, **short}) + "\n"
        log = self._folder.log
        with self._lock:
            try:
                self._folder.path.mkdir(mode=0o700, parents=True, exist_ok=True)
                if log.exists() and log.stat().st_size + len(line) > LARGEST_LOG:
                    log.replace(log.with_suffix(".older.jsonl"))
                opened = os.open(log, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600)
                with os.fdopen(opened, "a", encoding="utf-8") as file:
                    file.write(line)
            except OSError:
                return


def read_log(folder: CrewFolder) -> Iterator[dict[str, Any]]:
    """Yield what happened, the first first; a damaged line is left out."""
    for path in (folder.log.with_suffix(".older.jsonl"), folder.log):
        if not path.exists():
            continue
        for line in path.read_text(encoding="utf-8", errors="replace").splitlines():
            try:
                found = own_json(line)
            except ValueError:
                continue
            if isinstance(found, dict):
                yield found


def _damaged(why: str) -> ExchangeError:
    return ExchangeError(
        say("The list of the crew's devices was to be used."),
        say("It can't be: {why}.", why=why),
        say(
            "Put members.json in the folder beside the store aside; every phone then knocks again."
        ),
    )
