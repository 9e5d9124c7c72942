"""The saw bench as solids: pieces cut from their settings, laid in the room, and measured.

OpenCascade does the cutting. The saw is modelled as a saw: a flat blade, upright and square to the
fence, is turned by the mitre about the upright through the inner edge of the face, then tilted by
the bevel about the line in which it meets the face. Nothing of the program's own formulas is used,
so a test may lay the pieces of any trim where the room's lines (worked out by the test) want them,
and measure whether the cut faces meet.

Frames. A piece lies on its back: x along it from left to right, y across its face (0 at the inner
or bottom edge, width at the outer or top edge), z off its back (0 at the back, thickness at the
face). The inner edge of the FACE runs from x = 0 to x = inner_mm, whatever the section. `placed`
takes this frame to the room; seen from the room the pieces of an opening run clockwise, so a left
leg runs upwards with its outer edge to the left.

Signs are those of `EndCut`: mitre positive where the outer edge is the longer, bevel negative
where the face is longer than the back. The mitre alone gives the cut's line on the face; the bevel
is the tilt between the blade and the upright through that line.

Example, the top left corner of a square opening, inner corner at the origin::

    head, leg = ...  # two pieces of a plan
    a = cut_piece(head).placed((0, 0, 0), (1, 0, 0), (0, 1, 0), (0, 0, 1))
    b = cut_piece(leg).placed((0, -leg.inner_mm, 0), (0, 1, 0), (-1, 0, 0), (0, 0, 1))
    met = joint(a, Side.LEFT, b, Side.RIGHT)
    assert met.gap_mm < 0.01 and met.overlap_mm < 0.01 and met.outline_mm < 0.01

The same with `cut_piece(piece, off_deg=0.5)`, a saw half a degree off, has to fail.

What one measure can't see another does: gap and overlap are taken against the whole plane of the
other cut face, so two faces in one plane but beside each other show in `outline_mm` alone. Where
the sections differ, the outlines differ and only gap, overlap and `common_volume_mm3` speak.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, Final

from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common, BRepAlgoAPI_Cut, BRepAlgoAPI_Section
from OCP.BRepBuilderAPI import (
    BRepBuilderAPI_MakeFace,
    BRepBuilderAPI_MakePolygon,
    BRepBuilderAPI_Transform,
)
from OCP.BRepGProp import BRepGProp
from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism
from OCP.BRepTools import BRepTools, BRepTools_WireExplorer
from OCP.GeomAbs import GeomAbs_SurfaceType
from OCP.gp import gp_Ax1, gp_Dir, gp_Pln, gp_Pnt, gp_Trsf, gp_Vec
from OCP.GProp import GProp_GProps
from OCP.TopAbs import TopAbs_ShapeEnum
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS

from longpoint.pieces.piece import EndCut, Piece
from tests.solids.vectors import Vector, cross, dot

Section = Sequence[tuple[float, float]]
"""Polygon of a profile: (across from the inner edge, off the back), either way round."""

SAME_PLANE_MM: Final = 1e-6
SQUARE_FRAME: Final = 1e-9
_SAME_CORNER_MM: Final = 1e-5


class Side(StrEnum):
    """An end of a piece as it lies at the saw."""

    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True, kw_only=True)
class JointMeasure:
    """How two cut faces meet.

    Attributes:
        gap_mm: Farthest that a corner of either face stands off the other's plane, in the open.
        overlap_mm: Farthest that one reaches through it.
        outline_mm: Farthest from a corner of either face to the nearest corner of the other.
    """

    gap_mm: float
    overlap_mm: float
    outline_mm: float

    @property
    def worst_mm(self) -> float:
        """The largest of the three."""
        return max(self.gap_mm, self.overlap_mm, self.outline_mm)


@dataclass(frozen=True, slots=True)
class Body:
    """A piece of timber, and the planes its two ends were cut along (a point, the way out)."""

    shape: Any
    left: tuple[Vector, Vector]
    right: tuple[Vector, Vector]

    def placed(self, origin: Vector, along: Vector, across: Vector, out: Vector) -> "Body":
        """Return the piece laid in the room.

        Args:
            origin: Where the left end of its inner BACK edge line (x = y = z = 0) comes to lie.
            along: Unit vector of its x, left to right.
            across: Unit vector of its y, inner to outer edge.
            out: Unit vector of its z, back to face.

        Raises:
            ValueError: The three are not of length 1, square to each other and right-handed; a
                left-handed frame would be a piece that can't be sawn.
        """
        turned = cross(along, across)
        off = max(
            abs(dot(along, along) - 1.0),
            abs(dot(across, across) - 1.0),
            abs(dot(along, across)),
            math.dist(turned, out),
        )
        if off > SQUARE_FRAME:
            raise ValueError(f"along, across and out are no right-handed frame: off by {off:.2g}")
        move = gp_Trsf()
        rows = zip(along, across, out, origin, strict=True)
        move.SetValues(*(value for row in rows for value in row))
        return self._by(move)

    def moved(self, by: Vector) -> "Body":
        """Return the piece shifted."""
        move = gp_Trsf()
        move.SetTranslation(gp_Vec(*by))
        return self._by(move)

    def turned(self, about: Vector, axis: Vector, by_deg: float) -> "Body":
        """Return the piece turned about an axis, anticlockwise looked at against it."""
        move = gp_Trsf()
        move.SetRotation(gp_Ax1(gp_Pnt(*about), gp_Dir(*axis)), math.radians(by_deg))
        return self._by(move)

    def _by(self, move: Any) -> "Body":  # noqa: ANN401
        def carried(plane: tuple[Vector, Vector]) -> tuple[Vector, Vector]:
            point, way = plane
            return (
                _vector(gp_Pnt(*point).Transformed(move)),
                _vector(gp_Dir(*way).Transformed(move)),
            )

        shape = BRepBuilderAPI_Transform(self.shape, move, True).Shape()
        return Body(shape, carried(self.left), carried(self.right))

    def plane(self, end: Side) -> tuple[Vector, Vector]:
        """Return a point of an end's cut face and its unit normal, out of the timber."""
        return self.left if end is Side.LEFT else self.right

    def end_face(self, end: Side) -> tuple[Vector, ...]:
        """Return the corners of an end's cut face in order.

        Raises:
            AssertionError: The solid has no face there, or more than one.
        """
        found = [face for face in _faces(self.shape) if _lies_in(face, self.plane(end))]
        assert len(found) == 1, f"{len(found)} faces at the {end} end"
        return _corners(found[0])

    @property
    def corners(self) -> tuple[Vector, ...]:
        """All corners of the solid, each once."""
        found = {
            tuple(round(value, 7) + 0.0 for value in _vector(BRep_Tool.Pnt_s(_as_vertex(vertex))))
            for vertex in _parts(self.shape, TopAbs_ShapeEnum.TopAbs_VERTEX)
        }
        return tuple(sorted((x, y, z) for x, y, z in found))

    @property
    def volume_mm3(self) -> float:
        """How much timber is left. [mm^3]"""
        return _volume_mm3(self.shape)


