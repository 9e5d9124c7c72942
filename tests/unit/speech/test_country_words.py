"""A house's sheets speak the words of its country, findings and notes too."""

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum

import pytest

from longpoint.sheets.house_book import BookOf, house_book
from longpoint.sheets.in_tongue import in_tongue
from longpoint.sheets.opening_drawings import opening_drawings
from longpoint.sheets.terminal import findings_text, pieces_text, plan_text
from longpoint.survey.house import Dialect
from tests.country import english
from tests.spoken_houses import plans_in, typed_in_all

pytestmark = pytest.mark.no_cover

OURS = {
    Dialect.US: r"\b(?:quirk|mitre|architrave|skirting|moulding|cornice|lining|window board)\w*",
    Dialect.UK: r"\bquirks?\b|\bdrop saw",
}
KEY = re.compile(r'\w+ = "[^"]*"|"[^"]*"|\[[^\]]*\]|`[^`]*`')
"""What is to be typed into the house file keeps the words of the file."""


def texts(thing: object) -> Iterator[str]:
    """Give every text that a record holds."""
    if isinstance(thing, str) and not isinstance(thing, Enum):
        yield thing
    elif isinstance(thing, tuple):
        for each in thing:
            yield from texts(each)
    elif is_dataclass(thing) and not isinstance(thing, type):
        for field in fields(thing):
            yield from texts(getattr(thing, field.name))


@pytest.mark.parametrize("dialect", OURS)
def test_no_word_of_another_country_is_on_a_sheet(dialect: Dialect) -> None:
    tongue, left = english(dialect), set()
    ours = re.compile(OURS[dialect], re.IGNORECASE)
    names = [each for each in re.findall(r'"([^"\n]+)"', typed_in_all()) if ours.search(each)]
    typed = re.compile("|".join(map(re.escape, sorted({*names}, key=len, reverse=True))) or "$^")
    for plan in plans_in(dialect):
        book = house_book(BookOf(plan=plan, on=date(2026, 3, 2)))
        told = [
            *texts(in_tongue(book.sheets, tongue)),
            *texts(in_tongue(opening_drawings(plan), tongue)),
            plan_text(plan, tongue=tongue),
            pieces_text(plan, tongue=tongue),
            findings_text(plan.house, plan.findings, tongue=tongue),
        ]
        for text in told:
            if ours.search(typed.sub("", KEY.sub("", " ".join(text.split())))):
                left.add(text)
    assert not left
