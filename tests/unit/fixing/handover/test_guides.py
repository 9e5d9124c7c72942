from datetime import date

import pytest

from longpoint.fixing.handover.guides import chosen_guides, months_since, place_of
from longpoint.survey.house_file.handover_tables import PLACES
from longpoint.trims.tolerances import Standing
from tests.house_documents import the_house


@pytest.mark.parametrize(
    ("place", "contract", "guide"),
    [
        ("uk", "2026-01-01", "NHBC Standards 2020"),
        ("uk", "2019-06-01", "NHBC Standards 2019"),
        ("uk", "2016-06-01", "UK warranty technical manual V7 2014"),
        ("au-nsw", "2026-01-01", "NSW Guide to Standards and Tolerances 2017"),
        ("us", "2026-01-01", "US builder's limited warranty manual, trim undated"),
    ],
)
def test_place_and_contract_choose_guide_and_edition(place: str, contract: str, guide: str) -> None:
    chosen = chosen_guides(the_house(handover={"place": place, "contract": contract}))
    assert chosen.guide is not None
    assert f"{chosen.guide.name} {chosen.guide.edition}" == guide
    assert {limit.guide for limit in chosen.limits} == {chosen.guide}


@pytest.mark.parametrize("place", ["au", "au-vic", "nz", "ie", "ca"])
def test_where_nothing_was_read_no_other_guide_stands_in(place: str) -> None:
    chosen = chosen_guides(the_house(handover={"place": place}))
    assert (chosen.guide, chosen.limits) == (None, ())
    assert chosen.why


def test_before_the_oldest_edition_none_is_used() -> None:
    chosen = chosen_guides(the_house(handover={"place": "au-nsw", "contract": "2010-01-01"}))
    assert chosen.guide is None
    assert "2010" in chosen.why


@pytest.mark.parametrize("place", PLACES)
def test_every_place_is_answered_and_nothing_remembered_is_used(place: str) -> None:
    chosen = chosen_guides(the_house(handover={"place": place}))
    assert chosen.why
    assert all(limit.standing is Standing.READ for limit in chosen.limits)


def test_the_place_is_the_dialects_unless_it_is_told() -> None:
    assert place_of(the_house(dialect="nz")) == "nz"
    assert place_of(the_house(dialect="nz", handover={"place": "uk"})) == "uk"


def test_without_a_contract_the_newest_is_taken_and_that_is_said() -> None:
    chosen = chosen_guides(the_house(dialect="uk"))
    assert chosen.guide is not None
    assert chosen.guide.edition == "2020"
    assert "newest edition" in chosen.why


def test_months_count_from_handing_over() -> None:
    assert months_since(date(2025, 1, 1), date(2026, 1, 1)) == pytest.approx(12.0, abs=0.01)
    assert months_since(date(2026, 1, 1), date(2025, 1, 1)) == 0.0
