"""The forecast in a terminal: a few lines for the house, one for each opening."""

import textwrap

from longpoint.forecast.records import HouseForecast, Verdict
from longpoint.forecast.verdicts import in_hundred
from longpoint.house_plan import HousePlan
from longpoint.sheets.outlook_words import (
    chance_words,
    count_words,
    misfit_words,
    safe_line,
    verdicts,
)
from longpoint.sheets.verdict_pictures import verdict_words


def outlook_lines(plan: HousePlan, width: int) -> list[str]:
    """Return what is likely to fit, line by line; nothing where there was no forecast.

    Args:
        plan: The planned house.
        width: Signs in a line.
    """
    outlook = plan.outlook
    if outlook is None or not outlook.forecast.faces:
        return []
    forecast = outlook.forecast
    said = [
        f"Will it close? {safe_line(plan)}",
        f"As it stands: {_house_words(forecast)}.",
    ]
    if outlook.if_proved is not None:
        said.append(f"Once the saw is proved: {_house_words(outlook.if_proved)}.")
    said.append("A model's figures on assumed errors, not a promise: see the sheet Will it close.")
    lines = [line for words in said for line in textwrap.wrap(words, width, subsequent_indent="  ")]
    return [*lines, *_openings(plan, width), ""]


def _house_words(forecast: HouseForecast) -> str:
    return (
        f"all of {count_words(forecast)} fit {in_hundred(forecast.all_fit)}; "
        f"{misfit_words(forecast.misfits_mean)} won't on average, nine times in ten no more "
        f"than {forecast.misfits_p90}"
    )


def _openings(plan: HousePlan, width: int) -> list[str]:
    found = verdicts(plan)
    shown = min(12, max(map(len, found), default=0))
    lines = []
    for mark, verdict in found.items():
        advice = plan.outlook.advice_on(mark) if plan.outlook else None
        said = f"  {mark:<{shown}}  {verdict_words(verdict)}"
        if verdict is Verdict.BATCH:
            said += f": {chance_words(advice)}"
        elif verdict is not Verdict.HOLD and advice is not None:
            said += f": {advice.why}"
        lines += textwrap.wrap(said, width, subsequent_indent=" " * (shown + 4))
    return lines
