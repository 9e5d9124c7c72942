"""A piece as a body: its section carried along it, cut off at both ends as the saw does."""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.pieces.boards import Side
from longpoint.pieces.piece import EndCut, Piece
from longpoint.trims.joint_plane import Vector

SAME_MM: Final = 1e-6
"""Corners nearer than this are one corner: a return comes to a point."""

Section = tuple[tuple[float, float], ...]
"""Corners of a section in order: across from the inner edge, up from the back. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutSolid:
    """A body with flat faces, in the piece's own frame (see `lying.Lying`).

    Attributes:
        points: Its corners. [mm]
        faces: Corners of each face by number, anticlockwise as seen from outside.
    """

    points: tuple[Vector, ...]
    faces: tuple[tuple[int, ...], ...]


def section_of(piece: Piece, section: Section) -> Section:
    """Return a piece's section anticlockwise; width by thickness where none was drawn."""
    width_mm, thickness_mm = piece.width_mm, piece.thickness_mm
    if len(section) < 3:
        return ((0.0, 0.0), (width_mm, 0.0), (width_mm, thickness_mm), (0.0, thickness_mm))
    return section if section_area_mm2(section) > 0.0 else tuple(reversed(section))


def section_area_mm2(section: Section) -> float:
    """Return the area that a section's corners go round, positive when they go anticlockwise.

    Example:
        >>> section_area_mm2(((0, 0), (57, 0), (57, 18), (0, 18)))
        1026.0
    """
    after = (*section[1:], *section[:1])
    return sum(a * d - b * c for (a, b), (c, d) in zip(section, after, strict=True)) / 2.0


def cut_solid(piece: Piece, section: Section = ()) -> CutSolid | None:
    """Return the body of a piece, cut at its length and its two settings.

    Args:
        piece: The piece.
        section: Corners of its profile's section; empty: width by thickness.

    Returns:
        The body; None where the two cuts cross before they have gone through the timber.
    """
    corners = section_of(piece, section)
    left = [(end_mm(piece, Side.LEFT, y, z), y, z) for y, z in corners]
    right = [(end_mm(piece, Side.RIGHT, y, z), y, z) for y, z in corners]
    if any(b[0] - a[0] < -SAME_MM for a, b in zip(left, right, strict=True)):
        return None
    points: list[Vector] = []
    number: dict[Vector, int] = {}

    def numbered(point: Vector) -> int:
        key = (round(point[0] / SAME_MM), round(point[1] / SAME_MM), round(point[2] / SAME_MM))
        if key not in number:
            number[key] = len(points)
            points.append(point)
        return number[key]

    starts, ends = [numbered(p) for p in left], [numbered(p) for p in right]
    after = (*range(1, len(corners)), 0)
    faces = [
        tuple(reversed(starts)),
        tuple(ends),
        *((starts[i], starts[j], ends[j], ends[i]) for i, j in enumerate(after)),
    ]
    whole = (tuple(dict.fromkeys(face)) for face in faces)
    return CutSolid(points=tuple(points), faces=tuple(face for face in whole if len(face) > 2))


def end_mm(piece: Piece, side: Side, across_mm: float, up_mm: float) -> float:
    """Return where an end's cut meets a line along the piece, from the left end of its inner edge.

    Args:
        piece: The piece.
        side: Which end.
        across_mm: The line's place across the face, from the inner edge.
        up_mm: Its height over the back.

    References:
        The cut's line on the face leans by the mitre, and its plane by the bevel off the upright
        through that line; along the piece a drop below the face counts 1 / cos(mitre) times.
    """
    cut: EndCut = piece.left if side is Side.LEFT else piece.right
    mitre, bevel = math.radians(cut.mitre_deg), math.radians(cut.bevel_deg)
    below_mm = piece.thickness_mm - up_mm
    past_mm = across_mm * math.tan(mitre) + below_mm * math.tan(bevel) / math.cos(mitre)
    return -past_mm if side is Side.LEFT else piece.inner_mm + past_mm
