"""What holds for every room: its fit, what its misclosure says, and its skirting put up in plan."""

import math
import random
from dataclasses import replace

import numpy as np
import numpy.typing as npt
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import least_squares
from shapely import Polygon
from shapely.ops import unary_union

from longpoint.errors import Finding, Severity
from longpoint.pieces.piece import CutKind, Piece
from longpoint.pieces.runs import plan_runs
from longpoint.shape.fitted import FittedRoom, Shapes
from longpoint.shape.room_fit import fit_rooms
from longpoint.survey.instruments import Tape
from longpoint.survey.rooms import Room, Wall
from tests.room_builder import SKIRTING, a_house, lengths_and_corners, room_of_plan

Plan = list[tuple[float, float]]

GRID_MM = 1e-4
"""Outlines are snapped to this before they are laid over each other: edges that run in one line to
the last bit are what plane overlays fail at."""

AREA_MM2 = 1.0
"""A thousandth of a millimetre over a metre of edge."""

SHAPES = (
    (60, 60, 60),
    (90, 90, 90, 90),
    (108, 108, 108, 108, 108),
    (120, 120, 120, 120, 120, 120),
    (90, 270, 90, 90, 90, 90),
    (90, 270, 90, 90, 135, 135, 90),
    (90, 270, 270, 90, 90, 90, 90, 90),
)
"""Corners in the room of the rooms that are drawn, each then bent."""


@st.composite
def plans(draw: st.DrawFn, bend_deg: float = 20.0) -> Plan:
    """Draw a room that turns to the right, its corners 60 to 150 internal, 210 to 300 external."""
    base = draw(st.sampled_from(SHAPES))
    bends = [draw(st.floats(-bend_deg, bend_deg)) for _ in base]
    mean = math.fsum(bends) / len(bends)
    corners = [corner + bend - mean for corner, bend in zip(base, bends, strict=True)]
    assume(all(60 <= corner <= 150 or 210 <= corner <= 300 for corner in corners))
    headings = [0.0]
    for corner in corners[:-1]:
        headings.append(headings[-1] - math.radians(180.0 - corner))
    lengths = [draw(st.floats(600.0, 5000.0)) for _ in base[:-2]]
    # The last two walls close the room.
    x = math.fsum(r * math.cos(h) for r, h in zip(lengths, headings, strict=False))
    y = math.fsum(r * math.sin(h) for r, h in zip(lengths, headings, strict=False))
    directions = np.array([[math.cos(h), math.sin(h)] for h in headings[-2:]]).T
    assume(abs(np.linalg.det(directions)) > 0.3)
    last = np.linalg.solve(directions, [-x, -y])
    assume(bool(np.all((last > 400.0) & (last < 9000.0))))
    plan = [(0.0, 0.0)]
    for length, heading in zip([*lengths, float(last[0])], headings, strict=False):
        px, py = plan[-1]
        plan.append((px + length * math.cos(heading), py + length * math.sin(heading)))
    polygon = Polygon(plan)
    # Boards from opposite walls must not touch, nor may a wall be shorter than two thicknesses.
    assume(polygon.is_valid and polygon.buffer(-150.0, join_style="mitre").geom_type == "Polygon")
    assume(len(polygon.buffer(-60.0, join_style="mitre").exterior.coords) == len(base) + 1)
    return plan


def fit_one(room: Room) -> tuple[FittedRoom, tuple[Finding, ...]]:
    fitted, findings = fit_rooms(a_house(rooms=[room]))
    return fitted[0], findings


def with_noise(room: Room, rng: random.Random, share: float = 1.0) -> Room:
    """Return the room as a carpenter would read it: to the millimetre and half degree."""
    tape_mm = 1.6 * share
    walls = tuple(
        replace(
            wall,
            length_mm=round((wall.length_mm or 0.0) + rng.gauss(0.0, tape_mm)),
            corner_deg=round(2.0 * ((wall.corner_deg or 90.0) + rng.gauss(0.0, 0.45))) / 2.0,
        )
        for wall in room.walls
    )
    diagonals = tuple(
        replace(diagonal, length_mm=round(diagonal.length_mm + rng.gauss(0.0, tape_mm)))
        for diagonal in room.diagonals
    )
    return replace(room, walls=walls, diagonals=diagonals)


