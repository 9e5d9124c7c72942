"""The house with every other kind of trim, as a person last read and approved its sheets."""

import tomllib
from functools import cache
from pathlib import Path

import pytest

from longpoint.catalogue.all_trims import CATALOGUE, trim_tables
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.sheets.book import house_sheets
from longpoint.sheets.html import sheet_html
from longpoint.sheets.html_style import STYLE
from longpoint.sheets.terminal import pieces_text
from longpoint.survey.house_file import read_house
from tests.golden_files import Golden

HOUSE = Path(__file__).parents[2] / "examples" / "otter-mill.toml"


@cache
def planned() -> HousePlan:
    with HOUSE.open("rb") as file:
        return plan_house(read_house(tomllib.load(file), trim_tables()))


def test_the_example_has_every_kind_of_trim_and_holds_nothing() -> None:
    assert {trim.entry.kind for trim in planned().trims} == {kind.name for kind in CATALOGUE}
    assert planned().held == frozenset()


@pytest.mark.parametrize("name", ["openings", "trims"])
def test_the_sheet_is_as_it_was_approved(name: str, golden: Golden) -> None:
    sheet = next(sheet for sheet in house_sheets(planned()) if sheet.name == name)
    text = sheet_html(sheet).replace(STYLE, "\n/* style */\n").replace("><", ">\n<")
    golden(f"otter-mill-{name}.html", text)


def test_the_pieces_are_as_they_were_approved(golden: Golden) -> None:
    golden("otter-mill-pieces.txt", pieces_text(planned()) + "\n")
