import math
from dataclasses import replace

import pytest

from longpoint.errors import PieceError
from longpoint.pieces.other_shapes import other_shape
from longpoint.pieces.piece import CutKind, Role
from longpoint.quantities.length import Units
from tests.shaped_houses import HALL, made, read, shapes

DOOR = {
    "mark": "D1",
    "kind": "cased",
    "trim": "legs-and-head",
    "top": 900,
    "bottom": 900,
    "left": 2000,
    "right": 2000,
    "arch": {"rise": 450, "blank": "BD140", "segments": 5},
}


def test_the_pieces_run_from_the_left_leg_over_the_segments_to_the_right_leg() -> None:
    pieces, _ = made(HALL)
    assert list(pieces) == [
        "W1-left-leg",
        "W1-segment-1",
        "W1-segment-2",
        "W1-segment-3",
        "W1-right-leg",
        "W1-sill",
    ]
    assert {piece.role for piece in pieces.values()} == {
        Role.LEFT_LEG,
        Role.SEGMENT,
        Role.RIGHT_LEG,
        Role.SILL,
    }


def test_a_segment_is_a_trapezoid_of_the_board_it_is_cut_from() -> None:
    pieces, _ = made(HALL)
    middle = pieces["W1-segment-2"]
    assert (middle.profile, middle.width_mm) == ("BD140", 140.0)
    assert middle.left.mitre_deg == pytest.approx(middle.right.mitre_deg)
    assert middle.left.kind is CutKind.MITRE
    assert middle.left.mitre_deg == pytest.approx(21.36, abs=0.02)
    past_mm = 140.0 * math.tan(math.radians(middle.left.mitre_deg))
    assert middle.outer_mm == pytest.approx(middle.inner_mm + 2.0 * past_mm)
    assert "inner radius 513, outer radius 603" in middle.notes[0]


def test_the_segments_at_the_ends_are_cut_to_the_springing_joint() -> None:
    pieces, _ = made(HALL)
    first, last = pieces["W1-segment-1"], pieces["W1-segment-3"]
    leg = pieces["W1-left-leg"]
    # Leg and segment together turn by what the cut's line turns: 90 less the arch's share.
    tilt_deg = 90.0 - 64.08 * 2.0 / 3.0
    assert first.left.mitre_deg + leg.right.mitre_deg == pytest.approx(tilt_deg, abs=0.1)
    assert first.left.mitre_deg > first.right.mitre_deg
    assert last.right.mitre_deg > last.left.mitre_deg
    assert "left end to the left leg" in first.notes
    assert "right end to the right leg" in last.notes


def test_a_trammel_held_where_the_notes_say_draws_both_edges_of_the_trim() -> None:
    pieces, _ = made(HALL)
    middle = pieces["W1-segment-2"]
    # Below the middle of the inner edge, by what the half angle leaves of the radius.
    low_mm = 513.1 * math.cos(math.radians(21.36))
    assert (
        f"trammel point {round(2 * low_mm) / 2:g} below the inner edge, 187 along"
        in (middle.notes[1])
    )


def test_the_sums_come_out_at_the_hook_readings() -> None:
    pieces, _ = made(HALL)
    for piece in pieces.values():
        total = float(piece.hand_sum.rpartition("= ")[2])
        assert piece.hook_mm is not None
        assert total == pytest.approx(piece.hook_mm, abs=0.051)
    assert "inner edge, 2 x inner radius 513" in pieces["W1-segment-2"].hand_sum
    assert "to the springing joint" in pieces["W1-left-leg"].hand_sum


def test_a_semicircle_springs_square_from_its_legs() -> None:
    pieces, _ = made(DOOR)
    for leg in ("D1-left-leg", "D1-right-leg"):
        assert pieces[leg].left.kind is CutKind.SQUARE
        assert pieces[leg].right.kind is CutKind.SQUARE
        assert pieces[leg].inner_mm == pytest.approx(2000.0)
    assert pieces["D1-segment-1"].left.mitre_deg == pytest.approx(18.0)
    assert "D1-sill" not in pieces


def test_legs_of_an_arched_opening_stand_on_plinth_blocks() -> None:
    pieces, _ = made(DOOR, plinth="PB75", plinth_height=180)
    assert pieces["D1-left-leg"].inner_mm == pytest.approx(1820.0)
    assert pieces["D1-left-plinth"].inner_mm == pytest.approx(180.0)
    assert "- 180 plinth" in pieces["D1-left-leg"].hand_sum


def test_board_and_apron_lie_below_as_in_any_set() -> None:
    pieces, _ = made(HALL, trim="board-and-apron", board="WB150", horn=30)
    assert {"W1-apron", "W1-board"} <= set(pieces)
    assert "W1-sill" not in pieces
    assert pieces["W1-apron"].inner_mm == pytest.approx(915 + 2 * 95, abs=0.2)
    assert pieces["W1-board"].inner_mm == pytest.approx(915 + 2 * 95 + 60, abs=0.2)


def test_the_other_face_is_the_mirror() -> None:
    pieces, _ = made(HALL, faces=2)
    assert pieces["W1b-left-leg"].inner_mm == pytest.approx(pieces["W1a-right-leg"].inner_mm)
    first, last = pieces["W1b-segment-1"], pieces["W1a-segment-3"]
    assert first.left.mitre_deg == pytest.approx(last.right.mitre_deg)
    assert first.inner_mm == pytest.approx(last.inner_mm)


def test_without_a_number_the_fewest_segments_that_the_board_allows_are_taken() -> None:
    narrow = {**HALL, "arch": {"rise": 286, "blank": "BD100"}}
    assert "W1-segment-6" in made(narrow)[0]
    assert "W1-segment-7" not in made(narrow)[0]


def test_a_way_of_joining_that_needs_a_straight_head_is_refused() -> None:
    for clash in ({"joint": "butt"}, {"joint": "blocks", "corner_block": "BD100"}):
        with pytest.raises(PieceError, match="arched head and joint"):
            made(HALL, **clash)
    with pytest.raises(PieceError, match="back band"):
        made(HALL, back_band="BB25")


def test_a_horseshoe_is_refused() -> None:
    with pytest.raises(PieceError, match="semicircle"):
        made({**HALL, "arch": {"rise": 480, "blank": "BD140"}})


def test_a_frame_of_45s_is_cut_to_its_own_corners_and_says_so() -> None:
    plain, _ = made(HALL)
    for way in ({"method": "bench"}, {"mitres": "at-stop"}):
        pieces, findings = made(HALL, **way)
        assert "cut-to-own-corners" in findings
        assert pieces["W1-left-leg"].right.mitre_deg == plain["W1-left-leg"].right.mitre_deg


def test_a_house_in_inches_gets_its_notes_and_sums_in_inches() -> None:
    found = replace(read(HALL), units=Units.INCH)
    both = other_shape(found, shapes(found), found.openings[0])
    assert both is not None
    middle = next(piece for piece in both[0] if piece.mark == "W1-segment-2")
    # 513 and 603 mm.
    assert "inner radius 20 3/16, outer radius 23 3/4" in middle.notes[0]
    assert "inner radius 20 " in middle.hand_sum


def test_a_segment_is_known_no_better_than_span_and_rise() -> None:
    pieces, _ = made(HALL)
    # A rise 1 mm out is most of it: by hand 0.43 mm of the chord for 1 mm of rise.
    assert pieces["W1-segment-2"].u_mm == pytest.approx(0.47, abs=0.05)
