"""The drifts of Series K, found by `longpoint creep`: the jig's, the tape's, and one at the saw.

The diagonals in examples/series-k-diagonals.csv are the scenario's readings of W1 and W2, which its
key says lean from unit 10 on (C-F5); W3, which doesn't, stays silent. The check stick is the
scenario's morning reads: 2.0 out on the fourth day alone (C-F1). The scenario plants no creep of
the stop: the checks in examples/series-k-stop.csv are drawn, the stop repeating to 0.2 as its
settings say, read to the half, and set 0.6 long from unit 10 on.
"""

import csv
from pathlib import Path

import pytest
from click.testing import Result

from tests.scenarios.houses import document, planned
from tests.unit.cli.house_files import longpoint

EXAMPLES = Path(__file__).parents[2] / "examples"
STOP, JIG = EXAMPLES / "series-k-stop.csv", EXAMPLES / "series-k-diagonals.csv"
LAST_BEFORE = 9
"""The last unit before anything moves."""


def rows_of(path: Path) -> list[list[str]]:
    return list(csv.reader(path.read_text(encoding="utf-8").splitlines()))[1:]


def unit(mark: str) -> int:
    return int(mark.split("-")[0])


def crept(folder: Path, rows: list[list[str]], *options: str) -> Result:
    table = folder / "checks.csv"
    table.write_text("\n".join(map(",".join, [["a", "b", "c"], *rows])), encoding="utf-8")
    return longpoint("creep", table, *options)


def diagonals(*parts: str) -> list[list[str]]:
    return [
        [each["mark"], str(each["rising"]), str(each["falling"])]
        for each in document("series-k")["openings"]
        if each["mark"].split("-")[1] in parts
    ]


def test_the_jig_moved_at_unit_10(tmp_path: Path) -> None:
    done = longpoint("creep", JIG, "--jig", "--spread", "2")

    assert rows_of(JIG) == diagonals("W1", "W2")
    assert done.exit_code == 1
    assert "From about 10-W1 on the second diagonal is 3.9 mm the shorter." in done.stdout
    before = [row for row in rows_of(JIG) if unit(row[0]) <= LAST_BEFORE]
    still = crept(tmp_path, before, "--jig", "--spread", "2")
    assert (still.exit_code, "18 frames" in still.stdout) == (0, True)
    assert crept(tmp_path, diagonals("W3"), "--jig", "--spread", "2").exit_code == 0


def test_the_check_stick_was_out_on_the_fourth_day_alone(tmp_path: Path) -> None:
    reads = [[f"day {day}", "1000", "1002" if day == 4 else "1000"] for day in range(1, 13)]

    done = crept(tmp_path, reads)

    assert done.exit_code == 1
    assert done.stdout.splitlines()[:2] == [
        "Piece day 4 was read in the order of cutting.",
        "It is 2 mm too long.",
    ]
    assert "slip of the tape" in done.stdout
    assert crept(tmp_path, [row for row in reads if row[0] != "day 4"]).exit_code == 0


def test_the_stop_is_told_within_the_unit_in_which_it_moved(tmp_path: Path) -> None:
    planned_mm = {piece.mark: piece.outer_mm for piece in planned("series-k").pieces}
    rows = rows_of(STOP)
    assert len(rows) == 56
    assert {mark: float(wanted) for mark, wanted, _ in rows} == pytest.approx(
        {mark: planned_mm[mark] for mark, _, _ in rows}, abs=0.26
    )

    done = longpoint("creep", STOP)

    assert done.exit_code == 1
    assert "5 pieces from 10-W1-head to 10-D2-head" in done.stdout
    assert "0.4 mm too long" in done.stdout
    before = [row for row in rows if unit(row[0]) <= LAST_BEFORE]
    assert crept(tmp_path, before).exit_code == 0
