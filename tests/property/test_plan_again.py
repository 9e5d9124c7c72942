"""Accidents at the saw: what was cut never moves, and the rest always lies right."""

import random
from collections import Counter
from dataclasses import dataclass, replace

import pytest

from longpoint.errors import StockError
from longpoint.pieces.piece import Piece
from longpoint.sticks.check import check_laid
from longpoint.sticks.effort import QUICK
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw, nothing_cut, told
from longpoint.sticks.news.changed_pieces import (
    PieceShape,
    pieces_as_cut,
    shape_of,
    shapes_to_keep,
    with_changed_pieces,
)
from longpoint.sticks.news.check_rests import check_on_rest
from longpoint.sticks.news.plan_again import PlannedAgain, plan_again
from longpoint.sticks.news.remains import Remains, left_part, right_part, tip_to_tip_mm, whole
from longpoint.sticks.news.saw_news import BadZone, Cut, Lost, News, Spoiled, StickRead
from longpoint.sticks.plan import CutStick
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from tests.random_sticks import house_of, house_pieces

ACCIDENTS = 40
ACCIDENTS_LONG = 500


Happened = tuple[str, tuple[News, ...]]


def accident(draw: random.Random, state: AtTheSaw, by_mark: dict[str, Piece]) -> Happened:
    """Return something that may happen to this state, with its kind; a good cut most often."""
    waiting = [stick for stick in state.sticks if stick.next]
    done = sorted(state.done & by_mark.keys())
    stick = draw.choice(waiting)
    laid = stick.next[0]
    what = draw.random()
    if what < 0.5:
        return "cut", (Cut(piece=laid.piece),)
    if what < 0.7:
        return spoiled(draw, by_mark[laid.piece], turned=laid.turned)
    if what < 0.75 and done:
        return "lost", (Lost(piece=draw.choice(done)),)
    if what < 0.8 and done:
        return "spoiled later", spoiled(draw, by_mark[draw.choice(done)], turned=False)[1]
    if what < 0.88:
        from_mm = draw.uniform(stick.spent_mm, stick.length_mm * 0.98)
        to_mm = min(stick.length_mm, from_mm + draw.uniform(5.0, 50.0))
        return "bad", (BadZone(stick=stick.name, from_mm=from_mm, to_mm=to_mm),)
    if what < 0.92:
        came_mm = stick.length_mm - draw.choice((-40.0, 15.0, 250.0))
        same = [s for s in state.sticks if not s.is_begun and s.length_mm == stick.length_mm]
        read = (StickRead(stick=s.name, length_mm=came_mm) for s in same if s.rest is None)
        return "delivered", tuple(read) or (Cut(piece=laid.piece),)
    # A cut piece had its trim behind it, so no stick turns out shorter than that.
    least_mm = stick.spent_mm + 10.0 if stick.is_begun else 0.0
    off_mm = draw.choice((-30.0, 20.0, 300.0, 9000.0))
    read_mm = max(least_mm, stick.length_mm - off_mm)
    kind = "missing" if read_mm == 0.0 else "short" if off_mm > 0.0 else "long"
    return kind, (StickRead(stick=stick.name, length_mm=read_mm),)


def spoiled(draw: random.Random, piece: Piece, *, turned: bool) -> Happened:
    """Return one of the ways in which a piece is spoiled, with what it leaves."""
    length_mm = tip_to_tip_mm(piece)
    rests: list[Remains | None]
    match draw.randrange(5):
        case 0:
            rests = []
        case 1:
            rests = [whole(piece, draw.uniform(1.0, 12.0))]
        case 2:
            spot_mm = draw.uniform(0.0, length_mm)
            rests = [
                left_part(piece, spot_mm, turned=turned),
                right_part(piece, length_mm - spot_mm, turned=turned),
            ]
        case 3:
            part = draw.choice((left_part, right_part))
            rests = [part(piece, draw.uniform(0.6, 0.95) * length_mm, turned=turned)]
        case _:
            rests = [Remains(of=piece.mark, length_mm=draw.choice((0.6, 0.9)) * piece.short_mm)]
    left = tuple(rest for rest in rests if rest is not None)
    return "spoiled", (Spoiled(piece=piece.mark, rests=left),)


