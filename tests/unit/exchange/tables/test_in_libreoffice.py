"""The workbooks that are given out, opened by another program; heavy, so run by hand."""

import csv
import shutil
import subprocess
from pathlib import Path

import pytest
from click.testing import CliRunner

from longpoint.cli.main import main

EXAMPLE = Path(__file__).parents[4] / "examples" / "wren-house.toml"
OFFICE = shutil.which("soffice") or shutil.which("libreoffice")


@pytest.mark.long
@pytest.mark.skipif(OFFICE is None, reason="LibreOffice isn't installed")
@pytest.mark.parametrize(("book", "tab"), [("readings", "openings"), ("cutting", "pieces")])
def test_libreoffice_opens_a_workbook_and_shows_the_same_cells(
    tmp_path: Path, book: str, tab: str
) -> None:
    CliRunner().invoke(
        main, ["give", str(EXAMPLE), "--out", str(tmp_path), "--as", "csv", "--as", "xlsx"]
    )
    done = subprocess.run(
        [
            *(str(OFFICE), f"-env:UserInstallation=file://{tmp_path}/profile", "--headless"),
            *("--convert-to", "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false"),
            *("--outdir", str(tmp_path / "out"), str(tmp_path / f"{book}.xlsx")),
        ],
        check=False,
        capture_output=True,
        text=True,
        timeout=300,
    )
    assert done.returncode == 0, done.stderr
    with (tmp_path / "out" / f"{book}.csv").open(encoding="utf-8", newline="") as file:
        shown = list(csv.reader(file))
    with (tmp_path / f"{tab}.csv").open(encoding="utf-8-sig", newline="") as file:
        ours = list(csv.reader(file))
    assert shown == ours