def cut_piece(piece: Piece, section: Section | None = None, *, off_deg: float = 0.0) -> Body:
    """Return a piece of a plan as the saw leaves it, from its settings and inner edge alone.

    Args:
        piece: The piece; its face width and thickness are the stock's.
        section: Polygon of the profile; a plain rectangle if None.
        off_deg: What the saw is off on every setting that isn't square.
    """
    return bar(
        piece.width_mm,
        piece.thickness_mm,
        piece.inner_mm,
        piece.left,
        piece.right,
        section=section,
        off_deg=off_deg,
    )


def bar(
    width_mm: float,
    thickness_mm: float,
    inner_mm: float,
    left: EndCut,
    right: EndCut,
    *,
    section: Section | None = None,
    off_deg: float = 0.0,
) -> Body:
    """Return a bar cut at both ends, the inner edge of its face from x = 0 to x = inner_mm.

    Raises:
        AssertionError: The settings are of no piece: the two cuts cross before they have gone
            through the timber.
    """
    outline = section or rectangle(width_mm, thickness_mm)
    blades = (
        _blade(Side.LEFT, left, (0.0, 0.0, thickness_mm), off_deg),
        _blade(Side.RIGHT, right, (inner_mm, 0.0, thickness_mm), off_deg),
    )
    spare_mm = max(_reach_mm(outline, thickness_mm, blade) for blade in blades) + 10.0
    far_mm = 4.0 * (inner_mm + 2.0 * spare_mm + width_mm + thickness_mm)
    shape = _prism(outline, -spare_mm, inner_mm + spare_mm)
    for blade in blades:
        shape = BRepAlgoAPI_Cut(shape, _beyond(blade, far_mm)).Shape()
    body = Body(_the_solid(shape), *(_point_and_way(blade) for blade in blades))
    corners = body.corners
    least, most = min(x for x, _, _ in corners), max(x for x, _, _ in corners)
    assert -spare_mm < least, "the stock was too short for its left cut"
    assert most < inner_mm + spare_mm, "the stock was too short for its right cut"
    for blade in blades:
        for edge in outline:
            end = _edge_end(edge, blade)
            stands = any(math.dist(end, corner) < _SAME_CORNER_MM for corner in corners)
            assert stands, "the two cuts cross in the timber"
    return body


