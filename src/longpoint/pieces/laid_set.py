"""How the pieces of an opening lie round it, by mark, in the opening's own frame."""

import math
from collections.abc import Iterable, Iterator, Mapping

from longpoint.pieces.arch_findings import ArchFace
from longpoint.pieces.arched import arched_face, leg_ring
from longpoint.pieces.boards import Side
from longpoint.pieces.corner_blocks import block_name
from longpoint.pieces.face_set import FaceSet, face_set
from longpoint.pieces.lying import Lying, return_lying
from longpoint.pieces.outlined_face import OutlinedFace, outlined_face
from longpoint.pieces.piece import Piece, Role
from longpoint.pieces.plinths import plinth_name
from longpoint.pieces.set_joints import SIDE_ROLES, side_ring
from longpoint.pieces.window_boards import APRON
from longpoint.shape.fitted import FittedOpening, FittedOutline
from longpoint.shape.point import Point, direction
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.trims.arch_segments import arch_segments
from longpoint.trims.rings import Ring, mitred_ring
from longpoint.trims.set_rings import BOTTOM, LEFT, RIGHT

BOARD_MM = 20.0
"""Thickness left for a window board that isn't cut from the list, as it is drawn: assumed."""


def laid_set(
    house: House,
    opening: Opening,
    fitted: FittedOpening | FittedOutline,
    pieces: Iterable[Piece],
) -> dict[str, Lying]:
    """Return how the pieces of one face lie, flat on the wall, in the frame of its fitted corners.

    Args:
        house: Gives the profiles.
        opening: Its settings.
        fitted: The shape of this face.
        pieces: The pieces of this face.

    Returns:
        By mark; what doesn't lie round the opening, such as a wedge or a window board, isn't there.

    Raises:
        PieceError: The trim doesn't go round the opening.
    """
    by_mark = {piece.mark: piece for piece in pieces}
    face, rings = _rings(house, opening, fitted)
    found = {
        mark: _on_ring(by_mark[mark], ring)
        for what, ring in rings
        if (mark := face.mark(what)) in by_mark
    }
    return found | _below(face, by_mark)


def _rings(
    house: House, opening: Opening, fitted: FittedOpening | FittedOutline
) -> tuple[FaceSet, list[tuple[str, Ring]]]:
    if isinstance(fitted, FittedOutline):
        outlined = outlined_face(house, opening, fitted)
        return outlined.set, [*_outlined(outlined), *_plinths(outlined.set)]
    if opening.arch is not None:
        arched = arched_face(house, opening, fitted)
        return arched.set, [*_arched(arched), *_plinths(arched.set)]
    face = face_set(house, opening, fitted)
    return face, [*_four(face), *_plinths(face)]


def _four(face: FaceSet) -> Iterator[tuple[str, Ring]]:
    for side in face.rings.sides:
        yield SIDE_ROLES[side].value, side_ring(face, side)
    for side, ring in face.rings.band.items():
        yield f"band-{SIDE_ROLES[side].value}", ring
    for block in face.rings.blocks:
        inner, onward, outer, back = block.corners
        yield (
            block_name(block.corner),
            Ring(inner_start=onward, inner_end=inner, outer_start=outer, outer_end=back),
        )


def _outlined(face: OutlinedFace) -> Iterator[tuple[str, Ring]]:
    for side, ring in face.rings.items():
        yield f"{Role.SIDE.value}-{face.number(side)}", ring
    for side, ring in face.band.items():
        yield f"band-{face.number(side)}", ring


def _arched(face: ArchFace) -> Iterator[tuple[str, Ring]]:
    for side in (LEFT, RIGHT):
        yield SIDE_ROLES[side].value, leg_ring(face, side)
    if not face.set.trim.has_bare_bottom:
        yield Role.SILL.value, mitred_ring(face.set.trim.outline, BOTTOM)
    if face.blank is not None and face.count is not None:
        for index, segment in enumerate(arch_segments(face.trim, face.count)):
            yield f"{Role.SEGMENT.value}-{index + 1}", segment.blank(face.blank.width_mm)


def _plinths(face: FaceSet) -> Iterator[tuple[str, Ring]]:
    for side, ring in face.rings.plinths.items():
        yield plinth_name(side), ring


def _on_ring(piece: Piece, ring: Ring) -> Lying:
    """Return how a piece lies: clockwise, the inner edge of its BACK between the ring's corners."""
    ux, uy = direction(ring.inner_end, ring.inner_start)
    # Where a back is relieved the face runs past it; seen from the room nothing else has moved.
    mitre, bevel = math.radians(piece.left.mitre_deg), math.radians(piece.left.bevel_deg)
    past_mm = piece.thickness_mm * math.tan(bevel) / math.cos(mitre)
    at = ring.inner_end.moved(past_mm * ux, past_mm * uy)
    return Lying(origin=(at.x_mm, at.y_mm, 0.0), along=(ux, uy, 0.0), across=(-uy, ux, 0.0))


def _below(face: FaceSet, by_mark: Mapping[str, Piece]) -> dict[str, Lying]:
    """Return how the apron and its returns lie, below the window board."""
    apron = by_mark.get(face.mark(APRON))
    if apron is None:
        return {}
    left, right = face.rings.foot
    ux, uy = direction(right, left)
    board = by_mark.get(face.mark(Role.BOARD.value))
    down_mm = board.thickness_mm if board is not None else BOARD_MM
    start = Point(right.x_mm, right.y_mm).moved(-uy * down_mm, ux * down_mm)
    lies = Lying(origin=(start.x_mm, start.y_mm, 0.0), along=(ux, uy, 0.0), across=(-uy, ux, 0.0))
    found = {apron.mark: lies}
    for side in Side:
        mark = f"{apron.mark}-return-{side}"
        if mark in by_mark:
            found[mark] = return_lying(lies, side, apron.inner_mm, apron.thickness_mm)
    return found
