"""The search that chooses listed sets: equal to trying all choices, plan and proof."""

import random
from collections.abc import Iterator
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from longpoint.solvers import set_program
from longpoint.solvers.set_search import choose_sets
from longpoint.sticks.search.patterns import Pattern, pattern_list
from longpoint.sticks.search.sets_to_choose import SetChoice


@pytest.fixture(autouse=True, scope="module")
def _few_at_once() -> Iterator[None]:
    """Lists as short as these would all be given to HiGHS; so most must be found by their price."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(set_program, "_FIRST", 1)
        patch.setattr(set_program, "_AT_ONCE", 2)
        yield


def drawn(seed: int, pieces: tuple[int, ...], *, wrong: bool) -> SetChoice:
    """Draw a list of sets of one to three pieces, some of which can't be cut."""
    draw = random.Random(seed)
    sets = dict[tuple[tuple[tuple[int, int], ...], int], None]()
    for _ in range(draw.randint(4, 40)):
        taken = [draw.randrange(len(pieces)) for _ in range(draw.randint(1, 3))]
        counts = tuple(sorted({(group, taken.count(group)) for group in taken}))
        if all(count <= pieces[group] for group, count in counts):
            sets[counts, draw.randrange(3)] = None
    uncut = {number for number in range(len(sets)) if wrong and draw.random() < 0.3}
    return SetChoice(
        patterns=pattern_list(Pattern(bar, counts) for counts, bar in sets),
        costs=(draw.randint(0, 3), draw.randint(2, 9), draw.randint(5, 12)),
        pieces=pieces,
        limits=(draw.randint(0, 2), None, None),
        able=tuple(range(60)),
        prices=(1.0,) * len(pieces),
        can_be_cut=lambda number: number not in uncut,
        nodes=2000,
        work=10**9,
        stop=lambda: False,
    )


def cheapest(choice: SetChoice) -> int | None:
    """Try every way to take out the first piece that is left."""

    @cache
    def rest(left: tuple[int, ...], free: int) -> int | None:
        if not any(left):
            return 0
        first = next(group for group, count in enumerate(left) if count)
        best: int | None = None
        for number in range(len(choice.patterns)):
            pattern = choice.patterns.pattern(number)
            held, bar = dict(pattern.counts), pattern.bar
            if first not in held or not choice.can_be_cut(number) or (bar == 0 and not free):
                continue
            after = tuple(count - held.get(group, 0) for group, count in enumerate(left))
            if min(after) < 0:
                continue
            more = rest(after, free - (bar == 0))
            if more is not None and (best is None or more + choice.costs[bar] < best):
                best = more + choice.costs[bar]
        return best

    return rest(choice.pieces, choice.limits[0] or 0)


@settings(max_examples=150, deadline=None)
@given(
    seed=st.integers(0, 10**6),
    pieces=st.lists(st.just(1), min_size=2, max_size=9).map(tuple),
    wrong=st.booleans(),
)
def test_single_pieces_are_chosen_as_well_as_can_be(
    seed: int, pieces: tuple[int, ...], wrong: bool
) -> None:
    choice = drawn(seed, pieces, wrong=wrong)
    best = cheapest(choice)
    found = choose_sets(choice)
    assert found.floor == (choice.able[-1] + 1 if best is None else best)
    assert bool(found.numbers) == (best is not None)
    _is_a_plan(choice, found.numbers, best)


@settings(max_examples=60, deadline=None)
@given(
    seed=st.integers(0, 10**6),
    pieces=st.lists(st.integers(1, 3), min_size=2, max_size=5).map(tuple),
)
def test_of_alike_pieces_never_more_is_claimed_than_is_true(
    seed: int, pieces: tuple[int, ...]
) -> None:
    choice = drawn(seed, pieces, wrong=True)
    best = cheapest(choice)
    found = choose_sets(choice)
    assert found.floor <= (choice.able[-1] + 1 if best is None else best)
    if found.numbers:
        cost = sum(choice.costs[choice.patterns.bars[number]] for number in found.numbers)
        assert best is not None
        assert cost >= best
        _is_a_plan(choice, found.numbers, cost)


def _is_a_plan(choice: SetChoice, numbers: tuple[int, ...], cost: int | None) -> None:
    if not numbers:
        return
    cut = [0] * len(choice.pieces)
    for number in numbers:
        assert choice.can_be_cut(number)
        for group, count in choice.patterns.pattern(number).counts:
            cut[group] += count
    assert tuple(cut) == choice.pieces
    assert sum(choice.patterns.bars[number] == 0 for number in numbers) <= (choice.limits[0] or 0)
    assert sum(choice.costs[choice.patterns.bars[number]] for number in numbers) == cost


def test_three_pairs_of_three_pieces_are_cut_off_at_once() -> None:
    """In halves each pair is taken once and a half; whole, one piece needs a stick of its own."""
    choice = SetChoice(
        patterns=pattern_list(
            (
                Pattern(0, ((0, 1), (1, 1))),
                Pattern(0, ((1, 1), (2, 1))),
                Pattern(0, ((0, 1), (2, 1))),
                Pattern(1, ((0, 1),)),
                Pattern(1, ((1, 1),)),
            )
        ),
        costs=(2, 2),
        pieces=(1, 1, 1),
        limits=(None, None),
        able=(3, 4),
        prices=(1.0, 1.0, 1.0),
        can_be_cut=lambda number: True,
        nodes=1,
        work=10**9,
        stop=lambda: False,
    )
    found = choose_sets(choice)
    assert (found.floor, len(found.numbers)) == (4, 2)
