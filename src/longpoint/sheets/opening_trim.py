"""The pieces round an opening as outlines, on the lines where they will lie."""

from collections.abc import Mapping, Sequence
from typing import Final

from longpoint.errors import PieceError
from longpoint.pieces.piece import Piece, Role
from longpoint.shape.point import Point
from longpoint.survey.openings import Joint, Layout, Opening
from longpoint.trims.outline import TrimSide
from longpoint.trims.set_rings import SetShape, set_rings

BOARD_MM: Final = 20.0
"""Thickness drawn for a window board that isn't cut from the list."""

_ROLE_SIDE: Final[Mapping[Role, int]] = {
    Role.SILL: 0,
    Role.RIGHT_LEG: 1,
    Role.HEAD: 2,
    Role.LEFT_LEG: 3,
}
"""Side of the opening that a piece lies along; side i runs from corner i to the next."""


def trim_rings(
    opening: Opening, face: str, drawn: Sequence[Point], pieces: Sequence[Piece]
) -> list[tuple[Point, ...]]:
    """Return each piece's outline round the opening as it is drawn.

    Args:
        opening: Its settings.
        face: "b" for the second face, whose left and right change places.
        drawn: Bottom left, bottom right, top right, top left. [mm]
        pieces: The pieces of this face.

    Returns:
        Outlines in mm; none where two sides run in one line, so that no corner can be drawn.
    """
    by_side = {_ROLE_SIDE[p.role]: p for p in pieces if p.role in _ROLE_SIDE}
    quirk_mm = opening.quirk_mm.mirrored() if face == "b" else opening.quirk_mm
    quirks = quirk_mm.anticlockwise()
    sides = tuple(
        TrimSide(inner_mm=quirks[side], width_mm=by_side[side].width_mm)
        if side in by_side
        else TrimSide(inner_mm=0.0, width_mm=0.0)
        for side in range(4)
    )
    try:
        found = set_rings(tuple(drawn), sides, _shape(opening, pieces))
    except PieceError:
        return []
    rings: list[tuple[Point, ...]] = [found.sides[side].corners for side in sorted(found.sides)]
    rings += [block.corners for block in found.blocks]
    rings += [plinth.corners for plinth in found.plinths.values()]
    rings += [band.corners for band in found.band.values()]
    rings += _below(opening, found.foot, pieces)
    return rings


def _shape(opening: Opening, pieces: Sequence[Piece]) -> SetShape:
    """Return how the set is put together, by the pieces that were cut for it."""
    face_mm = {piece.role: piece.width_mm for piece in pieces}
    return SetShape(
        is_butted=opening.joint is Joint.BUTT,
        horn_mm=opening.head_horn_mm,
        block_mm=face_mm.get(Role.CORNER_BLOCK, 0.0),
        plinth_mm=face_mm.get(Role.PLINTH_BLOCK, 0.0),
        plinth_height_mm=opening.plinth_height_mm,
        band_mm=face_mm.get(Role.BACK_BAND, 0.0),
    )


def _below(
    opening: Opening, foot: tuple[Point, Point], pieces: Sequence[Piece]
) -> list[tuple[Point, ...]]:
    """Return the window board and the apron, drawn straight below the opening."""
    if opening.layout is not Layout.BOARD_AND_APRON:
        return []
    left, right = foot[0].x_mm, foot[1].x_mm
    top = min(foot[0].y_mm, foot[1].y_mm)
    rings = []
    thick = {piece.role: piece for piece in pieces}
    board = thick.get(Role.BOARD)
    board_mm = board.thickness_mm if board else BOARD_MM
    horn = opening.horn_mm
    rings.append(_box(left - horn, right + horn, top - board_mm, top))
    if Role.APRON in thick:
        apron_mm = thick[Role.APRON].width_mm
        rings.append(_box(left, right, top - board_mm - apron_mm, top - board_mm))
    return rings


def _box(left: float, right: float, bottom: float, top: float) -> tuple[Point, ...]:
    return (Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top))