@given(plans())
def test_exact_readings_return_the_exact_room(plan: Plan) -> None:
    fitted, findings = fit_one(room_of_plan(plan))
    assert findings == ()
    for corner, place in zip(fitted.corners, plan, strict=True):
        assert math.dist(corner, place) < 1e-3
    _, corners = lengths_and_corners(plan)
    assert fitted.corner_deg == pytest.approx(corners, abs=1e-5)


@given(plans(), st.integers(0, 2**32))
def test_an_independent_least_squares_finds_the_same_room(plan: Plan, seed: int) -> None:
    room = with_noise(room_of_plan(plan), random.Random(seed))
    fitted, _ = fit_one(room)
    assume(not any("left out" in text for text in fitted.assumed))
    u_mm = Tape(name="T1").wall_u_mm()
    count = len(plan)
    ends = {wall.mark: (index + 1) % count for index, wall in enumerate(room.walls)}

    def misfits(unknowns: npt.NDArray[np.float64]) -> list[float]:
        points = [(0.0, 0.0), (unknowns[0], 0.0)]
        points += [(unknowns[i], unknowns[i + 1]) for i in range(1, len(unknowns), 2)]
        lengths, corners = lengths_and_corners(points)
        return [
            *(
                (w.length_mm or 0.0) / u_mm - d / u_mm
                for w, d in zip(room.walls, lengths, strict=True)
            ),
            *(((w.corner_deg or 0.0) - c) / 0.5 for w, c in zip(room.walls, corners, strict=True)),
            *(
                (d.length_mm - math.dist(points[ends[d.start]], points[ends[d.end]])) / u_mm
                for d in room.diagonals
            ),
        ]

    start = [plan[1][0], *(value for point in plan[2:] for value in point)]
    found = least_squares(misfits, start, xtol=1e-14, ftol=1e-14, gtol=1e-14)
    points = [(0.0, 0.0), (found.x[0], 0.0)]
    points += [(found.x[i], found.x[i + 1]) for i in range(1, len(found.x), 2)]
    lengths, corners = lengths_and_corners(points)
    assert fitted.wall_mm == pytest.approx(lengths, abs=0.02)
    assert fitted.corner_deg == pytest.approx(corners, abs=0.005)


@given(plans(), st.integers(0, 2**32), st.integers(1, 7))
def test_it_does_not_matter_with_which_wall_the_room_begins(
    plan: Plan, seed: int, first: int
) -> None:
    room = with_noise(room_of_plan(plan), random.Random(seed))
    first %= len(plan)
    turned = replace(room, walls=room.walls[first:] + room.walls[:first])
    one, _ = fit_one(room)
    other, _ = fit_one(turned)
    assert other.wall_mm == pytest.approx(one.wall_mm[first:] + one.wall_mm[:first], abs=1e-4)


def a_clean_room(rng: random.Random, *, with_diagonals: bool = True) -> Room:
    width, depth = rng.uniform(1700.0, 5000.0), rng.uniform(2000.0, 4500.0)
    corners = [(0.0, 0.0), (width, 0.0), (width, -depth), (0.0, -depth)]
    plan = [(x + rng.gauss(0.0, 12.0), y + rng.gauss(0.0, 12.0)) for x, y in corners]
    return with_noise(room_of_plan(plan, with_diagonals=with_diagonals), rng)


def slipped(room: Room, rng: random.Random, by_mm: float) -> tuple[Room, Wall]:
    """Return the room with one wall read wrong, and that wall."""
    wrong = rng.choice(room.walls)
    change = by_mm * rng.choice((-1.0, 1.0))
    walls = tuple(
        replace(wall, length_mm=(wall.length_mm or 0.0) + change) if wall is wrong else wall
        for wall in room.walls
    )
    return replace(room, walls=walls), wrong


