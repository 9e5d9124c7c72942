"""Sets on a wall as true polygons: errors cut in, nailed somehow, tapped, and read."""

import math
from dataclasses import dataclass, replace
from random import Random
from typing import Final

from shapely import LineString, Polygon
from shapely import Point as ShapelyPoint

from longpoint.forecast.fitup.frame import Frame, FrameSide, frame_of
from longpoint.forecast.tapping.lie import Tap, TapPlace
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint, SeenQuirks
from longpoint.shape.point import Point, direction, line_crossing
from longpoint.trims.outline import TrimSide, trim_outline

QUIRK_MM: Final = 4.5
WIDTH_MM: Final = 70.0
ROOM_MM: Final = (1.8, 1.8)


def set_of(corners: tuple[Point, ...], bare: int | None = None, width_mm: float = 70.0) -> Frame:
    widths = tuple(0.0 if i == bare else width_mm for i in range(len(corners)))
    sides = tuple(TrimSide(inner_mm=QUIRK_MM if w else 0.0, width_mm=w) for w in widths)
    return frame_of(trim_outline(corners, sides), widths, (ROOM_MM,) * len(corners))


def window(width_mm: float = 1200.0, height_mm: float = 1050.0, face_mm: float = 70.0) -> Frame:
    return set_of(rectangle(width_mm, height_mm), width_mm=face_mm)


def door(width_mm: float = 900.0, height_mm: float = 2050.0) -> Frame:
    return set_of(rectangle(width_mm, height_mm), bare=0)


def rectangle(width_mm: float, height_mm: float) -> tuple[Point, ...]:
    return (Point(0, 0), Point(width_mm, 0), Point(width_mm, height_mm), Point(0, height_mm))


