"""Forecasts are kept as they were before the set's own gaps were known, and held to what came."""

from typing import Any

import pytest

from longpoint.forecast.built_frames import frame_mark
from longpoint.forecast.chances import Imagined
from longpoint.forecast.kept_forecasts import (
    KeptForecast,
    fitted_as_built,
    kept_entry,
    kept_forecasts,
    read_kept,
)
from longpoint.forecast.learning.calibration import Outcome
from longpoint.forecast.learning.setup import ANGLE_PRIOR, Learned, Seen
from longpoint.forecast.learning.setup_key import AngleKey
from longpoint.forecast.plain_lines import PlainLines
from longpoint.forecast.planned_face import planned_faces
from longpoint.pipeline import check_house
from longpoint.shape.fitted import Shapes
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from tests.house_documents import house, window

CORNERS = ("bl", "br", "tr", "tl")
IMAGINED = Imagined(engine=PlainLines(), draws=400)


def gaps(heel_mm: float, **changes: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"gaps": {**{corner: [heel_mm, 0] for corner in CORNERS}, **changes}}


def read(*openings: dict[str, Any]) -> tuple[House, Shapes]:
    survey = read_house(house(openings=list(openings)))
    shapes, _ = check_house(survey)
    return survey.house, shapes


@pytest.mark.parametrize(
    ("as_built", "fitted"),
    [
        (gaps(0.5), True),
        (gaps(0.5, tr=[0, 0.55]), False),
        (gaps(0.1, tr=[0.1, "?"]), None),
        (gaps(0.9, tr=[0.1, "?"]), None),
        ({**gaps(0.1), "quirks": {"left": [3, 5, 7]}}, True),
        ({**gaps(0.1), "quirks": {"left": [3, 5, 7.5]}}, False),
    ],
)
def test_a_set_fitted_when_joints_and_quirks_are_within_what_is_allowed(
    as_built: dict[str, Any], fitted: bool | None
) -> None:
    (face,) = planned_faces(*read(window(as_built=as_built)), frozenset())
    assert fitted_as_built(face) is fitted


def test_only_sets_read_all_round_are_held_against_their_forecast() -> None:
    openings = (
        window(as_built=gaps(0.9)),
        window(mark="W2"),
        window(mark="W3", as_built=gaps(0.1, bl=["?", 0])),
    )
    (one,) = kept_forecasts((), *read(*openings), Learned(), IMAGINED)
    assert one.mark.startswith("Wren House, W1, ")
    assert not one.outcome.closed
    assert 0.5 < one.outcome.chance <= 1.0


def test_the_forecast_is_made_with_what_was_known_before() -> None:
    steep = Learned()
    for number in range(9):
        seen = Seen(mark=f"other {number}", value=0.5)
        steep = steep.with_seen(AngleKey(saw="S1"), seen, ANGLE_PRIOR)
    there = read(window(as_built=gaps(0.9)))
    (before,) = kept_forecasts((), *there, Learned(), IMAGINED)
    (after,) = kept_forecasts((), *there, steep, IMAGINED)
    assert after.outcome.chance < before.outcome.chance - 0.2


def kept(mark: str, chance: float, *, closed: bool) -> KeptForecast:
    return KeptForecast(mark=mark, outcome=Outcome(house="H", chance=chance, closed=closed))


def test_a_set_learned_again_keeps_its_first_forecast_and_its_last_reading() -> None:
    house_, shapes = read(window(as_built=gaps(0.1)))
    (face,) = planned_faces(house_, shapes, frozenset())
    first = kept(frame_mark(house_, face), 0.42, closed=False)
    other = kept("elsewhere", 0.5, closed=True)
    now = kept_forecasts((first, other), house_, shapes, Learned(), IMAGINED)
    assert [(x.outcome.chance, x.outcome.closed) for x in now] == [(0.42, True), (0.5, True)]


def test_an_entry_is_read_back_as_it_was() -> None:
    one = kept("H, W1, abc", 0.8725, closed=True)
    assert read_kept(kept_entry(one)) == one


@pytest.mark.parametrize("wrong", [{"chance": 1.2}, {"chance": True}, {"fitted": 1}, {"mark": 3}])
def test_an_entry_that_is_none_is_not_guessed_at(wrong: dict[str, Any]) -> None:
    entry = kept_entry(kept("A", 0.9, closed=True))
    assert read_kept({**entry, **wrong}) is None
    assert read_kept("A") is None


def test_nothing_written_down_is_nothing_kept() -> None:
    there, shapes = read(window())
    assert kept_forecasts((), there, shapes, Learned(), IMAGINED) == ()
