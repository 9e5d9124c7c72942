"""The page of rules of thumb is made from the code, and its commands from the crew's figures."""

import os
import re
from pathlib import Path

from longpoint.trims.thumb_figures import Rule
from tests.docs.thumb_page import thumb_page

PAGE = Path(__file__).parents[2] / "docs" / "explanation" / "rules-of-thumb.md"


def test_the_page_is_that_of_the_code() -> None:
    made = thumb_page()
    if os.environ.get("GOLDEN_ACCEPT") == "1":
        PAGE.write_text(made, encoding="utf-8")
    assert PAGE.read_text(encoding="utf-8") == made


def test_every_rule_says_that_it_has_no_source() -> None:
    sections = PAGE.read_text(encoding="utf-8").split('\n## "')[1:]
    assert len(sections) == len(Rule)
    assert all("Common practice, no source." in section for section in sections)


def test_no_chance_and_no_percentage_stands_on_it() -> None:
    assert re.findall(r"%|per cent|percent", PAGE.read_text(encoding="utf-8")) == []
