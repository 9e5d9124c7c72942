import math
import random

import pytest

from longpoint.forecast.fitup.frame import (
    MOVES,
    SLOTS,
    FitLimits,
    Frame,
    FrameRow,
    RowKind,
    Slot,
    frame_of,
    frame_rows,
)
from longpoint.shape.point import Point
from longpoint.trims.outline import TrimSide, trim_outline
from tests.fit_up_draws import Set
from tests.frame_errors import errors_of, measured, out_of_square, saw_fence, saw_scale, upper

LIMITS = FitLimits(gap_mm=0.5)
FACE_MM = 70.0
JOINT_MM = math.sqrt(2.0) * FACE_MM

# A true window, one out of true, one of four different faces, and a door.
FRAMES = {
    "true window": Set().frame(),
    "leaning window": Set(lean_mm=25.0).frame(),
    "four different faces": Set(face_mm=(45.0, 57.0, 95.0, 120.0)).frame(),
    "door": Set(width_mm=900.0, height_mm=2050.0, is_door=True).frame(),
}
CLOSED = {name: frame for name, frame in FRAMES.items() if frame.is_closed}
every_frame = pytest.mark.parametrize("frame", FRAMES.values(), ids=FRAMES)


def moved(frame: Frame, seed: int) -> list[float]:
    """Moves of some millimetres and thousandths, of every piece."""
    stream = random.Random(seed)
    sizes = (1.0, 1.0, 0.001)
    return [stream.gauss(0.0, size) for _ in frame.sides for size in sizes]


def still(frame: Frame) -> list[float]:
    return [0.0] * (MOVES * len(frame.sides))


def by_kind(rows: tuple[FrameRow, ...], kind: RowKind) -> list[FrameRow]:
    return [row for row in rows if row.kind is kind]


def test_a_window_has_eight_rows_a_joint_and_six_a_side() -> None:
    rows = frame_rows(FRAMES["true window"], LIMITS)
    assert len(rows) == 4 * 8 + 4 * 6
    assert all(len(row.moves) == 12 and len(row.errors) == 4 * SLOTS for row in rows)


def test_a_door_has_three_pieces_and_two_joints() -> None:
    frame = FRAMES["door"]
    assert not frame.is_closed
    assert [(joint.before, joint.after) for joint in frame.joints] == [(0, 1), (1, 2)]
    assert len(frame_rows(frame, LIMITS)) == 2 * 8 + 3 * 6
    # Right leg, head, left leg: the head runs from right to left.
    assert frame.sides[1].start.x_mm > frame.sides[1].end.x_mm


def test_a_window_without_a_sill_piece_starts_after_its_bare_side() -> None:
    corners = (Point(0.0, 0.0), Point(900.0, 0.0), Point(900.0, 600.0), Point(0.0, 600.0))
    faces_mm = (57.0, 57.0, 0.0, 57.0)
    sides = tuple(TrimSide(inner_mm=5.0 if face else 0.0, width_mm=face) for face in faces_mm)
    frame = frame_of(trim_outline(corners, sides), faces_mm, ((2.0, 2.0),) * 4)
    assert len(frame.sides) == 3
    # Left, bottom, right, anticlockwise.
    assert frame.sides[0].start.x_mm == frame.sides[0].end.x_mm == pytest.approx(-5.0)
    assert frame.sides[1].start.y_mm == frame.sides[1].end.y_mm == pytest.approx(-5.0)


def test_a_mitre_at_45_is_root_two_faces_long() -> None:
    for joint in FRAMES["true window"].joints:
        assert joint.length_mm == pytest.approx(JOINT_MM)


@every_frame
def test_a_frame_without_errors_measures_nothing(frame: Frame) -> None:
    rows = frame_rows(frame, LIMITS)
    assert measured(rows, still(frame), errors_of(frame, {})) == (0.0,) * len(rows)


@every_frame
def test_a_frame_moved_as_one_keeps_its_joints(frame: Frame) -> None:
    rows = frame_rows(frame, LIMITS)
    east, north, turn = 1.3, -0.7, 0.002
    moves = []
    for side in frame.sides:
        length_mm = side.start.distance_mm(side.end)
        ux = (side.end.x_mm - side.start.x_mm) / length_mm
        uy = (side.end.y_mm - side.start.y_mm) / length_mm
        # What a turn about the origin does at the middle of the inner edge.
        x = east - turn * (side.start.y_mm + side.end.y_mm) / 2.0
        y = north + turn * (side.start.x_mm + side.end.x_mm) / 2.0
        moves += [ux * x + uy * y, uy * x - ux * y, turn]
    found = measured(rows, moves, errors_of(frame, {}))
    for row, value in zip(rows, found, strict=True):
        if row.kind is not RowKind.QUIRK:
            assert value == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("frame", CLOSED.values(), ids=CLOSED)
