"""The saw is set anew as seldom as in the best of all orders, and what can't be bettered isn't."""

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from longpoint.pieces.piece import Piece
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Filled, Packing, fit
from longpoint.sticks.lay.laying import Place, Workload, left_over, used_length, workload
from longpoint.sticks.lay.tidy import tidied
from longpoint.sticks.order.saw_order import ABOUT_AS_LONG_MM
from longpoint.sticks.order.saw_setting import SawSetting, end_settings
from longpoint.sticks.order.sawn_order import sawn_order
from longpoint.survey.house import House
from tests.property.test_sticks import all_layings
from tests.random_sticks import architrave_piece, house_of

ENDS_DEG = st.sampled_from([0.0, 45.0, 45.0, 44.6, -45.0])
LONG_MM = st.sampled_from([480.0, 612.0, 618.0, 900.0, 1010.0, 1320.0])
Laid = tuple[Place, ...]


@st.composite
def few_pieces(draw: st.DrawFn, profile: str, most: int) -> tuple[Piece, ...]:
    return tuple(
        replace(
            architrave_piece(f"{profile}{n}-head", draw(LONG_MM), draw(ENDS_DEG), draw(ENDS_DEG)),
            profile=profile,
        )
        for n in range(draw(st.integers(1, most)))
    )


def packed(pieces: Sequence[Piece], house: House) -> tuple[Workload, Bars, Packing]:
    name = pieces[0].profile
    demand = profile_demand(pieces, house.profile(name), house.saw.kerf_mm)
    work = workload(demand.demands)
    bars = bars_of(name, house.stock, (), house.saw)
    return work, bars, tidied(work, bars.bars, fit(work, bars.bars, QUICK.refills))


def cuts_of(
    work: Workload, places: Laid, pieces: dict[str, Piece], house: House
) -> list[SawSetting]:
    return [
        setting
        for place in places
        for setting in end_settings(
            pieces[work.demands[place.piece].mark], house.saw, turned=place.turned
        )
    ]


def changes(cuts: Sequence[SawSetting]) -> int:
    return sum(before != after for before, after in itertools.pairwise(cuts))


def waits(work: Workload, places: Laid) -> int:
    mids = [work.mid[place.piece] for place in places]
    return max(mids[m] - mids[n] for m in range(len(mids)) for n in range(m + 1))


def layings(work: Workload, bars: Bars, packing: Packing, stick: Filled) -> list[Laid]:
    """Every way to lay a stick that gives nothing up."""
    rooms = [bars.bars[each.bar].room for each in packing.sticks]
    left = left_over(work, stick.places, bars.bars[stick.bar].room)
    longest = max(
        left_over(work, each.places, room) for each, room in zip(packing.sticks, rooms, strict=True)
    )
    room = bars.bars[stick.bar].room
    able = [
        places
        for places in all_layings(work, [place.piece for place in stick.places])
        if used_length(work, places) <= room
        and left_over(work, places, room) >= (left if left == longest else left - 200)
    ]
    long_first = [places for places in able if waits(work, places) <= 15000]
    as_now = waits(work, stick.places)
    return long_first or [places for places in able if waits(work, places) <= as_now]


def all_orders(
    work: Workload, bars: Bars, packing: Packing, pieces: dict[str, Piece], house: House
) -> Iterator[list[SawSetting]]:
    """The cuts of a profile in every order in which no stick is out of turn."""
    biggest_mm = [
        max(work.alone[place.piece] for place in stick.places) / 100 for stick in packing.sticks
    ]
    cuts = [
        {
            tuple(cuts_of(work, places, pieces, house))
            for places in layings(work, bars, packing, stick)
        }
        for stick in packing.sticks
    ]
    for order in itertools.permutations(range(len(cuts))):
        sizes_mm = [biggest_mm[n] for n in order]
        if all(max(sizes_mm[n:]) <= mm + ABOUT_AS_LONG_MM - 1e-6 for n, mm in enumerate(sizes_mm)):
            for laid in itertools.product(*(cuts[n] for n in order)):
                yield [setting for each in laid for setting in each]


@given(few_pieces("OG", 5), st.booleans())
def test_no_order_of_the_sticks_and_their_pieces_sets_the_saw_less_often(
    pieces: tuple[Piece, ...], reversible: bool
) -> None:
    house = house_of(reversible=reversible, lengths_mm=(1500.0, 2100.0))
    by_mark = {piece.mark: piece for piece in pieces}
    work, bars, packing = packed(pieces, house)
    found = sawn_order([(work, bars, packing)], by_mark, house.saw)
    (sawn,) = found.packings
    cuts = [cut for stick in sawn.sticks for cut in cuts_of(work, stick.places, by_mark, house)]
    best = min(map(changes, all_orders(work, bars, packing, by_mark, house)))
    assert changes(cuts) == best == found.fewest_changes


@given(few_pieces("OG", 3), few_pieces("FP", 3))
def test_nor_does_any_order_of_two_profiles(
    ours: tuple[Piece, ...], theirs: tuple[Piece, ...]
) -> None:
    house = house_of(lengths_mm=(1500.0,))
    (profile,) = house.profiles
    (stock,) = house.stock
    house = replace(
        house,
        profiles=(profile, replace(profile, name="FP")),
        stock=(stock, replace(stock, profile="FP")),
    )
    by_mark = {piece.mark: piece for piece in (*ours, *theirs)}
    both = [packed(ours, house), packed(theirs, house)]
    found = sawn_order(both, by_mark, house.saw)
    cuts = [
        cut
        for (work, _, _), sawn in zip(both, found.packings, strict=True)
        for stick in sawn.sticks
        for cut in cuts_of(work, stick.places, by_mark, house)
    ]
    orders = [list(all_orders(*each, by_mark, house)) for each in both]
    best = min(changes([*first, *second]) for first, second in itertools.product(*orders))
    assert changes(cuts) == best == found.fewest_changes


@given(few_pieces("OG", 14), st.booleans())
def test_what_is_called_the_limit_is_never_above_what_was_found(
    pieces: tuple[Piece, ...], reversible: bool
) -> None:
    house = house_of(reversible=reversible, lengths_mm=(1500.0, 2100.0))
    by_mark = {piece.mark: piece for piece in pieces}
    work, bars, packing = packed(pieces, house)
    found = sawn_order([(work, bars, packing)], by_mark, house.saw)
    (sawn,) = found.packings

    def cuts(of: Packing) -> int:
        return changes(
            [cut for stick in of.sticks for cut in cuts_of(work, stick.places, by_mark, house)]
        )

    sizes = [max(work.alone[place.piece] for place in stick.places) for stick in packing.sticks]
    in_turn = sorted(range(len(sizes)), key=lambda n: -sizes[n])
    as_it_was = replace(packing, sticks=tuple(packing.sticks[n] for n in in_turn))
    assert found.fewest_changes <= cuts(sawn)
    if all(waits(work, stick.places) <= 15000 for stick in packing.sticks):
        assert cuts(sawn) <= cuts(as_it_was)
    for stick in sawn.sticks:
        assert used_length(work, stick.places) == stick.used <= bars.bars[stick.bar].room
