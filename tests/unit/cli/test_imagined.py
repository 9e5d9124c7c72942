import pytest

from longpoint.cli.imagined import PLAIN_DRAWS, house_imagined
from longpoint.forecast.chances import DRAWS
from longpoint.forecast.plain_lines import PlainLines
from longpoint.solvers.numpy_lines import NumpyLines


@pytest.mark.parametrize(
    ("is_installed", "engine", "draws"),
    [(True, NumpyLines, DRAWS), (False, PlainLines, PLAIN_DRAWS)],
)
def test_the_quickest_engine_that_is_there_is_taken(
    monkeypatch: pytest.MonkeyPatch, is_installed: bool, engine: type, draws: int
) -> None:
    monkeypatch.setattr(NumpyLines, "is_installed", lambda: is_installed)
    imagined = house_imagined()
    assert isinstance(imagined.engine, engine)
    assert imagined.draws == draws
    assert house_imagined(750).draws == 750
