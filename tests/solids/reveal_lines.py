"""Where the room's own lines want a board: lines in a plane, shifted and crossed.

Tests lay pieces by these, so that nothing of the program's saw angles or lengths is used but the
piece as it is sawn.
"""

import math
import random
from itertools import pairwise
from typing import Any

import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.plan_trims import plan_trims
from longpoint.catalogue.trim import TrimKind
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.survey.house_file import read_house
from tests.house_documents import house
from tests.solids.kernel import Body, Side
from tests.solids.vectors import Vector, cross, unit

CLOSED_MM = 0.01
OFF_DEG = 0.5
SEEN_MM = 0.05
"""Half a degree over the thinnest board drawn opens more than this."""

Plan = tuple[float, float]
Corners = tuple[Plan, Plan, Plan, Plan]
"""Bottom left, bottom right, top right, top left."""

NAMES = ("sill", "right", "head", "left")
"""Names of the sides, anticlockwise from the bottom."""

SHORT = range(10)
FEW = range(4)
LONG = range(10, 210)


def cases(test: Any) -> Any:  # noqa: ANN401
    """Run a test on ten drawn cases, and on two hundred more in the long run."""
    seeds = [*SHORT, *(pytest.param(seed, marks=pytest.mark.long) for seed in LONG)]
    return pytest.mark.parametrize("seed", seeds)(test)


class Line:
    """A line in a plane, from one point towards another, with its left side."""

    def __init__(self, start: Plan, end: Plan) -> None:
        length = math.dist(start, end)
        self.start = start
        self.way = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)

    def shifted(self, left_mm: float) -> "Line":
        """Return the line moved to its left."""
        (x, y), (ux, uy) = self.start, self.way
        start = (x - uy * left_mm, y + ux * left_mm)
        return Line(start, (start[0] + ux, start[1] + uy))

    def turned(self, deg: float) -> "Line":
        """Return the line turned anticlockwise about its start."""
        turn = math.atan2(self.way[1], self.way[0]) + math.radians(deg)
        (x, y) = self.start
        return Line(self.start, (x + math.cos(turn), y + math.sin(turn)))

    def meets(self, other: "Line") -> Plan:
        """Return where two lines cross."""
        (x, y), (ux, uy) = self.start, self.way
        (a, b), (vx, vy) = other.start, other.way
        along = ((a - x) * vy - (b - y) * vx) / (ux * vy - uy * vx)
        return (x + along * ux, y + along * uy)


def sides(corners: Corners) -> list[Line]:
    """Return the lines of a reveal, anticlockwise, the opening at their left."""
    return [Line(corners[i], corners[(i + 1) % 4]) for i in range(4)]


def lay(body: Body, thickness_mm: float, start: Vector, along: Vector, out: Vector) -> Body:
    """Return a piece laid with the inner edge of its face from a point, in a direction."""
    origin = tuple(s - thickness_mm * n for s, n in zip(start, out, strict=True))
    return body.placed((origin[0], origin[1], origin[2]), along, cross(out, along), out)


def off_plane_mm(body: Body, end: Side, point: Vector, normal: Vector) -> float:
    """Return how far the corners of a cut face stand off a plane, at most."""
    way = unit(normal)
    return max(
        abs(sum((c - p) * n for c, p, n in zip(corner, point, way, strict=True)))
        for corner in body.end_face(end)
    )


def planned(kind: TrimKind, stock: tuple[float, float], **entry: Any) -> dict[str, Piece]:  # noqa: ANN401
    """Return the pieces of one entry in a house, by the end of their marks."""
    openings = entry.pop("described", [])
    document = house(
        profiles={
            "OG57": {"face": 57, "thickness": 18},
            "SK95": {"face": 95, "thickness": 16},
            "P": {"face": stock[0], "thickness": stock[1]},
        },
        openings=openings,
        trims=[{"mark": "T1", "kind": kind.name, **entry}],
    )
    survey = read_house(document, trim_tables((kind,)))
    assert survey.house.held == (), survey.findings
    shapes = Shapes(openings=fit_openings(survey.house)[0])
    found = plan_trims(survey.house, shapes, frozenset(), (kind,))
    assert len(found.trims) == 1, found.findings
    pieces = found.trims[0].plan.pieces
    return {piece.mark.removeprefix("T1-").removeprefix("O1-"): piece for piece in pieces}


def described(corners: Corners, **more: Any) -> dict[str, Any]:  # noqa: ANN401
    """Return an opening as a perfect tape reads it."""
    bl, br, tr, tl = corners
    read = {"bottom": (bl, br), "right": (br, tr), "top": (tl, tr), "left": (bl, tl)}
    read |= {"rising": (bl, tr), "falling": (tl, br)}
    lengths = {name: round(math.dist(*ends), 9) for name, ends in read.items()}
    return {"mark": "O1", **lengths, **more}


def drawn_corners(draw: random.Random, width_mm: float, height_mm: float) -> Corners:
    """Return a racked opening: bottom left at the origin, bottom right on the x axis.

    No corner is so near to square that its cut is left at square.
    """

    def off() -> float:
        return draw.choice((-1, 1)) * draw.uniform(8.0, 20.0)

    while True:
        corners = (
            (0.0, 0.0),
            (width_mm, 0.0),
            (width_mm + off(), height_mm + off()),
            (off(), height_mm + off()),
        )
        ways = [line.way for line in sides(corners)]
        if all(
            abs(a * c + b * d) > math.sin(math.radians(0.1))
            for (a, b), (c, d) in pairwise([*ways, ways[0]])
        ):
            return corners


def against_mm(body: Body, end: Side, line: Line) -> float:
    """Return how far a cut face stands off a plane square to the wall."""
    return off_plane_mm(body, end, (*line.start, 0.0), (-line.way[1], line.way[0], 0.0))
