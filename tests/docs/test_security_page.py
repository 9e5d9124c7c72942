"""The page on the crew's server has every requirement of level 1, and what it names exists.

Numbers: OWASP Application Security Verification Standard 5.0.0, requirements with level 1.
"""

import re

import pytest

from tests.docs.test_documents import ROOT
from tests.docs.test_faults_page import NAMED, names_in

PAGE = (ROOT / "docs" / "explanation" / "security.md").read_text(encoding="utf-8")
ROWS = re.findall(r"^\| (\d+\.\d+\.\d+) \| (.+?) \| (.+?) \| ?(.*?) ?\|$", PAGE, flags=re.MULTILINE)
LEVEL_1 = {
    "1.2": (1, 2, 3, 4, 5),
    "1.3": (1, 2),
    "1.5": (1,),
    "2.1": (1,),
    "2.2": (1, 2),
    "2.3": (1,),
    "3.2": (1, 2),
    "3.3": (1,),
    "3.4": (1, 2),
    "3.5": (1, 2, 3),
    "4.1": (1,),
    "4.4": (1,),
    "5.2": (1, 2),
    "5.3": (1, 2),
    "6.1": (1,),
    "6.2": (1, 2, 3, 4, 5, 6, 7, 8),
    "6.3": (1, 2),
    "6.4": (1, 2),
    "7.2": (1, 2, 3, 4),
    "7.4": (1, 2),
    "8.1": (1,),
    "8.2": (1, 2),
    "8.3": (1,),
    "9.1": (1, 2, 3),
    "9.2": (1,),
    "10.4": (1, 2, 3, 4, 5),
    "11.3": (1, 2),
    "11.4": (1,),
    "12.1": (1,),
    "12.2": (1, 2),
    "13.4": (1,),
    "14.2": (1,),
    "14.3": (1,),
    "15.1": (1,),
    "15.2": (1,),
    "15.3": (1,),
}


def test_every_requirement_of_level_1_is_there_once() -> None:
    asked = [f"{section}.{number}" for section, all_of in LEVEL_1.items() for number in all_of]
    assert [number for number, *_ in ROWS] == asked
    assert len(asked) == 70


def test_every_row_that_applies_names_what_holds_it() -> None:
    bare = [number for number, _, here, by in ROWS if not here.startswith("not here") and not by]
    assert bare == []


def test_every_test_that_the_page_names_exists() -> None:
    named = NAMED.findall(PAGE)
    assert len(named) > 30
    assert [f"{path}::{name}" for path, name in named if name not in names_in(path)] == []


@pytest.mark.parametrize("path", sorted(set(re.findall(r"`((?:src|docs|tests)/[\w/.-]+)`", PAGE))))
def test_every_file_that_the_page_names_exists(path: str) -> None:
    assert (ROOT / path).is_file()
