from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.survey.crew import Crew, ReadingMinutes, WallAge
from longpoint.survey.house_file import read_house
from tests.house_documents import codes, found, house, the_house, window


def test_what_the_crew_says_is_kept() -> None:
    told = {
        "walls": "old",
        "refit": 20,
        "spoiled": 5.5,
        "batch_saves": 2,
        "stop_block": True,
        "feeler": "0.1",
        "slips": 2.5,
        "minutes": {"proof": 10, "repeat": 1},
    }

    assert the_house(crew=told).crew == Crew(
        walls=WallAge.OLD,
        refit_min=20.0,
        spoiled_min=5.5,
        batch_saves_min=2.0,
        stop_block=True,
        feeler_mm=0.1,
        slips=2.5,
        minutes=ReadingMinutes(proof=10.0, repeat=1.0),
    )


def test_slips_left_out_are_not_known_and_counted_as_one_in_a_hundred() -> None:
    crew = the_house(crew={"refit": 12, "batch_saves": 1.2}).crew
    assert (crew.slips, crew.slips_counted) == (None, 1.0)


def test_more_slips_than_every_other_piece_are_left_out_with_a_warning() -> None:
    result = read_house(house(crew={"refit": 12, "batch_saves": 1.2, "slips": 80}))
    assert codes(result) == ["crew-unreadable"]
    assert result.house.crew.slips is None


def test_in_inches_the_feeler_is_in_inches_and_left_out_it_is_the_same() -> None:
    assert the_house(units="in", crew={"feeler": 0.002}).crew.feeler_mm == pytest.approx(0.0508)
    assert the_house(units="in", crew={}).crew.feeler_mm == 0.05


def test_a_file_without_a_crew_is_told_once_what_is_assumed() -> None:
    document = house(openings=[window(), window(mark="W2")])
    del document["crew"]

    result = read_house(document)

    (finding,) = found(result, "crew-assumed")
    assert (finding.severity, finding.place) == (Severity.NOTE, "Wren House")
    assert "12 minutes" in finding.wrong
    assert result.house.crew == Crew(assumed=True)


def test_where_no_opening_is_read_nothing_is_said_of_the_crew() -> None:
    document = house()
    del document["crew"]

    assert codes(read_house(document)) == []


def test_a_crew_that_leaves_out_what_the_break_even_hangs_on_is_told() -> None:
    result = read_house(house(openings=[window()], crew={"refit": 15}))

    assert codes(result) == ["crew-assumed"]
    assert (result.house.crew.refit_min, result.house.crew.assumed) == (15.0, False)


@pytest.mark.parametrize(
    "bad",
    [
        {"walls": "crooked"},
        {"spoiled": -1},
        {"spoiled": "5"},
        {"spoiled": 601},
        {"stop_block": "yes"},
        {"feeler": 0},
        {"minutes": 3},
        {"minutes": {"proof": True}},
        {"minutes": {"prof": 3}},
        {"refits": 3},
    ],
)
def test_a_bad_figure_is_warned_of_and_costs_no_other(bad: dict[str, Any]) -> None:
    good = {"refit": 15, "batch_saves": 2}

    result = read_house(house(openings=[window()], crew={**good, **bad}))

    assert codes(result) == ["crew-unreadable"]
    assert result.findings[0].severity is Severity.WARNING
    assert result.house.crew == Crew(refit_min=15.0, batch_saves_min=2.0)
    assert [o.mark for o in result.house.openings] == ["W1"]


def test_a_good_minute_beside_a_bad_one_is_kept() -> None:
    crew = the_house(crew={"minutes": {"proof": "long", "bevel": 2}}).crew

    assert crew.minutes == ReadingMinutes(bevel=2.0)


def test_a_crew_that_is_no_table_is_warned_of_and_assumed() -> None:
    result = read_house(house(openings=[window()], crew=5))

    assert codes(result) == ["crew-unreadable"]
    assert result.house.crew == Crew(assumed=True)
