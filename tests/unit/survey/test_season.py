from longpoint.survey.season import HouseSeasons


def test_left_alone_a_house_is_fitted_between_its_driest_and_its_dampest() -> None:
    seasons = HouseSeasons()

    assert seasons.fitting is not None
    assert (
        seasons.driest.humidity_percent
        < seasons.fitting.humidity_percent
        < seasons.dampest.humidity_percent
    )