def joint(a: Body, end_a: Side, b: Body, end_b: Side) -> JointMeasure:
    """Measure how an end of one piece meets an end of another.

    Args:
        a: One piece, laid in the room.
        end_a: Its end.
        b: The other.
        end_b: Its end.
    """
    face_a, face_b = a.end_face(end_a), b.end_face(end_b)
    off_mm = [
        *(_off_plane_mm(corner, b.plane(end_b)) for corner in face_a),
        *(_off_plane_mm(corner, a.plane(end_a)) for corner in face_b),
    ]
    return JointMeasure(
        gap_mm=max(0.0, *off_mm),
        overlap_mm=max(0.0, *(-off for off in off_mm)),
        outline_mm=max(_farthest_mm(face_a, face_b), _farthest_mm(face_b, face_a)),
    )


def common_volume_mm3(a: Body, b: Body) -> float:
    """Return how much room two pieces both want. [mm^3]"""
    return _volume_mm3(BRepAlgoAPI_Common(a.shape, b.shape).Shape())


def section_outline(body: Body, point: Vector, normal: Vector) -> tuple[Vector, ...]:
    """Return the corners of the outline that a plane cuts out of a piece, in no set order."""
    section = BRepAlgoAPI_Section(body.shape, gp_Pln(gp_Pnt(*point), gp_Dir(*normal)), False)
    section.Build()
    found: list[Vector] = []
    for vertex in _parts(section.Shape(), TopAbs_ShapeEnum.TopAbs_VERTEX):
        corner = _vector(BRep_Tool.Pnt_s(_as_vertex(vertex)))
        if all(math.dist(corner, other) > SAME_PLANE_MM for other in found):
            found.append(corner)
    return tuple(found)


def rectangle(width_mm: float, thickness_mm: float) -> Section:
    """Return the section of a plain board."""
    return ((0.0, 0.0), (width_mm, 0.0), (width_mm, thickness_mm), (0.0, thickness_mm))


def moulded(width_mm: float, thickness_mm: float) -> Section:
    """Return the section of a moulding: thin at the inner edge, a step, a slope, a rounded back.

    It is one that no half turn takes to itself, so a piece that is swapped end for end shows.
    """
    w, t = width_mm, thickness_mm
    return (
        (0.0, 0.0),
        (w, 0.0),
        (w, 0.9 * t),
        (0.9 * w, t),
        (0.7 * w, t),
        (0.62 * w, 0.8 * t),
        (0.2 * w, 0.55 * t),
        (0.12 * w, 0.6 * t),
        (0.0, 0.45 * t),
    )


def _blade(end: Side, cut: EndCut, at: Vector, off_deg: float) -> Any:  # noqa: ANN401
    """Return the blade's plane at an end, its normal out of the piece.

    Seen from above, an outer edge longer at the right end asks for a clockwise turn, at the left
    end for the other one. Looking along the cut's line from the inner to the outer edge, a face
    longer than the back asks for an anticlockwise tilt at the right end, and for the other one at
    the left end.
    """
    mitre_deg = cut.mitre_deg + (off_deg if cut.mitre_deg else 0.0)
    bevel_deg = cut.bevel_deg + (off_deg if cut.bevel_deg else 0.0)
    way = 1.0 if end is Side.RIGHT else -1.0
    point, upright = gp_Pnt(*at), gp_Dir(0.0, 0.0, 1.0)
    turn, tilt = gp_Trsf(), gp_Trsf()
    turn.SetRotation(gp_Ax1(point, upright), math.radians(-way * mitre_deg))
    line_on_face = gp_Dir(0.0, 1.0, 0.0).Transformed(turn)
    tilt.SetRotation(gp_Ax1(point, line_on_face), math.radians(-way * bevel_deg))
    return gp_Pln(point, gp_Dir(way, 0.0, 0.0)).Transformed(turn).Transformed(tilt)


