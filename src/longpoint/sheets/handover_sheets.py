"""The sheets of handing over: as built, for the painter, for the supervisor, as-found readings."""

from collections.abc import Sequence
from datetime import date

from longpoint.fixing.handover.guides import chosen_guides, months_since
from longpoint.fixing.handover.judged import Judged, What, judge_house
from longpoint.fixing.handover.progress import RoomProgress, house_progress
from longpoint.house_plan import HousePlan
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Sheet, SheetState
from longpoint.sheets.cautions import common_cautions, painting_cautions
from longpoint.sheets.painter_sheet import PAINTER_TITLE, painter_blocks
from longpoint.sheets.qa_sheet import QA_TITLE, qa_blocks
from longpoint.sheets.record_sheet import RECORD_TITLE, record_blocks
from longpoint.sheets.supervisor_sheet import SUPERVISOR_TITLE, supervisor_blocks
from longpoint.speech.said import joined, say


def handover_sheets(
    plan: HousePlan,
    on: date,
    state: SheetState = SheetState.CURRENT,
    variations: Sequence[str] = (),
) -> tuple[Sheet, ...]:
    """Return the sheets of handing over.

    Args:
        plan: The planned house.
        on: The day it is, from which months since handing over are counted.
        state: Stale when the readings have changed since the plan was made.
        variations: A sentence on each variation, from whoever reckons them.
    """
    house = plan.house
    guides = chosen_guides(house)
    month = months_since(house.handover.handed_over, on)
    judged = judge_house(house, guides, month)
    progress = house_progress(house, plan.pieces, plan.held, to_mend(plan, judged))
    unit = say("All lengths in mm") if house.units is Units.MM else say("All lengths in inches")

    def sheet(name: str, title: str, blocks: tuple[Block, ...], cautions: tuple[str, ...]) -> Sheet:
        return Sheet(
            name=name,
            title=title,
            house=house.name,
            readings_code=plan.readings_code,
            state=state,
            subtitle=say("{unit}. As of {on}.", unit=unit, on=on.isoformat()),
            blocks=blocks,
            cautions=cautions,
        )

    return (
        sheet("as-built", QA_TITLE, qa_blocks(plan, guides, judged, month), common_cautions()),
        sheet("painter", PAINTER_TITLE, painter_blocks(plan, progress), painting_cautions(house)),
        sheet(
            "supervisor",
            SUPERVISOR_TITLE,
            supervisor_blocks(plan, progress, judged, variations),
            common_cautions(),
        ),
        sheet("as-found", RECORD_TITLE, record_blocks(plan), ()),
    )


def to_mend(plan: HousePlan, judged: Sequence[Judged]) -> tuple[str, ...]:
    """Return the room of each thing still to be mended: what fails, and what is written down."""
    read = [each for each in judged if each.what is not What.DEFECT]
    failing = [each.room for each in read if each.fails_guide or each.fails_own]
    written = [j.room for j in judged if j.what is What.DEFECT]
    open_ones = [
        room
        for room, defect in zip(written, plan.house.defects, strict=True)
        if defect.mended is None
    ]
    return (*failing, *open_ones)


def handover_text(plan: HousePlan, on: date) -> str:
    """Return the hand-over for the terminal: the guide, what fails, and how far each room is."""
    house = plan.house
    guides = chosen_guides(house)
    judged = judge_house(house, guides, months_since(house.handover.handed_over, on))
    name = say("no guide with figures")
    if guides.guide is not None:
        name = say(
            "{guide} {edition}",
            guide=guides.guide.name,
            edition=guides.guide.edition,
        )
    read = sum(each.what is not What.DEFECT for each in judged)
    fails = sum(each.fails_guide for each in judged)
    own = sum(each.fails_own for each in judged)
    lines = [
        say("Judged by {name}. {why}", name=name, why=guides.why),
        say(
            "{read} readings of finished work: {fails} fail by the guide, {own} by "
            "your own limits.",
            read=read,
            fails=fails,
            own=own,
        ),
    ]
    progress = house_progress(house, plan.pieces, plan.held, to_mend(plan, judged))
    lines += [_room_line(each) for each in progress]
    return joined("\n", lines)


def _room_line(room: RoomProgress) -> str:
    parts = [say("{up} up", up=len(room.up)), say("{to_do} to go up", to_do=len(room.to_do))]
    parts += [say("{held} held", held=len(room.held))] if room.held else []
    parts += [say("{mends} to mend", mends=room.mends)] if room.mends else []
    parts += [say("wet")] if room.is_wet else []
    ready = say(" Ready for the painter.") if room.is_ready else ""
    return say(
        "{room}: {parts}.{ready}",
        room=room.room or say("No room named"),
        parts=joined(", ", parts),
        ready=ready,
    )
