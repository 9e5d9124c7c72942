from dataclasses import fields, replace

import pytest

from longpoint.pieces.piece import Role
from longpoint.sheets.dialects import (
    in_words,
    kind_words,
    method_short,
    method_words,
    piece_words,
    role_words,
    words_for,
)
from longpoint.survey.house import Dialect
from longpoint.survey.openings import Method, OpeningKind
from tests.unit.sheets.sample import PIECES


@pytest.mark.parametrize("dialect", list(Dialect))
def test_every_country_has_all_words(dialect: Dialect) -> None:
    words = words_for(dialect)
    assert all(getattr(words, field.name) for field in fields(words))
    assert all(role_words(role, words) for role in Role)


def test_the_words_that_differ_differ() -> None:
    uk, us, nz = words_for(Dialect.UK), words_for(Dialect.US), words_for(Dialect.NZ)
    assert (uk.quirk, us.quirk, nz.quirk) == ("margin", "reveal", "quirk")
    assert (uk.mitre, us.mitre, words_for(Dialect.CA).mitre) == ("mitre", "miter", "mitre")
    assert role_words(Role.RUN, us) == "baseboard"
    assert role_words(Role.BOARD, us) == "stool"


def test_a_piece_of_a_second_face_says_which() -> None:
    piece = replace(PIECES[1], face="b")
    assert piece_words(piece, words_for(Dialect.UK)) == "W1 face b head"


def test_every_kind_and_method_has_words() -> None:
    assert len({kind_words(kind) for kind in OpeningKind}) == len(OpeningKind)
    assert len({method_words(method) for method in Method}) == len(Method)
    assert len({method_short(method) for method in Method}) == len(Method)


@pytest.mark.parametrize(
    ("ours", "us", "uk"),
    [
        ("Mitres of an architrave", "Miters of a casing", "Mitres of an architrave"),
        ("scribed to the skirting's top", "coped to the baseboard's top", None),
        ("a mitred return, quirks of 5", "a mitered return, reveals of 5", None),
        ("to the reveal's near face", "to the recess's near face", "to the reveal's near face"),
        ("a window board on a cornice", "a stool on a crown", "a window board on a cornice"),
        ("a jamb lining", "a jamb", "a jamb lining"),
        ("Moulding above a dado rail", "Molding above a chair rail", None),
        ("mitresome, unquirked", "mitresome, unquirked", "mitresome, unquirked"),
    ],
)
def test_our_words_in_a_text_become_those_of_the_country(ours: str, us: str, uk: str) -> None:
    assert in_words(ours, words_for(Dialect.US)) == us
    assert in_words(ours, words_for(Dialect.AU)) == ours
    if uk:
        assert in_words(ours, words_for(Dialect.UK)) == uk


def test_a_margin_in_the_isles_is_not_a_reveal() -> None:
    assert in_words("the quirk of an architrave", words_for(Dialect.IE)) == (
        "the margin of an architrave"
    )


def test_a_lining_is_a_jamb_in_the_states() -> None:
    assert role_words(Role.LINING, words_for(Dialect.US)) == "jamb"
    assert role_words(Role.LINING, words_for(Dialect.UK)) == "lining"
