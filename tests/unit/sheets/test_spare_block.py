"""What to have spare, and on what word."""

from dataclasses import replace

from longpoint.house_plan import HousePlan, Spares
from longpoint.sheets.blocks import Cell, Paragraph, Table
from longpoint.sheets.spare_block import bought_spares, spare_blocks
from longpoint.sticks.spare_sticks import SpareSticks
from longpoint.survey.crew import Crew
from tests.unit.sheets.sample import PLAN, SPARES, with_house


def told(plan: HousePlan) -> str:
    return " ".join(block.text for block in spare_blocks(plan) if isinstance(block, Paragraph))


def row_of(plan: HousePlan) -> list[str]:
    (table,) = (block for block in spare_blocks(plan) if isinstance(block, Table))
    return [
        " / ".join((cell.text, *cell.small)) if isinstance(cell, Cell) else cell
        for cell in table.rows[0]
    ]


def with_spare(**changes: object) -> HousePlan:
    spare = replace(SPARES.sticks[0], **changes)  # type: ignore[arg-type]
    return replace(PLAN, spares=replace(SPARES, sticks=(spare,)))


def test_a_spare_is_told_with_the_count_and_the_longest_piece_it_covers() -> None:
    assert row_of(PLAN) == ["OG57", "11", "1", "1 x 5400", "D1-left-leg, 2096.5 mm"]
    assert bought_spares(SPARES) == [("OG57", 5400.0, 1)]


def test_a_profile_that_needs_none_is_named() -> None:
    assert "No spare of SK95: nine times in ten none is spoiled." in told(PLAN)


def test_what_is_there_already_is_to_be_kept() -> None:
    rest = with_spare(buy=(), rests=("OG57-3",), rack=(("R7", 1310.0), ("", 900.0)))
    assert row_of(rest)[3] == (
        "none to buy / keep what is left of OG57-3 / keep on the rack: R7 1310, 900"
    )


def test_what_no_stick_is_left_for_is_said() -> None:
    assert row_of(with_spare(missing=2))[3] == "1 x 5400 / no stick left for 2 of them"


def test_what_it_rests_on_is_said() -> None:
    said = told(PLAN)
    assert "from the forecast's 400 imagined houses" in said
    assert "each taken to cost one piece (ours, no source)" in said
    assert "1 piece in a hundred, which is our assumption" in said


def test_a_crew_that_knows_its_slips_is_taken_at_its_word() -> None:
    said = told(with_house(crew=Crew(slips=2.5)))
    assert "2.5 in a hundred by the house file" in said
    assert "assumption" not in said


def test_without_a_forecast_it_counts_slips_alone_and_says_so() -> None:
    assert "There is no forecast of this house, so this counts slips alone" in told(
        replace(PLAN, outlook=None)
    )
    counts = tuple(replace(count, sets=0) for count in SPARES.counts)
    bare = replace(PLAN, spares=replace(SPARES, counts=counts))
    assert "No set of this house is forecast" in told(bare)


def test_a_proof_of_the_saw_that_saves_spares_is_told() -> None:
    later = Spares(counts=SPARES.counts, sticks=(SpareSticks(profile="OG57"),))
    said = told(replace(PLAN, spares_if_proved=later))
    assert "Prove the saw first and fewer will do: OG57 none to buy." in said
    assert "fewer" not in told(replace(PLAN, spares_if_proved=SPARES))


def test_a_house_without_sticks_has_no_spares() -> None:
    assert spare_blocks(replace(PLAN, spares=Spares())) == ()
