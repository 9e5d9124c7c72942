"""All sheets of a house."""

from longpoint.house_plan import HousePlan
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Sheet, SheetState
from longpoint.sheets.cautions import common_cautions, fixing_cautions, saw_cautions
from longpoint.sheets.cut_sheet import cut_blocks, fixing_line, with_code
from longpoint.sheets.findings_sheet import FIRST_SHEET, findings_blocks
from longpoint.sheets.opening_sheet import opening_blocks
from longpoint.sheets.order_sheet import order_blocks
from longpoint.sheets.outlook_sheet import OUTLOOK_TITLE, outlook_blocks
from longpoint.sheets.trim_sheet import TRIM_TITLE, trim_blocks
from longpoint.speech.said import say
from longpoint.survey.house import EntryKind


def house_sheets(plan: HousePlan, state: SheetState = SheetState.CURRENT) -> tuple[Sheet, ...]:
    """Return the sheets of a house: findings, outlook, openings, other trim, order, cut.

    The sheet of other trim is left out where there is none.

    Args:
        plan: The planned house.
        state: Stale when the readings have changed since the plan was made; every page says so.

    Returns:
        The sheets in the order in which they are used.
    """
    house = plan.house
    unit = say("All lengths in mm") if house.units is Units.MM else say("All lengths in inches")
    fixing = fixing_line(plan.pieces)
    lengths = (
        say("{unit}. {fixing}.", unit=unit, fixing=fixing) if fixing else say("{unit}.", unit=unit)
    )

    def sheet(
        name: str, title: str, subtitle: str, blocks: tuple[Block, ...], cautions: tuple[str, ...]
    ) -> Sheet:
        return Sheet(
            name=name,
            title=title,
            house=house.name,
            readings_code=plan.readings_code,
            state=state,
            subtitle=subtitle,
            blocks=blocks,
            cautions=cautions,
        )

    has_trims = bool(house.trims) or any(each.kind is EntryKind.TRIM for each in house.held)
    saw = saw_cautions(plan.pieces, house.units)
    return (
        sheet(
            "findings",
            FIRST_SHEET,
            say("{unit}.", unit=unit),
            findings_blocks(plan),
            common_cautions(),
        ),
        sheet("outlook", OUTLOOK_TITLE, "", outlook_blocks(plan), common_cautions()),
        sheet("openings", say("Openings"), lengths, opening_blocks(plan), fixing_cautions()),
        *(
            (
                sheet(
                    "trims",
                    TRIM_TITLE,
                    say("{unit}.", unit=unit),
                    trim_blocks(plan),
                    fixing_cautions(),
                ),
            )
            if has_trims
            else ()
        ),
        sheet(
            "order",
            say("Order"),
            say("{unit}.", unit=unit),
            order_blocks(plan),
            common_cautions(),
        ),
        sheet("cut", say("Cutting"), with_code(lengths, plan.cut_plan), cut_blocks(plan), saw),
    )
