"""The forecast in words, the same on paper and in a terminal."""

from collections.abc import Sequence
from typing import Final

from longpoint.forecast.budget.records import BudgetLine, ErrorName, Standing
from longpoint.forecast.records import CauseShare, FaceForecast, HouseForecast, Verdict
from longpoint.forecast.verdicts import MOST_SAID, Advice, in_hundred
from longpoint.house_plan import HousePlan
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.sheets.saw_settings import NO_BREAK
from longpoint.survey.house import EntryKind

MODEL_LINE: Final = (
    "A model's figures on stated assumptions, not a promise, and not measured on any site. "
    "What the seasons do later stands apart."
)


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
    openings = "opening" if len(found) == 1 else "openings"
    unjudged = unjudged_marks(plan)
    rest = f" Not worked out: {', '.join(unjudged)}." if unjudged else ""
    return f"{safe} of {len(found)} {openings} can be cut as planned.{rest}"


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
    return "under 0.1" if mean < 0.1 else f"{mean:.1f}"


def count_words(forecast: HouseForecast) -> str:
    """Return what misfits are counted in, e.g. "7 openings", "9 faces"."""
    marks = len({face.mark for face in forecast.faces})
    faces = len(forecast.faces)
    if faces != marks:
        return f"{faces} faces"
    return "1 opening" if marks == 1 else f"{marks} openings"


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
    return f"{causes[0].cause.value}, {share}{NO_BREAK}%"


def chance_words(advice: Advice | None) -> str:
    """Return the chance that an opening fits, empty where there is none."""
    return "" if advice is None or advice.chance is None else in_hundred(advice.chance)


def error_words(name: ErrorName) -> str:
    """Return a way of being out as a carpenter would say it."""
    match name:
        case ErrorName.SAW_SCALE:
            return "saw, both swings alike"
        case ErrorName.SAW_FENCE:
            return "saw, one swing against the other"
        case ErrorName.STOP_CUT:
            return "one cut at the 45 stop"
        case ErrorName.HAND_SET_CUT:
            return "one cut at an angle set by hand"
        case ErrorName.INSIDE_READING:
            return "tape, on all inside readings alike"
        case ErrorName.MARK_OFFSET:
            return "marks at the saw, all alike"
        case ErrorName.MARK_AND_CUT:
            return "the length of one piece"
        case ErrorName.FACE_WIDTH:
            return "face width from piece to piece"
        case ErrorName.EDGE_BOW:
            return "bow of a nailed piece, at 1 m"
        case ErrorName.REVEAL_BOW:
            return "bow of a side of the reveal"
        case ErrorName.LEAN:
            return "lean, where none was read"
        case ErrorName.TAPER:
            return "opposite sides, one of them read"
        case ErrorName.THICKNESS:
            return "thickness from piece to piece"
        case ErrorName.LIE:
            return "lie of the lining at a joint"


def size_words(line: BudgetLine, units: Units) -> str:
    """Return what a line of the budget is out by: what is known of it, then its doubt.

    Example:
        >>> from longpoint.forecast.budget.records import Cause
        >>> line = BudgetLine(name=ErrorName.LIE, cause=Cause.FACES, u=0.1, unit="mm")
        >>> size_words(line, Units.MM), size_words(line, Units.INCH)
        ('0.10 mm', '0.004 in')
    """
    if line.unit == "deg":
        known, doubt, unit = f"{line.bias:+.2f}", f"{line.u:.2f}", "°"
    elif units is Units.MM:
        known, doubt, unit = f"{line.bias:+.2f}", f"{line.u:.2f}", " mm"
    else:
        known, doubt, unit = f"{line.bias / MM_PER_INCH:+.3f}", f"{line.u / MM_PER_INCH:.3f}", " in"
    return f"{known} and {doubt}{unit}" if line.bias else f"{doubt}{unit}"


def standing_words(standing: Standing) -> str:
    """Return what a figure rests on in a word or two."""
    match standing:
        case Standing.SOURCE:
            return "published"
        case Standing.ASSUMPTION:
            return "ours, assumed"
        case Standing.STATED:
            return "yours"
        case Standing.LEARNED:
            return "learned from your work"
