from longpoint.sheets.blocks import SheetState
from longpoint.sheets.book import house_sheets
from tests.unit.sheets.sample import PLAN


def test_every_sheet_carries_house_code_and_state() -> None:
    for state in SheetState:
        sheets = house_sheets(PLAN, state)
        assert [sheet.name for sheet in sheets] == [
            "findings", "outlook", "openings", "order", "cut",
        ]  # fmt: skip
        for sheet in sheets:
            assert (sheet.house, sheet.readings_code) == ("Finch Rise", "K7M2QX")
            assert sheet.state is state
            assert sheet.blocks


def test_sheets_with_lengths_name_the_way_of_fixing() -> None:
    for sheet in house_sheets(PLAN):
        if sheet.name in ("cut", "openings"):
            assert "Way of fixing (batch): " in sheet.subtitle


def test_every_sheet_carries_cautions_that_defer_to_the_rules_of_the_place() -> None:
    for sheet in house_sheets(PLAN):
        assert any("come first" in line for line in sheet.cautions), sheet.name
