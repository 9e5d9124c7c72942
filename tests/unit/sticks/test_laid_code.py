import pytest

from longpoint.sticks.laid_code import laid_code, plan_code
from longpoint.sticks.news.at_the_saw import nothing_cut, told
from longpoint.sticks.news.saw_news import Cut, Lost, Spoiled, StickRead
from longpoint.sticks.plan import CutPlan, CutStick, Laid, StickSource

HEAD, SILL, LEG = (
    Laid(piece=mark, start_mm=start_mm, end_mm=start_mm + 1300.0)
    for mark, start_mm in (("W1-head", 10.0), ("W1-sill", 1314.0), ("W1-left-leg", 10.0))
)


def stick(name: str, *laid: Laid, length_mm: float = 3600.0) -> CutStick:
    return CutStick(
        name=name,
        profile="OG",
        length_mm=length_mm,
        source=StickSource.STOCK,
        laid=laid,
        used_mm=0.0,
        left_mm=0.0,
    )


PLAN = CutPlan(sticks=(stick("OG-1", HEAD, SILL), stick("OG-2", LEG)))


def turned(laid: Laid) -> Laid:
    return Laid(piece=laid.piece, turned=True, start_mm=laid.start_mm, end_mm=laid.end_mm)


@pytest.mark.parametrize(
    "sticks",
    [
        (stick("OG-1", SILL, HEAD), stick("OG-2", LEG)),
        (stick("OG-1", HEAD), stick("OG-2", LEG, SILL)),
        (stick("OG-1", HEAD, turned(SILL)), stick("OG-2", LEG)),
        (stick("OG-2", LEG), stick("OG-1", HEAD, SILL)),
        (stick("OG-1", HEAD, SILL, length_mm=3300.0), stick("OG-2", LEG)),
        (stick("OG-1", HEAD, SILL),),
    ],
    ids=["order on a stick", "other stick", "turned", "order of sticks", "length", "left out"],
)
def test_what_lies_otherwise_has_another_code(sticks: tuple[CutStick, ...]) -> None:
    assert plan_code(CutPlan(sticks=sticks)) != plan_code(PLAN)


def test_names_and_an_empty_stick_change_nothing() -> None:
    same = CutPlan(sticks=(stick("A", HEAD, SILL), stick("C"), stick("B", LEG)))
    assert plan_code(same) == plan_code(PLAN)
    assert laid_code([]) == ""


def test_the_code_stays_while_all_is_cut_as_planned() -> None:
    state = nothing_cut(PLAN)
    assert state.code == plan_code(PLAN)
    for mark in ("W1-head", "W1-sill", "W1-left-leg"):
        state = told(state, [Cut(piece=mark)])
        assert state.code == plan_code(PLAN)


def test_a_stick_that_is_longer_than_listed_keeps_the_code() -> None:
    assert told(nothing_cut(PLAN), [StickRead(stick="OG-2", length_mm=3610.0)]).code == plan_code(
        PLAN
    )


def test_what_goes_wrong_changes_the_code() -> None:
    cut = told(nothing_cut(PLAN), [Cut(piece="W1-head")])
    assert told(cut, [Spoiled(piece="W1-sill")]).code != plan_code(PLAN)
    assert told(cut, [Lost(piece="W1-head")]).code != plan_code(PLAN)
