import pytest

from longpoint.errors import Severity
from longpoint.survey.checks.impossible import check_impossible
from tests.drawn_openings import house_of, opening_of, readings_of

GOOD = {"top": 1187, "bottom": 1186, "left": 462, "right": 462, "rising": 1274, "falling": 1272}


def test_a_good_opening_is_possible() -> None:
    assert check_impossible(house_of(opening_of("W1", readings_of(**GOOD)))) == ()


@pytest.mark.parametrize(
    ("place", "written", "word"),
    [
        ("rising", 1724, "longer"),
        ("falling", 272, "short"),
        ("top", 11870, "short"),
        ("left", 46, "longer"),
    ],
)
def test_a_diagonal_that_its_sides_can_not_span_is_stopped(
    place: str, written: float, word: str
) -> None:
    (found,) = check_impossible(house_of(opening_of("W1", readings_of(**{**GOOD, place: written}))))
    assert found.severity is Severity.STOP
    assert word in found.wrong
    assert f"{written}" in found.read


def test_the_slip_that_would_mend_it_is_proposed() -> None:
    (found,) = check_impossible(house_of(opening_of("W1", readings_of(**{**GOOD, "rising": 2174}))))
    assert "rising 1274 mm (digits swapped)" in found.do


def test_a_width_and_a_height_alone_are_possible() -> None:
    assert check_impossible(house_of(opening_of("W1", width=1187, height=462))) == ()


def test_one_width_serves_for_top_and_bottom() -> None:
    opening = opening_of("W1", width=1187, height=462, rising=1724)
    assert len(check_impossible(house_of(opening))) == 1
