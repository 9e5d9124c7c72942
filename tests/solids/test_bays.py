"""The trim of a bay meets at its corners when sawn as printed."""

import math
import random
from collections.abc import Iterator
from itertools import pairwise

from longpoint.catalogue.bays import bay
from longpoint.pieces.piece import Piece
from tests.solids.kernel import Body, Side, cut_piece, joint
from tests.solids.reveal_lines import (
    CLOSED_MM,
    FEW,
    OFF_DEG,
    SEEN_MM,
    Line,
    against_mm,
    cases,
    lay,
    planned,
)


def drawn_bay(draw: random.Random) -> tuple[list[float], list[float], list[Line]]:
    """Return lights, corners and frame lines of a bay, the room at the right of each line."""
    count = draw.choice((2, 3, 5))
    lights = [draw.uniform(650, 1400) for _ in range(count)]
    corners = [draw.uniform(115, 165) for _ in range(count - 1)]
    at, heading = (0.0, 0.0), draw.uniform(0, 90)
    lines = []
    for index, light in enumerate(lights):
        if index:
            heading -= 180.0 - corners[index - 1]
        way = (math.cos(math.radians(heading)), math.sin(math.radians(heading)))
        end = (at[0] + light * way[0], at[1] + light * way[1])
        lines.append(Line(at, end))
        at = end
    return lights, corners, lines


def bay_pieces(seed: int) -> tuple[dict[str, Piece], list[Line], list[float], float, float]:
    draw = random.Random(seed)
    lights, corners, lines = drawn_bay(draw)
    ends = [90.0 + draw.choice((-1, 1)) * draw.uniform(0.1, 20.0) for _ in range(2)]
    depth_mm, reveal_mm = draw.uniform(100, 240), draw.uniform(60, 140)
    pieces = planned(
        bay.TRIM,
        (250.0, draw.uniform(14, 28)),
        lights=[{"width": light} for light in lights],
        corners=corners,
        end_corners=ends,
        board="P",
        board_depth=depth_mm,
        head="P",
        reveal=reveal_mm,
    )
    last_length = lights[-1]
    x, y = lines[-1].start
    end = (x + last_length * lines[-1].way[0], y + last_length * lines[-1].way[1])
    cheeks = [
        lines[0].turned(-ends[0]),
        Line(end, (end[0] + lines[-1].way[0], end[1] + lines[-1].way[1])).turned(180.0 + ends[1]),
    ]
    walk = [cheeks[0], *lines, cheeks[1]]
    return pieces, walk, [*ends], depth_mm, reveal_mm


def board_gaps_mm(seed: int, off_deg: float = 0.0) -> list[float]:
    pieces, walk, _, depth_mm, _ = bay_pieces(seed)
    cheek_left, *lines, cheek_right = walk
    fronts = [line.shifted(-depth_mm) for line in lines]
    laid = []
    for index, front in enumerate(fronts):
        piece = pieces[f"board-{index + 1}"]
        x, y = front.meets(fronts[index - 1] if index else cheek_left)
        body = cut_piece(piece, off_deg=off_deg)
        laid.append(lay(body, piece.thickness_mm, (x, y, 0.0), (*front.way, 0.0), (0, 0, 1)))
    return [
        against_mm(laid[0], Side.LEFT, cheek_left),
        against_mm(laid[-1], Side.RIGHT, cheek_right),
        *corner_gaps_mm(laid),
    ]


def head_gaps_mm(seed: int, off_deg: float = 0.0) -> list[float]:
    """Return the gaps at the corners of a head whose face stands reveal and thickness in."""
    pieces, walk, _, _, reveal_mm = bay_pieces(seed)
    _, *lines, _ = walk
    laid = []
    for index, line in enumerate(lines):
        piece = pieces[f"head-{index + 1}"]
        in_mm = -(reveal_mm + piece.thickness_mm)
        face, (ux, uy) = line.shifted(in_mm), line.way
        if index:
            x, y = face.meets(lines[index - 1].shifted(in_mm))
        else:
            # Its outer end is square, where the cheek ends the wall's own line.
            x, y = line.shifted(-reveal_mm).meets(walk[0])
            x, y = x + piece.thickness_mm * uy, y - piece.thickness_mm * ux
        body = cut_piece(piece, off_deg=off_deg)
        laid.append(lay(body, piece.thickness_mm, (x, y, 0.0), (ux, uy, 0.0), (uy, -ux, 0.0)))
    return list(corner_gaps_mm(laid))


def corner_gaps_mm(laid: list[Body]) -> Iterator[float]:
    for one, other in pairwise(laid):
        yield joint(one, Side.RIGHT, other, Side.LEFT).worst_mm


@cases
def test_the_boards_of_a_bay_meet_at_its_corners_and_end_on_its_cheeks(seed: int) -> None:
    assert max(board_gaps_mm(seed)) < CLOSED_MM


@cases
def test_the_head_of_a_bay_meets_at_its_corners(seed: int) -> None:
    assert max(head_gaps_mm(seed)) < CLOSED_MM


def test_a_saw_half_a_degree_off_opens_a_bay() -> None:
    for seed in FEW:
        assert max(board_gaps_mm(seed, OFF_DEG)) > SEEN_MM
        assert max(head_gaps_mm(seed, OFF_DEG)) > SEEN_MM
