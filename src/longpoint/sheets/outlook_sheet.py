"""Will it close: what is likely to fit when all is cut in one batch, and what to do first."""

from typing import Final

from longpoint.forecast.face_lines import FACE_STEP_MM
from longpoint.forecast.forecast_house import Outlook
from longpoint.forecast.records import HouseForecast, Verdict
from longpoint.forecast.verdicts import in_hundred
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_gap, format_unit
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Beside, Block, Cell, Column, Heading, Paragraph, Table, Together
from longpoint.sheets.dialects import words_for
from longpoint.sheets.first_steps import first_steps
from longpoint.sheets.outlook_words import (
    MODEL_LINE,
    count_words,
    doubt_words,
    error_words,
    misfit_words,
    safe_line,
    size_words,
    standing_words,
    verdicts,
    worse_face,
)
from longpoint.sheets.saw_settings import NO_BREAK
from longpoint.sheets.season_block import season_blocks
from longpoint.sheets.verdict_pictures import verdict_picture, verdict_words

OUTLOOK_TITLE: Final = "Will it close"


def outlook_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what stands on the sheet of the forecast."""
    outlook = plan.outlook
    if outlook is None:
        return (Paragraph(text="No forecast stands here: it is made when a house is planned."),)
    if not plan.house.openings:
        return (Paragraph(text="There is no opening in this house, so nothing to forecast."),)
    return (
        *_house(plan, outlook),
        *first_steps(plan, outlook),
        *_openings(plan, outlook),
        _supposed(plan, outlook.forecast),
        *season_blocks(plan, outlook.season),
    )


def _house(plan: HousePlan, outlook: Outlook) -> tuple[Block, ...]:
    heading = Heading(text=safe_line(plan))
    if not outlook.forecast.faces:
        return (heading,)
    rows = [_house_row("as it stands", plan, outlook.forecast)]
    if outlook.if_proved is not None:
        rows.append(_house_row("once the saw is proved", plan, outlook.if_proved))
    columns = (
        Column(title=f"Of {count_words(outlook.forecast)} with lengths", share=2.5),
        Column(title=f"{in_hundred(plan.house.crew.sure)} or better", is_number=True, share=1.9),
        Column(title="All fit at the first try", is_number=True, share=2.0),
        Column(title="Won't fit, on average", is_number=True, share=2.0),
        Column(title="Nine times in ten at most", is_number=True, share=2.1),
    )
    return (
        heading,
        Table(columns=columns, rows=tuple(rows)),
        Paragraph(text=MODEL_LINE, is_small=True),
    )


def _house_row(said: str, plan: HousePlan, forecast: HouseForecast) -> tuple[str | Cell, ...]:
    sure = plan.house.crew.sure
    likely = sum(face.chances.fits >= sure for face in forecast.faces)
    return (
        Cell(text=said),
        _big(f"{likely}"),
        _big(_of_100(forecast.all_fit), "in 100"),
        _big(misfit_words(forecast.misfits_mean).removeprefix("under "), _at_most(forecast)),
        _big(f"{forecast.misfits_p90}"),
    )


def _at_most(forecast: HouseForecast) -> str:
    return "or less" if misfit_words(forecast.misfits_mean).startswith("under") else ""


def _big(text: str, behind: str = "") -> Cell:
    return Cell(text=text, behind=behind, is_key=True)


def _openings(plan: HousePlan, outlook: Outlook) -> tuple[Block, ...]:
    quirk = words_for(plan.house.dialect).quirk
    columns = (
        Column(title="Opening", share=1.7),
        Column(title="What to do", share=3.0),
        Column(title="Fits, of 100", is_number=True, share=1.3),
        Column(title="Joints", is_number=True, share=1.0),
        Column(title=quirk.capitalize(), is_number=True, share=1.0),
        Column(title="Faces level", is_number=True, share=1.2),
        Column(title="Most of the doubt", share=2.6),
    )
    rooms = {entry.mark: entry.room for entry in plan.house.held}
    rooms |= {opening.mark: opening.room for opening in plan.house.openings}
    rows, under = [], []
    for index, (mark, verdict) in enumerate(verdicts(plan).items()):
        rows.append(_opening_row(plan, mark, verdict, rooms.get(mark, "")))
        advice = outlook.advice_on(mark)
        if advice is not None and verdict not in (Verdict.HOLD, Verdict.BATCH):
            under.append((index, advice.why))
    return (Table(columns=columns, rows=tuple(rows), under=tuple(under), under_is_said=True),)


def _opening_row(plan: HousePlan, mark: str, verdict: Verdict, room: str) -> tuple[str | Cell, ...]:
    face = worse_face(plan, mark)
    what = Cell(text=verdict_words(verdict), picture=verdict_picture(verdict, 0.7))
    if verdict is Verdict.HOLD or face is None:
        name = Cell(text=mark, small=(room,) if room else ())
        return (name, what, "-", "-", "-", "-", "its readings")
    chances = face.chances
    place = ", ".join(
        part for part in (room, f"face{NO_BREAK}{face.face}" if face.face else "") if part
    )
    return (
        Cell(text=mark, small=(place,) if place else ()),
        what,
        Cell(text=_of_100(chances.fits), is_key=True),
        _of_100(chances.gaps),
        _of_100(chances.quirk),
        _of_100(chances.faces),
        doubt_words(face.causes),
    )


def _of_100(chance: float) -> str:
    return in_hundred(chance).removesuffix(" in 100")


def _supposed(plan: HousePlan, forecast: HouseForecast) -> Block:
    """Return what the forecast rests on, small, for those who want to change it."""
    units, lines = plan.house.units, forecast.budget.lines
    half = (len(lines) + 1) // 2
    columns = (
        Column(title="What was supposed", share=4.4),
        Column(title="Give or take", is_number=True, share=1.7),
        Column(title="Whose figure", share=2.2),
    )
    left, right = (
        Table(
            columns=columns,
            rows=tuple(
                (
                    Cell(small=(error_words(line.name),)),
                    Cell(small=(size_words(line, units),)),
                    Cell(small=(standing_words(line.standing),)),
                )
                for line in part
            ),
            is_close=True,
        )
        for part in (lines[:half], lines[half:])
    )
    return Together(
        blocks=(
            Beside(left=(left,), right=(right,), left_share=0.5),
            Paragraph(text=_meant(plan, forecast, units), is_small=True),
        )
    )


def _meant(plan: HousePlan, forecast: HouseForecast, units: Units) -> str:
    crew = plan.house.crew
    quirk = words_for(plan.house.dialect).quirk
    gaps_mm = sorted({opening.max_gap_mm for opening in plan.house.openings})
    gaps = " or ".join(format_gap(gap_mm, units) for gap_mm in gaps_mm)
    step, unit = format_gap(FACE_STEP_MM, units), format_unit(units)
    whose = "our minutes" if crew.has_our_minutes else "your minutes"
    draws = f"{forecast.draws:,}".replace(",", NO_BREAK)
    misfit_min = crew.refit_min + crew.spoiled_min
    return (
        f"Give or take: two times in three it is out by less. A fit: every joint closes to {gaps} "
        f"{unit} and every {quirk} keeps its band, at the worse face; faces level to {step} {unit} "
        f"stand apart. A batch pays from {in_hundred(crew.sure)} up ({whose}: {misfit_min:g} a "
        f"misfit, {crew.batch_saves_min:g} saved an opening). {draws} houses imagined."
    )
