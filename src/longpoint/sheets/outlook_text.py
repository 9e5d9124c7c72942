"""The forecast in a terminal: a few lines for the house, one for each opening."""

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
from longpoint.sheets.page import Page
from longpoint.sheets.verdict_pictures import verdict_words
from longpoint.speech.said import say


def outlook_lines(plan: HousePlan, page: Page) -> list[str]:
    """Return what is likely to fit, line by line; nothing where there was no forecast.

    Args:
        plan: The planned house.
        page: What the lines are broken for.
    """
    outlook = plan.outlook
    if outlook is None or not outlook.forecast.faces:
        return []
    forecast = outlook.forecast
    said = [
        say("Will it close? {safe}", safe=safe_line(plan)),
        say("As it stands: {house}.", house=_house_words(forecast)),
    ]
    if outlook.if_proved is not None:
        said.append(
            say(
                "Once the saw is proved: {house}.",
                house=_house_words(outlook.if_proved),
            )
        )
    said.append(
        say("A model's figures on assumed errors, not a promise: see the sheet Will it close.")
    )
    lines = [line for words in said for line in page.wrapped(words)]
    return [*lines, *_openings(plan, page), ""]


def _house_words(forecast: HouseForecast) -> str:
    return say(
        "all of {count} fit {in_hundred}; {misfit} won't on average, nine times in "
        "ten no more than {misfits_p90}",
        count=count_words(forecast),
        in_hundred=in_hundred(forecast.all_fit),
        misfit=misfit_words(forecast.misfits_mean),
        misfits_p90=forecast.misfits_p90,
    )


def _openings(plan: HousePlan, page: Page) -> list[str]:
    found = verdicts(plan)
    shown = min(12, max(map(len, found), default=0))
    lines = []
    for mark, verdict in found.items():
        advice = plan.outlook.advice_on(mark) if plan.outlook else None
        said = verdict_words(verdict)
        if verdict is Verdict.BATCH:
            said = say("{said}: {chance}", said=said, chance=chance_words(advice))
        elif verdict is not Verdict.HOLD and advice is not None:
            said = say("{said}: {why}", said=said, why=advice.why)
        lines += page.wrapped(
            said, first=say("  {mark:<{shown}}  ", mark=mark, shown=shown), indent=" " * (shown + 4)
        )
    return lines
