"""Pieces round arched and many-sided openings, laid where lines worked out by shapely want them.

Of a piece only what the saw is told is used: its inner edge, its width and its two settings. Where
it has to lie is worked out here from the corners that were drawn, by offset lines and circles that
shapely crosses; nothing of the program's own geometry is called.
"""

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from shapely import LineString, Polygon
from shapely.geometry import Point as Spot

from longpoint.pieces.arched import arch_pieces
from longpoint.pieces.outlined import outline_pieces
from longpoint.pieces.piece import Piece, Role
from longpoint.shape.fitted import FittedOutline
from longpoint.shape.outline_fit import fit_outline
from longpoint.shape.point import Point
from longpoint.survey.house import House
from longpoint.survey.instruments import Tape
from longpoint.survey.openings import Arch, Layout, Opening
from longpoint.survey.outlines import OutlineReadings
from longpoint.survey.profiles import Profile
from tests.fitted_houses import Corners, fitted, house, opening, quad

FINE: Final = 4096
"""Straight bits in a quarter of a circle: it leaves a 3 m circle by under 0.0001 mm."""

RADIUS_MM: Final = 700.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A piece, and where the left end of its inner edge comes to lie, and which way it runs."""

    piece: Piece
    at: Point
    along: tuple[float, float]

    @property
    def out(self) -> tuple[float, float]:
        """Return the way from inner to outer edge: clockwise pieces have it on their left."""
        return (-self.along[1], self.along[0])

    def polygon(self) -> Polygon:
        """Return the piece as the saw leaves it, seen from the room."""
        width_mm = self.piece.width_mm
        left, right = (
            width_mm * math.tan(math.radians(end.mitre_deg))
            for end in (self.piece.left, self.piece.right)
        )
        local = (
            (0.0, 0.0),
            (self.piece.inner_mm, 0.0),
            (self.piece.inner_mm + right, width_mm),
            (-left, width_mm),
        )
        (ux, uy), (vx, vy) = self.along, self.out
        return Polygon(
            [(self.at.x_mm + x * ux + y * vx, self.at.y_mm + x * uy + y * vy) for x, y in local]
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Set:
    """A whole set as laid.

    Attributes:
        hole: What lies inside its inner edges.
        whole: What lies inside its outer edges.
        laid: Its pieces.
        trim: What becomes of each when it is sawn to the curve: itself, for a straight one.
    """

    hole: Polygon
    whole: Polygon
    laid: tuple[Laid, ...]
    trim: tuple[Polygon, ...]


def drawn_polygon(draw: random.Random) -> tuple[Point, ...]:
    """Return a convex shape: points on an ellipse in any position, no two close together."""
    count = draw.choice((3, 5, 6, 7, 8, 12))
    step = 2.0 * math.pi / count
    first = draw.uniform(0.0, step)
    flat = draw.uniform(0.55, 1.0)
    turns = [first + step * (k + draw.uniform(-0.25, 0.25)) for k in range(count)]
    return tuple(Point(RADIUS_MM * math.cos(t), RADIUS_MM * flat * math.sin(t)) for t in turns)


def polygon_set(corners: Sequence[Point], quirk_mm: float, width_mm: float) -> Set:
    """Return the set that the program makes round a shape, all round, laid in its place."""
    readings = OutlineReadings(corners=tuple((p.x_mm, p.y_mm) for p in corners), tape="T1")
    read = replace(
        opening(quad((0, 0), (9, 0), (9, 9), (0, 9)), quirk_mm=quirk_mm, width_mm=width_mm),
        outline=readings,
    )
    shape = fit_outline("W1", readings, Tape(name="T1")).fitted
    assert isinstance(shape, FittedOutline)
    pieces = outline_pieces(house(read), read, shape)
    first = bottom_of(corners)
    around = (*corners[first:], *corners[:first])
    count = len(around)
    lines = [line_out(around[i], around[(i + 1) % count], quirk_mm) for i in range(count)]
    by_side = {0: pieces[0]} | {count - k: pieces[k] for k in range(1, count)}
    laid = tuple(
        Laid(
            piece=by_side[side],
            at=crossing(lines[side], lines[(side + 1) % count]),
            along=direction(around[(side + 1) % count], around[side]),
        )
        for side in range(count)
    )
    hole, whole = (
        Polygon(around).buffer(out, join_style="mitre", mitre_limit=1000.0)
        for out in (quirk_mm, quirk_mm + width_mm)
    )
    return Set(hole=hole, whole=whole, laid=laid, trim=tuple(each.polygon() for each in laid))


def bottom_of(corners: Sequence[Point]) -> int:
    """Return the side that runs most nearly level, left to right."""
    count = len(corners)
    return max(range(count), key=lambda i: direction(corners[i], corners[(i + 1) % count])[0])


def drawn_arch(draw: random.Random) -> tuple[Corners, float]:
    """Return an opening a little off square up to its springings, and the rise of its arch."""
    width_mm, height_mm = draw.uniform(500.0, 1800.0), draw.uniform(500.0, 2100.0)
    off = [draw.uniform(-6.0, 6.0) for _ in range(4)]
    corners = quad(
        (0.0, 0.0),
        (width_mm + off[0], 0.0),
        (width_mm + off[1], height_mm + off[2]),
        (off[3], height_mm),
    )
    return corners, draw.uniform(0.12, 0.46) * width_mm


def arch_set(
    corners: Corners, rise_mm: float, quirk_mm: float, width_mm: float, segments: int
) -> Set:
    """Return the set that the program makes round an arched window, laid in its place."""
    read, found = arched_house(corners, rise_mm, quirk_mm, width_mm, segments)
    pieces, _ = arch_pieces(found, read, fitted(read))
    circle = Circle.through(corners[3], corners[2], rise_mm)
    bl, br, tr, tl = corners
    inner = [line_out(*side, quirk_mm) for side in ((bl, br), (br, tr), (tl, bl))]
    outer = [line_out(*side, quirk_mm + width_mm) for side in ((bl, br), (br, tr), (tl, bl))]
    radii = (circle.radius_mm + quirk_mm, circle.radius_mm + quirk_mm + width_mm)
    joints = {
        side: (circle.crossing(inner[line], radii[0]), circle.crossing(outer[line], radii[1]))
        for side, line in (("right", 1), ("left", 2))
    }
    foot_left, foot_right = crossing(inner[2], inner[0]), crossing(inner[0], inner[1])
    straight = {
        Role.LEFT_LEG: (foot_left, direction(bl, tl)),
        Role.RIGHT_LEG: (joints["right"][0], direction(tr, br)),
        Role.SILL: (foot_right, direction(br, bl)),
    }
    laid, trim = [], []
    ring = circle.disc(radii[1]).difference(circle.disc(radii[0]))
    at_segment = 0
    for piece in pieces:
        if piece.role in straight:
            at, along = straight[piece.role]
            laid.append(Laid(piece=piece, at=at, along=along))
            trim.append(laid[-1].polygon())
            continue
        ends = circle.ends(at_segment, segments, radii, joints)
        laid.append(laid_segment(circle, piece, at_segment, segments, ends))
        trim.append(laid[-1].polygon().intersection(ring))
        at_segment += 1
    assert at_segment == segments
    hole, whole = (
        within(circle, lines, radius, (joints["left"][k], joints["right"][k]))
        for k, (lines, radius) in enumerate(((inner, radii[0]), (outer, radii[1])))
    )
    return Set(hole=hole, whole=whole, laid=tuple(laid), trim=tuple(trim))


def arched_house(
    corners: Corners, rise_mm: float, quirk_mm: float, width_mm: float, segments: int
) -> tuple[Opening, House]:
    """Return an arched window and a house with a board wide enough for any arch."""
    read = replace(
        opening(corners, quirk_mm=quirk_mm, width_mm=width_mm, layout=Layout.ALL_ROUND),
        arch=Arch(rise_mm=rise_mm, segments=segments, blank="board"),
    )
    found = house(read)
    board = Profile(name="board", width_mm=width_mm + 260.0, thickness_mm=18.0)
    return read, replace(found, profiles=(*found.profiles, board))


Ends = tuple[tuple[Point, Point], tuple[Point, Point]]
"""Inner and outer corner of a segment's left end, then of its right end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Circle:
    """A circle through two springings; angles [rad] from its crown, to the right positive."""

    centre: Point
    radius_mm: float
    up: tuple[float, float]
    half: float

    @classmethod
    def through(cls, left: Point, right: Point, rise_mm: float) -> "Circle":
        """Return the circle through two springings and the crown over the middle between them."""
        ux, uy = direction(left, right)
        middle = Point((left.x_mm + right.x_mm) / 2.0, (left.y_mm + right.y_mm) / 2.0)
        crown = middle.moved(-uy * rise_mm, ux * rise_mm)
        centre = crossing(bisector(left, right), bisector(left, crown))
        radius_mm = math.dist(centre, left)
        half = math.atan2(math.dist(left, right) / 2.0, radius_mm - rise_mm)
        return cls(centre=centre, radius_mm=radius_mm, up=(-uy, ux), half=half)

    def disc(self, radius_mm: float) -> Polygon:
        return Spot(self.centre).buffer(radius_mm, quad_segs=FINE)

    def crossing(self, line: LineString, radius_mm: float) -> Point:
        """Return where a leg's line meets a circle, the upper of the two places."""
        met = line.intersection(self.disc(radius_mm).exterior)
        spots = [Point(spot.x, spot.y) for spot in met.geoms]
        return max(spots, key=lambda p: p.x_mm * self.up[0] + p.y_mm * self.up[1])

    def way(self, angle: float) -> tuple[float, float]:
        (ux, uy), cos, sin = self.up, math.cos(angle), math.sin(angle)
        return (cos * ux + sin * uy, cos * uy - sin * ux)

    def at(self, angle: float, radius_mm: float) -> Point:
        ux, uy = self.way(angle)
        return self.centre.moved(radius_mm * ux, radius_mm * uy)

    def ends(
        self,
        index: int,
        count: int,
        radii: tuple[float, float],
        joints: dict[str, tuple[Point, Point]],
    ) -> Ends:
        """Return the corners of a segment: radial between two of them, else the leg's joint."""
        step = 2.0 * self.half / count
        start = -self.half + index * step
        left, right = (
            (self.at(angle, radii[0]), self.at(angle, radii[1])) for angle in (start, start + step)
        )
        return (
            joints["left"] if index == 0 else left,
            joints["right"] if index == count - 1 else right,
        )


