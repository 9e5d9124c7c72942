"""Three sheets in German, as a person last approved them."""

from importlib.resources import files

import pytest

from longpoint.sheets.book import house_sheets
from longpoint.sheets.fixing_sheet import fixing_sheets
from longpoint.sheets.html import sheet_html
from longpoint.sheets.html_style import STYLE
from longpoint.sheets.in_tongue import in_tongue
from longpoint.speech.tongue import Translated
from tests.golden_files import Golden
from tests.unit.sheets.sample import PLAN

GERMAN = Translated("de", (files("longpoint.speech") / "words" / "de.mo").read_bytes())
SHEETS = {sheet.name: sheet for sheet in (*house_sheets(PLAN), *fixing_sheets(PLAN))}


@pytest.mark.parametrize("name", ["cut", "openings", "fixing"])
def test_the_german_sheet_is_as_approved(name: str, golden: Golden) -> None:
    text = sheet_html(in_tongue(SHEETS[name], GERMAN))
    assert '<html lang="de">' in text
    golden(f"german-{name}.html", text.replace(STYLE, "\n/* style */\n").replace("><", ">\n<"))
