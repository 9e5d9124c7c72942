"""The verdict on each opening: cut it with the rest, or what to do first, and why."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.forecast.budget.records import Cause
from longpoint.forecast.planned_face import is_forecast
from longpoint.forecast.records import FREE, CauseShare, FaceForecast, HouseForecast, Step, Verdict
from longpoint.forecast.worth import MAIN_SHARE, Worth
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.openings import Mitres, Opening

LEAST_GAIN: Final = 0.01
"""A step that brings less than one in a hundred isn't worth naming."""

MOST_SAID: Final = 99

WORTH_A_CHANGE: Final = 0.05
"""The other way of setting the saw is told from this gain on, or where it does what is wanted."""

_DONE_ONCE: Final = frozenset({Step.PROOF, *FREE})


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """What to do with one opening, and why.

    Attributes:
        mark: Mark of the opening.
        verdict: What to do.
        chance: Chance that it fits, of the face that is less likely to; None when it is held.
        why: One sentence with its numbers and what was assumed.
        steps: What would help, the best first.
    """

    mark: str
    verdict: Verdict
    chance: float | None
    why: str
    steps: tuple[Worth, ...] = ()


def in_hundred(chance: float) -> str:
    """Return a chance as full hundredths, never more than 99: it is only a model's.

    A chance just under what is wanted is not rounded up to it.

    Example:
        >>> in_hundred(0.9731), in_hundred(0.8999), in_hundred(0.9999), in_hundred(0.29)
        ('97 in 100', '89 in 100', '99 in 100', '29 in 100')
    """
    return say("{most_said} in 100", most_said=hundredths(chance))


def hundredths(chance: float) -> str:
    """Return the figure alone, for a column or a word that says of what it is.

    Example:
        >>> hundredths(0.9731)
        '97'
    """
    return str(min(MOST_SAID, math.floor(100.0 * chance + 1e-09)))


def advise(
    house: House,
    forecast: HouseForecast,
    worths: dict[str, tuple[Worth, ...]],
    held: frozenset[str],
) -> tuple[Advice, ...]:
    """Return the advice on every opening of a house that is forecast, in its order.

    Args:
        house: The house.
        forecast: How likely each face is to fit.
        worths: For each mark below the crew's threshold, what each step would bring.
        held: Marks whose readings are in doubt.
    """
    advice = []
    for opening in house.openings:
        faces = [f for f in forecast.faces if f.mark == opening.mark]
        if opening.mark not in held and not is_forecast(opening):
            continue
        if opening.mark in held or not faces:
            advice.append(_held(opening.mark))
        else:
            face = min(faces, key=lambda f: f.chances.fits)
            advice.append(_advice(house, opening, face, worths.get(opening.mark, ())))
    return tuple(advice)


def _held(mark: str) -> Advice:
    why = say("Its readings are in doubt, so no length is given: see what is to be read again.")
    return Advice(mark=mark, verdict=Verdict.HOLD, chance=None, why=why)


def _advice(
    house: House, opening: Opening, face: FaceForecast, worths: tuple[Worth, ...]
) -> Advice:
    sure, chance = house.crew.sure, face.chances.fits
    misfit_min = house.crew.refit_min + house.crew.spoiled_min
    helping = tuple(w for w in worths if w.saved_min >= LEAST_GAIN * misfit_min)
    readings = tuple(w for w in helping if w.step not in _DONE_ONCE)
    proof = next((w for w in helping if w.step is Step.PROOF), None)
    enough = next((w for w in readings if w.after >= sure), None)
    now = say(
        "{in_hundred} as it stands, {wanted} wanted",
        in_hundred=in_hundred(chance),
        wanted=_wanted(sure),
    )
    if chance >= sure:
        verdict, why = Verdict.BATCH, _batch_why(face, chance, sure)
    elif proof is not None and _is_proof_first(proof, readings, enough, face, sure):
        verdict, why = (
            Verdict.PROVE_SAW,
            say(
                "{now}: {proof_why}",
                now=now,
                proof_why=_proof_why(proof, face, sure),
            ),
        )
    elif enough is not None:
        verdict = Verdict.READ_FIRST
        why = say(
            "{now}: {step} first, {minutes:g} min, and it is {in_hundred}.",
            now=now,
            step=enough.step.value,
            minutes=enough.minutes,
            in_hundred=in_hundred(enough.after),
        )
    else:
        verdict = Verdict.CUT_LONG
        why = say(
            "{now}, and no one reading brings it there{best}: cut the head long and fit it.",
            now=now,
            best=_best_words(readings),
        )
    return Advice(
        mark=opening.mark,
        verdict=verdict,
        chance=chance,
        why=why + _way_words(opening, helping, sure) + _assumed_words(face),
        steps=helping,
    )


def _is_proof_first(
    proof: Worth,
    readings: Sequence[Worth],
    enough: Worth | None,
    face: FaceForecast,
    sure: float,
) -> bool:
    """Tell whether the saw comes first: it is most of the doubt, does it alone, or saves most."""
    if _main(face.causes) is Cause.SAW:
        return True
    if enough is not None and enough.saved_per_minute > proof.saved_per_minute:
        return False
    return proof.after >= sure or all(
        proof.saved_per_minute >= worth.saved_per_minute for worth in readings
    )


def _proof_why(proof: Worth, face: FaceForecast, sure: float) -> str:
    share = next((s.share for s in face.causes if s.cause is Cause.SAW), 0.0)
    then = (
        "" if proof.after >= sure else say(", and a reading more may do the rest: then plan again")
    )
    return say(
        "{hundredth} of the doubt is the saw, and proving it first makes it {in_hundred}{then}.",
        hundredth=_hundredth(share),
        in_hundred=in_hundred(proof.after),
        then=then,
    )


def _batch_why(face: FaceForecast, chance: float, sure: float) -> str:
    weaker = say("quirk") if face.chances.quirk < face.chances.gaps else say("joints")
    return say(
        "{in_hundred} fit at the first try ({wanted} wanted), {weaker} nearest to the limit.",
        in_hundred=in_hundred(chance),
        wanted=_wanted(sure),
        weaker=weaker,
    )


def _wanted(sure: float) -> str:
    return hundredths(sure)


def _best_words(readings: Sequence[Worth]) -> str:
    best = max(readings, key=lambda w: w.after, default=None)
    return (
        ""
        if best is None
        else say(
            " ({step}: {in_hundred})",
            step=best.step.value,
            in_hundred=in_hundred(best.after),
        )
    )


def _way_words(opening: Opening, helping: Iterable[Worth], sure: float) -> str:
    """Return a further sentence where the other way of setting the saw does better."""
    other = next((w for w in helping if w.step in FREE), None)
    if other is None or (other.after < sure and other.after - other.before < WORTH_A_CHANGE):
        return ""
    mitres = Mitres.AT_STOP if opening.mitres is Mitres.AS_READ else Mitres.AS_READ
    return say(
        ' If you {step}, it is {in_hundred}: write mitres = "{mitres}".',
        step=other.step.value,
        in_hundred=in_hundred(other.after),
        mitres=mitres.value,
    )


def _assumed_words(face: FaceForecast) -> str:
    shape = next((s for s in face.causes if s.cause is Cause.SHAPE), None)
    if shape is None or shape.share < LEAST_GAIN:
        return ""
    return say(" Its shape is partly taken for granted, not read.")


def _main(causes: Sequence[CauseShare]) -> Cause | None:
    return causes[0].cause if causes and causes[0].share > MAIN_SHARE else None


def _hundredth(share: float) -> str:
    return say("{most_said} %", most_said=min(MOST_SAID, round(100.0 * share)))
