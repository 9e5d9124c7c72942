"""The pieces of a planned cornice, sawn as solids and put up round a room: does it go round?

The room is a plan drawn here; its walls and corners are read off it without error. Every piece is
sawn from what is printed of it, and laid so that the bottom edge of its back begins where the one
before it ended. The last has to end where the wall does.
"""

import math
from dataclasses import dataclass
from typing import Any

import pytest

from longpoint.pieces.piece import CutKind, Piece
from tests.house_documents import wall
from tests.room_builder import Plan, lengths_and_corners
from tests.solids.kernel import Body, Side, cut_piece, joint
from tests.solids.vectors import Vector, cross, dot
from tests.unit.catalogue.cornice_houses import pieces, planned, stops

CLOSE_MM = 0.02
"""Corners of a fitted room come to the hundredth of a degree, 90 mm off the wall."""

SPRING_DEG = 38.0
SECTION = ((0, 0), (90, 0), (90, 18), (74, 18), (66, 14), (24, 8), (14, 10), (0, 7))
"""Full thickness at the ceiling edge, so that a run through touches the wall where it is to."""

PARLOUR: Plan = ((0, 0), (0, 2400), (3100, 2460), (3080, -30))
"""Four walls, none square to the next; clockwise from above."""

HALL: Plan = ((0, 0), (0, 3000), (2600, 3040), (2610, 1800), (4400, 1760), (4380, 10))
"""Six walls, an external corner among them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hung:
    """A piece where it hangs."""

    piece: Piece
    body: Body
    origin: Vector
    across: Vector
    out: Vector

    def bottom_back(self, end: Side) -> Vector:
        """Return where the bottom edge of its back ends."""
        return min(self.body.end_face(end), key=lambda at: math.hypot(*self.section_point(at)))

    def section_point(self, point: Vector) -> tuple[float, float]:
        """Return which point of the section a point of its surface belongs to."""
        off = (point[0] - self.origin[0], point[1] - self.origin[1], point[2] - self.origin[2])
        return (dot(off, self.across), dot(off, self.out))


def walls_of(plan: Plan) -> tuple[dict[str, Any], ...]:
    """Return the walls as a house file would have them, the first from the first corner."""
    lengths, corners = lengths_and_corners(plan)
    return tuple(
        wall(f"w{place}", length=length, corner=corner)
        for place, (length, corner) in enumerate(zip(lengths, corners, strict=True))
    )


def hang(piece: Piece, heading: Vector, slope_deg: float, at: Vector, off_deg: float) -> Hung:
    """Hang a piece on a wall, the bottom edge of its back beginning at a point."""
    slope, off = math.radians(slope_deg), math.sin(math.radians(SPRING_DEG))
    into_room = (heading[1], -heading[0], 0.0)
    along = (heading[0] * math.cos(slope), heading[1] * math.cos(slope), math.sin(slope))
    up = cross(into_room, along)
    rest = math.sqrt(1.0 - off * off)
    across = tuple(off * i + rest * u for i, u in zip(into_room, up, strict=True))
    out = cross(along, (across[0], across[1], across[2]))
    body = cut_piece(piece, SECTION, off_deg=off_deg)
    first = min(body.end_face(Side.LEFT), key=lambda corner: math.hypot(corner[1], corner[2]))
    origin = tuple(a - first[0] * d for a, d in zip(at, along, strict=True))
    placed = body.placed(
        (origin[0], origin[1], origin[2]), along, (across[0], across[1], across[2]), out
    )
    return Hung(
        piece=piece,
        body=placed,
        origin=(origin[0], origin[1], origin[2]),
        across=(across[0], across[1], across[2]),
        out=out,
    )


def put_up(
    plan: Plan,
    slopes: dict[str, float] | None = None,
    off_deg: float = 0.0,
    **entry: Any,  # noqa: ANN401
) -> list[Hung]:
    """Return the pieces of a cornice round a room, each wall's beginning in its corner."""
    made = planned(walls_of(plan), **entry)
    assert stops(made) == []
    by_wall: dict[int, list[Piece]] = {}
    for what, piece in pieces(made).items():
        by_wall.setdefault(int(what[1:].split("-")[0]), []).append(piece)
    hung: list[Hung] = []
    height = 0.0
    for place in sorted(by_wall):
        start, end = plan[place], plan[(place + 1) % len(plan)]
        heading = heading_of(start, end)
        at: Vector = (start[0], start[1], height)
        for piece in by_wall[place]:
            slope = (slopes or {}).get(piece.mark.removeprefix("C1-"), 0.0)
            one = hang(piece, heading, slope, at, off_deg)
            in_wall_mm = into_wall_mm(one, plan, (place - 1) % len(plan))
            if piece.left.kind is CutKind.SQUARE and in_wall_mm > 0.0:
                turn = cross(heading_of(plan[place - 1], start), heading)[2]
                at = (
                    at[0] + heading[0] * in_wall_mm / -turn,
                    at[1] + heading[1] * in_wall_mm / -turn,
                    at[2],
                )
                one = hang(piece, heading, slope, at, off_deg)
            hung.append(one)
            at = one.bottom_back(Side.RIGHT)
        if by_wall[place][-1].right.kind is CutKind.SQUARE:
            # Its back goes to the corner, or its face touches the other wall first.
            in_wall_mm = into_wall_mm(hung[-1], plan, (place + 1) % len(plan))
            assert off_deg or in_wall_mm < CLOSE_MM
            assert off_deg or math.dist(at[:2], end) < CLOSE_MM or in_wall_mm > -CLOSE_MM
        else:
            assert off_deg or at[:2] == pytest.approx(end, abs=CLOSE_MM)
        height = at[2]
    return hung


