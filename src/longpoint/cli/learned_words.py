"""What a crew learned, on the screen."""

from collections.abc import Iterable, Sequence
from typing import Final

from longpoint.cli.paragraphs import paragraphs
from longpoint.errors import Finding
from longpoint.exchange.crew_files import CrewFile
from longpoint.forecast.learned_lines import frames_words
from longpoint.forecast.learning.advice import learned_advice
from longpoint.forecast.learning.calibration import (
    FEWEST_EACH,
    FEWEST_HOUSES,
    FEWEST_OUTCOMES,
    Outcome,
    ReliabilityRow,
    Verdict,
    reliability,
    verdict,
)
from longpoint.forecast.learning.setup import Key, Learned, Term
from longpoint.forecast.learning.setup_key import AngleKey
from longpoint.speech.said import joined, say, say_many

MOST_NOTES: Final = 6
"""Notes of one kind are many in a house of doors; after so many they are only counted."""

SUREST: Final = 99

MODEL: Final = say(
    "Model output: the ranges are meant to hold 90 times in 100, if single cuts "
    "and readings are out by what we suppose."
)


def learned_text(before: CrewFile, after: CrewFile, notes: Sequence[Finding]) -> str:
    """Return what was learned as it stands on the screen.

    Args:
        before: The crew's figures as they were.
        after: As they are now.
        notes: What is to be said besides.
    """
    old, new = _marks(before.learned), _marks(after.learned)
    told = say(
        "{sets} new, {sets_2} known before.",
        sets=_sets(len(new - old)),
        sets_2=_sets(len(old)),
    )
    return paragraphs(
        (
            (say("Learned from finished work"), (told,)),
            (say("What it says"), (*_said(after.learned), MODEL) if new else ()),
            ("Mind", _notes(notes)),
            (say("Forecasts and what came of them"), _kept_words(after)),
        )
    )


def _said(learned: Learned) -> Iterable[str]:
    words = {advice.key: advice.words for advice in learned_advice(learned)}
    for term in learned.now():
        if term.seen:
            yield f"{_name(term.key)}: {words.get(term.key) or _nothing_to_do(term)}"


def _nothing_to_do(term: Term) -> str:
    low, high = term.belief.mean_within()
    if isinstance(term.key, AngleKey):
        return say(
            "Your 45 cuts between {low:.2f} and {high:.2f} ({frames}): leave the stop where it is.",
            low=45.0 + low,
            high=45.0 + high,
            frames=frames_words(term),
        )
    return say(
        "Your frames come out between {low:.1f} mm too {way} and {high:.1f} mm too "
        "{way_2} on the mean ({frames}): nothing to correct.",
        low=abs(low),
        way=_way(low),
        high=abs(high),
        way_2=_way(high),
        frames=frames_words(term),
    )


def _way(too_large_mm: float) -> str:
    return say("large") if too_large_mm > 0.0 else say("small")


def _name(key: Key) -> str:
    if isinstance(key, AngleKey):
        more = joined(", ", (text for text in (key.setting, key.blade) if text))
        return (
            say("Saw {saw} ({more})", saw=key.saw, more=more)
            if more
            else say("Saw {saw}", saw=key.saw)
        )
    return say("Tape {tape}", tape=key.tape)


def _notes(notes: Sequence[Finding]) -> list[str]:
    shown: list[str] = []
    for code in dict.fromkeys(note.code for note in notes):
        alike = list(dict.fromkeys(note for note in notes if note.code == code))
        shown += [str(note) for note in alike[:MOST_NOTES]]
        if len(alike) > MOST_NOTES:
            places = joined(", ", (note.place for note in alike[MOST_NOTES:]))
            shown.append(say("The same of: {places}.", places=places))
    return shown


def _kept_words(crew: CrewFile) -> tuple[str, ...]:
    outcomes = [each.outcome for each in crew.forecasts]
    if not outcomes:
        return ()
    found = verdict(outcomes)
    if found is Verdict.TOO_FEW:
        return (_too_few(outcomes),)
    return (
        say(
            "On the whole they {found}: {sets} of {outcomes} houses.",
            found=found.value,
            sets=_sets(len(outcomes)),
            outcomes=len({x.house for x in outcomes}),
        ),
        *(_row(row) for row in reliability(outcomes)),
    )


def _too_few(outcomes: Sequence[Outcome]) -> str:
    houses = len({x.house for x in outcomes})
    fitted = sum(x.closed for x in outcomes)
    return say(
        "Too few to judge: {sets} of {houses}, {fitted} fitted. From "
        "{fewest_outcomes} sets, {fewest_houses} houses, and {fewest_each} that "
        "fitted and didn't on.",
        sets=_sets(len(outcomes)),
        houses=say_many("{count} house", "{count} houses", count=houses),
        fitted=fitted,
        fewest_outcomes=FEWEST_OUTCOMES,
        fewest_houses=FEWEST_HOUSES,
        fewest_each=FEWEST_EACH,
    )


def _row(row: ReliabilityRow) -> str:
    fitted = round(row.closed * row.count)
    low, high = (min(SUREST, round(100.0 * x)) for x in row.clustered)
    few = "" if row.is_enough else say("; too few by themselves")
    return say(
        "Called {surest} in 100: {fitted} of {count} fitted ({low} to {high} in 100{few}).",
        surest=min(SUREST, round(100.0 * row.called)),
        fitted=fitted,
        count=row.count,
        low=low,
        high=high,
        few=few,
    )


def _sets(count: int) -> str:
    return say("1 set") if count == 1 else say("{count} sets", count=count)


def _marks(learned: Learned) -> set[str]:
    return {seen.mark for term in learned.now() for seen in term.seen}
