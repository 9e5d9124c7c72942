"""Openings of any shape go through the forecast; only four straight sides get a verdict."""

from typing import Any

import pytest

from longpoint.errors import SurveyError
from longpoint.forecast.built_frames import frame_mark
from longpoint.forecast.chances import Imagined
from longpoint.forecast.forecast_house import Outlook, forecast_house
from longpoint.forecast.on_the_wall import tap_advice
from longpoint.forecast.planned_face import is_forecast, planned_faces
from longpoint.forecast.records import Step, Verdict
from longpoint.linear.simplex import SimplexSolver
from longpoint.solvers.numpy_lines import NumpyLines
from tests.house_documents import window
from tests.shaped_houses import GABLE, HALL, read, shapes

pytestmark = pytest.mark.no_cover

SQUARE = [[0, 0], [900, 0], [900, 1200], [0, 1200]]
RAKED = {"sides": [900, 1400, 966, 1050], "angles": [90, 68.7, 111.3, 90]}


def outlook(*openings: dict[str, Any]) -> Outlook:
    house = read(*openings)
    imagined = Imagined(engine=NumpyLines(), draws=4000, seed=5)
    return forecast_house(house, shapes(house), frozenset(), imagined)


@pytest.mark.parametrize(
    ("opening", "expected"),
    [(window(), True), ({"corners": SQUARE}, True), (RAKED, True), (GABLE, False), (HALL, False)],
)
def test_four_straight_sides_are_forecast_however_they_were_read(
    opening: dict[str, Any], expected: bool
) -> None:
    house = read(opening)
    assert is_forecast(house.openings[0]) is expected
    assert bool(planned_faces(house, shapes(house), frozenset())) is expected


def test_an_arch_or_a_gable_gets_no_verdict_and_upsets_no_other() -> None:
    found = outlook({**HALL, "mark": "A1"}, {**window(), "mark": "W7"}, {**GABLE, "mark": "G1"})
    assert [advice.mark for advice in found.advice] == ["W7"]
    assert found.advice == outlook({**window(), "mark": "W7"}).advice


def test_one_that_is_held_stays_held_whatever_its_shape() -> None:
    house = read(HALL)
    imagined = Imagined(engine=NumpyLines(), draws=100, seed=5)
    found = forecast_house(house, shapes(house), frozenset({"W1"}), imagined)
    assert [advice.verdict for advice in found.advice] == [Verdict.HOLD]


@pytest.mark.parametrize("opening", [{"corners": SQUARE}, RAKED])
def test_four_corners_or_sides_and_angles_get_a_chance_like_any_window(
    opening: dict[str, Any],
) -> None:
    (advice,) = outlook({**opening, "max_gap": 0.2}).advice
    (wider,) = outlook({**opening, "max_gap": 1.0}).advice
    assert advice.chance is not None
    assert wider.chance is not None
    assert 0.0 < advice.chance < wider.chance <= 1.0


def test_no_reading_of_sides_and_diagonals_is_advised_where_there_are_none() -> None:
    (advice,) = outlook({"corners": SQUARE, "max_gap": 0.15}).advice
    steps = {worth.step for worth in advice.steps}
    assert not steps & {Step.DIAGONALS, Step.OTHER_SIDE, Step.REPEAT, Step.BEVEL}


def test_taps_are_not_worked_out_for_an_arch() -> None:
    house = read(HALL)
    with pytest.raises(SurveyError, match="four straight sides"):
        tap_advice(house, shapes(house), "W1", solver=SimplexSolver())


def test_a_set_told_by_corners_is_known_by_its_corners() -> None:
    marks = set()
    for width in (900, 901):
        house = read({"corners": [[0, 0], [width, 0], [width, 1200], [0, 1200]]})
        (face,) = planned_faces(house, shapes(house), frozenset())
        marks.add(frame_mark(house, face))
    assert len(marks) == 2
