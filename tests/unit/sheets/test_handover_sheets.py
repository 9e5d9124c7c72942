from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from longpoint.house_plan import HousePlan
from longpoint.sheets.blocks import Note, SheetState, Together
from longpoint.sheets.handover_sheets import handover_sheets, handover_text
from longpoint.sheets.html import sheet_html
from longpoint.sheets.record_sheet import record_blocks
from longpoint.survey.as_built import AsBuilt, JointRead
from longpoint.survey.handover import Defect, DefectKind, Handover, Trade
from longpoint.survey.per_side import PerSide
from tests.unit.sheets.sample import HOUSE, PLAN

DAY = date(2026, 3, 1)
NOT_READ = (None, None, None)


def as_built(gap_mm: float, quirk_mm: float = 5.0) -> AsBuilt:
    joint = JointRead(heel_mm=gap_mm, toe_mm=0.0)
    return AsBuilt(
        gaps=(joint, None, None, None),
        quirks=PerSide(head=(quirk_mm, None, None), right=NOT_READ, bottom=NOT_READ, left=NOT_READ),
        steps_mm=(0.1, None, None, None),
    )


def handed(gap_mm: float = 1.4, **changes: Any) -> HousePlan:  # noqa: ANN401
    first, *rest = HOUSE.openings
    house = replace(
        HOUSE,
        openings=(replace(first, as_built=as_built(gap_mm)), *rest),
        **{"handover": Handover(place="au-nsw", fills=Trade.PAINTER), **changes},
    )
    return replace(PLAN, house=house)


def pages(plan: HousePlan) -> dict[str, str]:
    return {sheet.name: sheet_html(sheet) for sheet in handover_sheets(plan, DAY)}


def test_there_is_a_page_for_each_who_takes_over() -> None:
    assert list(pages(handed())) == ["as-built", "painter", "supervisor", "as-found"]


def test_each_opening_has_its_row_and_fails_are_marked_by_word_and_shape() -> None:
    page = pages(handed())["as-built"]
    for opening in HOUSE.openings:
        assert f">{opening.mark}<" in page
    assert "FAILS" in page
    assert "not read" in page
    assert "aria-labelledby" in page
    assert "FAILS" not in pages(handed(0.0))["as-built"]


def test_the_guide_is_named_with_its_clause_and_that_it_is_not_the_law() -> None:
    page = pages(handed())["as-built"]
    assert "NSW Guide to Standards and Tolerances 2017 cl. 11.1" in page
    assert "not the law" in page
    none = pages(handed(handover=Handover(place="nz")))["as-built"]
    assert "No guide with figures" in none
    assert "New Zealand" in none


def test_defects_stand_under_their_rooms_with_what_is_mended() -> None:
    defects = (
        Defect(place="W1", what="gap behind", kind=DefectKind.JOINT, found_mm=3.0, seen=DAY),
        Defect(place="Loft", what="dent", mended=DAY),
    )
    page = pages(handed(defects=defects))["supervisor"]
    for words in ("gap behind", "seen 2026-03-01", "dent", "Loft"):
        assert words in page
    assert "None read and none written down" in pages(PLAN)["supervisor"]


def test_the_painter_is_told_who_fills_and_asked_who_caulks() -> None:
    page = pages(handed())["painter"]
    assert "Nail holes are filled by the painter." in page
    assert "TO AGREE" in page
    assert "Edges are caulked by: carpenter or painter?" in page
    assert "NOT YET" in page


def test_a_room_that_is_up_dry_and_sound_is_ready() -> None:
    up = handed(0.0, handover=Handover(fixed=("Hall",)))
    assert "ready" in pages(up)["painter"].replace("Ready for you", "")
    wet = handed(0.0, handover=Handover(fixed=("Hall",), wet=("Hall",)))
    assert "WET" in pages(wet)["painter"]
    assert "up, wet" in pages(wet)["supervisor"]


def test_the_supervisor_sees_why_places_are_held_and_what_varies() -> None:
    sheets = handover_sheets(PLAN, DAY, variations=("W1: reveal re-set.",))
    page = next(sheet_html(sheet) for sheet in sheets if sheet.name == "supervisor")
    assert "Held, and why" in page
    assert "W1: reveal re-set." in page
    assert "None is written down" in pages(PLAN)["supervisor"]


def test_a_place_that_is_not_there_is_said() -> None:
    page = pages(handed(handover=Handover(fixed=("W99",))))["supervisor"]
    assert "W99" in page


def test_every_reading_stands_in_the_record() -> None:
    page = pages(PLAN)["as-found"]
    for opening in HOUSE.openings:
        assert f"{opening.mark} ·" in page
    for shape in PLAN.shapes.openings:
        for residual in shape.residuals:
            assert residual.name in page
    assert "Tape T1" in page
    assert "no other reading checks it" in page


@pytest.mark.parametrize("runs", [HOUSE.runs, ()])
def test_the_signature_stays_with_the_last_reading(runs: Any) -> None:  # noqa: ANN401
    last = record_blocks(replace(PLAN, house=replace(HOUSE, runs=runs)))[-1]
    assert isinstance(last, Together)
    assert len(last.blocks) > 1
    signature = last.blocks[-1]
    assert isinstance(signature, Note)
    assert signature.title == "Signed"


def test_a_house_without_a_piece_says_so() -> None:
    empty = replace(PLAN, pieces=(), held=frozenset(), house=replace(HOUSE, openings=(), runs=()))
    made = pages(empty)
    assert "nothing to count" in made["painter"]
    assert "No place of this house was read yet" in made["supervisor"]


def test_stale_sheets_are_void() -> None:
    assert {s.state for s in handover_sheets(PLAN, DAY, SheetState.STALE)} == {SheetState.STALE}


@pytest.mark.parametrize(("gap_mm", "fails"), [(1.4, 1), (0.0, 0)])
def test_the_terminal_counts_what_fails(gap_mm: float, fails: int) -> None:
    text = handover_text(handed(gap_mm), DAY)
    assert f"{fails} fail by the guide, {fails} by your own limits." in text
    assert "Kitchen: " in text
