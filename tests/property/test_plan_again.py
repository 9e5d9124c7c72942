"""Accidents at the saw: what was cut never moves, and the rest always lies right."""

import random

import pytest

from longpoint.errors import StockError
from longpoint.pieces.piece import Piece
from longpoint.sticks.at_the_saw import (
    AtTheSaw,
    BadZone,
    Cut,
    Lost,
    News,
    Spoiled,
    StickAtSaw,
    StickRead,
    nothing_cut,
    told,
)
from longpoint.sticks.check import check_laid
from longpoint.sticks.effort import QUICK
from longpoint.sticks.plan import CutStick
from longpoint.sticks.plan_again import PlannedAgain, plan_again
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from tests.random_sticks import house_of, house_pieces

ACCIDENTS = 60
ACCIDENTS_LONG = 500


def accident(draw: random.Random, state: AtTheSaw) -> News:
    """Return something that may happen to this state; a good cut most often."""
    waiting = [stick for stick in state.sticks if stick.next]
    done = sorted(state.done)
    stick = draw.choice(waiting)
    laid = stick.next[0]
    what = draw.random()
    if what < 0.6:
        return Cut(piece=laid.piece)
    if what < 0.75:
        left_mm = draw.choice((0.0, 0.6, 0.9)) * (laid.end_mm - laid.start_mm)
        return Spoiled(piece=laid.piece, left_mm=left_mm)
    if what < 0.8 and done:
        return Lost(piece=draw.choice(done))
    if what < 0.9:
        from_mm = draw.uniform(stick.spent_mm, stick.length_mm - 60.0)
        return BadZone(stick=stick.name, from_mm=from_mm, to_mm=from_mm + draw.uniform(5.0, 50.0))
    # A cut piece had its trim behind it, so no stick turns out shorter than that.
    least_mm = stick.spent_mm + 10.0 if stick.is_begun else 0.0
    short_mm = max(least_mm, stick.length_mm - draw.choice((20.0, 300.0, 9000.0)))
    return StickRead(stick=stick.name, length_mm=short_mm)


def check_lies_right(
    again: PlannedAgain, before: AtTheSaw, pieces: tuple[Piece, ...], house: House
) -> None:
    state = again.state
    by_mark = {piece.mark: piece for piece in pieces}
    places = [laid.piece for stick in state.sticks for laid in (*stick.done, *stick.next)]
    assert sorted((*places, *state.loose)) == sorted(by_mark), "every piece once"
    was = {stick.name: stick for stick in before.sticks}
    for stick in state.sticks:
        if stick.name in was:
            assert stick.done == was[stick.name].done, "a cut piece moved"
        check_laid(as_cut(stick), by_mark, house)
        for laid in stick.next:
            if laid.piece in before.loose:
                assert laid.start_mm > stick.spent_mm, "into what is cut"
            for from_mm, to_mm in stick.bad:
                assert laid.end_mm <= from_mm or laid.start_mm >= to_mm, "through a bad zone"


def as_cut(stick: StickAtSaw) -> CutStick:
    return CutStick(
        name=stick.name,
        profile=stick.profile,
        length_mm=stick.length_mm,
        source=stick.source,
        laid=(*stick.done, *stick.next),
        used_mm=0.0,
        left_mm=0.0,
    )


def lived_through(seed: int, accidents: int, *, reversible: bool) -> list[PlannedAgain]:
    draw = random.Random(seed)
    pieces = house_pieces(seed, openings=12)
    house = house_of(reversible=reversible, offcuts=((1500.0, 2),))
    state = nothing_cut(plan_sticks(pieces, house, None, QUICK))
    found = []
    for _ in range(accidents):
        if not any(stick.next for stick in state.sticks):
            state = nothing_cut(plan_sticks(pieces, house, None, QUICK))
        after = told(state, [accident(draw, state)])
        again = plan_again(after, pieces, house)
        check_lies_right(again, after, pieces, house)
        assert not again.state.loose, "there is stock without end"
        found.append(again)
        state = again.state
    return found


@pytest.mark.parametrize(("seed", "reversible"), [(1, False), (1, True), (2, True)])
def test_whatever_happens_every_piece_has_a_place_and_no_cut_one_moves(
    seed: int, reversible: bool
) -> None:
    found = lived_through(seed, ACCIDENTS, reversible=reversible)

    assert any(again.new for again in found)
    assert not all(again.new for again in found)


@pytest.mark.long
@pytest.mark.parametrize("seed", range(2, 12))
def test_five_hundred_accidents_at_ten_houses(seed: int) -> None:
    lived_through(seed, ACCIDENTS_LONG // 10, reversible=seed % 2 == 0)


def test_a_piece_out_of_turn_is_refused() -> None:
    pieces, house = house_pieces(3, openings=6), house_of()
    state = nothing_cut(plan_sticks(pieces, house, None, QUICK))
    stick = next(stick for stick in state.sticks if len(stick.next) > 1)

    with pytest.raises(StockError, match="before it"):
        told(state, [Cut(piece=stick.next[1].piece)])
