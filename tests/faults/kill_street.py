"""Kill a worker of a street, then the whole command, go on; compare with a street left in peace.

By hand: python -m tests.faults.kill_street --houses 1000 --openings 1 --draws 100 --apart

A worker is killed when a third of the houses is done, the command when two thirds are: by a signal
that nobody can catch, so nothing is tidied. The command is then called again, at once, while the
workers of the first may still be writing the house that they were at. Everything that stands in
the folder at the end has to be what an undisturbed street writes, to the last byte.

Linux alone: who is a child of whom is read from /proc.
"""

import argparse
import hashlib
import json
import os
import signal
import subprocess
import sys
import tempfile
import time
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Final

from tests.bench.run_street import street

TICKS_S: Final = 1 / os.sysconf("SC_CLK_TCK")
UNFINISHED: Final = ".part"
"""How a file ends that is being written; a process that is killed leaves it."""

OnLine = Callable[["Run"], None]


@dataclass
class Run:
    """One call of the command.

    Attributes:
        process: Its process.
        said: Lines that it wrote of its work.
        done: Houses that it told as done.
        killed_pids: Workers that were killed.
        spent: Processor time of it and each process below it, when last looked at. [s]
        clock_s: How long it ran.
    """

    process: "subprocess.Popen[str]"
    said: list[str] = field(default_factory=list)
    done: int = 0
    killed_pids: list[int] = field(default_factory=list)
    spent: dict[int, float] = field(default_factory=dict)
    clock_s: float = 0.0

    def workers(self) -> list[int]:
        """Return the processes that plan: those that a server below the command forked."""
        children = _children()
        return [pid for one in children[self.process.pid] for pid in children[one]]

    def look(self) -> None:
        """Note what each process has spent."""
        for pid in (self.process.pid, *self.workers()):
            seconds = _spent_s(pid)
            self.spent[pid] = max(seconds, self.spent.get(pid, 0.0))


@dataclass(frozen=True, kw_only=True)
class Report:
    """What came of it.

    Attributes:
        houses: Houses in the street.
        files: Files that the undisturbed street wrote.
        size_mb: How large they are together. [MB]
        unlike: Files of one street that the other lacks or has otherwise.
        unfinished: Files that were being written when their process was killed.
        told_killed: Times that the command said a process of its own was killed.
        planned_twice: Houses planned by the second call although the first had told them as done.
        kept: Houses that the second call found done.
        undisturbed_s, disturbed_s: Processor time, without what a house's end hides. [s]
        undisturbed_clock_s, disturbed_clock_s: By the clock. [s]
    """

    houses: int
    files: int
    size_mb: float
    unlike: list[str]
    unfinished: int
    told_killed: int
    planned_twice: int
    kept: int
    undisturbed_s: float
    disturbed_s: float
    undisturbed_clock_s: float
    disturbed_clock_s: float


def kill_street(folder: Path, houses: int, openings: int, words: Sequence[str]) -> Report:
    """Plan a street in peace and one that is killed twice, and compare them.

    Args:
        folder: Where to.
        houses: How many. >= 6.
        openings: Of each house. 1 to 5.
        words: Further options of the command.
    """
    street(folder / "houses", houses, openings)
    two_thirds = 2 * houses // 3

    def worker_then_command(run: Run) -> None:
        if run.done == two_thirds // 2 and not run.killed_pids:
            run.killed_pids.append(run.workers()[0])
            os.kill(run.killed_pids[0], signal.SIGKILL)
        elif run.done == two_thirds:
            run.process.kill()

    out = folder / "out"
    broken_off = _run(folder, out, words, worker_then_command)
    assert broken_off.process.returncode == -signal.SIGKILL, "it came to its end before"
    gone_on = _run(folder, out, words)
    killed, unfinished = _sums(out)
    kept = sum(int(line.split()[0]) for line in gone_on.said if "unchanged since" in line)

    _remove(out)
    peace = _run(folder, out, words)
    whole, none = _sums(out)
    assert none == 0
    return Report(
        houses=houses,
        files=len(whole),
        size_mb=round(sum(p.stat().st_size for p in out.rglob("*") if p.is_file()) / 1e6, 1),
        unlike=sorted(n for n in whole.keys() | killed.keys() if whole.get(n) != killed.get(n)),
        unfinished=unfinished,
        told_killed=sum("was killed" in line for line in (*broken_off.said, *gone_on.said)),
        planned_twice=max(0, broken_off.done - kept),
        kept=kept,
        undisturbed_s=round(sum(peace.spent.values()), 1),
        disturbed_s=round(sum((*broken_off.spent.values(), *gone_on.spent.values())), 1),
        undisturbed_clock_s=round(peace.clock_s, 1),
        disturbed_clock_s=round(broken_off.clock_s + gone_on.clock_s, 1),
    )


def _run(folder: Path, out: Path, words: Sequence[str], at_each: OnLine = lambda _: None) -> Run:
    began = time.monotonic()
    asked = ["street", folder / "houses", "--out", out, "--at-once", "2", *words]
    process = subprocess.Popen(
        [sys.executable, "-m", "longpoint.cli.main", *map(str, asked)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    )
    run = Run(process)
    assert process.stderr is not None
    for line in process.stderr:
        run.said.append(line)
        if line.startswith("["):
            run.done += 1
            run.look()
            at_each(run)
        if process.poll() is not None:
            # Its workers hold the other end as long as they are at a house.
            break
    process.wait()
    process.stderr.close()
    run.clock_s = time.monotonic() - began
    return run


def _children() -> dict[int, list[int]]:
    found: dict[int, list[int]] = defaultdict(list)
    for place in Path("/proc").iterdir():
        if place.name.isdigit() and (fields := _stat(int(place.name))):
            found[int(fields[1])].append(int(place.name))
    return found


def _spent_s(pid: int) -> float:
    fields = _stat(pid)
    return (int(fields[11]) + int(fields[12])) * TICKS_S if fields else 0.0


def _stat(pid: int) -> list[str]:
    """Return what the system says of a process, from its state on; nothing once it is gone."""
    try:
        text = Path(f"/proc/{pid}/stat").read_text(encoding="utf-8")
    except OSError:
        return []
    return text.rpartition(")")[2].split()


def _sums(out: Path) -> tuple[dict[str, str], int]:
    """Return a sum over each file that is finished, and how many are not."""
    files = [path for path in out.rglob("*") if path.is_file()]
    finished = [path for path in files if path.suffix != UNFINISHED]
    sums = {
        str(path.relative_to(out)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in finished
    }
    return sums, len(files) - len(finished)


def _remove(folder: Path) -> None:
    for path in sorted(folder.rglob("*"), reverse=True):
        path.rmdir() if path.is_dir() else path.unlink()
    folder.rmdir()


def main() -> None:
    """Print the report as JSON."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--houses", type=int, default=12)
    parser.add_argument("--openings", type=int, default=1)
    parser.add_argument("--folder", type=Path, default=None, help="where the sheets are made")
    asked, words = parser.parse_known_args()
    with tempfile.TemporaryDirectory(dir=asked.folder) as folder:
        report = kill_street(Path(folder), asked.houses, asked.openings, words)
    print(json.dumps(asdict(report)))  # noqa: T201


if __name__ == "__main__":
    main()
