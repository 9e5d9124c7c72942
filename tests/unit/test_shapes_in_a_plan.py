"""Openings of other shapes go from the house file to every sheet."""

import json
from typing import Any

import pytest

from longpoint.cli.imagined import house_imagined
from longpoint.house_plan import HousePlan
from longpoint.pipeline import plan_house
from longpoint.sheets.book import house_sheets
from longpoint.sheets.html import sheet_html
from longpoint.sheets.opening_drawings import opening_drawings
from longpoint.sheets.plan_json import plan_document
from longpoint.survey.house_file import read_house
from tests.house_documents import window
from tests.shaped_houses import GABLE, HALL, PROFILES, document

STOCK = [{"profile": name, "length": 5400, "price": 5} for name in PROFILES]


def plan(*openings: dict[str, Any]) -> HousePlan:
    return plan_house(read_house(document(*openings, stock=STOCK)), None, house_imagined(300))


def test_arch_gable_and_raked_window_are_cut_drawn_and_told() -> None:
    raked = {"mark": "R1", "corners": [[0, 0], [900, 0], [900, 1400], [0, 1050]]}
    gable, plain = {**GABLE, "mark": "G1", "faces": 2}, {**window(), "mark": "W7"}
    found = plan({**HALL, "mark": "A1"}, gable, raked, plain)
    assert found.held == frozenset()
    marks = {piece.mark for piece in found.pieces}
    assert {"A1-segment-2", "G1a-side-3", "G1b-side-5", "R1-head", "W7-sill"} <= marks
    assert not found.cut_plan.unplaced
    assert [name for name, _ in opening_drawings(found)] == ["A1", "G1a", "G1b", "R1", "W7"]
    assert found.outlook is not None
    assert [advice.mark for advice in found.outlook.advice] == ["R1", "W7"]
    json.dumps(plan_document(found))
    for sheet in house_sheets(found):
        assert sheet_html(sheet)


@pytest.mark.parametrize(
    ("opening", "code"),
    [
        ({**HALL, "arch": {"rise": 286}}, "arch-blank"),
        ({**HALL, "arch": {"rise": 480, "blank": "BD140"}}, "no-pieces"),
        ({"corners": [[0, 0], [450, 400], [900, 0], [900, 900], [0, 900]]}, "no-shape"),
        ({"sides": [500] * 6, "angles": [120, 120]}, "no-shape"),
    ],
)
def test_one_that_can_not_be_planned_is_held_and_nothing_else(
    opening: dict[str, Any], code: str
) -> None:
    found = plan(opening, {**window(), "mark": "W7"})
    assert found.held == {"W1"}
    assert code in {finding.code for finding in found.findings if finding.place == "W1"}
    assert {piece.opening for piece in found.pieces} == {"W7"}
