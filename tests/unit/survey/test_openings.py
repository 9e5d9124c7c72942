import pytest

from longpoint.survey.openings import OpeningKind
from tests.fitted_houses import opening, rectangle


@pytest.mark.parametrize(
    ("kind", "stands"),
    [(OpeningKind.WINDOW, False), (OpeningKind.DOOR, True), (OpeningKind.CASED, True)],
)
def test_only_a_window_does_not_stand_on_the_floor(kind: OpeningKind, stands: bool) -> None:
    assert opening(rectangle(820.0, 2040.0), kind=kind).stands_on_floor is stands