@pytest.mark.parametrize("seed", range(3))
def test_no_move_changes_what_the_angles_of_a_closed_frame_add_up_to(
    frame: Frame, seed: int
) -> None:
    """Round a closed frame, (heel - toe) / joint length adds up to the sum of all angle errors."""
    stream = random.Random(seed)
    turns = {
        (i, slot): stream.gauss(0.0, 0.002)
        for i in range(4)
        for slot in (Slot.TURN_START, Slot.TURN_END)
    }
    lengths = {
        (i, slot): stream.gauss(0.0, 1.0)
        for i in range(4)
        for slot in (Slot.LENGTH_START, Slot.LENGTH_END, Slot.WIDTH, Slot.REVEAL_MIDDLE)
    }
    rows = frame_rows(frame, LIMITS)
    found = measured(rows, moved(frame, seed), errors_of(frame, turns | lengths))
    heels, toes = upper(rows, found, RowKind.HEEL_GAP), upper(rows, found, RowKind.TOE_GAP)
    total = sum((heels[k] - toes[k]) / joint.length_mm for k, joint in enumerate(frame.joints))
    assert total == pytest.approx(math.fsum(turns.values()), abs=1e-12)


def test_a_cut_past_its_angle_holds_the_heel_open_once_the_toes_touch() -> None:
    frame = FRAMES["true window"]
    rows = frame_rows(frame, LIMITS)
    turn = math.radians(0.1)
    errors = errors_of(frame, {(0, Slot.TURN_END): turn})
    found = measured(rows, still(frame), errors)
    # Where the pieces lie as planned, the heels meet and the toes overlap.
    assert upper(rows, found, RowKind.HEEL_GAP)[0] == 0.0
    assert upper(rows, found, RowKind.TOE_GAP)[0] == pytest.approx(-JOINT_MM * turn)


def test_a_saw_scale_out_by_a_tenth_overlaps_all_toes_alike() -> None:
    frame = FRAMES["true window"]
    rows = frame_rows(frame, LIMITS)
    found = measured(rows, still(frame), saw_scale(frame, 0.1))
    toes = upper(rows, found, RowKind.TOE_GAP)
    assert list(toes.values()) == pytest.approx([-2.0 * JOINT_MM * math.radians(0.1)] * 4)


def test_a_fence_out_by_a_tenth_steps_the_outer_edges_and_opens_nothing() -> None:
    frame = FRAMES["true window"]
    rows = frame_rows(frame, LIMITS)
    found = measured(rows, still(frame), saw_fence(frame, 0.1))
    assert list(upper(rows, found, RowKind.TOE_GAP).values()) == pytest.approx([0.0] * 4)
    steps = list(upper(rows, found, RowKind.TOE_STEP).values())
    # 2 sqrt(2) x 70 x 0.1 degree.
    assert steps == pytest.approx([0.34556] * 4, abs=1e-5)


def test_a_piece_a_millimetre_too_long_overlaps_by_its_share_of_it() -> None:
    frame = FRAMES["true window"]
    rows = frame_rows(frame, LIMITS)
    found = measured(rows, still(frame), errors_of(frame, {(2, Slot.LENGTH_START): 1.0}))
    root = math.sqrt(0.5)
    assert upper(rows, found, RowKind.HEEL_GAP)[1] == pytest.approx(-root)
    assert upper(rows, found, RowKind.TOE_GAP)[1] == pytest.approx(-root)
    # Its heel has gone past the leg's, back along the joint.
    assert abs(upper(rows, found, RowKind.SIGHT_STEP)[1]) == pytest.approx(root)


def test_a_wider_face_steps_the_outer_corner_only() -> None:
    frame = FRAMES["true window"]
    rows = frame_rows(frame, LIMITS)
    found = measured(rows, still(frame), errors_of(frame, {(1, Slot.WIDTH): 1.0}))
    changed = {(r.kind, r.place) for r, value in zip(rows, found, strict=True) if value}
    assert changed == {(RowKind.TOE_STEP, 0), (RowKind.TOE_STEP, 1)}
    assert abs(upper(rows, found, RowKind.TOE_STEP)[0]) == pytest.approx(math.sqrt(2.0))


def test_a_leaning_reveal_shows_in_the_quirks_of_its_legs() -> None:
    frame = FRAMES["true window"]
    rows = frame_rows(frame, LIMITS)
    found = measured(rows, still(frame), out_of_square(frame, 3.0))
    legs = [v for r, v in zip(rows, found, strict=True) if r.kind is RowKind.QUIRK and v]
    assert max(legs) == pytest.approx(1.5)
    assert min(legs) == pytest.approx(-1.5)
    assert len(legs) == 8


def test_a_turned_piece_changes_its_quirk_at_its_ends_and_not_in_the_middle() -> None:
    frame = FRAMES["true window"]
    rows = by_kind(frame_rows(frame, LIMITS), RowKind.QUIRK)
    moves = still(frame)
    moves[2] = 0.001
    found = [
        value
        for row, value in zip(rows, measured(rows, moves, errors_of(frame, {})), strict=True)
        if row.place == 0
    ]
    # The sill piece, 1209 between its heels, turned anticlockwise: out at its start, in at its end.
    assert found == pytest.approx([0.6045, -0.6045, 0.0, 0.0, -0.6045, 0.6045])


def test_rows_carry_the_limits_they_are_given() -> None:
    frame = Set(room_in_mm=0.8, room_out_mm=2.5).frame()
    rows = frame_rows(frame, FitLimits(gap_mm=0.3, sight_step_mm=0.4, toe_step_mm=0.9))
    assert [row.limit_mm for row in rows[:8]] == [0.3, 0.0, 0.3, 0.0, 0.4, 0.4, 0.9, 0.9]
    assert [row.limit_mm for row in by_kind(rows, RowKind.QUIRK)[:2]] == [2.5, 0.8]
