"""What is left of a spoiled piece, and whether another piece can be cut from it.

A piece that was cut wrong often keeps a good end cut, and a piece that needs just that cut is had
from it with one cut instead of two. Each end is looked at along the four long edges of the section,
so that leaning cuts count as they are.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from longpoint.pieces.piece import CutKind, EndCut, Piece
from longpoint.sticks.plan import Laid

KEPT_MM: Final = 0.03
"""An end cut that differs by no more than this along any edge is the same cut: nothing so small
can be marked or set."""

UNLIKE: Final = frozenset({CutKind.SCRIBE, CutKind.SCARF})
"""Cuts that are made for one neighbour, and are never kept for another piece."""

Edges = tuple[float, float, float, float]
"""One figure for each long edge: outer face, inner face, outer back, inner back. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Remains:
    """What is left of a spoiled piece, on its back, face up, outer edge away from you.

    Attributes:
        of: Mark of the spoiled piece.
        length_mm: From its leftmost to its rightmost point. > 0.
        left: The cut of its left end, still good; None: rough, taken as square.
        right: The cut of its right end, still good; None: rough, taken as square.
    """

    of: str
    length_mm: float
    left: EndCut | None = None
    right: EndCut | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """A piece in what is left of another.

    Attributes:
        laid: Where it lies, from the leftmost point of the remains.
        keeps_left: True when the cut at the left of the remains stays as it is.
        keeps_right: True when the cut at the right stays as it is.
    """

    laid: Laid
    keeps_left: bool
    keeps_right: bool


def behind_point_mm(cut: EndCut | None, width_mm: float, thickness_mm: float) -> Edges:
    """Return how far each long edge ends behind the point of an end cut; all 0 for a rough end.

    Example:
        A mitre of 45 on a face of 57 leaves the inner edge 57 behind the outer.

        >>> mitre = EndCut(kind=CutKind.MITRE, mitre_deg=45.0)
        >>> [round(x, 6) for x in behind_point_mm(mitre, 57.0, 18.0)]
        [0.0, 57.0, 0.0, 57.0]
    """
    if cut is None:
        return (0.0, 0.0, 0.0, 0.0)
    across, through = _slopes_mm(cut, width_mm, thickness_mm)
    point = max(across, 0.0, across + through, through)
    return (point - across, point, point - across - through, point - through)


def tip_to_tip_mm(piece: Piece) -> float:
    """Return the length of a piece from its leftmost to its rightmost point. [mm]

    An outer edge that disagrees with the angles is covered, not judged.
    """
    points, across_mm = 0.0, 0.0
    for cut in (piece.left, piece.right):
        across, through = _slopes_mm(cut, piece.width_mm, piece.thickness_mm)
        points += max(across, 0.0, across + through, through)
        across_mm += across
    odd_mm = max(0.0, piece.outer_mm - piece.inner_mm - across_mm)
    return piece.inner_mm + points + odd_mm


def stretch(cut: EndCut) -> float:
    """Return how much of the stick a unit of kerf takes at a cut."""
    mitre, bevel = math.radians(cut.mitre_deg), math.radians(cut.bevel_deg)
    return 1.0 / (math.cos(mitre) * math.cos(bevel))


def seat_in(rest: Remains, piece: Piece, kerf_mm: float, *, can_turn: bool) -> Seat | None:
    """Return how a piece is cut from the remains of another; None where it doesn't go in.

    A good end cut is kept where the piece needs the same. Any other end loses a kerf, as the end of
    an offcut does.

    Args:
        rest: What is left, of the same profile as the piece.
        piece: The piece.
        kerf_mm: Width of cut, square to the blade. > 0. [mm]
        can_turn: True when the section is the same from both edges.
    """
    ways = (False, True) if can_turn else (False,)
    for keeps_left, keeps_right in ((True, True), (True, False), (False, True), (False, False)):
        for turned in ways:
            laid = _laid(rest, piece, kerf_mm, (keeps_left, keeps_right), turned=turned)
            if laid is not None:
                return Seat(laid=laid, keeps_left=keeps_left, keeps_right=keeps_right)
    return None


def whole(piece: Piece, short_mm: float = 0.0) -> Remains | None:
    """Return a piece that has both its cuts, and is only too short for its place.

    Args:
        piece: The piece as it was to be.
        short_mm: By how much it was cut short. >= 0.
    """
    return _sound(piece, tip_to_tip_mm(piece) - short_mm, has_left=True, has_right=True)


