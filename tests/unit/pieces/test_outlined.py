import math

import pytest

from longpoint.pieces.piece import CutKind, Role
from tests.shaped_houses import GABLE, made

OCTAGON = {"sides": [500] * 8, "angles": [135] * 8}

GABLED_DOOR = {
    "mark": "D1",
    "kind": "door",
    "trim": "legs-and-head",
    "corners": [[0, 0], [900, 10], [900, 2000], [450, 2300], [0, 2000]],
}


def test_sides_have_the_numbers_of_the_house_file_and_lie_clockwise() -> None:
    pieces, _ = made(GABLE)
    assert list(pieces) == [f"W1-side-{number}" for number in (1, 5, 4, 3, 2)]
    assert {piece.role for piece in pieces.values()} == {Role.SIDE}
    # Bottom, left leg, then the gable's left slope.
    assert pieces["W1-side-1"].inner_mm == pytest.approx(910.0)
    assert pieces["W1-side-5"].left.mitre_deg == pytest.approx(45.0)
    assert pieces["W1-side-5"].right.mitre_deg == pytest.approx(22.5)
    assert pieces["W1-side-4"].right.mitre_deg == pytest.approx(45.0)


@pytest.mark.parametrize("shift", range(5))
@pytest.mark.parametrize("step", [1, -1])
def test_a_side_keeps_its_number_however_the_corners_were_written(shift: int, step: int) -> None:
    lopsided = [[0, 0], [900, 0], [900, 1000], [300, 1500], [0, 1050]]
    corners = (lopsided[shift:] + lopsided[:shift])[::step]
    pieces, _ = made({"corners": corners})
    for number in range(1, 6):
        start, end = corners[number - 1], corners[number % 5]
        piece = pieces[f"W1-side-{number}"]
        grown_mm = piece.inner_mm - math.dist(start, end)
        # The quirk adds at both ends, less the flatter the corner.
        assert 0.0 < grown_mm < 12.0, number


def test_every_mitre_of_a_true_octagon_is_22_and_a_half() -> None:
    pieces, _ = made(OCTAGON)
    assert len(pieces) == 8
    grown_mm = 500.0 + 2.0 * 5.0 * math.tan(math.radians(22.5))
    for piece in pieces.values():
        assert piece.left.mitre_deg == pytest.approx(22.5)
        assert piece.right.mitre_deg == pytest.approx(22.5)
        assert piece.inner_mm == pytest.approx(grown_mm)


def test_the_sums_come_out_at_the_hook_readings() -> None:
    for shape in (GABLE, OCTAGON, GABLED_DOOR):
        for piece in made(shape)[0].values():
            assert piece.hook_mm is not None
            total = float(piece.hand_sum.rpartition("= ")[2])
            assert total == pytest.approx(piece.hook_mm, abs=0.051)


def test_legs_run_down_to_the_floor_along_its_line() -> None:
    pieces, _ = made(GABLED_DOOR)
    assert list(pieces) == ["D1-side-5", "D1-side-4", "D1-side-3", "D1-side-2"]
    fall_deg = math.degrees(math.atan2(10.0, 900.0))
    assert pieces["D1-side-5"].left.mitre_deg == pytest.approx(fall_deg)
    assert pieces["D1-side-2"].right.mitre_deg == pytest.approx(-fall_deg)


def test_legs_stand_square_on_plinth_blocks() -> None:
    plain, _ = made(GABLED_DOOR)
    pieces, _ = made(GABLED_DOOR, plinth="PB75", plinth_height=180)
    assert pieces["D1-side-5"].left.kind is CutKind.SQUARE
    assert pieces["D1-side-5"].inner_mm == pytest.approx(plain["D1-side-5"].inner_mm - 180.0)
    assert pieces["D1-left-plinth"].role is Role.PLINTH_BLOCK


def test_board_and_apron_lie_below_from_outer_edge_to_outer_edge() -> None:
    pieces, _ = made(GABLE, trim="board-and-apron", board="WB150", horn=25)
    assert pieces["W1-apron"].inner_mm == pytest.approx(900.0 + 2 * 62.0)
    assert pieces["W1-board"].inner_mm == pytest.approx(900.0 + 2 * 62.0 + 50.0)


def test_a_back_band_goes_round_the_outer_edges() -> None:
    pieces, _ = made(GABLE, back_band="BB25")
    for number in range(1, 6):
        side, band = pieces[f"W1-side-{number}"], pieces[f"W1-band-{number}"]
        assert band.inner_mm == pytest.approx(side.outer_mm)
        assert band.left.mitre_deg == pytest.approx(side.left.mitre_deg)


def test_the_other_face_is_the_mirror() -> None:
    lopsided = {"corners": [[0, 0], [900, 0], [900, 1000], [300, 1500], [0, 1050]]}
    pieces, _ = made(lopsided, faces=2)
    for number in range(1, 6):
        here, behind = pieces[f"W1a-side-{number}"], pieces[f"W1b-side-{number}"]
        assert behind.inner_mm == pytest.approx(here.inner_mm)
        assert behind.left.mitre_deg == pytest.approx(here.right.mitre_deg)


def test_a_frame_of_45s_is_cut_to_its_own_corners_and_says_so() -> None:
    pieces, findings = made(OCTAGON, method="bench")
    assert "cut-to-own-corners" in findings
    assert pieces["W1-side-1"].left.mitre_deg == pytest.approx(22.5)


def test_it_gets_no_verdict_and_that_is_said() -> None:
    assert "8 sides" in made(OCTAGON)[1]["not-forecast"].read
