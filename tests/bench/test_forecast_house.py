"""The forecast of 25 openings: its lines, its draws, and the whole with what is worth doing."""

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from longpoint.forecast.budget.house_budget import house_budget
from longpoint.forecast.chances import Imagined, forecast_faces
from longpoint.forecast.face_lines import FaceLines, face_lines, weighed_face
from longpoint.forecast.forecast_house import Outlook, forecast_house
from longpoint.forecast.lines import LineEngine
from longpoint.forecast.plain_lines import PlainLines
from longpoint.forecast.planned_face import planned_faces
from longpoint.forecast.records import HouseForecast
from longpoint.forecast.terms import frame_errors
from longpoint.solvers.numpy_lines import NumpyLines
from tests.twenty_five_openings import house_and_shapes

HOUSE, SHAPES = house_and_shapes()
NOTHING_HELD: frozenset[str] = frozenset()


def with_engines(*of_plain: pytest.MarkDecorator) -> pytest.MarkDecorator:
    return pytest.mark.parametrize(
        ("engine", "draws"),
        [
            pytest.param(NumpyLines(), 100_000, id="numpy"),
            pytest.param(PlainLines(), 2000, id="plain", marks=of_plain),
        ],
    )


def lines_of_the_house() -> tuple[FaceLines, ...]:
    return tuple(face_lines(face) for face in planned_faces(HOUSE, SHAPES, NOTHING_HELD))


def test_the_lines_of_twenty_five_openings(benchmark: BenchmarkFixture) -> None:
    found = benchmark.pedantic(lines_of_the_house, rounds=2)  # type: ignore[no-untyped-call]
    assert len(found) == 25


def test_lines_put_over_what_twenty_five_frames_may_be_out_by(benchmark: BenchmarkFixture) -> None:
    faces, budget = lines_of_the_house(), house_budget(HOUSE)

    def weighed() -> int:
        return sum(
            len(weighed_face(each, frame_errors(each.face, budget, HOUSE)).lines[-1])
            for each in faces
        )

    assert benchmark(weighed) > 0


@with_engines()
def test_twenty_five_openings_drawn_and_judged(
    benchmark: BenchmarkFixture, engine: LineEngine, draws: int
) -> None:
    imagined = Imagined(engine=engine, draws=draws if benchmark.enabled else draws // 20)
    faces, budget = lines_of_the_house(), house_budget(HOUSE)
    found: HouseForecast = benchmark.pedantic(  # type: ignore[no-untyped-call]
        forecast_faces, args=(HOUSE, faces, budget, imagined), rounds=2
    )
    assert 0.3 < found.all_fit < 0.6


@with_engines(pytest.mark.long)
def test_the_whole_forecast_of_twenty_five_openings(
    benchmark: BenchmarkFixture, engine: LineEngine, draws: int
) -> None:
    imagined = Imagined(engine=engine, draws=draws if benchmark.enabled else draws // 20)
    found: Outlook = benchmark.pedantic(  # type: ignore[no-untyped-call]
        forecast_house, args=(HOUSE, SHAPES, NOTHING_HELD, imagined), rounds=1
    )
    assert found.if_proved is not None
    assert found.if_proved.all_fit > found.forecast.all_fit
