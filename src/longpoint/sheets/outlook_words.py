"""The forecast in words, the same on paper and in a terminal."""

from collections.abc import Sequence
from typing import Final

from longpoint.forecast.budget.records import BudgetLine, ErrorName, Standing
from longpoint.forecast.records import CauseShare, FaceForecast, HouseForecast, Verdict
from longpoint.forecast.verdicts import MOST_SAID, Advice, in_hundred
from longpoint.house_plan import HousePlan
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.sheets.saw_settings import NO_BREAK
from longpoint.sheets.value_words import shown
from longpoint.speech.said import joined, say
from longpoint.survey.house import EntryKind

MODEL_LINE: Final = say(
    "A model's figures on stated assumptions, not a promise, and not measured on "
    "any site. What the seasons do later stands apart."
)

LEAST_SAID: Final = 0.1
"""Openings that won't fit, on average: fewer are not told apart."""


def verdicts(plan: HousePlan) -> dict[str, Verdict]:
    """Return the verdict on every opening that was written, in the order of the house.

    An opening that was neither forecast nor held has none, and is left out.
    """
    found: dict[str, Verdict] = {}
    for opening in plan.house.openings:
        advice = plan.outlook.advice_on(opening.mark) if plan.outlook else None
        if opening.mark in plan.held:
            found[opening.mark] = Verdict.HOLD
        elif advice is not None:
            found[opening.mark] = advice.verdict
    for entry in plan.house.held:
        if entry.kind is EntryKind.OPENING:
            found[entry.mark] = Verdict.HOLD
    return found


def worse_face(plan: HousePlan, mark: str) -> FaceForecast | None:
    """Return the forecast of the face of an opening that is less likely to fit."""
    if plan.outlook is None:
        return None
    faces = [face for face in plan.outlook.forecast.faces if face.mark == mark]
    return min(faces, key=lambda face: face.chances.fits, default=None)


def safe_line(plan: HousePlan) -> str:
    """Return how many openings can be cut in one batch, as one sentence."""
    found = verdicts(plan).values()
    safe = sum(verdict is Verdict.BATCH for verdict in found)
    openings = say("opening") if len(found) == 1 else say("openings")
    unjudged = unjudged_marks(plan)
    rest = say(" Not worked out: {unjudged}.", unjudged=joined(", ", unjudged)) if unjudged else ""
    return say(
        "{safe} of {found} {openings} can be cut as planned.{rest}",
        safe=safe,
        found=len(found),
        openings=openings,
        rest=rest,
    )


def unjudged_marks(plan: HousePlan) -> tuple[str, ...]:
    """Return the openings whose fit isn't worked out: other joints than mitres, other shapes."""
    if plan.outlook is None:
        return ()
    found = verdicts(plan)
    return tuple(o.mark for o in plan.house.openings if o.mark not in found)


def misfit_words(mean: float) -> str:
    """Return how many are expected not to fit, in tenths.

    Example:
        >>> misfit_words(1.23), misfit_words(0.02)
        ('1.2', 'under 0.1')
    """
    return say("under 0.1") if mean < LEAST_SAID else say("{mean:.1f}", mean=mean)


def count_words(forecast: HouseForecast) -> str:
    """Return what misfits are counted in, e.g. "7 openings", "9 faces"."""
    marks = len({face.mark for face in forecast.faces})
    faces = len(forecast.faces)
    if faces != marks:
        return say("{faces} faces", faces=faces)
    return say("1 opening") if marks == 1 else say("{marks} openings", marks=marks)


def doubt_words(causes: Sequence[CauseShare]) -> str:
    """Return where most of the doubt comes from, in parts of a hundred.

    Example:
        >>> from longpoint.forecast.budget.records import Cause
        >>> doubt_words((CauseShare(cause=Cause.SAW, share=0.62),)).split()
        ['saw,', '62', '%']
    """
    if not causes:
        return ""
    share = min(MOST_SAID, round(100.0 * causes[0].share))
    return say(
        "{cause}, {share}{no_break}%",
        cause=shown(causes[0].cause.value),
        share=share,
        no_break=NO_BREAK,
    )


def chance_words(advice: Advice | None) -> str:
    """Return the chance that an opening fits, empty where there is none."""
    return "" if advice is None or advice.chance is None else in_hundred(advice.chance)


def error_words(name: ErrorName) -> str:
    """Return a way of being out as a carpenter would say it."""
    match name:
        case ErrorName.SAW_SCALE:
            return say("saw, both swings alike")
        case ErrorName.SAW_FENCE:
            return say("saw, one swing against the other")
        case ErrorName.STOP_CUT:
            return say("one cut at the 45 stop")
        case ErrorName.HAND_SET_CUT:
            return say("one cut at an angle set by hand")
        case ErrorName.INSIDE_READING:
            return say("tape, on all inside readings alike")
        case ErrorName.MARK_OFFSET:
            return say("marks at the saw, all alike")
        case ErrorName.MARK_AND_CUT:
            return say("the length of one piece")
        case ErrorName.FACE_WIDTH:
            return say("face width from piece to piece")
        case ErrorName.EDGE_BOW:
            return say("bow of a nailed piece, at 1 m")
        case ErrorName.REVEAL_BOW:
            return say("bow of a side of the reveal")
        case ErrorName.LEAN:
            return say("lean, where none was read")
        case ErrorName.TAPER:
            return say("opposite sides, one of them read")
        case ErrorName.THICKNESS:
            return say("thickness from piece to piece")
        case ErrorName.LIE:
            return say("lie of the lining at a joint")


def size_words(line: BudgetLine, units: Units) -> str:
    """Return what a line of the budget is out by: what is known of it, then its doubt.

    Example:
        >>> from longpoint.forecast.budget.records import Cause
        >>> line = BudgetLine(name=ErrorName.LIE, cause=Cause.FACES, u=0.1, unit="mm")
        >>> size_words(line, Units.MM), size_words(line, Units.INCH)
        ('0.10 mm', '0.004 in')
    """
    if line.unit == "deg":
        known, doubt, unit = say("{bias:+.2f}", bias=line.bias), say("{u:.2f}", u=line.u), "°"
    elif units is Units.MM:
        known, doubt, unit = (
            say("{bias:+.2f}", bias=line.bias),
            say("{u:.2f}", u=line.u),
            say(" mm"),
        )
    else:
        known, doubt, unit = (
            say("{bias:+.3f}", bias=line.bias / MM_PER_INCH),
            say(
                "{u:.3f}",
                u=line.u / MM_PER_INCH,
            ),
            say(" in"),
        )
    return (
        say("{known} and {doubt}{unit}", known=known, doubt=doubt, unit=unit)
        if line.bias
        else say(
            "{doubt}{unit}",
            doubt=doubt,
            unit=unit,
        )
    )


def standing_words(standing: Standing) -> str:
    """Return what a figure rests on in a word or two."""
    match standing:
        case Standing.SOURCE:
            return say("published")
        case Standing.ASSUMPTION:
            return say("ours, assumed")
        case Standing.STATED:
            return say("yours")
        case Standing.LEARNED:
            return say("learned from your work")
