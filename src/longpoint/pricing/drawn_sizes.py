"""Houses as they may come out: sizes round those drawn, and pieces that slips spoil."""

import random
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.pieces.piece import Piece, Role
from longpoint.survey.house import House

FURTHEST: Final = 3.0
"""No size is drawn further off than so many standard deviations."""
UNEVEN: Final = (0.4, 1.6)
"""How unevenly runs share the length of a room: each gets a weight between these; ours."""
LEAST_RUN_MM: Final = 50.0
_ACROSS: Final = frozenset({Role.HEAD, Role.SILL, Role.APRON, Role.BOARD})
_UP: Final = frozenset({Role.LEFT_LEG, Role.RIGHT_LEG})


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeDoubt:
    """How far a house will differ from its drawing.

    Attributes:
        opening_mm: Standard deviation of a width or height. [mm]
        wall_mm: Standard deviation of a run. [mm]
        shared: Marks of the runs that share one length, of which only the whole is known.
    """

    opening_mm: float
    wall_mm: float
    shared: tuple[tuple[str, ...], ...] = ()


def drawn_pieces(
    pieces: Sequence[Piece], house: House, doubt: SizeDoubt | None, dice: random.Random
) -> tuple[Piece, ...]:
    """Return the pieces of one house as it may come out, those spoiled by slips twice.

    An opening drawn square keeps its corners, so its head, sill piece and boards grow with its
    width and its legs with its height, whatever their ends.

    Args:
        pieces: The pieces as drawn or read.
        house: Their house: its sticks, and how often its crew slips.
        doubt: How far sizes will differ; None: they are read.
        dice: Where chance comes from.
    """
    drawn = list(pieces if doubt is None else _resized(pieces, house, doubt, dice))
    slips = house.crew.slips_counted / 100.0
    spoiled = [
        replace(piece, mark=f"{piece.mark} again") for piece in drawn if dice.random() < slips
    ]
    return (*drawn, *spoiled)


def _resized(
    pieces: Sequence[Piece], house: House, doubt: SizeDoubt, dice: random.Random
) -> Iterator[Piece]:
    grown: dict[tuple[str, str], float] = {}
    runs = _run_lengths(pieces, doubt, dice)
    for piece in pieces:
        if piece.role in _ACROSS or piece.role in _UP:
            key = (piece.place, "across" if piece.role in _ACROSS else "up")
            if key not in grown:
                grown[key] = _off(doubt.opening_mm, dice)
            yield _longer(piece, grown[key])
        elif piece.run is not None and piece.role is Role.RUN:
            wanted_mm = piece.back_mm + _off(doubt.wall_mm, dice)
            if piece.run in runs:
                wanted_mm = runs[piece.run] + _off(doubt.wall_mm, dice)
            resized = _longer(piece, max(LEAST_RUN_MM, wanted_mm) - piece.back_mm)
            yield from _in_sticks(resized, _longest_mm(house, piece.profile))
        else:
            yield piece


def _run_lengths(
    pieces: Sequence[Piece], doubt: SizeDoubt, dice: random.Random
) -> Mapping[str, float]:
    """Share each whole length among its runs anew; scarfed runs are left as they are."""
    found: dict[str, float] = {}
    parts: dict[str, list[float]] = {}
    for piece in pieces:
        if piece.run is not None and piece.role is Role.RUN:
            parts.setdefault(piece.run, []).append(piece.back_mm)
    for marks in doubt.shared:
        whole = [mark for mark in marks if len(parts.get(mark, ())) == 1]
        weights = [dice.uniform(*UNEVEN) for _ in whole]
        length_mm = sum(parts[mark][0] for mark in whole)
        for mark, weight in zip(whole, weights, strict=True):
            found[mark] = length_mm * weight / sum(weights)
    return found


def _in_sticks(piece: Piece, longest_mm: float) -> Iterator[Piece]:
    """Give a run in as few equal parts as sticks can hold."""
    count = 1 if longest_mm <= 0 else int(-(-max(piece.inner_mm, piece.back_mm) // longest_mm))
    if count <= 1:
        yield piece
        return
    for number in range(count):
        part = _longer(piece, piece.back_mm / count - piece.back_mm)
        yield replace(part, mark=f"{piece.mark} part {number + 1}")


def _longest_mm(house: House, profile: str) -> float:
    """Return what the longest stick holds with its two ends cut off; 0 where there is none."""
    lengths = [stock.length_mm for stock in house.stock if stock.profile == profile]
    lost_mm = 2 * max(house.saw.end_trim_mm, house.saw.kerf_mm) + 60.0
    return max(lengths, default=0.0) - lost_mm if lengths else 0.0


def _longer(piece: Piece, by_mm: float) -> Piece:
    by_mm = max(by_mm, LEAST_RUN_MM - min(piece.inner_mm, piece.outer_mm, piece.back_mm))
    return replace(
        piece,
        inner_mm=piece.inner_mm + by_mm,
        outer_mm=piece.outer_mm + by_mm,
        back_mm=piece.back_mm + by_mm,
    )


def _off(sd_mm: float, dice: random.Random) -> float:
    return max(-FURTHEST, min(FURTHEST, dice.gauss(0.0, 1.0))) * sd_mm
