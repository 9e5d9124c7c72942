"""What was learned is said in plain words, and forecasts are judged once there are enough."""

from longpoint.cli.learned_words import learned_text
from longpoint.exchange.crew_files import CrewFile
from longpoint.forecast.kept_forecasts import KeptForecast
from longpoint.forecast.learning.calibration import Outcome
from longpoint.forecast.learning.setup import ANGLE_PRIOR, Learned, Seen
from longpoint.forecast.learning.setup_key import AngleKey


def said(crew: CrewFile) -> str:
    return " ".join(learned_text(CrewFile(), crew, ()).split())


def crew_of(houses: int, fitted_of_ten: int, chance: float) -> CrewFile:
    """Houses of ten sets: every other one with one set more that fitted, and one fewer."""
    outcomes = (
        Outcome(house=f"H{h}", chance=chance, closed=n < fitted_of_ten + (-1) ** h)
        for h in range(houses)
        for n in range(10)
    )
    return CrewFile(
        forecasts=tuple(KeptForecast(mark=str(i), outcome=x) for i, x in enumerate(outcomes))
    )


def test_a_saw_is_named_with_its_setting_and_blade() -> None:
    key = AngleKey(saw="S1", setting="fixed station", blade="fine")
    learned = Learned().with_seen(key, Seen(mark="W1", value=0.2), ANGLE_PRIOR)
    assert "Saw S1 (fixed station, fine): Your 45 cuts steep" in said(CrewFile(learned=learned))


def test_too_few_forecasts_are_not_judged() -> None:
    text = said(crew_of(houses=1, fitted_of_ten=8, chance=0.85))
    assert "Too few to judge: 10 sets of 1 house, 9 fitted." in text
    assert "Called" not in text


def test_enough_forecasts_are_shown_beside_what_came_of_them() -> None:
    text = said(crew_of(houses=6, fitted_of_ten=8, chance=0.8))
    assert "On the whole they kept their word: 60 sets of 6 houses." in text
    assert "Called 80 in 100: 48 of 60 fitted" in text


def test_forecasts_that_promise_too_much_are_told() -> None:
    text = said(crew_of(houses=6, fitted_of_ten=4, chance=0.95))
    assert "On the whole they promised too much" in text


def test_no_chance_is_shown_over_99_in_100() -> None:
    text = said(crew_of(houses=6, fitted_of_ten=9, chance=1.0))
    assert "Called 99 in 100" in text
    assert "100 in 100" not in text
