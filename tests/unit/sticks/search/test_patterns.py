from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.laying import Place, used_length, workload
from longpoint.sticks.search.patterns import Layout, Pattern, groups_of, joined_lists, pattern_list
from tests.random_sticks import architrave_piece, house_of


def layout() -> Layout:
    house = house_of(reversible=True, lengths_mm=(2700.0,))
    pieces = [
        *(architrave_piece(f"W{n}-head", 800.0, 45, 45) for n in range(3)),
        architrave_piece("W9-left-leg", 800.0, 0, 45),
    ]
    work = workload(profile_demand(pieces, house.profiles[0], 2.5).demands)
    return Layout(work, bars_of("OG", house.stock, (), house.saw).bars, groups_of(work))


def test_pieces_alike_make_one_group() -> None:
    assert sorted(len(group) for group in layout().groups) == [1, 3]


def test_a_pattern_that_fits_keeps_all_its_pieces() -> None:
    lay = layout()
    room = lay.bars[0].room
    counts, used = lay.fitting(lay.counts([0, 0, 1]), room)
    assert counts == ((0, 2), (1, 1))
    assert used == used_length(lay.work, lay.places(counts, room)) <= room


def test_a_pattern_too_long_loses_its_smallest_pieces() -> None:
    lay = layout()
    counts, used = lay.fitting(lay.counts([0, 0, 0, 1]), lay.bars[0].room)
    assert counts == ((0, 3),)
    assert used <= lay.bars[0].room


def test_nothing_is_left_of_a_pattern_whose_pieces_are_all_too_long() -> None:
    assert layout().fitting(((0, 1),), 1000) == ((), 0)


def test_a_known_order_is_kept_with_the_first_pieces_of_each_group() -> None:
    lay = layout()
    last_of_group = lay.groups[0][-1]
    counts = lay.known([Place(last_of_group, turned=True)], 12345)
    assert counts == ((0, 1),)
    assert lay.places(counts, 12345) == (Place(lay.groups[0][0], turned=True),)


def test_two_lists_stand_in_one_and_those_of_the_second_have_a_piece_more() -> None:
    one = [Pattern(0, ((0, 2),)), Pattern(1, ((0, 1), (2, 1)))]
    other = [Pattern(1, ((1, 1),)), Pattern(0, ())]
    joined = joined_lists(pattern_list(one), pattern_list(other), 7)
    assert [joined.pattern(place) for place in range(len(joined))] == [
        *one,
        Pattern(1, ((1, 1), (7, 1))),
        Pattern(0, ((7, 1),)),
    ]
