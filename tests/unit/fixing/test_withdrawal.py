import pytest

from longpoint.fixing.withdrawal import (
    ASSUMED_WOOD,
    FRAME_WOODS_G,
    REFERENCE_DIAMETER_MM,
    pre_bore_share,
    reference_nails,
)
from longpoint.survey.house_file.fixing_tables import FRAME_WOODS


def test_the_house_file_names_every_wood_that_has_a_density() -> None:
    assert set(FRAME_WOODS) == set(FRAME_WOODS_G)
    assert ASSUMED_WOOD in FRAME_WOODS_G


def test_a_nail_is_worth_more_the_thicker_and_the_deeper_it_is() -> None:
    assert reference_nails(REFERENCE_DIAMETER_MM, 25.0) == pytest.approx(1.0)
    assert reference_nails(2 * REFERENCE_DIAMETER_MM, 25.0) == pytest.approx(2.0)
    assert reference_nails(REFERENCE_DIAMETER_MM, 0.0) == 0.0


def test_denser_timber_holds_better_by_the_power_of_two_and_a_half() -> None:
    ratio = reference_nails(1.6, 25.0, "southern pine") / reference_nails(1.6, 25.0)
    assert ratio == pytest.approx(1.9626, abs=0.0005)  # (0.55 / 0.42) ** 2.5 by hand


def test_dense_timber_may_be_bored_wider() -> None:
    assert pre_bore_share(0.61) > pre_bore_share(0.60)
