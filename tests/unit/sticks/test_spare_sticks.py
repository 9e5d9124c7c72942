"""Spares hold the longest pieces, so that any others are covered too."""

import itertools
from dataclasses import replace

import pytest

from longpoint.pieces.piece import Piece
from longpoint.sticks.effort import QUICK
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.sticks.spare_sticks import SpareSticks, spare_sticks
from longpoint.survey.house import House
from longpoint.survey.profiles import Offcut, Stock
from tests.random_sticks import architrave_piece, house_of, house_pieces

pytestmark = pytest.mark.no_cover


def spare(pieces: tuple[Piece, ...], house: House, count: int) -> SpareSticks:
    plan = plan_sticks(pieces, house, effort=QUICK)
    (found,) = spare_sticks(plan, pieces, house, {"OG": count})
    return found


def squares(*lengths_mm: float) -> tuple[Piece, ...]:
    return tuple(
        architrave_piece(f"W{n}-head", length_mm, 0, 0) for n, length_mm in enumerate(lengths_mm)
    )


def test_nothing_to_cover_needs_no_stick() -> None:
    found = spare(squares(2600.0, 2600.0), house_of(), 0)
    assert (found.covered, found.buy, found.rests, found.missing) == ((), (), (), 0)


def test_the_longest_piece_is_covered_by_the_shortest_stick_that_holds_it() -> None:
    found = spare(squares(2000.0, 2600.0), house_of(), 1)
    assert (found.covered, found.longest_mm) == (("W1-head",), 2600.0)
    assert found.buy == ((2700.0, 1),)


def test_what_the_plan_leaves_over_serves_first() -> None:
    """A stick of 5400 gives 2600 and leaves 5400 - 10 - 2600 - 2.5 - 10 = 2777.5."""
    found = spare(squares(2600.0), house_of(lengths_mm=(5400.0,)), 1)
    assert (found.buy, found.rests, found.rack) == ((), ("OG-1",), ())


def test_an_offcut_that_the_plan_leaves_on_the_rack_serves_too() -> None:
    house = house_of(lengths_mm=(2700.0,), offcuts=((2650.0, 2),))
    found = spare(squares(2600.0), house, 1)
    assert (found.buy, found.rests, found.rack) == ((), (), (("", 2650.0),))


def test_counted_sticks_that_are_used_up_are_no_spares() -> None:
    found = spare(squares(2600.0, 2600.0), house_of(lengths_mm=(2700.0,), counts=(3,)), 2)
    assert found.buy == ((2700.0, 1),)
    assert (len(found.covered), found.missing) == (1, 1)


def test_a_piece_that_only_sticks_used_up_could_give_is_missing() -> None:
    house = house_of(lengths_mm=(2700.0, 5400.0), counts=(None, 1))
    found = spare(squares(5000.0, 2000.0), house, 1)
    assert (found.covered, found.buy, found.missing) == ((), (), 1)


@pytest.mark.parametrize("reversible", [False, True])
def test_any_pieces_can_be_cut_again_from_the_spares_of_the_longest(reversible: bool) -> None:
    """Threes of a house's thirty, from nothing but what is said to be spare."""
    pieces = house_pieces(5, openings=10)
    house = house_of(reversible=reversible)
    plan = plan_sticks(pieces, house, effort=QUICK)
    (found,) = spare_sticks(plan, pieces, house, {"OG": 3})
    kept_mm = [stick.left_mm for stick in plan.sticks if stick.name in found.rests]
    only = replace(
        house,
        stock=tuple(Stock(profile="OG", length_mm=mm, count=n) for mm, n in found.buy),
        offcuts=tuple(Offcut(profile="OG", length_mm=mm) for mm in kept_mm),
    )
    for some in itertools.islice(itertools.combinations(pieces, 3), 0, None, 61):
        assert plan_sticks(some, only, effort=QUICK).unplaced == ()
