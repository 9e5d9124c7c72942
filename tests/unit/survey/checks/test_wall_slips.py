import pytest

from longpoint.quantities.length import Units
from longpoint.survey.checks.wall_slips import guess_slip, is_of_digits, slip_words


@pytest.mark.parametrize(
    ("read_mm", "wanted_mm", "words"),
    [
        (2315, 2215, "100 mark"),
        (2315, 2213, "100 mark"),
        (3389, 3190, "stick"),
        (2340.4, 2315, "1 inch mark"),
        (3315, 2315, "metre too many"),
        (1315, 2315, "metre lost"),
        (2245, 2315, "case not added"),
    ],
)
def test_a_slip_of_the_tape_is_named(read_mm: float, wanted_mm: float, words: str) -> None:
    slip = guess_slip(read_mm, wanted_mm, Units.MM)
    assert slip is not None
    assert words in slip_words(slip, Units.MM)
    assert not is_of_digits(slip)


def test_a_slip_of_the_pencil_names_the_figure_meant() -> None:
    slip = guess_slip(1446.0, 1464.0, Units.MM)
    assert slip is not None
    assert is_of_digits(slip)
    assert slip_words(slip, Units.MM).startswith("1464 mm")


@pytest.mark.parametrize("over_mm", [17.0, 40.0, 150.0])
def test_no_slip_is_named_that_does_not_fit(over_mm: float) -> None:
    assert guess_slip(2222.0 + over_mm, 2222.0, Units.MM) is None


def test_a_wider_doubt_lets_a_slip_come_nearer() -> None:
    assert guess_slip(3389.0, 3195.0, Units.MM) is None
    assert guess_slip(3389.0, 3195.0, Units.MM, near_mm=8.0) is not None
