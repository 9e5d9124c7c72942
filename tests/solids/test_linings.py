"""Boards of a reveal and door stops meet when sawn as printed."""

import random

import pytest

from longpoint.catalogue.reveals import door_stop, extension_lining
from longpoint.pieces.piece import Piece
from tests.solids.kernel import Body, Side, common_volume_mm3, cut_piece, joint
from tests.solids.reveal_lines import (
    CLOSED_MM,
    FEW,
    NAMES,
    OFF_DEG,
    SEEN_MM,
    Line,
    against_mm,
    cases,
    described,
    drawn_corners,
    lay,
    planned,
    sides,
)


def upright(
    pieces: dict[str, Piece], faces: list[Line], ends: dict[str, Line], off_deg: float
) -> dict[str, Body]:
    """Return boards laid in a reveal, their faces on the lines given.

    Args:
        pieces: By side.
        faces: Line of each side's face, anticlockwise.
        ends: By side, the line on which the inner edge of its face starts at its left end.
        off_deg: What the saw is off.
    """
    laid = {}
    for name, piece in pieces.items():
        face = faces[NAMES.index(name)]
        x, y = face.meets(ends[name])
        along = (-face.way[0], -face.way[1], 0.0)
        out = (-face.way[1], face.way[0], 0.0)
        laid[name] = lay(
            cut_piece(piece, off_deg=off_deg), piece.thickness_mm, (x, y, 0.0), along, out
        )
    return laid


def extension_gaps_mm(seed: int, how: str, off_deg: float = 0.0) -> list[float]:
    draw = random.Random(seed)
    corners = drawn_corners(draw, draw.uniform(500, 1500), draw.uniform(600, 1600))
    thick_mm, deep_mm = draw.uniform(12, 25), draw.uniform(20, 120)
    pieces = planned(
        extension_lining.TRIM,
        (150.0, thick_mm),
        described=[described(corners, kind="window", trim="all-round")],
        openings=["O1"],
        profile="P",
        joint=how,
        depths=dict.fromkeys(("tl", "tr", "br", "bl"), deep_mm),
    )
    faces = sides(corners)
    backs = [line.shifted(-thick_mm) for line in faces]
    if how == "mitre":
        starts = {name: faces[(side + 1) % 4] for side, name in enumerate(NAMES)}
        laid = upright(pieces, faces, starts, off_deg)
        met = [
            joint(laid[NAMES[side]], Side.LEFT, laid[NAMES[(side + 1) % 4]], Side.RIGHT)
            for side in range(4)
        ]
        return [measure.worst_mm for measure in met]
    starts = {"sill": backs[1], "right": faces[2], "head": backs[3], "left": faces[0]}
    laid = upright(pieces, faces, starts, off_deg)
    stops = [
        *((name, Side.LEFT, starts[name]) for name in NAMES),
        ("sill", Side.RIGHT, backs[3]),
        ("right", Side.RIGHT, faces[0]),
        ("head", Side.RIGHT, backs[1]),
        ("left", Side.RIGHT, faces[2]),
    ]
    assert common_volume_mm3(laid["head"], laid["left"]) < 1.0 or off_deg
    return [against_mm(laid[name], end, line) for name, end, line in stops]


@pytest.mark.parametrize("how", ["butt", "mitre"])
@cases
def test_extension_boards_close_at_every_corner(seed: int, how: str) -> None:
    assert max(extension_gaps_mm(seed, how)) < CLOSED_MM


@pytest.mark.parametrize("how", ["butt", "mitre"])
def test_a_saw_half_a_degree_off_opens_an_extension(how: str) -> None:
    assert all(max(extension_gaps_mm(seed, how, OFF_DEG)) > SEEN_MM for seed in FEW)


def stop_gaps_mm(seed: int, how: str, off_deg: float = 0.0) -> list[float]:
    draw = random.Random(seed)
    corners = drawn_corners(draw, draw.uniform(600, 950), draw.uniform(1900, 2150))
    thick_mm = draw.uniform(9, 16)
    pieces = planned(
        door_stop.TRIM,
        (32.0, thick_mm),
        described=[described(corners, kind="door", trim="legs-and-head")],
        openings=["O1"],
        profile="P",
        joint=how,
    )
    floor, *backs = sides(corners)
    faces = [floor, *(line.shifted(thick_mm) for line in backs)]
    left_back, right_back = backs[2], backs[0]
    if how == "mitre":
        starts = {"head": faces[3], "right": faces[2], "left": floor}
        laid = upright(pieces, faces, starts, off_deg)
        met = [
            joint(laid["head"], Side.LEFT, laid["left"], Side.RIGHT).worst_mm,
            joint(laid["head"], Side.RIGHT, laid["right"], Side.LEFT).worst_mm,
        ]
    else:
        starts = {"head": left_back, "right": faces[2], "left": floor}
        laid = upright(pieces, faces, starts, off_deg)
        met = [
            against_mm(laid["head"], Side.LEFT, left_back),
            against_mm(laid["head"], Side.RIGHT, right_back),
            against_mm(laid["left"], Side.RIGHT, faces[2]),
            against_mm(laid["right"], Side.LEFT, faces[2]),
        ]
    feet = [
        against_mm(laid["left"], Side.LEFT, floor),
        against_mm(laid["right"], Side.RIGHT, floor),
    ]
    return [*met, *feet]


@pytest.mark.parametrize("how", ["butt", "mitre"])
@cases
def test_door_stops_close_under_their_head_and_stand_on_the_floor(seed: int, how: str) -> None:
    assert max(stop_gaps_mm(seed, how)) < CLOSED_MM


@pytest.mark.parametrize("how", ["butt", "mitre"])
def test_a_saw_half_a_degree_off_opens_door_stops(how: str) -> None:
    assert all(max(stop_gaps_mm(seed, how, OFF_DEG)) > SEEN_MM for seed in FEW)
