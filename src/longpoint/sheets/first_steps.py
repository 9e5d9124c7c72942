"""What is done before a stick is touched, in its order: the saw, then readings, then the rest."""

from typing import Final

from longpoint.forecast.forecast_house import Outlook
from longpoint.forecast.records import FREE, Step, Verdict
from longpoint.forecast.saw_proof import saw_proof
from longpoint.forecast.verdicts import LEAST_GAIN, Advice, in_hundred
from longpoint.forecast.worth import Worth
from longpoint.house_plan import HousePlan
from longpoint.sheets.blocks import (
    Beside,
    Blank,
    Block,
    Cell,
    Column,
    Heading,
    Paragraph,
    Plain,
    Table,
    Together,
)
from longpoint.sheets.findings_sheet import FIRST_SHEET
from longpoint.sheets.outlook_words import chance_words, verdicts
from longpoint.sheets.value_words import shown
from longpoint.sheets.verdict_pictures import IN_ORDER, verdict_picture, verdict_words
from longpoint.speech.said import joined, say
from longpoint.survey.house import House

CORNERS: Final = (say("bottom left"), say("bottom right"), say("top right"), say("top left"))


def first_steps(plan: HousePlan, outlook: Outlook) -> tuple[Block, ...]:
    """Return what to do first: the order, how the saw is proved, and the readings to take.

    Args:
        plan: The planned house.
        outlook: Its forecast.
    """
    return (*_order(plan), *_proof(plan.house, outlook), *_readings(plan.house, outlook))


def _order(plan: HousePlan) -> tuple[Block, ...]:
    marks: dict[Verdict, list[str]] = {}
    for mark, verdict in verdicts(plan).items():
        marks.setdefault(verdict, []).append(mark)
    rows = [
        (
            Cell(
                text=verdict_words(verdict),
                small=(_meaning(verdict),),
                picture=verdict_picture(verdict, 0.7),
            ),
            Cell(text=say("{marks}", marks=len(marks[verdict])), is_key=True),
            joined(", ", marks[verdict]),
        )
        for verdict in IN_ORDER
        if verdict in marks
    ]
    columns = (
        Column(title=say("What to do first, from the top down"), share=4.2),
        Column(title=say("Openings"), is_number=True, share=1.0),
        Column(title=say("Which"), share=4.0),
    )
    return (Table(columns=columns, rows=tuple(rows), is_close=True),) if rows else ()


def _meaning(verdict: Verdict) -> str:
    match verdict:
        case Verdict.PROVE_SAW:
            return say("Four offcuts on the bench, as below; then plan again.")
        case Verdict.READ_FIRST:
            return say("One more reading makes each safe; then plan again.")
        case Verdict.CUT_LONG:
            return say("The head long, marked off the legs and fitted.")
        case Verdict.HOLD:
            return say("No length is given; see {first_sheet}.", first_sheet=FIRST_SHEET)
        case Verdict.BATCH:
            return say("As printed; those of a batch in one go.")


def _proof(house: House, outlook: Outlook) -> tuple[Block, ...]:
    """Return how the saw is proved, with room for the eight gaps; nothing where it is no help."""
    if not _is_worth_proving(outlook):
        return ()
    left: tuple[Plain, ...] = tuple(
        Paragraph(lead=say("{number}.", number=number), text=text)
        for number, text in enumerate(_proof_steps(house), 1)
    )
    columns = (
        Column(title=say("Corner"), share=1.5),
        Column(title=say("Heel (inside)"), share=1.0),
        Column(title=say("Toe (outside)"), share=1.0),
    )
    blank = Cell(blank=Blank.LINE)
    gaps = Table(
        columns=columns, rows=tuple((corner, blank, blank) for corner in CORNERS), is_close=True
    )
    return (
        Together(
            blocks=(
                Heading(text=say("Prove the saw"), level=3),
                Beside(left=left, right=(gaps,), left_share=0.62),
            )
        ),
    )


def _is_worth_proving(outlook: Outlook) -> bool:
    if outlook.if_proved is None:
        return False
    gain = outlook.if_proved.all_fit - outlook.forecast.all_fit
    asked = any(advice.verdict is Verdict.PROVE_SAW for advice in outlook.advice)
    return asked or gain >= LEAST_GAIN


def _proof_steps(house: House) -> tuple[str, ...]:
    width_mm = house.profile(house.openings[0].profiles.head).width_mm
    none = saw_proof([(0.0, 0.0)] * 4, width_mm, house.crew.feeler_mm)
    return (
        say(
            "Cut four offcuts of one moulding, two long and two short, every end at "
            "the 45 stop: left ends on one swing, right ends on the other."
        ),
        say("Push them together into a frame on the bench. No nails, no glue."),
        say("Read all eight gaps with feelers, noughts too, and note them."),
        say(
            "Add the four heels, take off the four toes, divide by a fifth of the face "
            "width: so many degrees is your 45 too steep (minus: too shallow). Over "
            "{u_deg:.2f} either way: move the stop by that much and prove it again.",
            u_deg=2.0 * none.u_deg,
        ),
    )


def _readings(house: House, outlook: Outlook) -> tuple[Block, ...]:
    """Return what is to be read first, the reading that saves most for its minutes at the top."""
    asked = [
        (advice, worth) for advice in outlook.advice for worth in _to_do(advice, house.crew.sure)
    ]
    if not asked:
        return ()
    asked.sort(key=lambda pair: (pair[1].step in FREE, -pair[1].saved_per_minute))
    columns = (
        Column(title=say("Opening"), share=1.2),
        Column(title=say("To do before cutting, the best first"), share=4.6),
        Column(title=say("Minutes"), is_number=True, share=1.0),
        Column(title=say("Fits now"), is_number=True, share=1.3),
        Column(title=say("Fits then"), is_number=True, share=1.3),
        Column(title=say("Done"), is_number=True, share=0.7),
    )
    rows = tuple(_reading_row(*pair) for pair in asked)
    return (Table(columns=columns, rows=rows, is_close=True),)


def _to_do(advice: Advice, sure: float) -> tuple[Worth, ...]:
    """Return what makes one opening safe: its reading, or another way to set the saw."""
    if advice.verdict not in (Verdict.READ_FIRST, Verdict.CUT_LONG):
        return ()
    enough = tuple(w for w in advice.steps if w.step is not Step.PROOF and w.after >= sure)
    readings = tuple(worth for worth in enough if worth.step not in FREE)
    return (*readings[:1], *(worth for worth in enough if worth.step in FREE))


def _reading_row(advice: Advice, worth: Worth) -> tuple[str | Cell, ...]:
    is_second = worth.step in FREE and advice.verdict is Verdict.READ_FIRST
    return (
        Cell(text=advice.mark),
        say("or {step}", step=shown(worth.step.value)) if is_second else worth.step.value,
        say("{minutes:g}", minutes=worth.minutes),
        chance_words(advice),
        in_hundred(worth.after),
        Cell(blank=Blank.TICK),
    )
