"""Lists of sets, the shortest first: checked against assigning every piece to a stick."""

from dataclasses import replace

import pytest

from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.sticks.search import by_lists
from longpoint.sticks.search.by_lists import from_lists
from longpoint.sticks.search.choosing import ChoiceEffort, from_choice
from longpoint.sticks.search.sets_to_choose import ChosenSets, SetChoice
from tests.bench.random_houses import random_house
from tests.unit.sticks.search.test_sharp import three_do
from tests.unit.sticks.tight_sticks import stage, tight


@pytest.mark.parametrize("seed", range(24))
def test_a_plan_without_waste_is_found_or_proved_not_to_exist(seed: int) -> None:
    at = stage(tight(seed))
    found = from_lists(at.asked(3), HighsSolver.choose_sets)
    at.is_settled(found, 3, is_able=three_do(tight(seed)))


def test_a_part_of_all_sets_proves_nothing() -> None:
    seed = next(seed for seed in range(24) if not three_do(tight(seed)))
    master, _, least, bound = stage(tight(seed))
    some, every = (ChoiceEffort(sets=1000, nodes=50, work=10**6, part=part) for part in (16, 1))
    ask = (HighsSolver.choose_sets, master, least, bound.prices, (3,), 1)
    partly, wholly = from_choice(*ask, some), from_choice(*ask, every)
    assert partly is not None
    assert (partly.floor, partly.patterns) == (3, ())
    assert wholly is not None
    assert (wholly.floor, wholly.patterns) == (4, ())


@pytest.mark.parametrize(("short", "most"), [(0, 10**6), (0, 40), (10**6, 10**6)])
def test_longer_lists_come_after_shorter_ones_and_end_where_one_is_too_long(
    short: int, most: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    lengths = list[int]()

    def finds_nothing(choice: SetChoice) -> ChosenSets:
        lengths.append(len(choice.patterns))
        return ChosenSets(choice.able[0], ())

    longer = tuple(replace(effort, sets=most) for effort in by_lists._LONGER)
    monkeypatch.setattr(by_lists, "_SHORT", replace(by_lists._SHORT, sets=short))
    monkeypatch.setattr(by_lists, "_LONGER", longer)
    at = stage(tight(1, sticks=6, pieces=19))
    assert from_lists(at.asked(7), finds_nothing) is None
    assert lengths == sorted(lengths)
    assert max(lengths, default=0) <= most
    if short:
        # All there is was searched at once.
        assert len(lengths) == 1
    else:
        assert (len(lengths) == len(longer)) == (most > 40)


@pytest.mark.parametrize(
    ("seed", "profile", "cost_m"),
    [
        # The linear master comes to 266 steps of 0.3 m; no plan of whole sticks does.
        (12, "P1", 80.1),
        # 111 pieces that may be turned; dives came to 167.1 m.
        (13, "P2", 166.8),
    ],
)
def test_houses_by_metres_are_proved_that_dives_leave_a_step_above_their_bound(
    seed: int, profile: str, cost_m: float
) -> None:
    pieces, house = random_house(seed)
    by_metres = replace(house, stock=tuple(replace(each, price=None) for each in house.stock))
    ours = tuple(piece for piece in pieces if piece.profile == profile)
    proof = plan_sticks(ours, by_metres, HighsSolver()).proofs[0]
    assert proof.cost == pytest.approx(cost_m)
    assert proof.optimal