def polygon_set(count: int, radius_mm: float = 600.0) -> Frame:
    return set_of(
        tuple(
            Point(radius_mm * math.cos(a), radius_mm * math.sin(a))
            for a in (2 * math.pi * k / count for k in range(count))
        )
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """What one piece is out by: longer at an end, past its angle there."""

    start_mm: float = 0.0
    end_mm: float = 0.0
    start_deg: float = 0.0
    end_deg: float = 0.0
    width_mm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """One piece as it hangs: inner start, inner end, outer end, outer start."""

    points: tuple[Point, Point, Point, Point]

    @property
    def shape(self) -> Polygon:
        return Polygon(self.points)

    def tapped(self, tap: Tap, side: FrameSide) -> "Board":
        """Return the piece moved, by the frame's own axes; turned rigidly, without any series."""
        turn = tap.move_mm / side.start.distance_mm(side.end)
        match tap.place:
            case TapPlace.SLIDE:
                return self.nailed(tap.move_mm, 0.0, 0.0, side)
            case TapPlace.START:
                return self.nailed(0.0, tap.move_mm / 2, turn, side)
            case TapPlace.END:
                return self.nailed(0.0, tap.move_mm / 2, -turn, side)

    def nailed(self, slide_mm: float, out_mm: float, turn: float, side: FrameSide) -> "Board":
        dx, dy = direction(side.start, side.end)
        middle = Point((side.start.x_mm + side.end.x_mm) / 2, (side.start.y_mm + side.end.y_mm) / 2)
        return self._moved(slide_mm * dx + out_mm * dy, slide_mm * dy - out_mm * dx, turn, middle)

    def _moved(self, dx_mm: float, dy_mm: float, turn: float, about: Point) -> "Board":
        cos, sin = math.cos(turn), math.sin(turn)
        a, b, c, d = (
            Point(
                about.x_mm + cos * (p.x_mm - about.x_mm) - sin * (p.y_mm - about.y_mm) + dx_mm,
                about.y_mm + sin * (p.x_mm - about.x_mm) + cos * (p.y_mm - about.y_mm) + dy_mm,
            )
            for p in self.points
        )
        return Board(points=(a, b, c, d))


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """The pieces of a set as they truly hang."""

    frame: Frame
    boards: tuple[Board, ...]
    reveal_mm: tuple[tuple[float, float, float], ...]
    """How far each side of the reveal truly stands out, at start, middle and end."""

    def tapped(self, taps: tuple[Tap, ...]) -> "Wall":
        boards = list(self.boards)
        for tap in taps:
            boards[tap.piece] = boards[tap.piece].tapped(tap, self.frame.sides[tap.piece])
        return replace(self, boards=tuple(boards))

    def gaps_mm(self) -> tuple[float, ...]:
        """Return heel and toe gap of each joint between the two true cut faces."""
        out: list[float] = []
        for joint in self.frame.joints:
            _, heel_a, toe_a, _ = self.boards[joint.before].points
            heel_b, _, _, toe_b = self.boards[joint.after].points
            ux, uy = direction(heel_a, toe_a)
            vx, vy = direction(heel_b, toe_b)
            nx, ny = -(uy + vy), ux + vx
            size = math.hypot(nx, ny)
            for a, b in ((heel_a, heel_b), (toe_a, toe_b)):
                out.append(((b.x_mm - a.x_mm) * nx + (b.y_mm - a.y_mm) * ny) / size)
        return tuple(out)

    def open_mm(self) -> float:
        """Return the widest open joint as shapely measures it: face end to opposite face."""
        widest = 0.0
        for joint in self.frame.joints:
            before, after = self.boards[joint.before], self.boards[joint.after]
            _, heel_a, toe_a, _ = before.points
            heel_b, _, _, toe_b = after.points
            for a, b in ((heel_a, heel_b), (toe_a, toe_b)):
                apart = [
                    0.0 if board.shape.contains(ShapelyPoint(p)) else _to_line(p, q, r)
                    for board, p, q, r in ((after, a, heel_b, toe_b), (before, b, heel_a, toe_a))
                ]
                widest = max(widest, min(apart))
        return widest

    def overlap_mm(self) -> float:
        """Return how far the wood of two pieces overlaps at a joint end."""
        return max(0.0, -min(self.gaps_mm()))

    def overlap_area_mm2(self) -> float:
        return max(
            float(self.boards[j.before].shape.intersection(self.boards[j.after].shape).area)
            for j in self.frame.joints
        )

    def steps_mm(self) -> tuple[float, ...]:
        out = []
        for joint in self.frame.joints:
            ux, uy = direction(joint.heel, joint.toe)
            a = self.boards[joint.before].points[1]
            b = self.boards[joint.after].points[0]
            out.append((a.x_mm - b.x_mm) * ux + (a.y_mm - b.y_mm) * uy)
        return tuple(out)

    def quirks_mm(self) -> tuple[tuple[float, float, float], ...]:
        """Return how far each inner edge stands out of its planned line, over its true reveal."""
        out = []
        for side, board, reveal in zip(self.frame.sides, self.boards, self.reveal_mm, strict=True):
            dx, dy = direction(side.start, side.end)
            a, b = board.points[0], board.points[1]
            values = []
            for share, out_mm in zip((0.0, 0.5, 1.0), reveal, strict=True):
                at = Point(
                    side.start.x_mm + share * (side.end.x_mm - side.start.x_mm),
                    side.start.y_mm + share * (side.end.y_mm - side.start.y_mm),
                )
                on_edge = line_crossing(a, b, at, at.moved(dy, -dx))
                values.append(
                    (on_edge.x_mm - at.x_mm) * dy - (on_edge.y_mm - at.y_mm) * dx - out_mm
                )
            out.append((values[0], values[1], values[2]))
        return tuple(out)

    def read(self, rng: Random | None = None, feeler_mm: float = 0.05) -> SeenFrame:
        """Return the wall as read: gaps to the feeler's step; with `rng`, steps and quirks off."""

        def feel(gap_mm: float) -> float:
            return round(gap_mm / feeler_mm) * feeler_mm

        def off(u_mm: float) -> float:
            return rng.gauss(0.0, u_mm) if rng else 0.0

        gaps, steps = self.gaps_mm(), self.steps_mm()
        return SeenFrame(
            joints=tuple(
                SeenJoint(
                    heel_mm=feel(gaps[2 * i]),
                    toe_mm=feel(gaps[2 * i + 1]),
                    step_mm=steps[i] + off(0.1),
                )
                for i in range(len(steps))
            ),
            quirks=tuple(
                SeenQuirks(start_mm=a + off(0.25), middle_mm=b + off(0.25), end_mm=c + off(0.25))
                for a, b, c in self.quirks_mm()
            ),
        )


def _to_line(p: Point, q: Point, r: Point) -> float:
    """Return the distance to a face, drawn on past its ends so that a slip doesn't count."""
    dx, dy = direction(q, r)
    face = LineString([q.moved(-20 * dx, -20 * dy), r.moved(20 * dx, 20 * dy)])
    return float(face.distance(ShapelyPoint(p)))


def board_of(frame: Frame, index: int, cut: Cut) -> Board:
    """Return a piece cut with errors, each angle turned about its heel."""
    side = frame.sides[index]
    ux, uy = direction(side.start, side.end)
    width_mm = side.width_mm + cut.width_mm
    start = side.start.moved(-cut.start_mm * ux, -cut.start_mm * uy)
    end = side.end.moved(cut.end_mm * ux, cut.end_mm * uy)

    def outer(heel: Point, saw_deg: float, sign: float) -> Point:
        run_mm = sign * width_mm * math.tan(math.radians(saw_deg))
        return heel.moved(run_mm * ux + width_mm * uy, run_mm * uy - width_mm * ux)

    start_deg, end_deg = saw_angles_deg(frame, index)
    return Board(
        points=(
            start,
            end,
            outer(end, end_deg + cut.end_deg, 1.0),
            outer(start, start_deg + cut.start_deg, -1.0),
        )
    )


def saw_angles_deg(frame: Frame, index: int) -> tuple[float, float]:
    side = frame.sides[index]
    dx, dy = direction(side.start, side.end)
    out = [0.0, 0.0]
    for joint in frame.joints:
        ux, uy = direction(joint.heel, joint.toe)
        run, across = dx * ux + dy * uy, dy * ux - dx * uy
        if joint.before == index:
            out[1] = math.degrees(math.atan2(run, across))
        if joint.after == index:
            out[0] = math.degrees(math.atan2(-run, across))
    return (out[0], out[1])


def hung(frame: Frame, cuts: tuple[Cut, ...], rng: Random, pose_mm: float = 0.7) -> Wall:
    """Return pieces nailed at random, all moved outwards until no wood overlaps.

    The last step is what makes it a wall: the pieces touch somewhere and nowhere pass through.
    """
    boards = tuple(
        board_of(frame, i, cut).nailed(
            rng.gauss(0.0, pose_mm),
            rng.gauss(0.0, pose_mm),
            rng.gauss(0.0, pose_mm) / side.start.distance_mm(side.end),
            side,
        )
        for i, (cut, side) in enumerate(zip(cuts, frame.sides, strict=True))
    )
    reveal = tuple(
        (rng.gauss(0.0, 0.3), rng.gauss(0.0, 0.3), rng.gauss(0.0, 0.3)) for _ in frame.sides
    )
    wall = Wall(frame=frame, boards=boards, reveal_mm=reveal)
    for _ in range(8):
        tight_mm = min(wall.gaps_mm())
        if abs(tight_mm) < 1e-3:
            break
        wall = replace(
            wall,
            boards=tuple(
                board.nailed(0.0, -tight_mm * _shift_per_gap(frame), 0.0, side)
                for board, side in zip(wall.boards, frame.sides, strict=True)
            ),
        )
    return wall


def _shift_per_gap(frame: Frame) -> float:
    """Return how far all pieces go out to open every joint by one; set by the sharpest corner."""
    joint = frame.joints[0]
    ux, uy = direction(joint.heel, joint.toe)
    before = frame.sides[joint.before]
    after = frame.sides[joint.after]
    opened = 0.0
    for side, sign in ((after, 1.0), (before, -1.0)):
        dx, dy = direction(side.start, side.end)
        opened += sign * (dy * -uy - dx * ux)
    return 1.0 / opened


def private(rng: Random, scale: float = 1.0) -> Cut:
    """Return the small errors every piece has."""
    return Cut(
        start_mm=rng.gauss(0.0, 0.1 * scale),
        end_mm=rng.gauss(0.0, 0.1 * scale),
        start_deg=rng.gauss(0.0, 0.03 * scale),
        end_deg=rng.gauss(0.0, 0.03 * scale),
        width_mm=rng.gauss(0.0, 0.1 * scale),
    )
