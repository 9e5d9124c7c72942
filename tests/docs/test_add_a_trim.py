"""Adding a trim is one file with its checks: both stand on the page, and are run from it."""

import re
import subprocess
import sys
import tomllib
from collections.abc import Callable
from pathlib import Path
from types import ModuleType
from typing import Any, Final

import pytest

from longpoint.catalogue.all_trims import CATALOGUE, trim_tables
from longpoint.catalogue.trim import TrimKind
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.sheets.book import house_sheets
from longpoint.sheets.html import sheet_html
from longpoint.sheets.terminal import pieces_text
from longpoint.survey.house_file import read_house, schema_text
from tests.house_documents import house

ROOT: Final = Path(__file__).parents[2]
PAGE: Final = (ROOT / "docs" / "how-to" / "add-a-trim.md").read_text("utf-8")
MODULE: Final = "longpoint.catalogue.coat_rail"


def fenced(language: str) -> list[str]:
    return re.findall(rf"^```{language}\n(.*?)^```$", PAGE, flags=re.DOTALL | re.MULTILINE)


TRIM_FILE, CHECK_FILE = fenced("python")


def as_module(source: str, monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """Return the page's file as if it stood where the page puts it."""
    module = ModuleType(MODULE)
    monkeypatch.setitem(sys.modules, MODULE, module)
    exec(compile(source, "coat_rail.py", "exec"), module.__dict__)
    return module


def checks() -> list[Callable[[], None]]:
    """Return the page's own tests; the trim has to be in place."""
    namespace: dict[str, Any] = {"__name__": "test_coat_rail"}
    exec(compile(CHECK_FILE, "test_coat_rail.py", "exec"), namespace)
    return [each for name, each in namespace.items() if name.startswith("test_")]


@pytest.fixture
def coat_rail(monkeypatch: pytest.MonkeyPatch) -> TrimKind:
    kind = as_module(TRIM_FILE, monkeypatch).TRIM
    assert isinstance(kind, TrimKind)
    return kind


def planned(kind: TrimKind) -> HousePlan:
    (entry,) = fenced("toml")
    stock = [{"profile": "SK95", "length": 2400, "price": 9}]
    document = house(stock=stock, **tomllib.loads(entry))
    survey = read_house(document, trim_tables((kind,)))
    assert survey.house.held == ()
    return plan_house(survey, kinds=(kind,))


def test_the_trim_of_the_page_is_not_in_the_catalogue() -> None:
    assert "coat-rail" not in {kind.name for kind in CATALOGUE}


def test_its_house_file_gives_the_piece_and_a_stick_to_cut_it_from(coat_rail: TrimKind) -> None:
    plan = planned(coat_rail)
    (piece,) = plan.pieces
    assert (piece.mark, piece.trim, piece.room) == ("CR1-board", "CR1", "Hall")
    assert (piece.inner_mm, piece.outer_mm, piece.back_mm) == (1458.0, 1458.0, 1458.0)
    (stick,) = plan.cut_plan.sticks
    assert [laid.piece for laid in stick.laid] == ["CR1-board"]
    assert [str(finding) for finding in plan.findings if finding.place == "CR1"] == []


def test_what_the_page_quotes_stands_on_the_sheet_of_other_trim(coat_rail: TrimKind) -> None:
    plan = planned(coat_rail)
    (sheet,) = [each for each in house_sheets(plan) if each.name == "trims"]
    text = " ".join(re.sub(r"<[^>]+>", " ", sheet_html(sheet)).split())
    quoted = re.findall(r"^> (.+)$", PAGE, flags=re.MULTILINE)
    assert len(quoted) == 4
    for line in quoted:
        assert line in text
    assert "A board with 5 pegs at equal distances." in sheet_html(sheet)


def test_it_stands_on_the_screen_and_in_the_schema(coat_rail: TrimKind) -> None:
    assert "CR1-board" in pieces_text(planned(coat_rail), "CR1")
    schema = schema_text(trim_tables((coat_rail,)))
    assert "coat-rail" in schema
    assert "How many pegs." in schema


@pytest.mark.usefixtures("coat_rail")
def test_the_checks_of_the_page_hold() -> None:
    found = checks()
    assert len(found) == 4
    for check in found:
        check()


@pytest.mark.parametrize(
    ("right", "wrong"),
    [
        ("wall_mm - PLAY_MM", "wall_mm"),
        ("/ (pegs - 1)", "/ pegs"),
        ("LEAST_APART_MM: Final = 90.0", "LEAST_APART_MM: Final = 9.0"),
    ],
)
def test_the_checks_of_the_page_fail_when_the_trim_is_wrong(
    right: str, wrong: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert TRIM_FILE.count(right) == 1
    as_module(TRIM_FILE.replace(right, wrong), monkeypatch)
    failed = 0
    for check in checks():
        try:
            check()
        except AssertionError:
            failed += 1
    assert failed > 0


@pytest.mark.parametrize(
    ("name", "source"),
    [
        ("src/longpoint/catalogue/coat_rail.py", TRIM_FILE),
        ("tests/unit/catalogue/test_coat_rail.py", CHECK_FILE),
    ],
)
# The trim isn't there, so its import can't be told from another's and sorted.
@pytest.mark.parametrize("work", [("check", "--ignore", "I001"), ("format", "--check")])
def test_the_files_of_the_page_are_in_the_style_of_the_house(
    name: str, source: str, work: tuple[str, ...]
) -> None:
    assert f"`{name}`" in PAGE
    done = subprocess.run(
        [sys.executable, "-m", "ruff", *work, "--stdin-filename", str(ROOT / name), "-"],
        input=source,
        cwd=ROOT,
        check=False,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stdout + done.stderr
