from collections.abc import Callable

import pytest

from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.aims.every_plan import every_plan
from longpoint.sticks.effort import never
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.bound import floor_of
from longpoint.sticks.lay.fit import cost_of, fit
from longpoint.sticks.lay.laying import Workload
from longpoint.sticks.search import by_numbers
from longpoint.sticks.search.by_numbers import Asked, ByNumbers, LookEffort
from longpoint.sticks.search.master import USUAL, Master, Prices
from longpoint.sticks.search.needs import least_needs
from longpoint.sticks.search.patterns import Layout, Pattern, groups_of
from longpoint.sticks.search.sets_to_choose import ChosenSets, SetChoice
from tests.small_plans import small_job

GRID = 50


def search_of(work: Workload, bars: Bars, stop: Callable[[], bool] = never) -> ByNumbers:
    layout = Layout(work, bars.bars, groups_of(work))
    master = Master(layout, bars, HighsSolver(), None, USUAL, stop)
    least = least_needs(layout, floor_of(work, bars.bars))
    asked = Asked(
        master=master,
        least=least,
        solver=HighsSolver(),
        choose=HighsSolver.choose_sets,
        prices=Prices(tuple(1.0 for _ in layout.groups), tuple(0.0 for _ in bars.bars)),
        grid=GRID,
    )
    return ByNumbers(asked, ())


def least_cost(work: Workload, bars: Bars) -> int | None:
    """The cost of the best of every plan, in steps; None where there is none."""
    packing = fit(work, bars.bars, refills=0)
    best = every_plan(work, bars.bars, packing)
    if packing.unplaced or best is None:
        return None
    return cost_of(bars.bars, best.packing) // bars.step


def is_whole(work: Workload, bars: Bars, patterns: tuple[Pattern, ...]) -> bool:
    """Tell whether patterns hold every piece once and can be cut."""
    layout = Layout(work, bars.bars, groups_of(work))
    packing = layout.packing(patterns)
    placed = sorted(place.piece for stick in packing.sticks for place in stick.places)
    fits = all(stick.used <= bars.bars[stick.bar].room for stick in packing.sticks)
    return fits and placed == list(range(len(work.mid)))


@pytest.mark.parametrize("seed", range(60))
def test_the_best_of_every_plan_is_found_and_proved(seed: int) -> None:
    work, bars = small_job(seed)
    least = least_cost(work, bars)
    if not least:
        pytest.skip("no plan, or one that costs nothing")
    found = search_of(work, bars).best(1, least + 7)
    assert found is not None
    assert found.floor == least
    assert sum(bars.bars[p.bar].cost for p in found.patterns) == least * bars.step
    assert is_whole(work, bars, found.patterns)
    none = search_of(work, bars).best(1, least)
    assert none is not None
    assert (none.floor, none.patterns) == (least, ())


def a_job() -> tuple[Workload, Bars, int]:
    work, bars = small_job(13)
    least = least_cost(work, bars)
    assert least
    return work, bars, least


def test_where_nobody_knows_the_floor_stays_at_the_cheapest_numbers_left(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def unsure(choice: SetChoice) -> ChosenSets:
        return ChosenSets(choice.able[0], ())

    work, bars, least = a_job()
    monkeypatch.setattr(HighsSolver, "choose_sets", staticmethod(unsure))
    found = search_of(work, bars).best(1, least + 7)
    assert found is not None
    assert found.patterns == ()
    assert 1 < found.floor < least


def test_where_sets_are_too_many_to_list_a_part_of_them_proves_nothing(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    work, bars, least = a_job()
    for name in ("FIRST_LOOK", "LONG_LOOK"):
        monkeypatch.setattr(by_numbers, name, LookEffort(sets=1, nodes=5, work=1000))
    found = search_of(work, bars).best(1, least)
    assert found is not None
    assert found.patterns == ()
    assert found.floor <= least


def test_without_long_looks_what_is_unsure_stays_so(monkeypatch: pytest.MonkeyPatch) -> None:
    work, bars, least = a_job()
    monkeypatch.setattr(by_numbers, "FIRST_LOOK", LookEffort(sets=1, nodes=5, work=1000))
    short = search_of(work, bars).best(1, least + 1, is_long=False)
    found = search_of(work, bars).best(1, least + 1)
    assert short is not None
    assert found is not None
    assert short.floor <= found.floor == least
    assert not short.patterns
    assert found.patterns


def test_a_search_that_is_stopped_keeps_a_true_floor() -> None:
    work, bars, least = a_job()
    found = search_of(work, bars, stop=lambda: True).best(1, least + 7)
    assert found is not None
    assert found.patterns == ()
    assert found.floor <= least


def test_numbers_are_few_or_too_many(monkeypatch: pytest.MonkeyPatch) -> None:
    work, bars, least = a_job()
    search = search_of(work, bars)
    assert search.are_few(least, least + 1)
    monkeypatch.setattr(by_numbers, "_FEW_NUMBERS", 0)
    assert not search.are_few(least, least + 1)
    monkeypatch.setattr(by_numbers, "_MOST_NUMBERS", 0)
    assert not search.are_few(least, least + 1)
    assert search.best(least, least + 1) is None
