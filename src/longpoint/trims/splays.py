"""Boards that line a reveal, square to the wall or splayed: where they end and how they are sawn.

Seen from the room: x right, y up, z towards you; the wall's face is z = 0, the frame stands a
depth behind it. A board lies at the saw on its back, its inner edge the one at the frame, its outer
edge the one at the wall's face, so that its left end is the one at its side's second corner.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final, NamedTuple

from longpoint.errors import PieceError, ShapeError
from longpoint.shape.point import Point, direction
from longpoint.speech.said import say
from longpoint.trims.joint_plane import (
    BoardFrame,
    SawAngles,
    Vector,
    cross,
    dot,
    plus,
    saw_angles,
    times,
)

_LEAST_SINE: Final = 0.05
"""Planes nearer than 3 degrees to each other's line make no joint; ours."""


class RevealJoint(StrEnum):
    """How the boards of a reveal meet."""

    BUTT = "butt"
    """Head and sill board run over the ends of the legs, out to the legs' backs."""
    MITRE = "mitre"
    """Each is cut along the plane through the two lines where faces and backs meet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RevealSide:
    """What lines one side of a reveal.

    Attributes:
        splay_deg: How far its face turns off square to the wall, the reveal wider at the room.
            0 <= splay < 90. [deg]
        thickness_mm: Thickness of its board, > 0; 0 for a bare side (floor, window board), on whose
            face the neighbours end.
        runs_over: With butt joints, True where it runs over its neighbours' ends.
    """

    splay_deg: float = 0.0
    thickness_mm: float
    runs_over: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RevealBoard:
    """One board of a reveal, as the square-edged blank that its ends are cut on.

    Attributes:
        face_mm: Width across its face, from the frame to the wall's face.
        blank_mm: Width of the blank: the face and what the bevel of its edges takes.
        inner_mm: Length of the face along the frame.
        front_mm: Length of the face along the wall's face.
        outer_mm: Length of the face along the blank's outer edge.
        back_mm: Longest length along the back.
        left: Cut of the left end.
        right: Cut of the right end.
        rip_deg: Bevel of both long edges, parallel: the back leads at the wall, the face at the
            frame.
    """

    face_mm: float
    blank_mm: float
    inner_mm: float
    front_mm: float
    outer_mm: float
    back_mm: float
    left: SawAngles
    right: SawAngles
    rip_deg: float


class _Plane(NamedTuple):
    """All points x with normal . x = at."""

    normal: Vector
    at: float


@dataclass(frozen=True, slots=True)
class _Lie:
    """How a board lies: a point of its front arris, along to its right, across, out of its face."""

    front: Vector
    right: Vector
    across: Vector
    face: Vector

    def behind(self, thickness_mm: float) -> _Plane:
        """Return the plane of its face, or the parallel one of its back."""
        return _Plane(self.face, dot(self.face, self.front) - thickness_mm)


def reveal_board(
    corners: Sequence[Point],
    sides: Sequence[RevealSide],
    depth_mm: float,
    side: int,
    joint: RevealJoint = RevealJoint.BUTT,
) -> RevealBoard:
    """Return the board along one side of a reveal.

    Args:
        corners: Corners of the reveal's faces at the wall's face, anticlockwise. [mm], (n,)
        sides: What lines each side; side i from corner i to corner i + 1, (n,).
        depth_mm: From the wall's face back to the frame. > 0. [mm]
        side: Number of the side.
        joint: How the boards meet.

    Returns:
        The board.

    Raises:
        PieceError: Two sides run in one line, or a board has no length left.

    Example:
        A square lining of 18 mm, 100 deep, in a hole of 600 by 400, the head over the legs:

        >>> hole = (Point(0, 0), Point(600, 0), Point(600, 400), Point(0, 400))
        >>> over, leg = (RevealSide(thickness_mm=18, runs_over=r) for r in (True, False))
        >>> head = reveal_board(hole, (over, leg, over, leg), 100.0, 2)
        >>> round(head.inner_mm, 6), round(head.face_mm, 6)
        (636.0, 100.0)

        Splayed 30 all round and mitred, the reveal is 2 x 100 tan 30 narrower at the frame:

        >>> splayed = (RevealSide(splay_deg=30, thickness_mm=18),) * 4
        >>> head = reveal_board(hole, splayed, 100.0, 2, RevealJoint.MITRE)
        >>> round(head.inner_mm, 2), round(head.front_mm, 2), round(head.face_mm, 2)
        (484.53, 600.0, 115.47)

    References:
        Faces n . x = c and backs n . x = c - t of two boards: their two lines of crossing lie in
        the plane (t2 n1 - t1 n2) . x = t2 c1 - t1 c2, so both boards are cut along it.
    """
    lies = tuple(_lie(corners, index, sides[index]) for index in range(len(corners)))
    here, lie = sides[side], lies[side]
    face_mm = depth_mm / math.cos(math.radians(here.splay_deg))
    blank_mm = face_mm + here.thickness_mm * math.tan(math.radians(here.splay_deg))
    before, after = (side - 1) % len(sides), (side + 1) % len(sides)
    right = _end_plane(lies, sides, side, before, joint)
    left = _end_plane(lies, sides, side, after, joint)

    def along_mm(across_mm: float, out_mm: float = 0.0) -> float:
        at = plus(lie.front, plus(times(lie.across, across_mm - face_mm), times(lie.face, out_mm)))
        return _reach_mm(right, at, lie.right) - _reach_mm(left, at, lie.right)

    board = RevealBoard(
        face_mm=face_mm,
        blank_mm=blank_mm,
        inner_mm=along_mm(0.0),
        front_mm=along_mm(face_mm),
        outer_mm=along_mm(blank_mm),
        back_mm=max(along_mm(across, -here.thickness_mm) for across in (0.0, blank_mm)),
        left=_saw(lie, left, -1.0),
        right=_saw(lie, right, 1.0),
        rip_deg=here.splay_deg,
    )
    if min(board.inner_mm, board.front_mm) <= 0:
        raise PieceError(
            say("The boards were laid round the reveal."),
            say("One of them has no length left at the frame."),
            say("Read the splays and the depth again."),
        )
    return board


def splay_between_deg(front_mm: float, back_mm: float, depth_mm: float, sides: int = 2) -> float:
    """Return the splay that takes a reveal from one width at the room to another at the frame.

    Args:
        front_mm: Between the faces at the wall's face.
        back_mm: The same at the frame.
        depth_mm: From the wall's face to the frame. > 0.
        sides: How many of the two sides share it: 2 alike, or 1.

    Returns:
        Degrees off square to the wall; negative where the reveal is narrower at the room.

    Example:
        >>> round(splay_between_deg(600.0, 500.0, 100.0), 2)
        26.57

    References:
        tan(splay) = half the difference over the depth.
    """
    return math.degrees(math.atan2((front_mm - back_mm) / sides, depth_mm))


def back_corners(
    corners: Sequence[Point], sides: Sequence[RevealSide], depth_mm: float
) -> tuple[Point, ...]:
    """Return the corners of a reveal's faces at the frame, looked at from the room.

    Raises:
        PieceError: Two sides run in one line.
    """
    lies = tuple(_lie(corners, index, sides[index]) for index in range(len(corners)))
    found = []
    for index in range(len(corners)):
        lie, other = lies[index], lies[index - 1]
        deep_mm = depth_mm / lie.across[2]
        at = plus(lie.front, times(lie.across, -deep_mm))
        reach_mm = _reach_mm(other.behind(0.0), at, lie.right)
        x_mm, y_mm, _ = plus(at, times(lie.right, reach_mm))
        found.append(Point(x_mm, y_mm))
    return tuple(found)


def _lie(corners: Sequence[Point], side: int, lined: RevealSide) -> _Lie:
    here, after = corners[side], corners[(side + 1) % len(corners)]
    try:
        ux, uy = direction(here, after)
    except ShapeError as error:
        raise PieceError(error.read, error.wrong, error.do) from error
    splay = math.radians(lined.splay_deg)
    sine, cosine = math.sin(splay), math.cos(splay)
    across = (uy * sine, -ux * sine, cosine)
    face = (-uy * cosine, ux * cosine, sine)
    return _Lie((here.x_mm, here.y_mm, 0.0), cross(across, face), across, face)


def _end_plane(
    lies: Sequence[_Lie],
    sides: Sequence[RevealSide],
    side: int,
    neighbour: int,
    joint: RevealJoint,
) -> _Plane:
    """Return the plane that a board ends on beside a neighbour."""
    thick, other_thick = sides[side].thickness_mm, sides[neighbour].thickness_mm
    lie, other = lies[side], lies[neighbour]
    if other_thick == 0:
        return other.behind(0.0)
    if joint is RevealJoint.BUTT:
        return other.behind(other_thick if sides[side].runs_over else 0.0)
    face, other_face = lie.behind(0.0), other.behind(0.0)
    normal = plus(times(face.normal, other_thick), times(other_face.normal, -thick))
    return _Plane(normal, other_thick * face.at - thick * other_face.at)


def _reach_mm(plane: _Plane, at: Vector, along: Vector) -> float:
    """Return how far it is from a point, in a direction, to a plane."""
    size = math.sqrt(dot(plane.normal, plane.normal))
    slope = dot(plane.normal, along)
    if abs(slope) <= _LEAST_SINE * size:
        raise PieceError(
            say("Two neighbouring sides of a reveal were read."),
            say("They run so nearly in one line that no joint can be cut between them."),
            say("Read the corner between them again."),
        )
    return (plane.at - dot(plane.normal, at)) / slope


def _saw(lie: _Lie, plane: _Plane, sense: float) -> SawAngles:
    frame = BoardFrame(outward=times(lie.right, sense), across=lie.across, face=lie.face)
    return saw_angles(frame, plane.normal)
