"""Plan streets of small houses: what a house costs beside its planning, and how that grows.

    python -m tests.bench.run_street [--houses 10 50] [--at-once 1] [--apart] [--dask | --both]
        [--kill]

Every house has three windows and two doors, drawn with a fixed seed about the sizes of a batch of
like cabins. Planning is what each house takes in its process, sheets and PDF included; what all
processes take besides is overhead: their start, pipes, sums, the summary. Going on is a second call
that finds everything done. With --dask the workers of a Dask cluster on this machine plan instead
of processes of ours; its own start and end count as overhead. Its workers' own threads run while a
house is planned and so count as planning: compare "all" of both. All is the processor's time: the
clock says nothing on a busy machine. Of several streets a straight line is drawn: what any street
takes, and what each house takes.

--both plans every street both ways and compares every file, byte by byte. --kill ends a worker from
outside when a third is done, breaks the street off when two thirds are, and goes on.
"""

import argparse
import importlib
import json
import multiprocessing.forkserver
import os
import random
import resource
import signal
import sys
import tempfile
import time
from collections.abc import Generator, Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import numpy as np

from longpoint.cli.cluster import cluster, sent_out
from longpoint.cli.street import bought_together, write_summary
from longpoint.cli.street_hands import OwnProcesses
from longpoint.cli.street_house import HouseTask, kept_row, plan_task
from longpoint.cli.street_sent import SentHouse, SentSheets, landed, plan_sent, sent_house
from longpoint.cli.workers import Done, shared_out
from longpoint.render.paper import Paper
from longpoint.sheets.street_rows import HouseRow

SIZES: Final = {
    "W1": (1194, 894),
    "W2": (594, 1094),
    "W3": (894, 594),
    "D1": (822, 2041),
    "D2": (722, 2041),
}
"""Width and height of each opening. [mm]"""
QUIET: Final = {
    "MALLOC_TRIM_THRESHOLD_": "100000000",
    "MALLOC_MMAP_THRESHOLD_": "33554432",
    "DASK_DISTRIBUTED__WORKER__PROFILE__ENABLED": "False",
    "DASK_DISTRIBUTED__ADMIN__TICK__INTERVAL": "1s",
    "DASK_DISTRIBUTED__ADMIN__SYSTEM_MONITOR__INTERVAL": "10s",
    "DASK_DISTRIBUTED__WORKER__MEMORY__MONITOR_INTERVAL": "5s",
}
"""How a cluster is started that doesn't watch itself all the time; as in docs/how-to."""


def cabin(number: int, rng: random.Random, openings: int = len(SIZES)) -> dict[str, Any]:
    """Return the house file of one cabin, its sides read with half a millimetre's error."""
    return {
        "format": "longpoint-house/1",
        "name": f"Cabin {number}",
        "units": "mm",
        "dialect": "uk",
        "defaults": {"quirk": 5, "architrave": "SQ66", "tape": "T1", "saw": "S1"},
        "profiles": {"SQ66": {"face": 66, "thickness": 18}},
        "tapes": {"T1": {"class": "II"}},
        "saws": {"S1": {"kerf": 3.2}},
        "stock": [{"profile": "SQ66", "length": length} for length in (5400, 4200)],
        "openings": [_opening(mark, *size, rng) for mark, size in [*SIZES.items()][:openings]],
    }


