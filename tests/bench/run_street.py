"""Plan streets of small houses: what a house costs beside its planning, and how that grows.

    python -m tests.bench.run_street [--houses 10 50] [--at-once 1] [--apart] [--dask]

Every house has three windows and two doors, drawn with a fixed seed about the sizes of a batch of
like cabins. Planning is what each house takes in its process, sheets and PDF included; what all
processes take besides is overhead: their start, pipes, sums, the summary. Going on is a second call
that finds everything done. With --dask the workers of a Dask cluster on this machine plan instead
of processes of ours; its own start and end count as overhead. All is the processor's time: the
clock says nothing on a busy machine.
"""

import argparse
import importlib
import json
import os
import random
import sys
import tempfile
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from longpoint.cli.cluster import cluster, sent_out
from longpoint.cli.street import bought_together, write_summary
from longpoint.cli.street_hands import OwnProcesses
from longpoint.cli.street_house import HouseTask, kept_row, plan_task
from longpoint.cli.street_sent import SentHouse, SentSheets, landed, plan_sent, sent_house
from longpoint.cli.workers import shared_out
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


def cabin(number: int, rng: random.Random) -> dict[str, Any]:
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
        "openings": [_opening(mark, *size, rng) for mark, size in SIZES.items()],
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


def street(folder: Path, count: int) -> None:
    """Write the house files of a street."""
    folder.mkdir()
    for number in range(1, count + 1):
        text = json.dumps(cabin(number, random.Random(number)))
        (folder / f"cabin-{number:03}.json").write_text(text, encoding="utf-8")


@dataclass(frozen=True, slots=True)
class Timed:
    """A planned house, and the processor's time that it took. [s]"""

    row: HouseRow
    seconds: float


def timed(task: HouseTask) -> Timed:
    """Plan a house, and say how long the processor was at it."""
    began = time.process_time()
    return Timed(plan_task(task), time.process_time() - began)


def timed_sent(sent: SentHouse) -> tuple[SentSheets, float]:
    """Plan a house as a worker of a cluster does, and say how long the processor was at it."""
    began = time.process_time()
    return plan_sent(sent), time.process_time() - began


def by_processes(tasks: Sequence[HouseTask], at_once: int) -> dict[int, Timed]:
    """Return what processes of ours made of each house."""
    return {one.place: one.answer for one in shared_out(tasks, timed, at_once) if one.answer}


def by_dask(tasks: Sequence[HouseTask], at_once: int) -> dict[int, Timed]:
    """Return what the workers of a Dask cluster on this machine made of each house."""
    local = importlib.import_module("distributed").LocalCluster(
        n_workers=at_once, threads_per_worker=1, dashboard_address=":0", memory_limit=None
    )
    sent = [house for task in tasks if (house := sent_house(task))]
    with local, cluster(local.scheduler_address, None) as client:
        return {
            one.place: Timed(landed(one.answer[0], tasks[one.place]), one.answer[1])
            for one in sent_out(client, sent, timed_sent)
            if one.answer
        }


def main(words: Sequence[str]) -> None:
    """Print one line a street."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--houses", type=int, nargs="+", default=[10, 50])
    parser.add_argument("--at-once", type=int, default=1)
    parser.add_argument("--apart", action="store_true", help="leave buying together out")
    parser.add_argument("--dask", action="store_true", help="plan by a Dask cluster")
    asked = parser.parse_args(words)
    print("processor's time [s]: planning and overhead of each house, going on and buying of all")  # noqa: T201
    print("houses  planning  overhead      %  going on  buying  saves m")  # noqa: T201
    for count in asked.houses:
        with tempfile.TemporaryDirectory() as place:
            street(Path(place) / "houses", count)
            line = _line(Path(place), asked.at_once, apart=asked.apart, dask=asked.dask)
            print(line, flush=True)  # noqa: T201


def _line(place: Path, at_once: int, *, apart: bool, dask: bool) -> str:
    files = sorted((place / "houses").iterdir())
    tasks = [HouseTask(file=f, out=place / "out" / f.stem, paper=Paper.A4) for f in files]
    (place / "out").mkdir()
    began = _spent()
    kept = [kept_row(task) for task in tasks]
    done = (by_dask if dask else by_processes)(tasks, at_once)
    rows = [done[number].row for number in range(len(kept))]
    write_summary("street", rows, (), place / "out", Paper.A4)
    planning = sum(one.seconds for one in done.values())
    over = _spent() - began - planning
    began = _spent()
    assert [kept_row(task) for task in tasks] == rows
    again = _spent() - began
    began = _spent()
    joint = () if apart else bought_together(tasks, rows, OwnProcesses(at_once))
    buying = _spent() - began
    saves = sum(each.saves for each in joint)
    return (
        f"{len(tasks):6} {planning / len(tasks):9.2f} {over / len(tasks):9.3f} "
        f"{100 * over / planning:6.1f} {again:9.2f} {buying:7.1f} {saves:8.1f}"
    )


def _spent() -> float:
    """Return the processor's time of this process and of those that it waited for. [s]"""
    return sum(os.times()[:4])


if __name__ == "__main__":
    main(sys.argv[1:])
