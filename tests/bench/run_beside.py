"""Run cutting-stock instances by the nester and by general-purpose libraries, all in one run.

    python -m tests.bench.run_beside FOLDER|recipes [--by longpoint,cp-sat,arc-flow,vector-packing]
        [--seconds 20] [--every 3] [--first 0] [--only CLASS] [--each 2] [--out results.csv]

FOLDER holds `index.csv` (class, name, optimum among its columns) and `instances/NAME.txt`; with
`recipes`, `--each` instances of every class of `tests.bench.recipes` are drawn instead, and the
best plan of the run stands for the optimum. With `--out` every instance is written as soon as it
is done; a run that was cut off goes on where it stopped when it is given the same file, and
`--seconds 0` only makes the table of what is there. Each answer is made in a process of its own,
on one thread, the libraries imported before its clock starts, and its plan is added up anew. The
libraries are in the dependency group `bench`; a method whose library is missing is left out, and
that is said.
"""

import argparse
import csv
import statistics
import sys
import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from tests.bench.beside.answer import Answer, check_answer
from tests.bench.beside.methods import METHODS, OURS, answer_of, installed
from tests.bench.cutting_stock import CuttingStock, read_cutting_stock
from tests.bench.recipes import sample

_LATE_SECONDS: Final = 1.0
"""A proof counts when it came no later than this after the limit; stopping takes a moment."""
_MARKS: Final = {True: "proved", False: "-"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One instance of the run.

    Attributes:
        group: Its class.
        path: Where it can be read.
        optimum: Its known optimum, or None.
    """

    group: str
    path: Path
    optimum: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """What a method did with an instance.

    Attributes:
        group: Its class.
        name: Its name.
        method: Name of the method.
        optimum: Fewest sticks known; None until the run is over where nobody knew before.
        sticks: Sticks of the plan; None: no plan.
        bound: Its lower bound.
        proved: True when they met in time.
        seconds: Time taken. [s]
        cpu_seconds: Time on the processor. [s]
        peak_mb: Most memory held. [MB]
    """

    group: str
    name: str
    method: str
    optimum: int | None
    sticks: int | None
    bound: int
    proved: bool
    seconds: float
    cpu_seconds: float
    peak_mb: float


def main(arguments: Sequence[str]) -> None:
    """Run what the command line asks for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("folder", help="folder of instances, or 'recipes'")
    parser.add_argument("--by", default=",".join(METHODS))
    parser.add_argument("--seconds", type=float, default=20.0)
    parser.add_argument("--every", type=int, default=1)
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--only", default="")
    parser.add_argument("--each", type=int, default=2)
    parser.add_argument("--out", type=Path)
    chosen = parser.parse_args(arguments)
    asked = chosen.by.split(",")
    methods = [method for method in asked if installed(method)]
    for method in asked:
        if method not in methods:
            print(f"{method} is left out: its library isn't installed.")  # noqa: T201
    with tempfile.TemporaryDirectory() as drawn:
        cases = drawn_cases(Path(drawn), chosen.each)
        if chosen.folder != "recipes":
            cases = indexed_cases(Path(chosen.folder))
        picked = [c for c in cases if chosen.only in f"{c.group} {c.path.stem}"]
        results = read_results(chosen.out) if chosen.out else []
        done = {(result.group, result.name) for result in results}
        for case in picked[chosen.first :: chosen.every] if chosen.seconds else ():
            if (case.group, case.path.stem) not in done:
                found = run(case, methods, chosen.seconds)
                results += found
                if chosen.out:
                    add_results(chosen.out, found)
    print("\n".join(table(results)))  # noqa: T201


def read_results(path: Path) -> list[Result]:
    """Return what a run wrote; nothing where there is no file yet."""
    if not path.exists():
        return []
    with path.open(encoding="utf-8", newline="") as file:
        return [
            Result(
                group=row["group"],
                name=row["name"],
                method=row["method"],
                optimum=int(row["optimum"]) if row["optimum"] else None,
                sticks=int(row["sticks"]) if row["sticks"] else None,
                bound=int(row["bound"]),
                proved=row["proved"] == "True",
                seconds=float(row["seconds"]),
                cpu_seconds=float(row["cpu_seconds"]),
                peak_mb=float(row["peak_mb"]),
            )
            for row in csv.DictReader(file)
        ]


def add_results(path: Path, results: Sequence[Result]) -> None:
    """Write results behind those that a file holds."""
    is_new = not path.exists()
    with path.open("a", encoding="utf-8", newline="") as file:
        writer = csv.writer(file)
        if is_new:
            writer.writerow(Result.__slots__)
        writer.writerows([getattr(result, name) for name in Result.__slots__] for result in results)


def indexed_cases(folder: Path) -> Iterator[Case]:
    """Yield the instances of a folder as its index names them."""
    with (folder / "index.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            path = folder / "instances" / f"{row['name']}.txt"
            yield Case(group=row["class"], path=path, optimum=int(row["optimum"]))


def drawn_cases(folder: Path, each: int) -> Iterator[Case]:
    """Yield instances by the published recipes, written to a folder as they are asked for."""
    for group, instance in sample(each):
        path = folder / f"{instance.name}.txt"
        path.write_text(written(instance), encoding="ascii")
        yield Case(group=group, path=path, optimum=None)


def written(instance: CuttingStock) -> str:
    """Return an instance in the public collections' format."""
    lines = [f"{length} {demand}" for length, demand in instance.lengths]
    return "\n".join((str(len(lines)), str(instance.stick), *lines, ""))


def run(case: Case, methods: Sequence[str], seconds: float) -> list[Result]:
    """Return what each method does with an instance."""
    instance = read_cutting_stock(case.path)
    found = list[Result]()
    for method in methods:
        answer = answer_of(method, case.path, seconds)
        check_answer(instance, answer, case.optimum)
        result = _result(case, method, answer, seconds)
        found.append(result)
        print(  # noqa: T201
            f"{case.group:14} {result.name:26} {method:15} {result.sticks} >= {result.bound}"
            f" {result.seconds:6.2f} s ({result.cpu_seconds:.2f} s CPU, {result.peak_mb:.0f} MB)"
            f" {_MARKS[result.proved]}",
            flush=True,
        )
    if case.optimum is not None:
        return found
    best = min((r.sticks for r in found if r.sticks is not None), default=None)
    if best is not None and any(result.bound > best for result in found):
        raise ValueError(f"{instance.name}: a bound lies above a plan: {found}")
    return [replace(result, optimum=best) for result in found]


def _result(case: Case, method: str, answer: Answer, seconds: float) -> Result:
    return Result(
        group=case.group,
        name=case.path.stem,
        method=method,
        optimum=case.optimum,
        sticks=len(answer.sticks) or None,
        bound=answer.bound,
        proved=answer.proved and answer.seconds <= seconds + _LATE_SECONDS,
        seconds=answer.seconds,
        cpu_seconds=answer.cpu_seconds,
        peak_mb=answer.peak_mb,
    )


def table(results: Sequence[Result]) -> list[str]:
    """Return the table of a run: every class, then all together, one line a method.

    `gap` is how many more sticks the plans take than the fewest known; an instance without a plan
    isn't in it but is counted under `no plan`. `ratio` is the method's median time over that of the
    nester, on what both prove.
    """
    head = "| class | method | instances | proved | optimum found | no plan | median s | worst s |"
    lines = [
        head + " median CPU s | gap % | ratio |",
        "|---|---|---|---|---|---|---|---|---|---|---|",
    ]
    methods = list(dict.fromkeys(result.method for result in results))
    groups = list(dict.fromkeys(result.group for result in results))
    for group in (*groups, "all") if len(groups) > 1 else groups:
        here = [result for result in results if group in (result.group, "all")]
        ours = [result for result in here if result.method == OURS]
        for method in methods:
            those = [result for result in here if result.method == method]
            lines.append(f"| {group} | {method} | {_line(those)} | {_ratio(those, ours)} |")
    return lines


def _line(those: Sequence[Result]) -> str:
    plans = [(r.sticks, r.optimum) for r in those if r.sticks is not None and r.optimum is not None]
    took = [result.seconds for result in those]
    fewest = sum(optimum for _, optimum in plans)
    gap = f"{100 * (sum(sticks for sticks, _ in plans) / fewest - 1):.2f}" if plans else "-"
    cells = (
        len(those),
        sum(result.proved for result in those),
        sum(sticks == optimum for sticks, optimum in plans),
        sum(result.sticks is None for result in those),
        f"{statistics.median(took):.2f}",
        f"{max(took):.2f}",
        f"{statistics.median(result.cpu_seconds for result in those):.2f}",
        gap,
    )
    return " | ".join(map(str, cells))


def _ratio(those: Sequence[Result], ours: Sequence[Result]) -> str:
    by_name = {result.name: result for result in ours if result.proved}
    both = [(r.seconds, by_name[r.name].seconds) for r in those if r.proved and r.name in by_name]
    if not both:
        return "-"
    theirs, own = (statistics.median(column) for column in zip(*both, strict=True))
    return f"{theirs / max(own, 0.001):.1f} ({len(both)})"


if __name__ == "__main__":
    main(sys.argv[1:])
