"""How long a nail should be by an old rule.

Source: US Navy training manual NAVEDTRA 14119, nails. Read: three times as long as what it holds is
thick, two thirds of it in the second piece. It says nothing of a board between the two.
"""

from pathlib import Path

from longpoint.fixing.nail_lines import HELD_TIMES
from longpoint.fixing.nailing import nail_house
from tests.published.reference import rows
from tests.unit.fixing.nailed import house, piece


def test_18_mm_asks_for_54_and_two_thirds_of_it_behind() -> None:
    """Case 47 of the published checks."""
    assert HELD_TIMES * 18.0 == 54.0
    assert HELD_TIMES * 18.0 - 18.0 == 36.0


def test_50_mm_through_18_of_trim_and_10_of_board_leave_22_in_the_stud() -> None:
    """Worked in the published checks, section 5."""
    told = house(board=10, nails=["16 x 50"])
    outer = nail_house(told, [piece()]).sections[0].lines[1]
    assert outer.bed.hold_mm(told.fixing.nails[0]) == 22.0


def test_the_rule_is_that_of_the_reference_values(shared: Path) -> None:
    row = rows(shared)["NAIL-3X"]
    assert row.value.startswith("3 x thickness of piece held; 2/3")
    assert row.how_known == "read"
