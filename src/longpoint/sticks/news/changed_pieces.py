"""Readings that changed while the cutting was under way: what still holds, and what doesn't."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Final, NamedTuple

from longpoint.pieces.piece import Piece
from longpoint.sticks.news.at_the_saw import AtTheSaw
from longpoint.sticks.news.remains import as_cut

SAME_MM: Final = 0.05
SAME_DEG: Final = 0.02
"""Nothing smaller can be marked or set."""


class PieceShape(NamedTuple):
    """What is cut: the profile, three lengths and four angles. [mm, deg]"""

    profile: str
    inner_mm: float
    outer_mm: float
    back_mm: float
    left_mitre_deg: float
    left_bevel_deg: float
    right_mitre_deg: float
    right_bevel_deg: float

    def is_like(self, other: "PieceShape") -> bool:
        """Tell whether a saw can't tell the two apart."""
        lengths = zip(self[1:4], other[1:4], strict=True)
        angles = zip(self[4:], other[4:], strict=True)
        return (
            self.profile == other.profile
            and all(abs(one - two) <= SAME_MM for one, two in lengths)
            and all(abs(one - two) <= SAME_DEG for one, two in angles)
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterChange:
    """Where the cutting stands with the pieces of today.

    Attributes:
        state: What changed and isn't cut is loose; what isn't needed any more is gone.
        cut_otherwise: Marks of pieces that were cut before they changed: try them, or tell them
            as lost.
        cut_in_vain: Marks of pieces that were cut and aren't needed any more.
    """

    state: AtTheSaw
    cut_otherwise: tuple[str, ...]
    cut_in_vain: tuple[str, ...]


def shape_of(piece: Piece) -> PieceShape:
    """Return what is cut of a piece."""
    return PieceShape(
        piece.profile,
        piece.inner_mm,
        piece.outer_mm,
        piece.back_mm,
        piece.left.mitre_deg,
        piece.left.bevel_deg,
        piece.right.mitre_deg,
        piece.right.bevel_deg,
    )


def pieces_as_cut(pieces: Iterable[Piece], before: Mapping[str, PieceShape]) -> dict[str, Piece]:
    """Return the pieces by mark as they were cut.

    Args:
        pieces: All pieces as they are now.
        before: What is cut of them, where that is known otherwise.
    """
    found = {}
    for piece in pieces:
        shape = before.get(piece.mark, shape_of(piece))
        lengths_mm = (shape.inner_mm, shape.outer_mm)
        found[piece.mark] = as_cut(piece, lengths_mm, shape[4:])
    return found


def shapes_to_keep(
    kept: AtTheSaw, after: AtTheSaw, before: Mapping[str, PieceShape], pieces: Iterable[Piece]
) -> dict[str, PieceShape]:
    """Return what is cut of each piece, to be compared with when readings change again.

    A piece cut before its reading changed is kept as it was cut, until it is told that it fits or
    that it has to be cut again.

    Args:
        kept: Where the cutting stood before something was told.
        after: Where it stands now.
        before: What was cut of each piece then.
        pieces: All pieces as they are now.
    """
    as_it_was = (kept.done & after.done & before.keys()) - set(after.tried)
    now = {piece.mark: shape_of(piece) for piece in pieces}
    return now | {mark: before[mark] for mark in as_it_was}


def with_changed_pieces(
    state: AtTheSaw, before: Mapping[str, PieceShape], pieces: Iterable[Piece]
) -> AfterChange:
    """Return where the cutting stands after the readings changed.

    Args:
        state: Where it stood.
        before: The pieces as they were then, by mark.
        pieces: All pieces as they are now.
    """
    now = {piece.mark: shape_of(piece) for piece in pieces}

    def holds(mark: str) -> bool:
        return mark in now and mark in before and now[mark].is_like(before[mark])

    sticks = []
    loose = [mark for mark in state.loose if mark in now]
    for stick in state.sticks:
        marks = [laid.piece for laid in stick.next]
        if all(map(holds, marks)):
            sticks.append(stick)
            continue
        loose += [mark for mark in marks if mark in now]
        sticks.append(replace(stick, next=()))
    known = {laid.piece for stick in state.sticks for laid in (*stick.done, *stick.next)}
    loose += [mark for mark in now if mark not in known and mark not in loose]
    done = [laid.piece for stick in state.sticks for laid in stick.done]
    return AfterChange(
        state=replace(state, sticks=tuple(sticks), loose=tuple(loose), tried=()),
        cut_otherwise=tuple(mark for mark in done if mark in now and not holds(mark)),
        cut_in_vain=tuple(mark for mark in done if mark not in now),
    )
