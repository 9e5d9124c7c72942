"""A tongue says what an English text says, whole, in its own order and with its own signs."""

import io

import pytest
from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo

from longpoint.speech.said import figure, instead, joined, lowered, raised, say, say_many
from longpoint.speech.tongue import ENGLISH, Translated


@pytest.fixture(scope="module")
def german() -> Translated:
    book = Catalog(locale="de")
    for message, words in (
        ("held: {places}", "gehalten: {places}"),
        ("{saw} cuts {wide_mm:g} mm", "{wide_mm:g} mm breit schneidet {saw}"),
        ("left leg", "linker Schenkel"),
        ("architrave", "Bekleidung"),
        ("Skirting", "Sockelleiste"),
        (" and ", " und "),
        (("{count} piece", "{count} pieces"), ("{count} Stück", "{count} Stücke")),
    ):
        book.add(message, words)
    file = io.BytesIO()
    write_mo(file, book)
    return Translated("de", file.getvalue())


def test_english_is_the_text_itself() -> None:
    said = ENGLISH.text(say("held: {places}", places="W1"))
    assert (said, type(said)) == ("held: W1", str)


def test_values_are_translated_and_names_are_not(german: Translated) -> None:
    assert german.text(say("held: {places}", places="architrave")) == "gehalten: architrave"
    assert german.text(say("held: {places}", places=say("left leg"))) == "gehalten: linker Schenkel"


def test_values_stand_where_the_language_wants_them(german: Translated) -> None:
    said = say("{saw} cuts {wide_mm:g} mm", saw="Saw 1.5", wide_mm=2.5)
    assert german.text(said) == "2,5 mm breit schneidet Saw 1.5"


@pytest.mark.parametrize(("count", "words"), [(0, "0 Stücke"), (1, "1 Stück"), (2, "2 Stücke")])
def test_a_count_takes_its_form(german: Translated, count: int, words: str) -> None:
    assert german.text(say_many("{count} piece", "{count} pieces", count=count)) == words


def test_parts_keep_their_words(german: Translated) -> None:
    both = joined(say(" and "), [say("left leg"), "W1"])
    assert german.text(both) == "linker Schenkel und W1"
    assert german.text(both + "." + say("architrave")) == "linker Schenkel und W1.Bekleidung"


def test_a_capital_is_made_in_the_language(german: Translated) -> None:
    assert (raised(say("left leg")), german.text(raised(say("left leg")))) == (
        "Left leg",
        "Linker Schenkel",
    )


def test_a_noun_keeps_its_capital_within_a_sentence(german: Translated) -> None:
    assert german.text(lowered(say("Skirting"))) == "Sockelleiste"


def test_one_countrys_word_is_translated_as_the_common_one(german: Translated) -> None:
    casing = instead("casing", say("architrave"))
    assert (casing, german.text(casing)) == ("casing", "Bekleidung")


def test_figures_take_the_languages_decimals(german: Translated) -> None:
    assert german.text(figure("812.5")) == "812,5"


def test_what_has_no_translation_stays_english(german: Translated) -> None:
    assert german.text(say("nobody translated {this}", this=say("left leg"))) == (
        "nobody translated linker Schenkel"
    )
