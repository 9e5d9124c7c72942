from random import Random

import pytest

from longpoint.forecast.fitup.frame import FitLimits, RowKind
from longpoint.forecast.tapping.lie import PLACES, Tap, TapPlace, lie_of, moves_of
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint, SeenQuirks
from tests.unit.forecast.tapping.wall import Cut, board_of, door, hung, window

LIMITS = FitLimits(gap_mm=0.5)


def test_what_is_not_read_is_taken_as_flush_and_as_planned() -> None:
    seen = SeenFrame(joints=(SeenJoint(heel_mm=0.3),) * 4)
    lie = lie_of(window(), seen, LIMITS)
    assert [row.kind for row in lie if row.is_read] == [RowKind.HEEL_GAP] * 4
    assert all(row.now_mm == (0.3 if row.is_read else 0.0) for row in lie)


def test_a_quirk_between_two_others_is_taken_as_their_mean() -> None:
    quirks = (SeenQuirks(start_mm=1.0, end_mm=2.0), *(SeenQuirks(),) * 3)
    lie = lie_of(window(), SeenFrame(joints=(SeenJoint(),) * 4, quirks=quirks), LIMITS)
    first = [row.now_mm for row in lie if row.kind is RowKind.QUIRK and row.place == 0]
    assert first == [1.0, 1.5, 2.0]


def test_a_tap_at_one_end_leaves_the_quirk_at_the_other() -> None:
    lie = lie_of(window(), SeenFrame(joints=(SeenJoint(),) * 4), LIMITS)
    moves = moves_of(4, [Tap(piece=1, place=TapPlace.END, move_mm=0.6)])
    quirks = [r.after_mm(moves) for r in lie if r.kind is RowKind.QUIRK and r.place == 1]
    assert quirks == pytest.approx([0.0, 0.3, 0.6])


def test_sliding_a_piece_of_a_square_frame_opens_one_joint_as_it_shuts_the_other() -> None:
    lie = lie_of(window(), SeenFrame(joints=(SeenJoint(),) * 4), LIMITS)
    moves = moves_of(4, [Tap(piece=2, place=TapPlace.SLIDE, move_mm=1.0)])
    heels = [r.after_mm(moves) for r in lie if r.kind is RowKind.HEEL_GAP]
    assert heels == pytest.approx([0.0, 2**-0.5, -(2**-0.5), 0.0])


@pytest.mark.parametrize("place", list(TapPlace))
def test_rows_say_what_true_polygons_do_when_tapped(place: TapPlace) -> None:
    for frame in (window(), door()):
        rng = Random(3)
        wall = hung(frame, tuple(Cut() for _ in frame.sides), rng)
        lie = lie_of(frame, wall.read(), LIMITS)
        for piece in range(len(frame.sides)):
            tap = Tap(piece=piece, place=place, move_mm=0.8)
            moves = moves_of(len(frame.sides), [tap])
            moved = wall.tapped((tap,))
            changes = [r.change_mm(moves) for r in lie if r.is_gap]
            assert [b - a for a, b in zip(wall.gaps_mm(), moved.gaps_mm(), strict=True)] == (
                pytest.approx(changes, abs=0.01)
            )
            steps = [r.change_mm(moves) for r in lie if r.kind is RowKind.SIGHT_STEP]
            assert [b - a for a, b in zip(wall.steps_mm(), moved.steps_mm(), strict=True)] == (
                pytest.approx(steps, abs=0.01)
            )


def test_taps_in_one_place_add_up() -> None:
    taps = [Tap(piece=1, place=p, move_mm=0.2) for p in (TapPlace.START, TapPlace.START)]
    moves = moves_of(2, taps)
    assert moves == pytest.approx((0.0,) * (len(PLACES) + 1) + (0.4, 0.0))


def test_a_piece_without_errors_lies_as_it_is_drawn() -> None:
    frame = window()
    points = board_of(frame, 0, Cut()).points
    assert points[0].distance_mm(frame.sides[0].start) < 1e-9
    assert points[2].distance_mm(frame.joints[0].toe) < 1e-9