def left_part(piece: Piece, length_mm: float, *, turned: bool) -> Remains | None:
    """Return what holds the end that lay left at the saw.

    Args:
        piece: The piece.
        length_mm: How much of it is good, square across, from the point of that end.
        turned: True when it lay turned end for end.
    """
    return _sound(piece, length_mm, has_left=not turned, has_right=turned)


def right_part(piece: Piece, length_mm: float, *, turned: bool) -> Remains | None:
    """Return what holds the end that lay right at the saw, as `left_part`."""
    return _sound(piece, length_mm, has_left=turned, has_right=not turned)


def _sound(piece: Piece, length_mm: float, *, has_left: bool, has_right: bool) -> Remains | None:
    """Return remains; a scribed end is rough, and lost for a whole thickness."""
    left = piece.left if has_left else None
    right = piece.right if has_right else None
    odd = [cut for cut in (left, right) if cut is not None and cut.kind in UNLIKE]
    length_mm -= len(odd) * piece.thickness_mm
    if length_mm <= 0.0:
        return None
    return Remains(
        of=piece.mark,
        length_mm=length_mm,
        left=None if left in odd else left,
        right=None if right in odd else right,
    )


def _laid(
    rest: Remains, piece: Piece, kerf_mm: float, keeps: tuple[bool, bool], *, turned: bool
) -> Laid | None:
    width_mm, thickness_mm = piece.width_mm, piece.thickness_mm
    cuts = (piece.right, piece.left) if turned else (piece.left, piece.right)
    room = []
    for cut, there, keep in zip(cuts, (rest.left, rest.right), keeps, strict=True):
        own = behind_point_mm(cut, width_mm, thickness_mm)
        own = (own[1], own[0], own[3], own[2]) if turned else own
        bound = behind_point_mm(there, width_mm, thickness_mm)
        apart = [edge - mine for edge, mine in zip(bound, own, strict=True)]
        if not keep:
            room.append(max(apart) + kerf_mm)
        elif there is None or cut.kind in UNLIKE or max(map(abs, apart)) > KEPT_MM:
            return None
        else:
            room.append(0.0)
    length_mm = tip_to_tip_mm(piece)
    spare_mm = rest.length_mm - sum(room) - length_mm
    if spare_mm < -KEPT_MM * all(keeps) or (all(keeps) and spare_mm > KEPT_MM):
        return None
    start_mm = rest.length_mm - length_mm if keeps == (False, True) else room[0]
    return Laid(piece=piece.mark, turned=turned, start_mm=start_mm, end_mm=start_mm + length_mm)


def _slopes_mm(cut: EndCut, width_mm: float, thickness_mm: float) -> tuple[float, float]:
    """How far the outer edge runs past the inner, and the back past the face."""
    mitre, bevel = math.radians(cut.mitre_deg), math.radians(cut.bevel_deg)
    return width_mm * math.tan(mitre), thickness_mm * math.tan(bevel) / math.cos(mitre)


def fitting(
    rest: Remains, pieces: Iterable[Piece], kerf_mm: float, *, can_turn: bool
) -> list[tuple[Piece, Seat]]:
    """Return the pieces that can be cut from the remains, the longest first.

    Never the spoiled piece as it is: somebody said that it is no good.
    """
    found = []
    for piece in sorted(pieces, key=lambda each: (-tip_to_tip_mm(each), each.mark)):
        seat = seat_in(rest, piece, kerf_mm, can_turn=can_turn)
        is_itself = seat is not None and seat.keeps_left and seat.keeps_right
        if seat is not None and not (is_itself and piece.mark == rest.of):
            found.append((piece, seat))
    return found


def as_cut(piece: Piece, lengths_mm: tuple[float, float], angles_deg: tuple[float, ...]) -> Piece:
    """Return a piece with the edges and angles that it was cut to before its readings changed.

    Args:
        piece: The piece as it is to be now.
        lengths_mm: Inner and outer edge as cut.
        angles_deg: Mitre and bevel of its left end, then of its right, as cut.
    """
    left_mitre, left_bevel, right_mitre, right_bevel = angles_deg
    return replace(
        piece,
        inner_mm=lengths_mm[0],
        outer_mm=lengths_mm[1],
        left=replace(piece.left, mitre_deg=left_mitre, bevel_deg=left_bevel),
        right=replace(piece.right, mitre_deg=right_mitre, bevel_deg=right_bevel),
    )
