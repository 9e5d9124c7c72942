import pytest

from longpoint.survey.crew import LEAST_SURE, MOST_SURE, Crew, WallAge


@pytest.mark.parametrize("chance", [0.6, 0.75, 0.9])
def test_at_the_break_even_both_ways_take_the_same_time(chance: float) -> None:
    crew = Crew(refit_min=12.0, spoiled_min=4.0, batch_saves_min=16.0 * (1 - chance))

    assert crew.sure == pytest.approx(chance)
    misfits_min = (1 - crew.sure) * (crew.refit_min + crew.spoiled_min)
    assert misfits_min == pytest.approx(crew.batch_saves_min)


def test_a_crew_that_says_nothing_breaks_even_at_nine_in_ten() -> None:
    assert Crew().sure == pytest.approx(0.9)


@pytest.mark.parametrize(
    ("crew", "sure"),
    [
        (Crew(batch_saves_min=0.0), MOST_SURE),
        (Crew(batch_saves_min=100.0), LEAST_SURE),
        (Crew(refit_min=0.0, spoiled_min=0.0), LEAST_SURE),
    ],
)
def test_it_stays_between_even_chances_and_what_a_forecast_can_tell(
    crew: Crew, sure: float
) -> None:
    assert crew.sure == sure


def test_a_crew_that_tells_of_its_walls_alone_keeps_our_minutes() -> None:
    assert Crew(walls=WallAge.OLD).has_our_minutes
    assert not Crew(batch_saves_min=3.0).has_our_minutes
