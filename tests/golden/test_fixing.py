"""The fixing sheet of the sample house, as a person last read and approved it."""

from dataclasses import replace

import pytest

from longpoint.house_plan import HousePlan
from longpoint.quantities.length import Units
from longpoint.sheets.fixing_sheet import fixing_sheets
from longpoint.sheets.fixing_text import fixing_text
from longpoint.sheets.html import sheet_html
from longpoint.sheets.html_style import STYLE
from longpoint.sheets.in_tongue import in_tongue
from longpoint.survey.fixing import FixingSetup, Nail
from longpoint.survey.house import Dialect
from tests.country import english
from tests.golden_files import Golden
from tests.unit.sheets.sample import HOUSE, PLAN

ONE_NAIL = FixingSetup(nails=(Nail(gauge=16, length_mm=50.0),), built=1931)
PLANS = {
    "fixing": PLAN,
    "fixing-one-nail": replace(PLAN, house=replace(HOUSE, fixing=ONE_NAIL)),
    "fixing-us": replace(PLAN, house=replace(HOUSE, dialect=Dialect.US, units=Units.INCH)),
}


@pytest.mark.parametrize("name", PLANS)
def test_the_fixing_sheet_is_as_approved(name: str, golden: Golden) -> None:
    plan: HousePlan = PLANS[name]
    (sheet,) = in_tongue(fixing_sheets(plan), english(plan.house.dialect))
    golden(
        f"sample-{name}.html",
        sheet_html(sheet).replace(STYLE, "\n/* style */\n").replace("><", ">\n<"),
    )


def test_the_nails_on_the_terminal_are_as_approved(golden: Golden) -> None:
    golden("sample-fixing.txt", fixing_text(PLANS["fixing-one-nail"]) + "\n")
