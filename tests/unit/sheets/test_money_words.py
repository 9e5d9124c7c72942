"""The words on papers of money."""

from datetime import date
from decimal import Decimal
from functools import cache

import pytest

from longpoint.pricing.money import PlainMoneyText
from longpoint.pricing.quote import Quote
from longpoint.pricing.rates import Timber
from longpoint.pricing.variation import make_variation, quoted_sticks
from longpoint.pricing.work import Task, WorkKind
from longpoint.sheets.money_rows import csv_text, variation_lines
from longpoint.sheets.money_words import excluded, work_words
from longpoint.sheets.plain_text import sheet_text
from longpoint.sheets.quote_sheet import quote_sheet
from longpoint.sheets.variation_sheet import variation_sheet
from longpoint.survey.house import Dialect
from tests.priced_jobs import counted, quoted, rates


@cache
def quote() -> Quote:
    return quoted(counted(rates()))


def test_every_kind_of_work_has_words_of_its_own_in_every_country() -> None:
    for dialect in Dialect:
        told = [work_words(kind, dialect) for kind in WorkKind]
        assert len(set(told)) == len(WorkKind)


@pytest.mark.parametrize(
    ("dialect", "corner"),
    [
        (Dialect.AU, "External corners of skirting, mitred"),
        (Dialect.US, "Outside corners of baseboard, mitered"),
        (Dialect.CA, "Outside corners of baseboard, mitred"),
    ],
)
def test_a_mitre_is_spelt_as_the_country_does(dialect: Dialect, corner: str) -> None:
    assert work_words(WorkKind.EXTERNAL_CORNER, dialect) == corner


def test_what_has_no_hours_or_no_timber_is_named_as_not_in_the_price() -> None:
    told = excluded(
        ("lifting gear",),
        Timber.OURS,
        Dialect.US,
        labour_only=[WorkKind.CORNICE],
        uncounted=["W2"],
        unpriced=[WorkKind.WINDOW_BOARD],
    )

    assert told[:4] == (
        "what couldn't be read: W2",
        "work on: stools",
        "timber for: crown",
        "lifting gear",
    )


def test_work_without_a_price_is_said_on_the_variation() -> None:
    more = [
        Task(kind=kind, quantity=Decimal(1), place="W9")
        for kind in (WorkKind.WINDOW_BOARD, WorkKind.RESET_REVEAL)
    ]
    variation = make_variation(
        quote(),
        (),
        (*quote().tasks, *more),
        quoted_sticks(quote()),
        day=date(2026, 4, 20),
        made_from="X",
    )
    text = " ".join(sheet_text(variation_sheet(variation, quote(), PlainMoneyText())).split())

    assert "The quote has no price for this, so it is in neither: window boards." in text


def test_no_line_of_the_text_is_wider_than_asked() -> None:
    text = sheet_text(quote_sheet(quote(), PlainMoneyText()), width=60)
    assert max(map(len, text.splitlines())) <= 60


def test_words_that_look_like_a_formula_are_none_in_the_csv() -> None:
    task = Task(kind=WorkKind.RESET_REVEAL, quantity=Decimal(1), place="=W9", why="+1")
    variation = make_variation(
        quote(),
        (),
        (*quote().tasks, task),
        quoted_sticks(quote()),
        day=date(2026, 4, 20),
        made_from="X",
    )
    text = csv_text(variation_lines(variation, quote()))
    assert "'=W9: +1" in text
