"""How a piece lies in the place it goes to, and a frame put into another."""

from dataclasses import dataclass

from longpoint.pieces.boards import Side
from longpoint.trims.joint_plane import Vector, cross, plus, times


@dataclass(frozen=True, slots=True, kw_only=True)
class Lying:
    """A frame: where its own origin is, and which way it lies; three directions of length 1.

    Of a piece: x along it from left to right, y across its face from the inner (bottom) edge, z off
    its back. The inner edge of its FACE begins at x = 0. Of an opening or a wall, seen from inside
    the room: x right, y up, z into the room.

    Attributes:
        origin: Where x = y = z = 0 is. [mm]
        along: Direction of its x.
        across: Direction of its y, square to that.
    """

    origin: Vector
    along: Vector
    across: Vector

    @property
    def out(self) -> Vector:
        """Direction of its z."""
        return cross(self.along, self.across)

    def at(self, point: Vector) -> Vector:
        """Return where a point of this frame is outside of it. [mm]"""
        return plus(self.origin, self.way(point))

    def way(self, vector: Vector) -> Vector:
        """Return a vector of this frame as it is outside of it."""
        x, y, z = vector
        return plus(plus(times(self.along, x), times(self.across, y)), times(self.out, z))

    def inside(self, outer: "Lying") -> "Lying":
        """Return this frame, given in another one, as it is outside of that.

        Example:
            >>> wall = Lying(origin=(100, 0, 0), along=(0, 1, 0), across=(0, 0, 1))
            >>> laid = Lying(origin=(5, 7, 0), along=(1, 0, 0), across=(0, 1, 0)).inside(wall)
            >>> laid.origin, laid.along, laid.out
            ((100, 5, 7), (0, 1, 0), (1, 0, 0))
        """
        return Lying(
            origin=outer.at(self.origin), along=outer.way(self.along), across=outer.way(self.across)
        )


FLAT = Lying(origin=(0.0, 0.0, 0.0), along=(1.0, 0.0, 0.0), across=(0.0, 1.0, 0.0))
"""A frame that lies as the one around it."""


def return_lying(board: Lying, side: Side, inner_mm: float, thickness_mm: float) -> Lying:
    """Return how the small return at an end of a board lies: its face in line with the end.

    Args:
        board: How the board lies.
        side: The board's end.
        inner_mm: The board's face, from end to end.
        thickness_mm: Thickness of both.
    """
    if side is Side.LEFT:
        own = Lying(origin=(thickness_mm, 0.0, 0.0), along=(0.0, 0.0, 1.0), across=(0.0, 1.0, 0.0))
    else:
        own = Lying(
            origin=(inner_mm - thickness_mm, 0.0, thickness_mm),
            along=(0.0, 0.0, -1.0),
            across=(0.0, 1.0, 0.0),
        )
    return own.inside(board)
