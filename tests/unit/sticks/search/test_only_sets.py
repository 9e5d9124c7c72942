from longpoint.sticks.search.master import Prices
from longpoint.sticks.search.only_sets import OnlySets, Rest, with_only_sets
from longpoint.sticks.search.patterns import Pattern
from tests.bench.cutting_stock import CuttingStock
from tests.unit.sticks.tight_sticks import STICK, Stage, stage


def by_length(at: Stage) -> Prices:
    """Prices at which a full stick loses nothing."""
    return Prices(tuple(need / STICK for need in at.least.pieces), (0.0,))


def whole(lengths: tuple[tuple[int, int], ...], goal: int) -> tuple[Stage, Rest]:
    at = stage(CuttingStock(name="few", stick=STICK, lengths=lengths))
    return at, Rest(at.master.whole, goal, ())


def test_a_piece_that_fits_one_set_takes_its_pieces_away() -> None:
    # 41 goes with 19 only; then 30 can't go with 19 and 11 any more, and goes with 30.
    at, rest = whole(((41, 1), (30, 2), (19, 1), (11, 1), (49, 1)), 3)
    found = OnlySets(at.master, at.least, 1).counted(rest, by_length(at))
    assert found is not None
    assert found.done
    lengths = sorted(
        sorted(at.least.pieces[group] for group, n in pattern.counts for _ in range(n))
        for pattern in found.rest.taken
    )
    assert lengths == [[11, 49], [19, 41], [30, 30]]
    assert found.rest.goal == 0


def test_a_piece_that_fits_no_set_ends_it() -> None:
    at, rest = whole(((41, 1), (30, 2), (20, 1), (19, 1), (10, 1)), 2)
    assert OnlySets(at.master, at.least, 1).counted(rest, by_length(at)) is None
    at, rest = whole(((41, 1), (40, 1), (30, 1), (9, 1)), 2)
    assert OnlySets(at.master, at.least, 1).counted(rest, by_length(at)) is None


def test_where_each_piece_has_a_choice_nothing_is_taken() -> None:
    at, rest = whole(((30, 1), (29, 1), (31, 1), (15, 2), (14, 1), (16, 1)), 3)
    found = OnlySets(at.master, at.least, 1).counted(rest, by_length(at))
    assert found is not None
    assert found.rest == rest
    assert found.ways is not None
    assert min(found.ways.holding.values()) >= 2
    group = found.tightest()
    choices = OnlySets(at.master, at.least, 1).choices(rest, by_length(at), group)
    assert choices is not None
    assert len(choices) == found.ways.holding[group]
    assert all(group in dict(pattern.counts) for pattern in choices)


def test_a_set_is_taken_as_often_as_copies_ask_for() -> None:
    at, rest = whole(((41, 3), (19, 3)), 3)
    long_and_short = Pattern(0, ((0, 1), (1, 1)))
    found = with_only_sets(at.master, rest, (0, 1), [long_and_short])
    assert found is not None
    assert found.taken == (long_and_short,) * 3
    assert found.goal == 0


def test_copies_that_do_not_come_out_even_end_it() -> None:
    at, rest = whole(((20, 4), (41, 1)), 3)
    group = at.least.pieces.index(20)
    assert with_only_sets(at.master, rest, (group,), [Pattern(0, ((group, 3),))]) is None


def test_a_piece_wanted_twice_ends_it() -> None:
    at, rest = whole(((41, 1), (40, 1), (19, 1)), 2)
    sets = [Pattern(0, ((0, 1), (2, 1))), Pattern(0, ((1, 1), (2, 1)))]
    assert with_only_sets(at.master, rest, (0, 1), sets) is None


def test_more_sticks_than_may_be_opened_end_it() -> None:
    at, rest = whole(((41, 2), (19, 2)), 1)
    assert with_only_sets(at.master, rest, (0,), [Pattern(0, ((0, 1), (1, 1)))]) is None


def test_a_piece_that_nothing_listed_holds_ends_it() -> None:
    at, rest = whole(((41, 1), (19, 1)), 1)
    assert with_only_sets(at.master, rest, (0,), []) is None


def test_a_search_that_is_stopped_takes_nothing_and_says_nothing() -> None:
    at, rest = whole(((41, 1), (19, 1)), 1)
    at.master.stop = lambda: True
    found = OnlySets(at.master, at.least, 1).counted(rest, by_length(at))
    assert found is not None
    assert (found.rest, found.ways) == (rest, None)
