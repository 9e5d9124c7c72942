import pytest

from longpoint.errors import QuantityError
from longpoint.trims.thumb_figures import ThumbFigures


@pytest.mark.parametrize(
    "wrong",
    [
        {"face_mm": 0.0},
        {"neighbour_mm": 0.0},
        {"depth_mm": 0.0},
        {"thickness_mm": 0.0},
        {"limit_mm": 0.0},
        {"size_mm": 99.0},
        {"height_mm": 0.0},
        {"corner_deg": 30.0},
        {"corner_deg": 136.0},
        {"lining_mm": 71.0},
        {"proud_mm": 40.0},
        {"apart_mm": 400.0},
        {"quirk_mm": -1.0},
        {"add_mm": -1.0},
        {"apart_mm": -1.0},
        {"lining_mm": -1.0},
        {"proud_mm": -1.0},
    ],
)
def test_figures_of_no_piece_are_refused(wrong: dict[str, float]) -> None:
    with pytest.raises(QuantityError):
        ThumbFigures(**wrong)


def test_the_length_along_is_the_opening_two_quirks_and_a_face() -> None:
    assert ThumbFigures().along_mm == 1180.0 + 2 * 5.0 + 66.0


def test_the_bearing_runs_from_the_back_of_the_lining_to_the_outer_edge() -> None:
    assert ThumbFigures(face_mm=66.0, quirk_mm=5.0, lining_mm=20.0).bearing_mm == 51.0
