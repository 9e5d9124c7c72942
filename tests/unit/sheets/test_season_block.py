from dataclasses import replace

from longpoint.forecast.house_season import HouseSeason, house_season
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Paragraph, Table, Together
from longpoint.sheets.season_block import season_blocks
from longpoint.survey.house_file import read_house
from tests import house_documents
from tests.unit.sheets.sample import PLAN

HOUSE = read_house(
    house_documents.house(
        openings=[house_documents.window()],
        profiles={
            "OG57": {"face": 57, "thickness": 18, "material": "moonwood"},
            "SK95": {"face": 95, "thickness": 16, "material": "redwood"},
        },
    )
).house


def blocks(season: HouseSeason, units: Units = Units.MM) -> list[object]:
    plan = replace(PLAN, house=replace(HOUSE, units=units))
    (together,) = season_blocks(plan, season)
    assert isinstance(together, Together)
    return list(together.blocks)


def words(found: list[object]) -> str:
    return " ".join(block.text for block in found if isinstance(block, Paragraph))


def test_each_season_says_which_end_opens_and_how_far() -> None:
    (table,) = (b for b in blocks(house_season(HOUSE)) if isinstance(b, Table))
    assert [column.title for column in table.columns][1:] == [
        "Driest, 35 % air",
        "Dampest, 65 % air",
    ]
    (row,) = table.rows
    assert row[0] == "OG57 mitres"
    assert "at the heel" in str(row[1])
    assert "at the toe" in str(row[2])


def test_what_is_taken_for_granted_stands_below() -> None:
    said = words(blocks(house_season(HOUSE)))
    assert "OG57 (moonwood) taken for" in said
    assert "The air of the house is assumed" not in said
    assumed = replace(house_season(HOUSE), assumed=True)
    assert "The air of the house is assumed: write [season]." in words(blocks(assumed))


def test_what_helps_stands_the_most_first() -> None:
    season = house_season(HOUSE)
    said = words(blocks(season))
    at = [said.index(advice.words) for advice in season.advice]
    assert at == sorted(at)
    assert "What helps" not in words(blocks(replace(season, advice=())))


def test_inches_are_told_in_inches() -> None:
    found = blocks(house_season(replace(HOUSE, units=Units.INCH)), Units.INCH)
    assert " in at the heel" in str(found)
    assert " mm" not in words(found)


def test_a_house_without_joints_gets_no_block() -> None:
    found: tuple[Block, ...] = season_blocks(PLAN, replace(house_season(HOUSE), outlooks=()))
    assert found == ()


def test_why_nothing_was_worked_out_stands_instead() -> None:
    season = replace(house_season(HOUSE), outlooks=(), trouble="A humidity of 99 % was given.")
    assert "A humidity of 99 % was given." in words(blocks(season))
