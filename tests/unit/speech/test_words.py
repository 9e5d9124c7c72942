"""The catalogues are those of today's sources, and a translation names the same values."""

import functools
import string

import pytest
from babel.messages.catalog import Catalog

from tools.words import (
    COUNTRIES,
    LETTER,
    NAMED,
    TEMPLATE,
    WORDS,
    collected,
    compiled,
    names_in,
    po_text,
    proposed,
    template_text,
    translations,
)

CATALOGUES = sorted(path.stem for path in WORDS.glob("*.po"))
LANGUAGES = [code for code in CATALOGUES if code not in COUNTRIES]


# Asked by the tests, not when they are read: each process of the tests reads all of them.
now = functools.cache(collected)


@functools.cache
def book(code: str) -> Catalog:
    return translations(WORDS / f"{code}.po")


def _forms(said: str | tuple[str, ...] | list[str]) -> tuple[str, ...]:
    return (said,) if isinstance(said, str) else tuple(said)


def test_the_template_is_what_the_sources_say() -> None:
    assert TEMPLATE.read_bytes() == template_text(now()), "run `make words`"


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_language_has_the_messages_of_today_and_no_others(code: str) -> None:
    assert {each.id for each in book(code) if each.id} == {each.id for each in now() if each.id}


@pytest.mark.parametrize("code", COUNTRIES)
def test_a_country_has_every_message_that_it_may_say_otherwise(code: str) -> None:
    otherwise = {
        each.id
        for each in now()
        if each.id and any(proposed(form, code) != form for form in _forms(each.id))
    }
    assert {each.id for each in book(code) if each.id} == otherwise
    assert all(each.string and all(_forms(each.string)) for each in book(code) if each.id)


@pytest.mark.parametrize("code", CATALOGUES)
def test_what_the_program_reads_is_what_was_translated(code: str) -> None:
    assert (WORDS / f"{code}.mo").read_bytes() == compiled(book(code)), "run `make words`"
    assert (WORDS / f"{code}.po").read_bytes() == po_text(book(code)), "run `make words`"


@pytest.mark.parametrize("code", CATALOGUES)
def test_every_message_is_translated_plurals_too(code: str) -> None:
    missing = [
        each.id for each in book(code) if each.id and not (each.string and all(_forms(each.string)))
    ]
    assert not missing


@pytest.mark.parametrize("code", CATALOGUES)
def test_a_translation_names_the_same_values_and_can_be_filled_in(code: str) -> None:
    for message in book(code):
        english = message.id if isinstance(message.id, tuple) else (message.id,)
        other = message.string if isinstance(message.string, tuple) else (message.string,)
        for before, after in zip(map(str, english), other, strict=True):
            if after:
                assert names_in(str(after)) == names_in(before), before
                assert list(string.Formatter().parse(str(after))), after


def test_a_message_without_a_letter_is_left_to_no_translator() -> None:
    ids = [each.id if isinstance(each.id, str) else each.id[0] for each in now() if each.id]
    assert all(LETTER.search(NAMED.sub("", message)) for message in ids)
