"""Run the nester on public cutting-stock instances, one after the other, one thread.

    python -m tests.bench.run_cutting_stock FOLDER [--every 3] [--only CLASS] [--out results.csv]

FOLDER holds `index.csv` (class, name, optimum among its columns) and `instances/NAME.txt`.
"""

import argparse
import csv
import statistics
import sys
import time
from collections.abc import Sequence
from pathlib import Path

from longpoint.solvers.installed import linear_solver
from tests.bench.cutting_stock import check, planned, read_cutting_stock, within


def main(arguments: Sequence[str]) -> None:
    """Run what the command line asks for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--every", type=int, default=1)
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--only", default="")
    parser.add_argument("--seconds", type=float, default=20.0)
    parser.add_argument("--out", type=Path)
    chosen = parser.parse_args(arguments)
    with (chosen.folder / "index.csv").open(encoding="utf-8", newline="") as file:
        index = [
            row for row in csv.DictReader(file) if chosen.only in (row["class"] + " " + row["name"])
        ]
    results = [
        _result(chosen.folder, row, chosen.seconds) for row in index[chosen.first :: chosen.every]
    ]
    if chosen.out:
        with chosen.out.open("w", encoding="utf-8", newline="") as file:
            writer = csv.writer(file)
            writer.writerow(("class", "name", "optimum", "cost", "bound", "seconds"))
            writer.writerows(results)
    _summary(results)


_Result = tuple[str, str, int, float, float, float]


def _result(folder: Path, row: dict[str, str], seconds: float) -> _Result:
    instance = read_cutting_stock(folder / "instances" / f"{row['name']}.txt")
    began = time.perf_counter()
    plan = planned(instance, linear_solver(), within(seconds))
    took = time.perf_counter() - began
    check(instance, plan)
    proof, optimum = plan.proof, int(row["optimum"])
    if not proof.lower_bound <= optimum <= proof.cost:
        raise ValueError(f"{instance.name}: {proof}, and the optimum is {optimum}.")
    found = (row["class"], row["name"], optimum, proof.cost, proof.lower_bound, round(took, 2))
    print(*found, "proved" if proof.optimal else "-", flush=True)  # noqa: T201
    return found


def _summary(results: Sequence[_Result]) -> None:
    classes = list(dict.fromkeys(result[0] for result in results))
    for name in (*classes, "all"):
        ours = [result for result in results if name in (result[0], "all")]
        took = [result[5] for result in ours]
        print(  # noqa: T201
            f"{name:14} {len(ours):4} instances"
            f" {sum(r[3] == r[4] for r in ours):4} proved"
            f" {sum(r[3] == r[2] for r in ours):4} optimum found"
            f" {statistics.median(took):7.2f} s median {max(took):7.2f} s worst",
        )


if __name__ == "__main__":
    main(sys.argv[1:])
