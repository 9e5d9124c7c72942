"""Kill a process that writes, again and again, at times drawn by chance; look what is left.

By hand: python -m tests.faults.kill_many --kills 500 --seed 7

It is a process of its own, with one thread, so that it may fork: a child that is forked is in the
middle of its work within a millisecond.
"""

import argparse
import json
import os
import random
import shutil
import signal
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from longpoint.errors import LongpointError
from longpoint.journal import Entry, as_written, key_of, read_entry
from longpoint.store.copies import back_up, restore
from longpoint.store.schema import MIGRATIONS
from longpoint.store.sqlite_store import open_store, open_to_read
from longpoint.survey.rack import RACK_KEY, rack_now
from tests.faults.kill_jobs import JOBS, NEXT, PLANTED, Scene, reading

MOST_TOLD: Final = 3
"""A child is killed after it acknowledged something so many times at most, and a moment more."""

FIRST_S: Final = 0.03
"""How long the first acknowledgement takes, until it has been measured."""

KILLS_A_STORE: Final = 5
"""A store goes through so many kills before a new one is begun."""


@dataclass
class Report:
    """What came of it."""

    kills: Counter[str] = field(default_factory=Counter)
    acknowledged: Counter[str] = field(default_factory=Counter)
    killed_before_anything: int = 0
    lost: list[str] = field(default_factory=list)
    corrupt: list[str] = field(default_factory=list)


def kill_many(kills: int, seed: int, folder: Path, jobs: Sequence[str]) -> Report:
    """Kill so many children, and hold what is left against what they acknowledged."""
    drawn = random.Random(seed)
    report = Report()
    number = 0
    first_s = dict.fromkeys(jobs, FIRST_S)
    while number < kills:
        job = jobs[(number // KILLS_A_STORE) % len(jobs)]
        place = folder / f"{number}-{job}"
        place.mkdir()
        kept = _begin(place)
        for _ in range(min(KILLS_A_STORE, kills - number)):
            number += 1
            _prepare(job, place)
            told = _killed(Scene(place, print, number), job, drawn, first_s)
            report.kills[job] += 1
            report.killed_before_anything += not told
            report.acknowledged.update(line.split(" ", 1)[0] for line in told)
            kept |= {line[6:] for line in told if line.startswith("entry ")}
            _look(job, place, kept, told, report)
        shutil.rmtree(place)
    return report


def _begin(place: Path) -> set[str]:
    """Make a store with something in it, and a backup of it; return what is in it."""
    store = open_store(place / "houses.store", "laptop")
    written = [*store.write("house-0", "", [reading(0, step) for step in range(20)])]
    back_up(store, place / "kept.backup")
    store.close()
    return {as_written(entry) for entry in written}


def _prepare(job: str, place: Path) -> None:
    """Bring about what a job is for: an older store, or a damaged or missing one."""
    path = place / "houses.store"
    if job == "migrate":
        # As it was before the last child: what that one wrote went into its copy.
        (place / "houses.store.before-v2").unlink(missing_ok=True)
        store = open_store(place / "older.store", "laptop")
        current = open_store(path, "laptop", NEXT)
        store.take(current.lacking({}))
        current.close()
        store.close()
        for end in ("-wal", "-shm", ".seal"):
            path.with_name(path.name + end).unlink(missing_ok=True)
        (place / "older.store").replace(path)
        (place / "older.store.seal").unlink()
    if job == "restore":
        size = path.stat().st_size
        with path.open("r+b") as file:
            file.seek(size // 2)
            file.write(b"\xff" * 500)


def _killed(scene: Scene, job: str, drawn: random.Random, first_s: dict[str, float]) -> list[str]:
    """Run a job and kill it; return what it acknowledged.

    It dies at a moment between two acknowledgements, whatever those are for and however long they
    take on this machine.
    """
    out, into = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(out)
        try:
            os.write(into, b"begun\n")
            {**JOBS, **PLANTED}[job](
                Scene(scene.folder, lambda line: _tell(into, line), scene.number)
            )
        except LongpointError as error:
            print(error, file=sys.stderr)  # noqa: T201
        finally:
            os._exit(1)
    os.close(into)
    wanted = drawn.randint(0, MOST_TOLD)
    with os.fdopen(out, "rb") as pipe:
        pipe.readline()
        begun = time.monotonic()
        lines: list[bytes] = []
        while len(lines) < wanted:
            lines.append(pipe.readline())
            if len(lines) == 1:
                first_s[job] = time.monotonic() - begun
        each_s = (time.monotonic() - begun) / wanted if wanted else first_s[job]
        time.sleep(drawn.uniform(0.0, each_s))
        os.kill(child, signal.SIGKILL)
        # A line that was being written when the child died isn't whole, and was told to nobody.
        lines += pipe.read().split(b"\n")[:-1]
    _, status = os.waitpid(child, 0)
    assert os.WIFSIGNALED(status), "the child ended by itself"
    return [line.decode().rstrip("\n") for line in lines]


def _tell(pipe: int, line: str) -> None:
    data = line.encode() + b"\n"
    while data:
        data = data[os.write(pipe, data) :]


def _look(job: str, place: Path, kept: set[str], told: list[str], report: Report) -> None:
    path = place / "houses.store"
    migrations = NEXT if job == "migrate" else MIGRATIONS
    try:
        if job == "restore":
            restore(place / "kept.backup", path, f"finished-{len(told)}-{report.kills.total()}")
        store = open_store(path, "laptop", migrations)
        try:
            found = store.verify()
            there = {as_written(entry) for entry in store.lacking({})}
            found += rack_now(each.entry for each in store.entries(RACK_KEY)).findings
        finally:
            store.close()
        report.corrupt += [f"{job}: {each.read} {each.wrong}" for each in found]
        report.lost += [f"{job}: {_key(text)}" for text in sorted(kept - there)]
        _look_at_copies(job, place, told, report)
    except LongpointError as error:
        report.corrupt.append(f"{job}: {error}")


def _look_at_copies(job: str, place: Path, told: list[str], report: Report) -> None:
    named = {line.split(" ", 1)[1] for line in told if line.startswith("backup ")}
    report.lost += [f"{job}: {name}" for name in sorted(named) if not (place / name).exists()]
    before = place / "houses.store.before-v2"
    if "migrated" in told and not before.exists():
        report.lost.append(f"{job}: no copy before the migration")
    for copy in [*place.glob("*.backup"), *([before] if before.exists() else [])]:
        store = open_to_read(copy)
        report.corrupt += [f"{copy.name}: {each.wrong}" for each in store.verify()]
        store.close()


def _key(text: str) -> str:
    entry: Entry = read_entry(text)
    return str(key_of(entry))


def main() -> None:
    """Print the report as JSON."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--kills", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--folder", type=Path, default=None, help="where the stores are made")
    parser.add_argument("--planted", action="store_true", help="with the fault that is planted")
    asked = parser.parse_args()
    jobs = sorted(PLANTED if asked.planted else JOBS)
    with tempfile.TemporaryDirectory(dir=asked.folder) as folder:
        report = kill_many(asked.kills, asked.seed, Path(folder), jobs)
    print(json.dumps(vars(report)))  # noqa: T201


if __name__ == "__main__":
    main()
