from dataclasses import replace

from longpoint.house_plan import HousePlan
from longpoint.sheets.again_sheet import again_sheet
from longpoint.sheets.again_text import again_text
from longpoint.sheets.again_words import saving_lines, source_words
from longpoint.sheets.html import sheet_html
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw, nothing_cut, told
from longpoint.sticks.news.plan_again import PlannedAgain, plan_again
from longpoint.sticks.news.remains import whole
from longpoint.sticks.news.saw_news import News, Spoiled
from longpoint.sticks.plan import CutPlan, Laid, StickSource
from longpoint.survey.profiles import Offcut
from tests.random_sticks import architrave_piece
from tests.unit.sheets.sample import PLAN

# 57 of face, mitred at both ends: 114 longer at the points. Trim 10, kerf of the sample's saw.
PIECES = tuple(
    architrave_piece(mark, inner_mm, 45.0, 45.0, width_mm=57.0, profile="OG57")
    for mark, inner_mm in (("W2-head", 1400.0), ("D1-head", 1337.0))
)
HOUSE = replace(PLAN.house, offcuts=())


def plan_of(*offcuts: Offcut) -> HousePlan:
    return replace(
        PLAN, house=replace(HOUSE, offcuts=offcuts), pieces=PIECES, cut_plan=CutPlan(), findings=()
    )


def start(second_mm: float = 1560.0) -> AtTheSaw:
    state = nothing_cut(CutPlan())
    sticks = tuple(
        StickAtSaw(
            name=name,
            profile="OG57",
            length_mm=length_mm,
            source=StickSource.STOCK,
            next=(Laid(piece=piece.mark, start_mm=10.0, end_mm=10.0 + piece.outer_mm),),
        )
        for name, length_mm, piece in zip(
            ("OG57-1", "OG57-2"), (1560.0, second_mm), PIECES, strict=True
        )
    )
    return replace(state, sticks=sticks)


def again(plan: HousePlan, before: AtTheSaw, *news: News) -> PlannedAgain:
    return plan_again(told(before, news), plan.pieces, plan.house)


def spoiled(short_mm: float) -> Spoiled:
    rest = whole(PIECES[0], short_mm)
    assert rest is not None
    return Spoiled(piece="W2-head", rests=(rest,))


def test_it_says_which_piece_the_spoiled_one_becomes_and_which_end_stays() -> None:
    plan, before = plan_of(), start()

    lines = saving_lines(plan, before, again(plan, before, spoiled(4.0)))
    # 1514 long at the points, 4 short of it, for a piece of 1451.
    assert lines == (
        "W2-head (spoiled, 1510 mm left of it): cut D1-head from it: it is 59 longer. "
        "Its left end stays as it is cut.",
        "OG57-2 has room: cut W2-head from it; 36 mm are left then.",
    )


def test_it_says_which_offcut_to_fetch() -> None:
    plan = plan_of(Offcut(profile="OG57", length_mm=1540.0, label="K7QA"))
    before = start(second_mm=1480.0)
    found = again(plan, before, Spoiled(piece="W2-head"))

    assert saving_lines(plan, before, found) == (
        "Fetch rack piece K7QA, OG57 1540 mm: cut W2-head from it.",
    )
    assert "rack piece K7QA): fetch it from the rack" in again_text(plan, before, found)


def test_where_new_timber_is_needed_nothing_is_said_to_save_it() -> None:
    plan, before = plan_of(), start(second_mm=1480.0)

    assert saving_lines(plan, before, again(plan, before, Spoiled(piece="W2-head"))) == ()


def test_the_sheet_says_it_as_well_and_names_the_rest() -> None:
    plan, before = plan_of(), start()
    html = sheet_html(again_sheet(plan, before, again(plan, before, spoiled(4.0))))

    assert "Without new timber" in html
    assert "cut D1-head from it: it is 59 longer." in html
    assert "W2-head-rest-1: left of W2-head, spoiled, 1510 mm" in html


def test_a_stick_of_the_list_needs_no_words() -> None:
    first = start().sticks[0]

    assert source_words(first) == ""
    assert source_words(replace(first, source=StickSource.OFFCUT)) == "offcut from the rack"