def laid_segment(circle: Circle, piece: Piece, index: int, count: int, ends: Ends) -> Laid:
    """Return a segment laid so that its board's inner edge touches its lower inner corner.

    The left end of that edge lies on the line of the left joint.
    """
    angle = -circle.half + (index + 0.5) * 2.0 * circle.half / count
    (vx, vy), (ux, uy) = circle.way(angle), circle.way(angle + math.pi / 2.0)

    def height_mm(p: Point) -> float:
        return (p.x_mm - circle.centre.x_mm) * vx + (p.y_mm - circle.centre.y_mm) * vy

    low_mm = min(height_mm(end[0]) for end in ends)
    foot = circle.centre.moved(low_mm * vx, low_mm * vy)
    edge = LineString([foot.moved(-5000 * ux, -5000 * uy), foot.moved(5000 * ux, 5000 * uy)])
    return Laid(piece=piece, at=crossing(longer(*ends[0]), edge), along=(ux, uy))


def within(
    circle: Circle,
    lines: Sequence[LineString],
    radius_mm: float,
    joints: tuple[Point, Point],
) -> Polygon:
    """Return what lies above the bottom line, between the legs' lines and under a circle."""
    bottom, right, left = lines
    below = Polygon([crossing(left, bottom), crossing(bottom, right), joints[1], joints[0]])
    (ux, uy), far = direction(*joints), 1e5
    a, b = joints[0].moved(-far * ux, -far * uy), joints[1].moved(far * ux, far * uy)
    above = Polygon([a, b, b.moved(-far * uy, far * ux), a.moved(-far * uy, far * ux)])
    return below.union(circle.disc(radius_mm).intersection(above))


def direction(start: Point, end: Point) -> tuple[float, float]:
    length_mm = math.dist(start, end)
    return ((end.x_mm - start.x_mm) / length_mm, (end.y_mm - start.y_mm) / length_mm)


def longer(start: Point, end: Point) -> LineString:
    """Return the line through two points, far past both."""
    (ux, uy), far = direction(start, end), 2e4
    return LineString([start.moved(-far * ux, -far * uy), end.moved(far * ux, far * uy)])


def line_out(start: Point, end: Point, out_mm: float) -> LineString:
    """Return a side of an anticlockwise shape, moved outwards, far past both its ends."""
    return longer(start, end).offset_curve(-out_mm)


def bisector(one: Point, other: Point) -> LineString:
    """Return the line of all points as far from one as from the other."""
    ux, uy = direction(one, other)
    middle = Point((one.x_mm + other.x_mm) / 2.0, (one.y_mm + other.y_mm) / 2.0)
    return longer(middle, middle.moved(-uy, ux))


def crossing(one: LineString, other: LineString) -> Point:
    met = one.intersection(other)
    return Point(met.x, met.y)
