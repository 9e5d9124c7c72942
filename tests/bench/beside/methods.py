"""Every method by its name, each run in a process of its own."""

import contextlib
import importlib
import importlib.util
import json
import os
import resource
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import asdict, replace
from pathlib import Path
from typing import Final

from tests.bench.beside.answer import Answer
from tests.bench.beside.arc_flow import by_arc_flow
from tests.bench.beside.cp_sat import by_cp_sat
from tests.bench.beside.longpoint import by_longpoint
from tests.bench.beside.vector_packing import by_vector_packing
from tests.bench.cutting_stock import CuttingStock, read_cutting_stock

OURS: Final = "longpoint"
METHODS: Final[dict[str, Callable[[CuttingStock, float], Answer]]] = {
    OURS: by_longpoint,
    "cp-sat": by_cp_sat,
    "arc-flow": by_arc_flow,
    "vector-packing": by_vector_packing,
}
_NEEDS: Final = {
    OURS: ("highspy",),
    "cp-sat": ("ortools",),
    "arc-flow": ("highspy",),
    "vector-packing": ("pyvpsolver", "highspy"),
}
_GRACE_SECONDS: Final = 10.0
"""Longer than its limit a method may take to stop by itself; then it is ended."""
_MOST_BYTES: Final = 3 * 2**30


def installed(method: str) -> bool:
    """Tell whether what a method needs can be imported."""
    return all(importlib.util.find_spec(name) for name in _NEEDS[method])


def answer_of(method: str, instance: Path, seconds: float) -> Answer:
    """Return a method's answer to the instance in a file, made in its own process, one thread.

    A method that doesn't stop, or runs out of memory, has no plan and no bound.
    """
    words = [sys.executable, "-m", __name__, method, str(instance), str(seconds)]
    began = time.perf_counter()
    one_thread = {"OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1"}
    with subprocess.Popen(
        words,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=os.environ | one_thread,
    ) as running:
        try:
            said, complaint = running.communicate(timeout=seconds + _GRACE_SECONDS)
        except subprocess.TimeoutExpired:
            _end(running.pid)
            said, complaint = running.communicate()
    took = time.perf_counter() - began
    line = said.rpartition("\nANSWER ")[2].strip()
    if line.startswith("{"):
        found = json.loads(line)
        return Answer(**found | {"sticks": tuple(map(tuple, found["sticks"]))})
    if complaint:
        print(f"{method}, {instance.stem}: {complaint.splitlines()[-1]}")  # noqa: T201
    return Answer(seconds=took, cpu_seconds=took)


def _end(number: int) -> None:
    """End a method and the programs that it started, some in sessions of their own."""
    psutil = importlib.import_module("psutil")
    method = psutil.Process(number)
    for process in (method, *method.children(recursive=True)):
        with contextlib.suppress(psutil.NoSuchProcess):
            process.kill()


def main(method: str, instance: Path, seconds: float) -> None:
    """Answer one instance and write the answer as one line."""
    resource.setrlimit(resource.RLIMIT_AS, (_MOST_BYTES, _MOST_BYTES))
    read = read_cutting_stock(instance)
    for name in _NEEDS[method]:
        importlib.import_module("ortools.sat.python.cp_model" if name == "ortools" else name)
    began, cpu_began = time.perf_counter(), _cpu_seconds()
    answer = METHODS[method](read, seconds)
    answer = replace(
        answer,
        seconds=round(time.perf_counter() - began, 3),
        cpu_seconds=round(_cpu_seconds() - cpu_began, 3),
        peak_mb=round(
            max(resource.getrusage(who).ru_maxrss for who in _WHO) / 1024,
        ),
    )
    print(f"\nANSWER {json.dumps(asdict(answer))}", flush=True)  # noqa: T201


_WHO: Final = (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)


def _cpu_seconds() -> float:
    return sum(os.times()[:4])


if __name__ == "__main__":
    main(sys.argv[1], Path(sys.argv[2]), float(sys.argv[3]))
