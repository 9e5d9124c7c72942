from dataclasses import replace

from longpoint.pieces.piece import Piece
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news.changed_pieces import (
    AfterChange,
    pieces_as_cut,
    shape_of,
    shapes_to_keep,
    with_changed_pieces,
)
from longpoint.sticks.plan import Laid, StickSource
from tests.random_sticks import architrave_piece

PIECES = tuple(architrave_piece(f"W{n}-head", 900.0 + n, 45.0, 45.0) for n in range(1, 5))


def stick(name: str, done: tuple[int, ...], waiting: tuple[int, ...]) -> StickAtSaw:
    def laid(n: int) -> Laid:
        return Laid(piece=f"W{n}-head", start_mm=10.0, end_mm=1100.0)

    return StickAtSaw(
        name=name,
        profile="OG",
        length_mm=3600.0,
        source=StickSource.STOCK,
        done=tuple(map(laid, done)),
        next=tuple(map(laid, waiting)),
        spent_mm=1100.0 * len(done),
    )


STATE = AtTheSaw(
    sticks=(stick("OG-1", (1, 2), ()), stick("OG-2", (), (3,)), stick("OG-3", (), (4,)))
)


def changed(*pieces: Piece) -> AfterChange:
    return with_changed_pieces(STATE, {p.mark: shape_of(p) for p in PIECES}, pieces)


def test_where_nothing_changed_everything_holds() -> None:
    assert changed(*PIECES) == AfterChange(state=STATE, cut_otherwise=(), cut_in_vain=())


def test_a_change_that_no_saw_can_make_is_none() -> None:
    first = replace(PIECES[0], inner_mm=PIECES[0].inner_mm + 0.04)

    assert changed(first, *PIECES[1:]).cut_otherwise == ()


def test_a_piece_that_changed_before_it_was_cut_has_to_find_its_place_again() -> None:
    longer = replace(PIECES[2], inner_mm=950.0)
    found = changed(*PIECES[:2], longer, PIECES[3])

    assert found.state.loose == ("W3-head",)
    assert [s.name for s in found.state.sticks if s.next] == ["OG-3"]
    assert found.cut_otherwise == ()


def test_a_piece_that_changed_after_it_was_cut_stays_and_is_named() -> None:
    found = changed(replace(PIECES[0], inner_mm=950.0), *PIECES[1:])

    assert found.cut_otherwise == ("W1-head",)
    assert found.state.done == STATE.done


def test_a_piece_that_is_not_needed_any_more_is_named_or_gone() -> None:
    found = changed(PIECES[1], PIECES[3])

    assert found.cut_in_vain == ("W1-head",)
    assert found.state.open_marks == {"W4-head"}


def test_a_piece_that_was_cut_is_kept_as_it_was_cut_until_it_is_told_to_fit() -> None:
    was = {p.mark: shape_of(p) for p in PIECES}
    now = (replace(PIECES[0], inner_mm=950.0, outer_mm=1082.0), *PIECES[1:])
    after = with_changed_pieces(STATE, was, now).state
    kept = shapes_to_keep(STATE, after, was, now)

    assert kept["W1-head"] == was["W1-head"]
    assert with_changed_pieces(after, kept, now).cut_otherwise == ("W1-head",)
    assert pieces_as_cut(now, kept)["W1-head"] == PIECES[0]

    told_to_fit = replace(after, tried=("W1-head",))
    fits = shapes_to_keep(STATE, told_to_fit, kept, now)
    assert with_changed_pieces(told_to_fit, fits, now).cut_otherwise == ()
    assert with_changed_pieces(told_to_fit, fits, now).state.tried == ()


def test_a_new_piece_is_loose() -> None:
    new = architrave_piece("W9-head", 700.0, 45.0, 45.0)

    assert changed(*PIECES, new).state.loose == ("W9-head",)
