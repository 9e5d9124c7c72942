import math

import pytest

from longpoint.trims.joints import gap_of_plain_mitres_mm, mitre_pair, slant_mm


def test_57_beside_66_wants_unequal_mitres() -> None:
    pair = mitre_pair(90.0, 57.0, 66.0)
    assert pair.first_deg == pytest.approx(49.18, abs=0.005)
    assert pair.second_deg == pytest.approx(40.82, abs=0.005)


@pytest.mark.parametrize("corner_deg", [60.0, 88.0, 90.0, 91.0, 120.0, 150.0])
@pytest.mark.parametrize(("first_mm", "second_mm"), [(57.0, 57.0), (57.0, 66.0), (140.0, 40.0)])
def test_the_two_settings_make_up_what_the_corner_leaves(
    corner_deg: float, first_mm: float, second_mm: float
) -> None:
    pair = mitre_pair(corner_deg, first_mm, second_mm)
    assert sum(pair) == pytest.approx(180.0 - corner_deg)


@pytest.mark.parametrize("corner_deg", [60.0, 89.0, 90.0, 91.0, 135.0])
def test_equal_faces_halve_it(corner_deg: float) -> None:
    assert mitre_pair(corner_deg, 66.0, 66.0) == pytest.approx([90.0 - corner_deg / 2.0] * 2)


def test_a_corner_wider_than_square_turns_the_saw_back() -> None:
    assert mitre_pair(91.0, 66.0, 66.0).first_deg == pytest.approx(44.5)


def test_both_cuts_of_a_mitre_are_as_long() -> None:
    pair = mitre_pair(94.0, 57.0, 90.0)
    first_mm = 57.0 / math.cos(math.radians(pair.first_deg))
    assert first_mm == pytest.approx(90.0 / math.cos(math.radians(pair.second_deg)))


def test_a_wide_face_beside_a_narrow_one_may_be_cut_the_other_way() -> None:
    pair = mitre_pair(150.0, 140.0, 30.0)
    assert pair.first_deg < 0.0 < pair.second_deg


def test_one_degree_of_rack_opens_a_66_mm_mitre_by_1_63_mm() -> None:
    assert gap_of_plain_mitres_mm(66.0, 91.0) == pytest.approx(1.63, abs=0.005)
    assert gap_of_plain_mitres_mm(66.0, 89.0) == gap_of_plain_mitres_mm(66.0, 91.0)
    assert gap_of_plain_mitres_mm(66.0, 90.0) == 0.0


@pytest.mark.parametrize(
    ("along_mm", "width_mm", "slant"), [(1256.0, 66.0, 1.73), (696.0, 66.0, 3.12)]
)
def test_a_slantwise_tape_reads_long(along_mm: float, width_mm: float, slant: float) -> None:
    assert slant_mm(along_mm, width_mm) == pytest.approx(slant, abs=0.005)
