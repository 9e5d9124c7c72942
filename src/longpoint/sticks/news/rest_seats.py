"""Pieces cut from what is left of spoiled ones, and the places that this frees."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news.remains import Seat, fitting, tip_to_tip_mm
from longpoint.survey.house import House

MOST_SWAPS: Final = 4
"""So many pieces are tried in rests of spoiled ones while somebody waits."""


@dataclass(frozen=True, slots=True)
class Bench:
    """What is asked of a rest: the house's saw and sections, and its pieces by mark."""

    house: House
    by_mark: Mapping[str, Piece]

    def fitting(self, stick: StickAtSaw, marks: tuple[str, ...]) -> list[tuple[Piece, Seat]]:
        """Return which of the pieces named can be cut from a rest, the longest first."""
        if stick.rest is None:
            return []
        pieces = [self.by_mark[mark] for mark in marks]
        return fitting(
            stick.rest,
            [piece for piece in pieces if piece.profile == stick.profile],
            self.house.saw.kerf_mm,
            can_turn=self.house.profile(stick.profile).reversible,
        )


def seated(state: AtTheSaw, bench: Bench) -> AtTheSaw:
    """Return the state with the longest loose piece that goes into each rest cut from it.

    The same state where none does.
    """
    for stick in _untouched(state):
        found = bench.fitting(stick, state.loose)
        if found:
            piece, seat = found[0]
            state = _on_rest(state, stick.name, piece.mark, seat)
    return state


def swapped(state: AtTheSaw, bench: Bench) -> Iterator[AtTheSaw]:
    """Give states in which a piece that waits is cut from a rest, and its stick filled anew.

    Those of the longest pieces come first: they free most.
    """
    home = {laid.piece: stick.name for stick in state.sticks for laid in stick.next}
    found = [
        (piece, rest.name, seat)
        for rest in _untouched(state)
        for piece, seat in bench.fitting(rest, tuple(home))[:MOST_SWAPS]
    ]
    found.sort(key=lambda each: -tip_to_tip_mm(each[0]))
    for piece, rest_name, seat in found[:MOST_SWAPS]:
        freed = _emptied(state, home[piece.mark])
        yield _on_rest(freed, rest_name, piece.mark, seat)


def _untouched(state: AtTheSaw) -> list[StickAtSaw]:
    """Return rests that nothing is cut from yet, the shortest first: it serves fewest pieces."""
    free = [
        stick
        for stick in state.sticks
        if stick.rest is not None
        and not (stick.is_begun or stick.next or stick.bad or stick.listed_mm)
    ]
    return sorted(free, key=lambda stick: stick.length_mm)


def _emptied(state: AtTheSaw, name: str) -> AtTheSaw:
    marks = tuple(laid.piece for stick in state.sticks if stick.name == name for laid in stick.next)
    sticks = tuple(replace(s, next=()) if s.name == name else s for s in state.sticks)
    return replace(state, sticks=sticks, loose=(*state.loose, *marks))


def _on_rest(state: AtTheSaw, name: str, mark: str, seat: Seat) -> AtTheSaw:
    return replace(
        state,
        sticks=tuple(replace(s, next=(seat.laid,)) if s.name == name else s for s in state.sticks),
        loose=tuple(each for each in state.loose if each != mark),
    )