def _point_and_way(blade: Any) -> tuple[Vector, Vector]:  # noqa: ANN401
    return _vector(blade.Location()), _vector(blade.Axis().Direction())


def _reach_mm(outline: Section, thickness_mm: float, blade: Any) -> float:  # noqa: ANN401
    """Return how far from its point on the inner edge a blade may meet the stock's edges."""
    _, (along, across, up) = _point_and_way(blade)
    assert abs(along) > 1e-3, "a blade along the stock cuts no end"
    return max(
        abs(across * y) / abs(along) + abs(up * (z - thickness_mm)) / abs(along) for y, z in outline
    )


def _edge_end(edge: tuple[float, float], blade: Any) -> Vector:  # noqa: ANN401
    """Return where a blade ends one of the stock's long edges."""
    (at, (along, across, up)), (y, z) = _point_and_way(blade), edge
    return (at[0] - (across * (y - at[1]) + up * (z - at[2])) / along, y, z)


def _prism(outline: Section, start_mm: float, end_mm: float) -> Any:  # noqa: ANN401
    polygon = BRepBuilderAPI_MakePolygon()
    for y, z in outline:
        polygon.Add(gp_Pnt(start_mm, y, z))
    polygon.Close()
    face = BRepBuilderAPI_MakeFace(polygon.Wire(), True).Face()
    return BRepPrimAPI_MakePrism(face, gp_Vec(end_mm - start_mm, 0.0, 0.0)).Shape()


def _beyond(blade: Any, far_mm: float) -> Any:  # noqa: ANN401
    """Return all that lies beyond a blade, as far as it matters."""
    face = BRepBuilderAPI_MakeFace(blade, -far_mm, far_mm, -far_mm, far_mm).Face()
    return BRepPrimAPI_MakePrism(face, gp_Vec(blade.Axis().Direction()) * far_mm).Shape()


def _the_solid(shape: Any) -> Any:  # noqa: ANN401
    solids = list(_parts(shape, TopAbs_ShapeEnum.TopAbs_SOLID))
    assert len(solids) == 1, f"the cuts left {len(solids)} solids"
    return solids[0]


def _parts(shape: Any, kind: TopAbs_ShapeEnum) -> Iterator[Any]:  # noqa: ANN401
    explorer = TopExp_Explorer(shape, kind)
    while explorer.More():
        yield explorer.Current()
        explorer.Next()


def _faces(shape: Any) -> Iterator[Any]:  # noqa: ANN401
    return (TopoDS.Face(part) for part in _parts(shape, TopAbs_ShapeEnum.TopAbs_FACE))


def _as_vertex(shape: Any) -> Any:  # noqa: ANN401
    return TopoDS.Vertex(shape)


def _lies_in(face: Any, plane: tuple[Vector, Vector]) -> bool:  # noqa: ANN401
    if BRepAdaptor_Surface(face).GetType() != GeomAbs_SurfaceType.GeomAbs_Plane:
        return False
    return all(abs(_off_plane_mm(corner, plane)) < SAME_PLANE_MM for corner in _corners(face))


def _corners(face: Any) -> tuple[Vector, ...]:  # noqa: ANN401
    explorer = BRepTools_WireExplorer(BRepTools.OuterWire_s(face), face)
    found = []
    while explorer.More():
        found.append(_vector(BRep_Tool.Pnt_s(explorer.CurrentVertex())))
        explorer.Next()
    return tuple(found)


def _off_plane_mm(point: Vector, plane: tuple[Vector, Vector]) -> float:
    at, way = plane
    return sum((p - a) * n for p, a, n in zip(point, at, way, strict=True))


def _farthest_mm(corners: Sequence[Vector], others: Sequence[Vector]) -> float:
    return max(min(math.dist(corner, other) for other in others) for corner in corners)


def _volume_mm3(shape: Any) -> float:  # noqa: ANN401
    found = GProp_GProps()
    BRepGProp.VolumeProperties_s(shape, found)
    return float(found.Mass())


def _vector(triple: Any) -> Vector:  # noqa: ANN401
    return (float(triple.X()), float(triple.Y()), float(triple.Z()))
