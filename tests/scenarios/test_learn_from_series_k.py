"""Gaps of three units, learned with the command: the saw is told, and the forecast heeds it."""

import json
from pathlib import Path
from typing import Any

from click.testing import CliRunner

from longpoint.cli.main import main
from tests.scenarios.houses import document, rows_under

CORNERS = ("bl", "br", "tr", "tl")


def gaps_read(shared: Path) -> dict[str, dict[str, list[float]]]:
    """Return heel and toe of each joint of units 1 to 3, by the mark of the window."""
    text = (shared / "scenarios" / "c-prefab-batch.md").read_text(encoding="utf-8")
    rows = rows_under(text[text.index("## As-built check") :], "unit | id")
    return {
        f"{unit}-{mark}": {
            corner: [float(end) for end in cell.split("/")]
            for corner, cell in zip(CORNERS, cells, strict=True)
        }
        for unit, mark, *cells in rows
    }


def series_k(folder: Path, openings: list[dict[str, Any]], found: float) -> Path:
    house = document("series-k", mended=True)
    house["saws"]["S1"]["found"] = {"left": found, "right": found}
    path = folder / f"series-k-{found:g}-{len(openings)}.json"
    path.write_text(json.dumps({**house, "openings": openings, "runs": []}), encoding="utf-8")
    return path


def longpoint(*words: str | Path) -> str:
    done = CliRunner().invoke(main, [str(word) for word in words])
    assert done.exit_code == 0, done.output
    return " ".join(done.output.split())


def chances(folder: Path, house: Path, *more: str | Path) -> dict[str, float]:
    longpoint("plan", house, "--out", folder, "--draws", "1000", *more)
    plan = json.loads((folder / "plan.json").read_text(encoding="utf-8"))
    return {o["mark"]: o["p_close"] for o in plan["openings"]}


def test_three_units_tell_the_saw_and_the_next_units_are_forecast_by_it(
    shared: Path, tmp_path: Path
) -> None:
    gaps = gaps_read(shared)
    openings = document("series-k", mended=True)["openings"]
    finished = [
        {**entry, "as_built": {"gaps": gaps[entry["mark"]]}}
        for entry in openings
        if entry["mark"] in gaps
    ]
    assert len(finished) == 9
    crew = tmp_path / "crew.json"
    said = longpoint("learn", series_k(tmp_path, finished, 45.0), "--crew", crew)
    assert "Saw S1: Your 45 cuts steep by about 0.12 degrees" in said
    assert "from 9 frames" in said
    assert "The readings are not to blame" in said
    assert "Tape T1" not in said

    coming = [entry for entry in openings if entry["mark"] == "4-W2"]
    as_found, dialled = (series_k(tmp_path, coming, found) for found in (45.0, 45.12))
    hoped = chances(tmp_path / "hoped", as_found)
    known = chances(tmp_path / "known", as_found, "--crew", crew)
    cured = chances(tmp_path / "cured", dialled, "--crew", crew)
    assert known["4-W2"] < hoped["4-W2"] - 0.1
    assert cured["4-W2"] > known["4-W2"] + 0.1