def test_clean_rooms_raise_an_alarm_less_than_once_in_a_hundred() -> None:
    rng = random.Random(20)
    alarms = sum(
        any(f.severity is not Severity.NOTE for f in fit_one(a_clean_room(rng))[1])
        for _ in range(2000)
    )
    assert alarms < 20


@pytest.mark.parametrize(("by_mm", "found"), [(25.0, 0.8), (50.0, 0.98), (100.0, 1.0)])
def test_with_diagonals_a_slip_of_a_wall_is_found_and_no_other_wall_is_blamed(
    by_mm: float, found: float
) -> None:
    rng = random.Random(21)
    hits = 0
    for _ in range(200):
        room, wrong = slipped(a_clean_room(rng), rng, by_mm)
        alarms = [f for f in fit_one(room)[1] if f.code == "room-misclosure"]
        hits += bool(alarms)
        assert all(f.place in ("Den", f"Den {wrong.mark}") for f in alarms)
    assert hits >= found * 200


def board_in_plan(piece: Piece, corner_deg: float, plan: Plan, index: int) -> Polygon:
    """Return a board where it comes to rest when pushed into its left-hand corner."""
    (x, y), (ax, ay) = plan[index], plan[(index + 1) % len(plan)]
    length = math.hypot(ax - x, ay - y)
    along = ((ax - x) / length, (ay - y) / length)
    off_wall = (along[1], -along[0])
    thickness = piece.thickness_mm
    face_start = thickness * math.tan(math.radians(piece.left.bevel_deg))
    start = 0.0
    if corner_deg < 180.0:
        # The wall to the left leaves the corner at its angle: the first of back and face to touch.
        lean = thickness / math.tan(math.radians(corner_deg))
        start = max(0.0, lean - face_start)
    outline = [
        (start, 0.0),
        (start + face_start, thickness),
        (start + face_start + piece.inner_mm, thickness),
        (start + piece.back_mm, 0.0),
    ]
    return Polygon(
        [
            (x + s * along[0] + d * off_wall[0], y + s * along[1] + d * off_wall[1])
            for s, d in outline
        ]
    )


@given(plans())
def test_boards_put_up_in_plan_meet_face_to_face_and_fit_between_the_walls(plan: Plan) -> None:
    read = room_of_plan(plan)
    room = replace(read, walls=tuple(replace(wall, skirting=True) for wall in read.walls))
    house = a_house(rooms=[room], stock=())
    pieces, findings = plan_runs(house, Shapes(rooms=fit_rooms(house)[0]))
    assert findings == ()
    _, corners = lengths_and_corners(plan)
    walls = Polygon(plan)
    free = walls.buffer(-SKIRTING.thickness_mm, join_style="mitre", mitre_limit=100.0)
    boards = [
        board_in_plan(piece, corners[index - 1], plan, index) for index, piece in enumerate(pieces)
    ]
    for board in boards:
        assert board.difference(walls, grid_size=GRID_MM).area < AREA_MM2
        assert board.intersection(free, grid_size=GRID_MM).area < AREA_MM2
    # Faces close all round: the line a thickness off the walls is met to a hundredth.
    assert unary_union(boards).buffer(0.005).covers(free.exterior)
    for index, (piece, board) in enumerate(zip(pieces, boards, strict=True)):
        after, beyond = pieces[(index + 1) % len(pieces)], boards[(index + 1) % len(boards)]
        kinds = {piece.right.kind, after.left.kind}
        if corners[index] > 180.0:
            assert kinds == {CutKind.BEVEL}
            assert board.intersection(beyond, grid_size=GRID_MM).area < AREA_MM2
            assert board.distance(beyond) < 0.01
        else:
            assert kinds == {CutKind.SCRIBE, CutKind.SQUARE}
            assert board.distance(beyond) < 0.01
