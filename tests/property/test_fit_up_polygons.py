"""The rows of a frame against real pieces: polygons with their errors, moved and measured.

What the rows leave out is of second order. Bounds as measured: moves of sd 0.7 mm (of a piece's
ends, by turning) and cut errors of sd 0.5 mm.
"""

import math
from dataclasses import dataclass

import numpy as np
import pytest
from shapely import LineString, Point, Polygon
from shapely.affinity import rotate, translate

from longpoint.forecast.fitup.frame import (
    MOVES,
    SLOTS,
    FitLimits,
    Frame,
    FrameRow,
    RowKind,
    Slot,
    frame_rows,
)
from longpoint.shape.point import direction
from tests.fit_up_draws import Floats, Set

SETS = {
    "window": Set(),
    "small window out of square": Set(width_mm=500.0, height_mm=700.0, lean_mm=6.0),
    "wide window": Set(width_mm=2400.0, height_mm=1400.0, face_mm=(95.0,) * 4),
    "door": Set(width_mm=900.0, height_mm=2050.0, is_door=True),
    "unequal faces": Set(face_mm=(95.0, 57.0, 70.0, 57.0)),
}
BEYOND_MM = 20.0


@dataclass(frozen=True)
class Piece:
    """Corners of one piece, anticlockwise: start heel, start toe, end toe, end heel."""

    shape: Polygon

    def corner(self, index: int) -> Point:
        return Point(self.shape.exterior.coords[index])

    def line(self, first: int, second: int) -> LineString:
        """Return an edge as a line that goes on at both ends."""
        a, b = (np.array(self.shape.exterior.coords[i]) for i in (first, second))
        along = (b - a) / np.linalg.norm(b - a)
        return LineString([a - BEYOND_MM * along, b + BEYOND_MM * along])


START_HEEL, START_TOE, END_TOE, END_HEEL = range(4)


def cut_pieces(frame: Frame, errors: Floats) -> list[Piece]:
    return [Piece(cut_shape(frame, i, errors[SLOTS * i :])) for i in range(len(frame.sides))]


def cut_shape(frame: Frame, index: int, errors: Floats) -> Polygon:
    side = frame.sides[index]
    along = np.array(direction(side.start, side.end))
    out = np.array((along[1], -along[0]))
    width_mm = side.width_mm + errors[Slot.WIDTH]
    ends = {}
    for name, heel, sign, joint_index in (
        ("start", side.start, -1.0, index - 1),
        ("end", side.end, 1.0, index),
    ):
        length = errors[Slot.LENGTH_START if name == "start" else Slot.LENGTH_END]
        turn = errors[Slot.TURN_START if name == "start" else Slot.TURN_END]
        mitre = 0.0
        if frame.is_closed or 0 <= joint_index < len(frame.joints):
            joint = frame.joints[joint_index]
            reach = np.array(joint.toe) - np.array(joint.heel)
            mitre = math.atan2(sign * float(reach @ along), float(reach @ out)) + turn
        at = np.array(heel) + sign * length * along
        ends[name] = (at, at + width_mm * (out + sign * math.tan(mitre) * along))
    return Polygon([ends["start"][0], ends["start"][1], ends["end"][1], ends["end"][0]])


def moved(frame: Frame, pieces: list[Piece], moves: Floats) -> list[Piece]:
    found = []
    for index, (side, piece) in enumerate(zip(frame.sides, pieces, strict=True)):
        slide, shift, turn = moves[MOVES * index : MOVES * index + MOVES]
        dx, dy = direction(side.start, side.end)
        middle = Point((side.start.x_mm + side.end.x_mm) / 2, (side.start.y_mm + side.end.y_mm) / 2)
        turned = rotate(piece.shape, turn, origin=middle, use_radians=True)
        shifted = translate(turned, slide * dx + shift * dy, slide * dy - shift * dx)
        found.append(Piece(shifted))
    return found


def left_of(line: LineString, point: Point) -> float:
    """Return how far a point lies to the left of a line."""
    (ax, ay), (bx, by) = line.coords
    turn = (bx - ax) * (point.y - ay) - (by - ay) * (point.x - ax)
    return math.copysign(line.distance(point), turn)