def _opening(mark: str, width: int, height: int, rng: random.Random) -> dict[str, Any]:
    window = mark.startswith("W")
    top, bottom, left, right = (size + _error(rng) for size in (width, width, height, height))
    across = ((width**2 + height**2) ** 0.5 * 2 // 1) / 2
    return {
        "mark": mark,
        "kind": "window" if window else "door",
        "trim": "all-round" if window else "legs-and-head",
        "top": top,
        "bottom": bottom,
        "left": left,
        "right": right,
        **({"rising": across, "falling": across} if window else {}),
    }


def _error(rng: random.Random) -> float:
    return rng.choice((-0.5, 0.0, 0.0, 0.5))


def street(folder: Path, count: int, openings: int = len(SIZES)) -> None:
    """Write the house files of a street, of each house the first few openings."""
    folder.mkdir()
    for number in range(1, count + 1):
        text = json.dumps(cabin(number, random.Random(number), openings))
        (folder / f"cabin-{number:03}.json").write_text(text, encoding="utf-8")


@dataclass(frozen=True, slots=True)
class Timed:
    """A planned house, the processor's time that it took [s], and the process that planned it."""

    row: HouseRow
    seconds: float
    process: int


def timed(task: HouseTask) -> Timed:
    """Plan a house, and say how long the processor was at it."""
    began = time.process_time()
    row = plan_task(task)
    return Timed(row, time.process_time() - began, os.getpid())


def timed_sent(sent: SentHouse) -> tuple[SentSheets, float, int]:
    """Plan a house as a worker of a cluster does, and say how long the processor was at it."""
    began = time.process_time()
    sheets = plan_sent(sent)
    return sheets, time.process_time() - began, os.getpid()


def by_processes(
    tasks: Sequence[HouseTask], at_once: int
) -> Generator[tuple[int, Timed], None, None]:
    """Yield what processes of ours made of each house."""
    with closing(shared_out(tasks, timed, at_once)) as done:
        yield from ((one.place, one.answer) for one in done if one.answer)


def by_dask(tasks: Sequence[HouseTask], at_once: int) -> Generator[tuple[int, Timed], None, None]:
    """Yield what the workers of a Dask cluster on this machine made of each house."""
    sent = [house for task in tasks if (house := sent_house(task))]
    with _local_cluster(at_once) as address, cluster(address, None) as client:
        done: Generator[Done[tuple[SentSheets, float, int]], None, None]
        with closing(sent_out(client, sent, timed_sent)) as done:
            for one in done:
                if one.answer:
                    sheets, seconds, process = one.answer
                    yield one.place, Timed(landed(sheets, tasks[one.place]), seconds, process)


@contextmanager
def _local_cluster(at_once: int) -> Iterator[str]:
    before = {**os.environ}
    os.environ.update(QUIET)
    try:
        with importlib.import_module("distributed").LocalCluster(
            n_workers=at_once, threads_per_worker=1, dashboard_address=None, memory_limit=None
        ) as local:
            yield local.scheduler_address
    finally:
        os.environ.clear()
        os.environ.update(before)


@dataclass(frozen=True, slots=True)
class Street:
    """What a street took, as the processor's time. [s]"""

    houses: int
    planning: float
    besides: float
    again: float
    buying: float
    saves_m: float

    def line(self) -> str:
        """Return a line of the table."""
        n = self.houses
        return (
            f"{n:6} {self.planning / n:9.3f} {self.besides / n:9.3f} "
            f"{100 * self.besides / self.planning:6.1f} {(self.planning + self.besides) / n:9.3f} "
            f"{self.again:9.2f} {self.buying:7.1f} {self.saves_m:8.1f} "
            f"{_peak_mb(resource.RUSAGE_SELF):7.0f} {_peak_mb(resource.RUSAGE_CHILDREN):7.0f}"
        )


def main(words: Sequence[str]) -> None:
    """Print one line a street."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--houses", type=int, nargs="+", default=[10, 50])
    parser.add_argument("--at-once", type=int, default=1)
    parser.add_argument("--apart", action="store_true", help="leave buying together out")
    parser.add_argument("--dask", action="store_true", help="plan by a Dask cluster")
    parser.add_argument("--both", action="store_true", help="plan both ways and compare")
    parser.add_argument("--kill", action="store_true", help="end a worker, break off, go on")
    asked = parser.parse_args(words)
    ways = (False, True) if asked.both else (asked.dask,)
    found: dict[bool, list[Street]] = {way: [] for way in ways}
    _say("processor's time [s]: planning, overhead and all of each house; going on, buying of all")
    _say("houses  planning  overhead      %       all  going on  buying  saves m  own MB each MB")
    for count in asked.houses:
        with tempfile.TemporaryDirectory() as place:
            street(Path(place) / "houses", count)
            for dask in ways:
                out = Path(place) / ("dask" if dask else "own")
                one = _planned(out, asked.at_once, apart=asked.apart, dask=dask, kill=asked.kill)
                found[dask].append(one)
                _say(f"{one.line()} {out.name}")
            if asked.both:
                _say(_compared(Path(place) / "own", Path(place) / "dask"))
    for dask, streets in found.items():
        if len(streets) > 1:
            _say(_straight("dask" if dask else "own", streets))


def _planned(out: Path, at_once: int, *, apart: bool, dask: bool, kill: bool) -> Street:
    files = sorted((out.parent / "houses").iterdir())
    tasks = [HouseTask(file=f, out=out / f.stem, paper=Paper.A4) for f in files]
    out.mkdir()
    began = _spent()
    done: dict[int, Timed] = {}
    two_thirds = 2 * len(tasks) // 3
    for stop in (two_thirds, len(tasks)) if kill else (len(tasks),):
        # As the command does: what lies there from the same is kept.
        kept = [kept_row(task) for task in tasks]
        assert [place for place, row in enumerate(kept) if row] == sorted(done)
        left = [place for place, row in enumerate(kept) if row is None]
        with closing((by_dask if dask else by_processes)([tasks[p] for p in left], at_once)) as way:
            for place, answer in way:
                done[left[place]] = answer
                if kill and len(done) == two_thirds // 2:
                    os.kill(answer.process, signal.SIGKILL)
                if len(done) == stop:
                    break
        # Its time, and that of the workers that it ended, is known once it is waited for.
        multiprocessing.forkserver._forkserver._stop()  # type: ignore[attr-defined]
    rows = [done[number].row for number in range(len(tasks))]
    write_summary("street", rows, (), out, Paper.A4)
    planning = sum(one.seconds for one in done.values())
    besides = _spent() - began - planning
    began = _spent()
    assert [kept_row(task) for task in tasks] == rows
    again = _spent() - began
    began = _spent()
    joint = () if apart else bought_together(tasks, rows, OwnProcesses(at_once))
    multiprocessing.forkserver._forkserver._stop()  # type: ignore[attr-defined]
    saves = sum(each.saves for each in joint)
    return Street(len(tasks), planning, besides, again, _spent() - began, saves)


def _compared(one: Path, other: Path) -> str:
    """Say how many files of two folders are the same to the last byte."""
    first, second = (
        {path.relative_to(each).as_posix(): path for path in each.rglob("*") if path.is_file()}
        for each in (one, other)
    )
    unlike = sorted(
        name
        for name in first.keys() | second.keys()
        if name not in first
        or name not in second
        or first[name].read_bytes() != second[name].read_bytes()
    )
    size = sum(path.stat().st_size for path in first.values())
    return f"{len(first)} files, {size / 1e6:.0f} MB; unlike: {len(unlike)} {unlike[:5]}"


def _straight(name: str, streets: Sequence[Street]) -> str:
    """Say what any street takes and what each house takes, and how far a street is off that."""
    counts = np.array([one.houses for one in streets])
    besides = np.array([one.besides for one in streets])
    everything = besides + np.array([one.planning for one in streets])
    each, fixed = np.polyfit(counts, besides, 1)
    slope, start = np.polyfit(counts, everything, 1, w=1 / counts)
    off = float(np.max(np.abs(everything / (start + slope * counts) - 1)))
    return (
        f"{name}: overhead {fixed:.2f} s a street and {each:.4f} s a house; all {start:.2f} s a "
        f"street and {slope:.3f} s a house, no street more than {100 * off:.1f} % off that line"
    )


def _peak_mb(whose: int) -> float:
    # Of the children: the largest of them, whichever street it was at.
    return resource.getrusage(whose).ru_maxrss / 1024


def _say(line: str) -> None:
    print(line, flush=True)  # noqa: T201


def _spent() -> float:
    """Return the processor's time of this process and of those that it waited for. [s]"""
    return sum(os.times()[:4])


if __name__ == "__main__":
    main(sys.argv[1:])
