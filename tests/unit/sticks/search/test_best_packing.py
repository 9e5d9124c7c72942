from longpoint.sticks.search.best_packing import BestPacking
from longpoint.sticks.search.patterns import Pattern
from tests.random_sticks import architrave_piece, house_of
from tests.unit.sticks.nests import nest


def two_pieces() -> BestPacking:
    """Two pieces of 1200 on two sticks of 1800; on one of 2700 both have room."""
    pieces = tuple(architrave_piece(f"W{n}-head", 1200.0, 0, 0) for n in range(2))
    master, *_ = nest(pieces, house_of(lengths_mm=(1800.0, 2700.0)))
    layout = master.layout
    apart = layout.packing([Pattern(0, ((0, 1),)), Pattern(0, ((0, 1),))])
    return BestPacking(layout.work, master.bars, layout, apart)


def test_a_cheaper_packing_is_taken_with_real_pieces_in_it() -> None:
    best = two_pieces()
    before = best.steps
    best.take([Pattern(1, ((0, 2),))])
    assert best.steps < before
    assert [sorted(place.piece for place in stick.places) for stick in best.packing.sticks] == [
        [0, 1]
    ]
    assert list(best.patterns()) == [Pattern(1, ((0, 2),))]


def test_a_dearer_packing_and_none_at_all_are_left() -> None:
    best = two_pieces()
    best.take([Pattern(1, ((0, 2),))])
    packing = best.packing
    best.take([Pattern(0, ((0, 1),)), Pattern(0, ((0, 1),))])
    best.take([])
    assert best.packing == packing