def measured(frame: Frame, row: FrameRow, slot: Slot, pieces: list[Piece], errors: Floats) -> float:
    if row.kind is RowKind.QUIRK:
        return quirk(frame, row.place, slot, pieces, errors)
    joint = frame.joints[row.place]
    before, after = pieces[joint.before], pieces[joint.after]
    at_toe = row.kind in (RowKind.TOE_GAP, RowKind.TOE_STEP)
    theirs = before.corner(END_TOE if at_toe else END_HEEL)
    ours = after.corner(START_TOE if at_toe else START_HEEL)
    face = after.line(START_HEEL, START_TOE)
    if row.kind in (RowKind.HEEL_GAP, RowKind.TOE_GAP):
        return -left_of(face, theirs)
    return float(face.project(theirs) - face.project(ours))


def quirk(frame: Frame, index: int, slot: Slot, pieces: list[Piece], errors: Floats) -> float:
    side = frame.sides[index]
    dx, dy = direction(side.start, side.end)
    share = {Slot.REVEAL_START: 0.0, Slot.REVEAL_MIDDLE: 0.5, Slot.REVEAL_END: 1.0}[slot]
    off = errors[SLOTS * index + slot]
    supposed = Point(
        side.start.x_mm + share * (side.end.x_mm - side.start.x_mm) + off * dy,
        side.start.y_mm + share * (side.end.y_mm - side.start.y_mm) - off * dx,
    )
    return left_of(pieces[index].line(START_HEEL, END_HEEL), supposed)


def drawn(frame: Frame, rng: np.random.Generator) -> tuple[Floats, Floats]:
    """Return moves and errors of the sizes told above."""
    moves, errors = [], []
    for side in frame.sides:
        half_mm = side.start.distance_mm(side.end) / 2.0
        moves.append(rng.normal(size=3) * (0.7, 0.7, 0.7 / half_mm))
        joint_mm = math.sqrt(2.0) * side.width_mm
        sizes = (0.35, 0.35, 0.5 / joint_mm, 0.5 / joint_mm, 0.15, 0.5, 0.5, 0.5)
        errors.append(rng.normal(size=SLOTS) * sizes)
    return np.concatenate(moves), np.concatenate(errors)


def left_out(frame: Frame, moves: Floats, errors: Floats) -> Floats:
    """Return what each row, the first of its two ways, differs from the measured."""
    pieces = moved(frame, cut_pieces(frame, errors), moves)
    reveal = (Slot.REVEAL_START, Slot.REVEAL_MIDDLE, Slot.REVEAL_END)
    seen: dict[int, int] = {}
    found = []
    for row in frame_rows(frame, FitLimits(gap_mm=0.5))[::2]:
        slot = Slot.REVEAL_START
        if row.kind is RowKind.QUIRK:
            slot = reveal[seen.setdefault(row.place, 0)]
            seen[row.place] += 1
        by_row = np.dot(row.moves, moves) + np.dot(row.errors, errors)
        found.append(measured(frame, row, slot, pieces, errors) - by_row)
    return np.array(found)


def errors_of_rows(frame: Frame, count: int, scale: float) -> Floats:
    rng = np.random.default_rng(20)
    found = []
    for _ in range(count):
        moves, errors = drawn(frame, rng)
        found.append(np.abs(left_out(frame, scale * moves, scale * errors)))
    return np.array(found)


def assert_second_order(off_mm: Floats, frame: Frame) -> None:
    """Hold the bounds: joints to hundredths; outer corners, where faces differ, to tenths."""
    kinds = [row.kind for row in frame_rows(frame, FitLimits(gap_mm=0.5))[::2]]
    gaps = [i for i, kind in enumerate(kinds) if kind in (RowKind.HEEL_GAP, RowKind.TOE_GAP)]
    has_equal_faces = len({side.width_mm for side in frame.sides}) == 1
    assert off_mm.mean() < 0.009
    assert off_mm[:, gaps].mean() < 0.009
    assert off_mm[:, gaps].max() < (0.07 if has_equal_faces else 0.13)
    assert off_mm.max() < (0.13 if has_equal_faces else 0.25)


@pytest.mark.parametrize("name", SETS)
def test_rows_measure_what_polygons_measure(name: str) -> None:
    frame = SETS[name].frame()
    assert_second_order(errors_of_rows(frame, 40, 1.0), frame)


@pytest.mark.parametrize("name", SETS)
def test_what_rows_leave_out_is_quartered_when_everything_is_halved(name: str) -> None:
    frame = SETS[name].frame()
    whole, half = (errors_of_rows(frame, 10, scale).mean() for scale in (1.0, 0.5))
    assert whole / half == pytest.approx(4.0, abs=0.2)


@pytest.mark.long
@pytest.mark.parametrize("name", SETS)
def test_two_thousand_poses_of_a_frame(name: str) -> None:
    frame = SETS[name].frame()
    assert_second_order(errors_of_rows(frame, 2000, 1.0), frame)
