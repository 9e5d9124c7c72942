import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from longpoint.cli.main import main
from tests.house_documents import house, window

STOCK = [{"profile": "OG57", "length": 5400}]


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, list(arguments))


@pytest.fixture(scope="module")
def sheets(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("labels")
    file = folder / "house.json"
    document = house(openings=[window(bottom=1187)], stock=STOCK)
    file.write_text(json.dumps(document), encoding="utf-8")
    done = run("plan", str(file), "--out", str(folder / "sheets"), "--draws", "100")
    assert done.exit_code in (0, 1), done.output
    return folder / "sheets"


def test_labels_and_bundles_are_written(sheets: Path) -> None:
    done = run("labels", str(sheets), "--order", "bundle", "--skip", "3")
    assert done.exit_code == 0, done.output
    assert "4 labels on 1 page of 3 x 8." in done.output
    for name in ("labels.pdf", "bundles.pdf", "bundles.html"):
        assert (sheets / name).exists()


def test_a_test_print_is_written_alone(sheets: Path) -> None:
    done = run("labels", str(sheets), "--test", "--nudge", "0.5,-1", "--paper", "us-letter")
    assert done.exit_code == 0, done.output
    assert (sheets / "labels-test.pdf").exists()


@pytest.mark.parametrize(
    "asked",
    [("--nudge", "right"), ("--nudge", "99,0"), ("--grid", "3x9"), ("--skip", "24")],
)
def test_what_cannot_be_printed_is_refused(sheets: Path, asked: tuple[str, str]) -> None:
    done = run("labels", str(sheets), *asked)
    assert done.exit_code == 2
    assert len(done.output.strip().splitlines()) == 3


def test_no_labels_are_printed_from_void_sheets(sheets: Path, tmp_path: Path) -> None:
    for file in sheets.glob("*.json"):
        text = file.read_text(encoding="utf-8").replace('"current"', '"stale"')
        (tmp_path / file.name).write_text(text, encoding="utf-8")
    done = run("labels", str(tmp_path))
    assert done.exit_code == 2
    assert "VOID" in done.output


def test_a_plan_file_of_other_pieces_is_refused(sheets: Path, tmp_path: Path) -> None:
    for file in sheets.glob("*.json"):
        text = file.read_text(encoding="utf-8")
        changed = text.replace("W1-head", "W9-head") if file.name == "plan.json" else text
        (tmp_path / file.name).write_text(changed, encoding="utf-8")
    done = run("labels", str(tmp_path))
    assert done.exit_code == 2
    assert "different pieces" in done.output
