"""Will it close: what is likely to fit when all is cut in one batch, and what to do first."""

from typing import Final

from longpoint.forecast.face_lines import FACE_STEP_MM
from longpoint.forecast.forecast_house import Outlook
from longpoint.forecast.records import HouseForecast, Verdict
from longpoint.forecast.verdicts import hundredths, in_hundred
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_gap, format_unit
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Beside, Block, Cell, Column, Heading, Paragraph, Table, Together
from longpoint.sheets.dialects import words_for
from longpoint.sheets.first_steps import first_steps
from longpoint.sheets.outlook_words import (
    LEAST_SAID,
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
from longpoint.speech.said import joined, raised, say

OUTLOOK_TITLE: Final = say("Will it close")


def outlook_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what stands on the sheet of the forecast."""
    outlook = plan.outlook
    if outlook is None:
        return (
            Paragraph(text=say("No forecast stands here: it is made when a house is planned.")),
        )
    if not plan.house.openings:
        return (Paragraph(text=say("There is no opening in this house, so nothing to forecast.")),)
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
    rows = [_house_row(say("as it stands"), plan, outlook.forecast)]
    if outlook.if_proved is not None:
        rows.append(_house_row(say("once the saw is proved"), plan, outlook.if_proved))
    columns = (
        Column(
            title=say("Of {count} with lengths", count=count_words(outlook.forecast)), share=2.5
        ),
        Column(
            title=say(
                "{in_hundred} or better",
                in_hundred=in_hundred(plan.house.crew.sure),
            ),
            is_number=True,
            share=1.9,
        ),
        Column(title=say("All fit at the first try"), is_number=True, share=2.0),
        Column(title=say("Won't fit, on average"), is_number=True, share=2.0),
        Column(title=say("Nine times in ten at most"), is_number=True, share=2.1),
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
        _big(say("{likely}", likely=likely)),
        _big(hundredths(forecast.all_fit), say("in 100")),
        _big(misfit_words(max(LEAST_SAID, forecast.misfits_mean)), _at_most(forecast)),
        _big(say("{misfits_p90}", misfits_p90=forecast.misfits_p90)),
    )


def _at_most(forecast: HouseForecast) -> str:
    return say("or less") if forecast.misfits_mean < LEAST_SAID else ""


def _big(text: str, behind: str = "") -> Cell:
    return Cell(text=text, behind=behind, is_key=True)


def _openings(plan: HousePlan, outlook: Outlook) -> tuple[Block, ...]:
    quirk = words_for(plan.house.dialect).quirk
    columns = (
        Column(title=say("Opening"), share=1.7),
        Column(title=say("What to do"), share=3.0),
        Column(title=say("Fits, of 100"), is_number=True, share=1.3),
        Column(title=say("Joints"), is_number=True, share=0.9),
        Column(title=raised(quirk), is_number=True, share=1.4),
        Column(title=say("Faces level"), is_number=True, share=1.2),
        Column(title=say("Most of the doubt"), share=2.6),
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
        return (name, what, "-", "-", "-", "-", say("its readings"))
    chances = face.chances
    place = joined(
        ", ",
        (
            part
            for part in (
                room,
                say(
                    "face{no_break}{face}",
                    no_break=NO_BREAK,
                    face=face.face,
                )
                if face.face
                else "",
            )
            if part
        ),
    )
    return (
        Cell(text=mark, small=(place,) if place else ()),
        what,
        Cell(text=hundredths(chances.fits), is_key=True),
        hundredths(chances.gaps),
        hundredths(chances.quirk),
        hundredths(chances.faces),
        doubt_words(face.causes),
    )


def _supposed(plan: HousePlan, forecast: HouseForecast) -> Block:
    """Return what the forecast rests on, small, for those who want to change it."""
    units, lines = plan.house.units, forecast.budget.lines
    half = (len(lines) + 1) // 2
    columns = (
        Column(title=say("What was supposed"), share=4.4),
        Column(title=say("Give or take"), is_number=True, share=1.7),
        Column(title=say("Whose figure"), share=2.2),
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
    gaps = joined(say(" or "), (format_gap(gap_mm, units) for gap_mm in gaps_mm))
    step, unit = format_gap(FACE_STEP_MM, units), format_unit(units)
    whose = say("our minutes") if crew.has_our_minutes else say("your minutes")
    draws = f"{forecast.draws:,}".replace(",", NO_BREAK)
    misfit_min = crew.refit_min + crew.spoiled_min
    return say(
        "Give or take: two times in three it is out by less. A fit: every joint "
        "closes to {gaps} {unit} and every {quirk} keeps its band, at the worse "
        "face; faces level to {step} {unit} stand apart. A batch pays from "
        "{in_hundred} up ({whose}: {misfit_min:g} a misfit, {batch_saves_min:g} "
        "saved an opening). {draws} houses imagined.",
        gaps=gaps,
        unit=unit,
        quirk=quirk,
        step=step,
        in_hundred=in_hundred(crew.sure),
        whose=whose,
        misfit_min=misfit_min,
        batch_saves_min=crew.batch_saves_min,
        draws=draws,
    )