def read_again(draw: random.Random, pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """Return the pieces after one opening was read again and is wider or higher than it was."""
    opening = draw.choice(pieces).opening
    more_mm = draw.choice((-6.0, 3.0, 11.0))
    return tuple(
        replace(piece, inner_mm=piece.inner_mm + more_mm, outer_mm=piece.outer_mm + more_mm)
        if piece.opening == opening
        else piece
        for piece in pieces
    )


def check_lies_right(
    again: PlannedAgain, before: AtTheSaw, by_mark: dict[str, Piece], house: House
) -> None:
    state = again.state
    places = [laid.piece for stick in state.sticks for laid in (*stick.done, *stick.next)]
    assert sorted((*places, *state.loose)) == sorted(by_mark), "every piece once"
    was = {stick.name: stick for stick in before.sticks}
    for stick in state.sticks:
        if stick.name in was:
            assert stick.done == was[stick.name].done, "a cut piece moved"
        if stick.rest is None:
            check_laid(as_cut(stick), by_mark, house)
        else:
            every = (*stick.done, *stick.next)
            check_on_rest(replace(stick, next=every), by_mark, house)
        for laid in stick.next:
            if laid.piece in before.loose:
                assert laid.start_mm >= stick.spent_mm, "into what is cut"
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


@dataclass(frozen=True, slots=True)
class Life:
    """What happened in a house, and what was planned each time."""

    kinds: Counter[str]
    plans: list[PlannedAgain]

    @property
    def reused(self) -> int:
        """How often something was to be cut from what is left of a spoiled piece."""
        return sum(any(s.rest and s.next for s in plan.state.sticks) for plan in self.plans)


def lived_through(seed: int, accidents: int, *, reversible: bool) -> Life:
    draw = random.Random(seed)
    pieces = house_pieces(seed, openings=12)
    house = house_of(reversible=reversible, offcuts=((1500.0, 2), (900.0, 2)))
    state = nothing_cut(plan_sticks(pieces, house, None, QUICK))
    shapes: dict[str, PieceShape] = {}
    kinds: Counter[str] = Counter()
    plans = []
    for _ in range(accidents):
        if not any(stick.next for stick in state.sticks):
            state, shapes = nothing_cut(plan_sticks(pieces, house, None, QUICK)), {}
        if draw.random() < 0.06:
            kind = "read again"
            before = {piece.mark: shape_of(piece) for piece in pieces} | shapes
            pieces = read_again(draw, pieces)
            after = with_changed_pieces(state, before, pieces).state
            shapes = shapes_to_keep(state, after, before, pieces)
        else:
            kind, news = accident(draw, state, pieces_as_cut(pieces, shapes))
            after = told(state, news)
            shapes = shapes_to_keep(state, after, shapes, pieces)
        again = plan_again(after, pieces, house)
        check_lies_right(again, after, pieces_as_cut(pieces, shapes), house)
        assert not again.state.loose, "there is stock without end"
        kinds[kind] += 1
        plans.append(again)
        state = again.state
    return Life(kinds, plans)


@pytest.mark.parametrize(("seed", "reversible"), [(1, False), (1, True), (2, True)])
def test_whatever_happens_every_piece_has_a_place_and_no_cut_one_moves(
    seed: int, reversible: bool
) -> None:
    life = lived_through(seed, ACCIDENTS, reversible=reversible)

    assert any(again.new for again in life.plans)
    assert not all(again.new for again in life.plans)
    assert life.reused


@pytest.mark.long
@pytest.mark.parametrize("seed", range(2, 12))
def test_five_hundred_accidents_at_ten_houses(seed: int) -> None:
    life = lived_through(seed, ACCIDENTS_LONG // 10, reversible=seed % 2 == 0)

    assert len(life.kinds) > 4


def test_a_piece_out_of_turn_is_refused() -> None:
    pieces, house = house_pieces(3, openings=6), house_of()
    state = nothing_cut(plan_sticks(pieces, house, None, QUICK))
    stick = next(stick for stick in state.sticks if len(stick.next) > 1)

    with pytest.raises(StockError, match="before it"):
        told(state, [Cut(piece=stick.next[1].piece)])