def heading_of(start: tuple[float, float], end: tuple[float, float]) -> Vector:
    run = math.dist(start, end)
    return ((end[0] - start[0]) / run, (end[1] - start[1]) / run, 0.0)


def into_wall_mm(one: Hung, plan: Plan, place: int) -> float:
    """Return how far a piece reaches into the line of a wall; negative where it stays off it."""
    start, end = plan[place], plan[(place + 1) % len(plan)]
    heading = heading_of(start, end)
    return max(
        (y - start[1]) * heading[0] - (x - start[0]) * heading[1] for x, y, _ in one.body.corners
    )


def worst_mm(hung: list[Hung]) -> float:
    """Return how badly the worst joint of a ring of pieces meets."""
    pairs = zip(hung, [*hung[1:], hung[0]], strict=True)
    return max(joint(a.body, Side.RIGHT, b.body, Side.LEFT).worst_mm for a, b in pairs)


@pytest.mark.parametrize("plan", [PARLOUR, HALL])
def test_a_mitred_cornice_goes_round_a_room(plan: Plan) -> None:
    assert worst_mm(put_up(plan, corners="mitre")) < CLOSE_MM


def test_a_saw_half_a_degree_off_does_not_take_it_round() -> None:
    assert worst_mm(put_up(PARLOUR, corners="mitre", off_deg=0.5)) > 10.0 * CLOSE_MM


def test_a_cornice_goes_up_a_slope_and_down_again_by_level_returns() -> None:
    lengths, _ = lengths_and_corners(PARLOUR)
    up_mm = 1500.0 * math.tan(math.radians(15.0))
    climb = [
        {"wall": "w1", "from_left": 300, "slope": 15},
        {"wall": "w1", "from_left": 1800, "slope": 0},
        {"wall": "w3", "from_left": 400, "slope": -15},
        {"wall": "w3", "from_left": 1900, "slope": 0},
    ]
    slopes = {"w1-2": 15.0, "w3-2": -15.0}
    hung = put_up(PARLOUR, slopes, corners="mitre", climb=climb)
    assert len(hung) == len(lengths) + 4
    assert worst_mm(hung) < CLOSE_MM
    high = next(one for one in hung if one.piece.mark == "C1-w2")
    assert high.bottom_back(Side.LEFT)[2] == pytest.approx(up_mm, abs=CLOSE_MM)
    assert hung[-1].bottom_back(Side.RIGHT)[2] == pytest.approx(0.0, abs=CLOSE_MM)


def misplaced_mm(hung: list[Hung]) -> list[float]:
    """Return, for each scribed end, how far its corners are off their lines of the other run."""
    found = []
    for one, other in zip(hung, [*hung[1:], hung[0]], strict=True):
        for mine, end, its in ((one, Side.RIGHT, other), (other, Side.LEFT, one)):
            cut = mine.piece.right if end is Side.RIGHT else mine.piece.left
            if cut.kind is CutKind.SCRIBE:
                corners = mine.body.end_face(end)
                pairs = ((its.section_point(at), mine.section_point(at)) for at in corners)
                found.append(max(math.dist(*pair) for pair in pairs))
    return found


def test_a_scribed_end_meets_the_run_it_is_scribed_over_line_by_line() -> None:
    found = misplaced_mm(put_up(HALL))
    assert len(found) == 5
    assert max(found) < CLOSE_MM
    assert min(misplaced_mm(put_up(HALL, off_deg=0.5))) > 10.0 * CLOSE_MM


def test_runs_that_climb_to_their_corner_are_scribed_too() -> None:
    """Up along the first wall, round the corner, down by as much along the second."""
    length, _ = lengths_and_corners(PARLOUR)
    climb = [
        {"wall": "w0", "from_left": 900, "slope": 12},
        {"wall": "w1", "from_left": 0, "slope": -12},
        {"wall": "w1", "from_left": length[0] - 900.0, "slope": 0},
    ]
    hung = put_up(PARLOUR, {"w0-2": 12.0, "w1-1": -12.0}, climb=climb)
    assert hung[1].piece.right.kind is CutKind.COMPOUND
    assert hung[2].piece.left.kind is CutKind.SCRIBE
    assert into_wall_mm(hung[1], PARLOUR, 1) == pytest.approx(0.0, abs=CLOSE_MM)
    found = misplaced_mm(hung)
    assert len(found) == 4
    assert max(found) < CLOSE_MM


def test_no_run_reaches_into_a_wall() -> None:
    hung = put_up(PARLOUR)
    for place in range(len(PARLOUR)):
        assert max(into_wall_mm(one, PARLOUR, place) for one in hung) < CLOSE_MM


@pytest.mark.parametrize("seed", range(4))
def test_returns_close_the_open_ends_of_a_run(seed: int) -> None:
    """The return's joint meets the run's, and its square end lies on the wall."""
    found = pieces(planned((wall("w0", length=900 + 70 * seed),), closed=False, ends="return"))
    run = hang(found["w0"], (1.0, 0.0, 0.0), 0.0, (0.0, 0.0, 0.0), 0.0)
    for side, heading in ((Side.LEFT, (0.0, -1.0, 0.0)), (Side.RIGHT, (0.0, 1.0, 0.0))):
        piece = found[f"w0-return-{side}"]
        end = Side.RIGHT if side is Side.LEFT else Side.LEFT
        loose = hang(piece, heading, 0.0, (0.0, 0.0, 0.0), 0.0)
        gone, at = run.bottom_back(side), loose.bottom_back(end)
        back = loose.body.moved((gone[0] - at[0], gone[1] - at[1], gone[2] - at[2]))
        met = joint(run.body, side, back, end)
        assert met.worst_mm < 0.01
        wall_side = Side.LEFT if side is Side.LEFT else Side.RIGHT
        assert max(abs(y) for _, y, _ in back.end_face(wall_side)) < 0.01
