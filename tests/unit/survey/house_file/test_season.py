from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.survey.house_file import read_house
from longpoint.survey.season import Air, HouseSeasons
from tests.house_documents import codes, found, house, the_house, window


def told(**changes: Any) -> dict[str, Any]:  # noqa: ANN401
    return {**house()["season"], **changes}


def test_what_is_told_of_the_air_is_kept() -> None:
    season = told(fitting={"humidity": 50, "temperature": 18}, driest={"humidity": 30})

    assert the_house(season=season).seasons == HouseSeasons(
        fitting=Air(humidity_percent=50.0, temperature_c=18.0),
        driest=Air(humidity_percent=30.0, temperature_c=20.0),
        dampest=Air(humidity_percent=65.0, temperature_c=20.0),
    )


def test_the_moisture_of_the_wood_stands_instead_of_the_air_at_fitting() -> None:
    result = read_house(house(openings=[window()], season=told(fitting=None, moisture=11)))
    assert codes(result) == ["season-unreadable", "key-unused"]

    result = read_house(house(openings=[window()], season=told(moisture=11)))
    assert codes(result) == ["key-unused"]
    assert (result.house.seasons.fitting, result.house.seasons.fitting_moisture_percent) == (
        None,
        11.0,
    )


def test_a_file_without_seasons_is_told_once_what_is_assumed() -> None:
    document = house(openings=[window(), window(mark="W2")])
    del document["season"]

    result = read_house(document)

    (finding,) = found(result, "season-assumed")
    assert (finding.severity, finding.place) == (Severity.NOTE, "Wren House")
    assert result.house.seasons == HouseSeasons(assumed=True)
    del document["openings"]
    assert codes(read_house(document)) == []


@pytest.mark.parametrize("without", ["fitting", "driest", "dampest"])
def test_a_season_left_out_is_assumed_and_said(without: str) -> None:
    season = told()
    del season[without]

    result = read_house(house(openings=[window()], season=season))

    assert codes(result) == ["season-assumed"]
    assert not result.house.seasons.assumed


@pytest.mark.parametrize(
    ("bad", "seasons"),
    [
        ({"driest": {"humidity": 0}}, HouseSeasons()),
        ({"driest": {"temperature": 5}}, HouseSeasons()),
        ({"driest": 35}, HouseSeasons()),
        ({"moisture": 60}, HouseSeasons()),
        ({"wettest": {"humidity": 70}}, HouseSeasons()),
        (
            {"driest": {"humidity": 30, "temperature": 68}},
            HouseSeasons(driest=Air(humidity_percent=30.0)),
        ),
    ],
)
def test_a_bad_figure_is_warned_of_and_costs_no_other(
    bad: dict[str, Any], seasons: HouseSeasons
) -> None:
    result = read_house(house(openings=[window()], season=told(**bad)))

    assert codes(result) == ["season-unreadable"]
    assert result.findings[0].severity is Severity.WARNING
    assert result.house.seasons == seasons


def test_a_season_that_is_no_table_is_warned_of_and_assumed() -> None:
    result = read_house(house(openings=[window()], season="wet"))

    assert codes(result) == ["season-unreadable"]
    assert result.house.seasons == HouseSeasons(assumed=True)
