import pytest

from longpoint.fixing.cable_zones import cable_rule, is_in_zone
from longpoint.fixing.nail_count import apart_mm, nails_along
from longpoint.fixing.wall_behind import CUSTOMS, Rests, country_of, wall_behind
from longpoint.survey.house import Dialect
from tests.house_documents import the_house


@pytest.mark.parametrize("country", Dialect)
def test_every_country_has_its_customs_and_a_sentence_on_cables(country: Dialect) -> None:
    assert set(CUSTOMS[country]) == {"board", "stud_face", "stud_depth", "stud_spacing"}
    assert cable_rule(country).said


def test_what_is_told_stands_before_what_is_usual() -> None:
    wall = wall_behind(the_house(fixing={"board": 15, "stud_spacing": 400}))
    assert (wall.board.value_mm, wall.board.rests) == (15.0, Rests.TOLD)
    assert wall.stud_spacing.value_mm == 400.0
    assert wall.stud_face.rests is Rests.READ


def test_the_country_is_the_dialects_unless_it_is_told() -> None:
    assert country_of(the_house(dialect="nz")) is Dialect.NZ
    assert country_of(the_house(dialect="nz", fixing={"country": "au"})) is Dialect.AU


def test_a_depth_is_shown_only_where_a_rule_was_read_or_is_next_door() -> None:
    with_depth = {country for country in Dialect if cable_rule(country).depth_mm is not None}
    assert with_depth == {Dialect.UK, Dialect.IE}
    assert "ask" in cable_rule(Dialect.IE).said
    assert "local code" in cable_rule(Dialect.AU).said


def test_a_spot_in_line_with_an_accessory_is_in_a_zone() -> None:
    assert is_in_zone(1000, 1000, in_line_with_accessory=True)
    assert is_in_zone(1000, 150)
    assert not is_in_zone(1000, 1000)


def test_a_piece_no_longer_than_its_two_ends_takes_one_nail() -> None:
    assert nails_along(100.0, 50.0, 300.0) == 1
    assert nails_along(0.0, 50.0, 300.0) == 1
    assert apart_mm(100.0, 50.0, 1) == 0.0
