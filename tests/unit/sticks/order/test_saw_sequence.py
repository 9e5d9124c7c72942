import itertools
import random
from collections.abc import Sequence

import pytest

from longpoint.sticks.lay.laying import Place
from longpoint.sticks.order import saw_limit
from longpoint.sticks.order.saw_limit import fewest_changes
from longpoint.sticks.order.saw_sequence import saw_sequence
from longpoint.sticks.order.stick_ways import Cuttable, Setting, Way, Ways


def cuttable(
    number: int, biggest_mm: float, *ways: tuple[Setting, Setting, int], are_all: bool = True
) -> Cuttable:
    found = tuple(
        Way(first, last, changes, 0, (Place(number, turned=False),))
        for first, last, changes in ways
    )
    ends = tuple(dict.fromkeys(end for first, last, _ in ways for end in (first, last)))
    least = min(changes for _, _, changes in ways)
    return Cuttable(number, biggest_mm, Ways(found, least, ends, are_all))


def numbers(profiles: Sequence[Sequence[Cuttable]]) -> list[list[int]]:
    return [[number for number, _ in order] for order in saw_sequence(profiles, 150.0).profiles]


def test_sticks_are_chained_by_their_settings() -> None:
    sticks = [cuttable(0, 900, (1, 2, 1)), cuttable(1, 890, (3, 1, 1)), cuttable(2, 880, (2, 3, 1))]
    found = saw_sequence([sticks], 150.0)
    # A ring of three settings is opened at one place: no change between sticks.
    assert (found.changes, found.limit) == (3, 3)


def test_a_stick_much_smaller_waits_whatever_its_settings() -> None:
    sticks = [cuttable(0, 900, (1, 2, 1)), cuttable(1, 890, (3, 1, 1)), cuttable(2, 700, (2, 3, 1))]
    assert numbers([sticks]) == [[1, 0, 2]]


def test_a_way_with_a_change_more_is_taken_where_it_saves_two() -> None:
    sticks = [
        cuttable(0, 900, (5, 1, 1)),
        cuttable(1, 700, (3, 4, 1), (1, 2, 2)),
        cuttable(2, 500, (2, 5, 1)),
    ]
    found = saw_sequence([sticks], 150.0)
    assert (found.changes, found.limit) == (4, 4)
    assert found.profiles[0][1][1].changes == 2


def test_one_profile_ends_where_the_next_begins() -> None:
    first = [cuttable(0, 900, (1, 2, 1)), cuttable(1, 890, (1, 3, 1))]
    second = [cuttable(0, 500, (2, 2, 0))]
    assert numbers([first, second]) == [[1, 0], [0]]
    assert saw_sequence([first, second], 150.0).changes == 3


def test_of_very_many_sticks_fewer_beginnings_are_kept_and_all_are_ordered() -> None:
    draw = random.Random(3)
    sticks = [cuttable(n, 2000.0, (draw.randrange(9), draw.randrange(9), 1)) for n in range(300)]
    found = saw_sequence([sticks], 150.0)
    assert sorted(number for number, _ in found.profiles[0]) == list(range(300))
    assert 300 <= found.limit <= found.changes <= 300 + 40


@pytest.mark.parametrize("states", [0, 400])
@pytest.mark.parametrize("matched", [0, 200])
def test_the_limit_is_kept_by_every_order(
    states: int, matched: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(saw_limit, "_MOST_STATES", states)
    monkeypatch.setattr(saw_limit, "_MOST_TO_MATCH", matched)
    for seed in range(40):
        draw = random.Random(seed)
        profiles = [sorted(_drawn(draw), key=lambda each: -each.biggest_mm) for _ in range(2)]
        best = min(
            _changes([*first, *second])
            for first, second in itertools.product(*(_in_turn(sticks) for sticks in profiles))
        )
        limit = fewest_changes(profiles, 150.0)
        assert limit <= best
        if states and all(each.ways.are_all for sticks in profiles for each in sticks):
            assert limit == best == saw_sequence(profiles, 150.0).changes


def _drawn(draw: random.Random) -> list[Cuttable]:
    return [
        cuttable(
            n,
            draw.choice((900.0, 800.0, 700.0)),
            *(
                (draw.randrange(4), draw.randrange(4), draw.choice((1, 1, 2)))
                for _ in range(draw.randint(1, 3))
            ),
            are_all=draw.random() < 0.9,
        )
        for n in range(draw.randint(1, 3))
    ]


def _in_turn(sticks: Sequence[Cuttable]) -> list[list[Way]]:
    return [
        list(ways)
        for order in itertools.permutations(sticks)
        if all(
            later.biggest_mm <= stick.biggest_mm + 150.0
            for n, stick in enumerate(order)
            for later in order[n:]
        )
        for ways in itertools.product(*(stick.ways.ways for stick in order))
    ]


def _changes(ways: Sequence[Way]) -> int:
    joints = sum(before.last != after.first for before, after in itertools.pairwise(ways))
    return sum(way.changes for way in ways) + joints
