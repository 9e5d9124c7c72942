"""Sprung mouldings sawn as solids and laid against the walls: do the cut faces meet?

The walls are lines of a plan, the boards are laid by their backs (the bottom edge of the back on
the wall, the back leaning off it by the spring), both worked out here in the plan's own
coordinates: x and y on the floor, z up, the walls clockwise as seen from above.
"""

import math
import random
from dataclasses import dataclass

import pytest
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common, BRepAlgoAPI_Cut
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace
from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism
from OCP.gp import gp_Ax1, gp_Dir, gp_Pln, gp_Pnt, gp_Trsf, gp_Vec

from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut
from longpoint.trims.cornice import (
    SprungRun,
    corner_cuts,
    corner_frames,
    corner_misfit,
    plumb_cut,
    wall_cut,
)
from longpoint.trims.joint_plane import SawAngles, saw_angles
from longpoint.trims.nested import NestedSetting, nested_setting
from longpoint.trims.run_joint import halving_normal
from tests.solids.kernel import (
    Body,
    JointMeasure,
    Section,
    Side,
    bar,
    common_volume_mm3,
    joint,
    moulded,
    rectangle,
)
from tests.solids.vectors import Vector, cross, dot

CLOSE_MM = 0.01
LENGTH_MM = 700.0
OFF_DEG = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A board laid on a wall, with the directions in which it lies."""

    body: Body
    origin: Vector
    along: Vector
    across: Vector
    out: Vector

    def section_point(self, point: Vector) -> tuple[float, float]:
        """Return which point of the section a point of its surface belongs to."""
        off = (point[0] - self.origin[0], point[1] - self.origin[1], point[2] - self.origin[2])
        return (dot(off, self.across), dot(off, self.out))


def end_cut(angles: SawAngles) -> EndCut:
    return EndCut(kind=CutKind.COMPOUND, mitre_deg=angles.mitre_deg, bevel_deg=angles.bevel_deg)


def heading(turn_deg: float) -> Vector:
    """Return the right-hand direction of a wall that turns to the right by so much."""
    turn = math.radians(turn_deg)
    return (math.cos(turn), -math.sin(turn), 0.0)


def lean_of(wall: Vector, run: SprungRun) -> tuple[Vector, Vector, Vector]:
    """Return along, across and out of a board on a wall, from where its two edges have to lie.

    Along climbs in the wall by the slope. Across is square to it, goes upwards, and comes off the
    wall by the sine of the spring.
    """
    slope, off = math.radians(run.slope_deg), math.sin(math.radians(run.spring_deg))
    into_room = (wall[1], -wall[0], 0.0)
    along = (wall[0] * math.cos(slope), wall[1] * math.cos(slope), math.sin(slope))
    up = (-wall[0] * math.sin(slope), -wall[1] * math.sin(slope), math.cos(slope))
    rest = math.sqrt(1.0 - off * off)
    across = (
        off * into_room[0] + rest * up[0],
        off * into_room[1] + rest * up[1],
        off * into_room[2] + rest * up[2],
    )
    return along, across, cross(along, across)


def laid(
    wall: Vector,
    run: SprungRun,
    cut: EndCut,
    end: Side,
    size: tuple[float, float],
    section: Section,
    off_deg: float = 0.0,
) -> Laid:
    """Return a board whose cut end has the bottom edge of its back at the origin of the plan."""
    ends = (cut, SQUARE_CUT) if end is Side.LEFT else (SQUARE_CUT, cut)
    body = bar(*size, LENGTH_MM, *ends, section=section, off_deg=off_deg)
    at = min(body.end_face(end), key=lambda corner: math.hypot(corner[1], corner[2]))
    assert math.hypot(at[1], at[2]) < 1e-6
    along, across, out = lean_of(wall, run)
    origin = (-at[0] * along[0], -at[0] * along[1], -at[0] * along[2])
    return Laid(
        body=body.placed(origin, along, across, out),
        origin=origin,
        along=along,
        across=across,
        out=out,
    )


def both(
    corner_deg: float,
    runs: tuple[SprungRun, SprungRun],
    cuts: tuple[SawAngles, SawAngles],
    size: tuple[float, float],
    section: Section,
    off_deg: float = 0.0,
) -> tuple[Laid, Laid]:
    """Return the two boards of a corner."""
    walls = (heading(0.0), heading(180.0 - corner_deg))
    ends = (Side.RIGHT, Side.LEFT)
    one, other = (
        laid(wall, run, end_cut(cut), end, size, section, off_deg)
        for wall, run, cut, end in zip(walls, runs, cuts, ends, strict=True)
    )
    return one, other


def met(
    corner_deg: float,
    runs: tuple[SprungRun, SprungRun],
    size: tuple[float, float] = (90.0, 18.0),
    section: Section | None = None,
    off_deg: float = 0.0,
) -> JointMeasure:
    """Return how two runs meet that are sawn as the program says."""
    cuts = corner_cuts(corner_deg, *runs)
    assert cuts is not None
    one, other = both(corner_deg, runs, cuts, size, section or moulded(*size), off_deg)
    return joint(one.body, Side.RIGHT, other.body, Side.LEFT)


def level(spring_deg: float) -> tuple[SprungRun, SprungRun]:
    return (SprungRun(spring_deg=spring_deg), SprungRun(spring_deg=spring_deg))


def alike(spring_deg: float, slope_deg: float) -> tuple[SprungRun, SprungRun]:
    """Return two runs that climb alike towards their corner."""
    return (
        SprungRun(spring_deg=spring_deg, slope_deg=slope_deg),
        SprungRun(spring_deg=spring_deg, slope_deg=-slope_deg),
    )


def drawn(seed: int) -> tuple[float, tuple[SprungRun, SprungRun], tuple[float, float]]:
    """Return a joint that can be closed: round a corner, climbing or not, or on one wall."""
    draw = random.Random(seed)
    spring_deg = draw.uniform(28.0, 62.0)
    size = (draw.uniform(40.0, 140.0), draw.uniform(9.0, 22.0))
    match seed % 4:
        case 0:
            return draw.uniform(60.0, 150.0), level(spring_deg), size
        case 1:
            return draw.uniform(210.0, 300.0), level(spring_deg), size
        case 2:
            corner_deg = draw.choice([draw.uniform(70.0, 140.0), draw.uniform(220.0, 290.0)])
            return corner_deg, alike(spring_deg, draw.uniform(-30.0, 30.0)), size
        case _:
            slopes = (draw.uniform(-10.0, 10.0), draw.choice([-1.0, 1.0]) * draw.uniform(15, 35))
            left, right = (SprungRun(spring_deg=spring_deg, slope_deg=slope) for slope in slopes)
            return 180.0, (left, right), size


@pytest.mark.parametrize("seed", range(12))
def test_the_cut_faces_of_a_joint_lie_in_one_another(seed: int) -> None:
    corner_deg, runs, size = drawn(seed)
    assert met(corner_deg, runs, size).worst_mm < CLOSE_MM


@pytest.mark.parametrize("seed", range(4))
def test_a_saw_half_a_degree_off_leaves_the_joint_open(seed: int) -> None:
    corner_deg, runs, size = drawn(seed)
    assert met(corner_deg, runs, size, off_deg=OFF_DEG).worst_mm > 20.0 * CLOSE_MM


@pytest.mark.long
@pytest.mark.parametrize("seed", range(100, 300))
def test_two_hundred_joints_close_and_open_half_a_degree_off(seed: int) -> None:
    corner_deg, runs, size = drawn(seed)
    assert met(corner_deg, runs, size).worst_mm < CLOSE_MM
    assert met(corner_deg, runs, size, off_deg=OFF_DEG).worst_mm > CLOSE_MM


def test_the_settings_of_the_other_spring_leave_the_joint_open() -> None:
    """38 taken from the ceiling instead of the wall."""
    cuts = corner_cuts(90.0, *level(52.0))
    assert cuts is not None
    one, other = both(90.0, level(38.0), cuts, (90.0, 18.0), moulded(90.0, 18.0))
    assert joint(one.body, Side.RIGHT, other.body, Side.LEFT).worst_mm > 5.0


REFUSED = [
    (90.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=38.0, slope_deg=-15.0)),
    (90.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=38.0, slope_deg=15.0)),
    (270.0, SprungRun(spring_deg=38.0, slope_deg=10.0), SprungRun(spring_deg=38.0)),
    (93.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=45.0)),
    (90.0, SprungRun(spring_deg=45.0, slope_deg=12.0), SprungRun(spring_deg=45.0, slope_deg=-8.0)),
]


@pytest.mark.parametrize(("corner_deg", "left", "right"), REFUSED)
def test_refused_runs_stand_as_far_apart_as_is_said(
    corner_deg: float, left: SprungRun, right: SprungRun
) -> None:
    size = (90.0, 18.0)
    assert corner_cuts(corner_deg, left, right) is None
    apart = corner_misfit(corner_deg, left, right, *size)
    frames = corner_frames(corner_deg, left, right)
    normal = halving_normal(*frames)
    cuts = (saw_angles(frames[0], normal), saw_angles(frames[1], normal))
    one, other = both(corner_deg, (left, right), cuts, size, rectangle(*size))
    ends = zip(_in_order(one, Side.RIGHT), _in_order(other, Side.LEFT), strict=True)
    found_mm = max(math.dist(*pair) for pair in ends)
    assert found_mm == pytest.approx(apart.halved_mm, abs=0.01)
    assert _nearest_lines_mm(one, other, size) == pytest.approx(apart.least_mm, abs=0.01)


def _in_order(board: Laid, end: Side) -> list[Vector]:
    """Return the corners of a cut face in the order of their places on the section."""

    def place(corner: Vector) -> tuple[float, float]:
        across, off = board.section_point(corner)
        return (round(across, 3) + 0.0, round(off, 3) + 0.0)

    return sorted(board.body.end_face(end), key=place)


def _nearest_lines_mm(one: Laid, other: Laid, size: tuple[float, float]) -> float:
    """Return the least that lines of the same section point pass at, for the worst such point.

    By search: the distance between points slid along both lines, not by a formula.
    """
    worst_mm = 0.0
    for y, z in rectangle(*size):
        span = 200.0
        starts = [_line_point(board, y, z, 0.0) for board in (one, other)]
        slid = [-dot(start, board.along) for start, board in zip(starts, (one, other), strict=True)]
        at = (slid[0], slid[1])
        while span > 1e-4:
            tries = [(at[0] + a * span, at[1] + b * span) for a in (-1, 0, 1) for b in (-1, 0, 1)]
            best = min(tries, key=lambda x: _between_mm(one, other, y, z, x))
            if best == at:
                span /= 2.0
            at = best
        worst_mm = max(worst_mm, _between_mm(one, other, y, z, at))
    return worst_mm


def _between_mm(one: Laid, other: Laid, y: float, z: float, at: tuple[float, float]) -> float:
    return math.dist(_line_point(one, y, z, at[0]), _line_point(other, y, z, at[1]))


def _line_point(board: Laid, y: float, z: float, x: float) -> Vector:
    parts = zip(board.origin, board.along, board.across, board.out, strict=True)
    a, b, c = (o + x * d + y * u + z * n for o, d, u, n in parts)
    return (a, b, c)


def nested_cut(
    spring_deg: float, size: tuple[float, float], end: Side, setting: NestedSetting
) -> Body:
    """Return a board cut at one end as it stands upside down between fence and table.

    The saw: x to your right, y up off the table, z from the fence towards you. The bottom edge of
    the back touches the fence, the ceiling edge of the back the table; the left end lies to your
    right. The blade goes through the point where the bottom edge of the back is to end.
    """
    spring = math.radians(spring_deg)
    high, far = size[0] * math.cos(spring), size[0] * math.sin(spring)
    along = (-1.0, 0.0, 0.0)
    across = (0.0, -high / size[0], far / size[0])
    out = cross(along, across)
    assert out[1] > 0
    assert out[2] > 0
    stock = bar(*size, 2.0 * LENGTH_MM, SQUARE_CUT, SQUARE_CUT, section=moulded(*size))
    board = stock.placed((0.0, high, 0.0), along, across, out)
    edges = board.corners
    assert min(corner[1] for corner in edges) == pytest.approx(0.0, abs=1e-6)
    assert min(corner[2] for corner in edges) == pytest.approx(0.0, abs=1e-6)
    at = gp_Pnt(-LENGTH_MM, high, 0.0)
    swing, lean = gp_Trsf(), gp_Trsf()
    swing.SetRotation(gp_Ax1(at, gp_Dir(0.0, 1.0, 0.0)), math.radians(setting.table_deg))
    handle = gp_Dir(0.0, 0.0, 1.0).Transformed(swing)
    lean.SetRotation(gp_Ax1(at, handle), math.radians(setting.lean_deg))
    waste = 1.0 if end is Side.LEFT else -1.0
    blade = gp_Pln(at, gp_Dir(waste, 0.0, 0.0)).Transformed(swing).Transformed(lean)
    sheet = BRepBuilderAPI_MakeFace(blade, -9e3, 9e3, -9e3, 9e3).Face()
    off = BRepPrimAPI_MakePrism(sheet, gp_Vec(blade.Axis().Direction()) * 9e3).Shape()
    cut = Body(BRepAlgoAPI_Cut(board.shape, off).Shape(), board.left, board.right)
    # Back off the saw: as the board lay before it was stood on its head.
    xs, ys, zs = zip(along, across, out, strict=True)
    turned_back = cut.moved((0.0, -high, 0.0)).placed((0.0, 0.0, 0.0), xs, ys, zs)
    return turned_back.moved((-LENGTH_MM, 0.0, 0.0))


def flat_cut(size: tuple[float, float], end: Side, angles: SawAngles) -> Body:
    """Return the same board cut flat, the bottom edge of its back ending at x = 0."""
    ends = (end_cut(angles), SQUARE_CUT) if end is Side.LEFT else (SQUARE_CUT, end_cut(angles))
    body = bar(*size, LENGTH_MM, *ends, section=moulded(*size))
    at = min(body.end_face(end), key=lambda corner: math.hypot(corner[1], corner[2]))
    return body.moved((-at[0], 0.0, 0.0))


def shared_mm3(one: Body, other: Body, end: Side) -> tuple[float, float]:
    """Return what two boards share near their cut end, and what either has there at the most."""
    reach = 400.0
    start = -reach if end is Side.RIGHT else -300.0
    box = bar(400.0, 400.0, 700.0, SQUARE_CUT, SQUARE_CUT).moved((start, -100.0, -100.0))
    parts = [_common(box, body) for body in (one, other)]
    return common_volume_mm3(*parts), max(part.volume_mm3 for part in parts)


def _common(box: Body, body: Body) -> Body:
    return Body(BRepAlgoAPI_Common(box.shape, body.shape).Shape(), body.left, body.right)


@pytest.mark.parametrize("end", list(Side))
@pytest.mark.parametrize("seed", [0, 1, 2, 3])
def test_nested_and_flat_leave_the_same_timber(seed: int, end: Side) -> None:
    corner_deg, runs, size = drawn(seed)
    cuts = corner_cuts(corner_deg, *runs)
    assert cuts is not None
    angles = cuts.right_run if end is Side.LEFT else cuts.left_run
    spring_deg = runs[0].spring_deg
    setting = nested_setting(spring_deg, angles, at_left=end is Side.LEFT)
    flat = flat_cut(size, end, angles)
    shared, most = shared_mm3(nested_cut(spring_deg, size, end, setting), flat, end)
    assert most > 50_000.0
    assert shared == pytest.approx(most, rel=1e-6)
    off = NestedSetting(setting.table_deg + OFF_DEG, setting.lean_deg)
    shared_off, most_off = shared_mm3(nested_cut(spring_deg, size, end, off), flat, end)
    assert most_off - shared_off > 50.0


@pytest.mark.parametrize("corner_deg", [72.0, 84.0, 100.0])
def test_a_run_cut_to_a_wall_lies_flat_against_it(corner_deg: float) -> None:
    """Climbing a little as well; no corner of the cut face is off the other wall."""
    run = SprungRun(spring_deg=38.0, slope_deg=6.0)
    cut = end_cut(wall_cut(corner_deg, run, at_left=False))
    board = laid(heading(0.0), run, cut, Side.RIGHT, (90.0, 18.0), moulded(90.0, 18.0))
    other = heading(180.0 - corner_deg)
    into_room = (other[1], -other[0], 0.0)
    for corner in board.body.end_face(Side.RIGHT):
        assert dot(corner, into_room) == pytest.approx(0.0, abs=CLOSE_MM)


def test_a_plumb_end_stands_upright() -> None:
    run = SprungRun(spring_deg=38.0, slope_deg=-17.0)
    cut = end_cut(plumb_cut(run, at_left=True))
    board = laid(heading(0.0), run, cut, Side.LEFT, (90.0, 18.0), moulded(90.0, 18.0))
    assert max(abs(x) for x, _, _ in board.body.end_face(Side.LEFT)) < CLOSE_MM
