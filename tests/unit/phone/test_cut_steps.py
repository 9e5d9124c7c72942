"""At the saw the phone shows what the cut sheet of the same plan prints, in the same order."""

from pathlib import Path
from typing import Final

import pytest

from longpoint.exchange.house_files import load_house
from longpoint.house_plan import HousePlan
from longpoint.phone.cut_steps import cut_steps
from longpoint.pipeline import plan_house
from longpoint.sheets.blocks import Cell, Table
from longpoint.sheets.cut_sheet import COLUMNS, cut_blocks

pytestmark = pytest.mark.no_cover

ROOT: Final = Path(__file__).resolve().parents[3]
HOUSES: Final = (
    ROOT / "examples" / "wren-house.toml",
    ROOT / "examples" / "otter-mill.toml",
    ROOT / "tests" / "scenarios" / "pipit.toml",
)


def on_paper(plan: HousePlan) -> list[tuple[str, str, str, str]]:
    """Return number, mark, figure and stick of each piece, as the cut sheet prints them."""
    (table,) = [b for b in cut_blocks(plan) if isinstance(b, Table) and b.columns == COLUMNS]
    groups = dict(table.groups)
    found, stick = [], ""
    for index, row in enumerate(table.rows):
        stick = groups.get(index, stick)
        number, mark, _, figure, *_ = (c.text if isinstance(c, Cell) else c for c in row)
        found.append((number, mark, figure, stick))
    return found


def on_the_phone(plan: HousePlan) -> list[tuple[str, str, str, str]]:
    """Return the same, as the phone shows it."""
    return [(str(s.number), s.piece, s.figure, s.stick_words) for s in cut_steps(plan, plan)]


@pytest.mark.parametrize("house", HOUSES, ids=lambda house: house.stem)
def test_paper_and_phone_cut_one_plan_in_one_order(house: Path) -> None:
    plan = plan_house(load_house(house))
    paper = on_paper(plan)
    assert len(paper) > 10
    assert on_the_phone(plan) == paper
