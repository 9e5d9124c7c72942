"""What is told of the sample house's chances, by hand."""

from dataclasses import replace

from longpoint.forecast.budget.house_budget import house_budget
from longpoint.forecast.budget.records import Cause
from longpoint.forecast.forecast_house import Outlook
from longpoint.forecast.house_season import HouseSeason
from longpoint.forecast.records import (
    CauseShare,
    Chances,
    FaceForecast,
    HouseForecast,
    Step,
    Verdict,
)
from longpoint.forecast.verdicts import Advice
from longpoint.forecast.worth import Worth
from longpoint.survey.house import House


def forecast_of(mark: str, fits: float, cause: Cause, *, face: str = "") -> FaceForecast:
    """A face whose joints do a little better than all of it."""
    return FaceForecast(
        mark=mark,
        face=face,
        chances=Chances(
            gaps=min(1.0, fits + 0.02),
            quirk=min(1.0, fits + 0.01),
            fits=fits,
            faces=0.985,
            all=fits * 0.985,
            first_order=min(1.0, fits + 0.005),
        ),
        causes=(CauseShare(cause=cause, share=0.55), CauseShare(cause=Cause.CUTS, share=0.45)),
    )


def worth(step: Step, minutes: float, before: float, after: float) -> Worth:
    return Worth(
        step=step,
        minutes=minutes,
        before=before,
        after=after,
        saved_min=12.0 * (after - before),
    )


ADVICE = (
    Advice(
        mark="W1",
        verdict=Verdict.READ_FIRST,
        chance=0.874,
        why="87 in 100 as read, 90 wanted: to lay a straightedge along the sides makes it "
        "93 in 100 for 1.5 min.",
        steps=(worth(Step.STRAIGHTEDGE, 1.5, 0.874, 0.931),),
    ),
    Advice(
        mark="W2",
        verdict=Verdict.BATCH,
        chance=0.998,
        why="99 in 100 fit at the first try (90 wanted), quirk nearest to the limit.",
    ),
    Advice(
        mark="W3",
        verdict=Verdict.HOLD,
        chance=None,
        why="Its readings are in doubt, so no length is given: see what is to be read again.",
    ),
    Advice(
        mark="D1",
        verdict=Verdict.CUT_LONG,
        chance=0.713,
        why="71 in 100 as read, 90 wanted, and no one reading brings it there: cut the head long "
        "and fit it. If you leave the saw at its 45 stop, it is 81 in 100: write "
        'mitres = "at-stop".',
        steps=(worth(Step.LEAVE_AT_STOP, 0.0, 0.713, 0.812),),
    ),
)


def outlook_of(house: House) -> Outlook:
    """Return what is told of the sample house."""
    forecast = HouseForecast(
        faces=(
            forecast_of("W1", 0.874, Cause.REVEAL),
            forecast_of("W2", 0.998, Cause.SAW),
            forecast_of("D1", 0.713, Cause.WIDTH),
        ),
        all_fit=0.624,
        misfits_mean=0.415,
        misfits_p90=1,
        draws=400,
        seed=7,
        budget=house_budget(house),
    )
    season = HouseSeason(
        fitted_percent=10.0, outlooks=(), advice=(), taken_for_granted=(), assumed=True
    )
    return Outlook(forecast=forecast, if_proved=None, advice=ADVICE, season=season)


def unproved_outlook(house: House, proved: Outlook) -> Outlook:
    """Return what is told of a house with a saw that nobody proved.

    Args:
        house: With such a saw.
        proved: What is told of it with a saw that was.
    """
    forecast = replace(
        proved.forecast,
        all_fit=0.117,
        misfits_mean=1.83,
        misfits_p90=3,
        budget=house_budget(house),
    )
    if_proved = replace(
        proved.forecast,
        faces=tuple(forecast_of(mark, 0.968, Cause.CUTS) for mark in ("W1", "W2", "D1")),
        all_fit=0.996,
        misfits_mean=0.02,
        misfits_p90=0,
    )
    advice = replace(
        ADVICE[3],
        verdict=Verdict.PROVE_SAW,
        why="71 in 100 as read, 90 wanted: 55 % of the doubt is the saw, and proving it first "
        "makes it 97 in 100.",
        steps=(worth(Step.PROOF, 1.5, 0.713, 0.968),),
    )
    return replace(proved, forecast=forecast, if_proved=if_proved, advice=(*ADVICE[:3], advice))
