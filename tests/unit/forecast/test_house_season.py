from dataclasses import replace

import pytest

from longpoint.forecast.house_season import house_season
from longpoint.forecast.season.joint_opening import JointEnd
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from longpoint.survey.season import Air
from tests import house_documents


def a_house(material: str = "redwood", **changes: object) -> House:
    profiles = {
        "OG57": {"face": 57, "thickness": 18, "material": material},
        "SK95": {"face": 95, "thickness": 16, "material": material},
    }
    return read_house(
        house_documents.house(openings=[house_documents.window()], profiles=profiles, **changes)
    ).house


def test_drying_opens_the_heel_and_swelling_the_toe() -> None:
    (mitres,) = house_season(a_house()).outlooks
    assert mitres.driest.end is JointEnd.HEEL
    assert mitres.dampest.end is JointEnd.TOE


def test_timber_read_with_a_meter_stands_before_the_air() -> None:
    house = a_house()
    seasons = replace(house.seasons, fitting=None, fitting_moisture_percent=8.5)
    by_air, by_meter = house_season(house), house_season(replace(house, seasons=seasons))
    assert by_meter.fitted_percent == 8.5
    assert by_meter.outlooks[0].driest.free_mm < by_air.outlooks[0].driest.free_mm


def test_the_same_air_all_year_opens_nothing() -> None:
    house = a_house()
    air = Air(humidity_percent=50.0)
    seasons = replace(house.seasons, fitting=air, driest=air, dampest=air)
    (mitres,) = house_season(replace(house, seasons=seasons)).outlooks
    assert mitres.driest.free_mm == pytest.approx(0.0)
    assert house_season(replace(house, seasons=seasons)).advice == ()


def test_unknown_timber_is_taken_for_another_and_said() -> None:
    assert house_season(a_house()).taken_for_granted == ()
    said = house_season(a_house("moonwood")).taken_for_granted
    assert len(said) == 2
    assert "OG57 (moonwood)" in said[0]


def test_each_pair_of_profiles_is_looked_at_once_and_skirting_where_there_is_some() -> None:
    one = house_documents.window()
    two = house_documents.window(
        mark="W2", architrave={"head": "SK95", "left": "OG57", "right": "OG57", "sill": "OG57"}
    )
    document = house_documents.house(openings=[one, two])
    document["runs"] = [{"mark": "S1", "length": 2000, "left": "internal", "right": "internal"}]
    places = [o.joint.place for o in house_season(read_house(document).house).outlooks]
    assert places == ["OG57 mitres", "SK95 on OG57 mitres", "SK95 scribed corners"]


def test_a_house_of_nothing_has_no_seasons() -> None:
    house = replace(a_house(), openings=())
    assert house_season(house).outlooks == ()


def test_seasons_written_the_wrong_way_round_are_taken_as_swapped_and_said() -> None:
    house = a_house()
    seasons = replace(house.seasons, driest=house.seasons.dampest, dampest=house.seasons.driest)
    right, wrong = house_season(house), house_season(replace(house, seasons=seasons))
    assert wrong.outlooks == right.outlooks
    assert "taken as swapped" in wrong.taken_for_granted[0]


def test_air_that_no_timber_can_be_worked_out_for_costs_no_plan() -> None:
    house = a_house()
    seasons = replace(house.seasons, dampest=Air(humidity_percent=99.0))
    season = house_season(replace(house, seasons=seasons))
    assert season.outlooks == ()
    assert "99" in season.trouble
    assert house_season(house).trouble == ""
