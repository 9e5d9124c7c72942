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

MOST_NOTES: Final = 6
"""Notes of one kind are many in a house of doors; after so many they are only counted."""

SUREST: Final = 99

MODEL: Final = (
    "Model output: the ranges are meant to hold 90 times in 100, if single cuts and readings are "
    "out by what we suppose."
)


def learned_text(before: CrewFile, after: CrewFile, notes: Sequence[Finding]) -> str:
    """Return what was learned as it stands on the screen.

    Args:
        before: The crew's figures as they were.
        after: As they are now.
        notes: What is to be said besides.
    """
    old, new = _marks(before.learned), _marks(after.learned)
    told = f"{_sets(len(new - old))} new, {_sets(len(old))} known before."
    return paragraphs(
        (
            ("Learned from finished work", (told,)),
            ("What it says", (*_said(after.learned), MODEL) if new else ()),
            ("Mind", _notes(notes)),
            ("Forecasts and what came of them", _kept_words(after)),
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
        return (
            f"Your 45 cuts between {45.0 + low:.2f} and {45.0 + high:.2f} ({frames_words(term)}): "
            "leave the stop where it is."
        )
    return (
        f"Your frames come out between {abs(low):.1f} mm too {_way(low)} and {abs(high):.1f} mm "
        f"too {_way(high)} on the mean ({frames_words(term)}): nothing to correct."
    )


def _way(too_large_mm: float) -> str:
    return "large" if too_large_mm > 0.0 else "small"


def _name(key: Key) -> str:
    if isinstance(key, AngleKey):
        more = ", ".join(text for text in (key.setting, key.blade) if text)
        return f"Saw {key.saw} ({more})" if more else f"Saw {key.saw}"
    return f"Tape {key.tape}"


def _notes(notes: Sequence[Finding]) -> list[str]:
    shown: list[str] = []
    for code in dict.fromkeys(note.code for note in notes):
        alike = list(dict.fromkeys(note for note in notes if note.code == code))
        shown += [str(note) for note in alike[:MOST_NOTES]]
        if len(alike) > MOST_NOTES:
            places = ", ".join(note.place for note in alike[MOST_NOTES:])
            shown.append(f"The same of: {places}.")
    return shown


def _kept_words(crew: CrewFile) -> tuple[str, ...]:
    outcomes = [each.outcome for each in crew.forecasts]
    if not outcomes:
        return ()
    found = verdict(outcomes)
    if found is Verdict.TOO_FEW:
        return (_too_few(outcomes),)
    return (
        f"On the whole they {found.value}: {_sets(len(outcomes))} of "
        f"{len({x.house for x in outcomes})} houses.",
        *(_row(row) for row in reliability(outcomes)),
    )


def _too_few(outcomes: Sequence[Outcome]) -> str:
    houses = len({x.house for x in outcomes})
    fitted = sum(x.closed for x in outcomes)
    return (
        f"Too few to judge: {_sets(len(outcomes))} of {houses} house{'' if houses == 1 else 's'}, "
        f"{fitted} fitted. From {FEWEST_OUTCOMES} sets, {FEWEST_HOUSES} houses, and {FEWEST_EACH} "
        "that fitted and didn't on."
    )


def _row(row: ReliabilityRow) -> str:
    fitted = round(row.closed * row.count)
    low, high = (min(SUREST, round(100.0 * x)) for x in row.clustered)
    few = "" if row.is_enough else "; too few by themselves"
    return (
        f"Called {min(SUREST, round(100.0 * row.called))} in 100: {fitted} of {row.count} fitted "
        f"({low} to {high} in 100{few})."
    )


def _sets(count: int) -> str:
    return "1 set" if count == 1 else f"{count} sets"


def _marks(learned: Learned) -> set[str]:
    return {seen.mark for term in learned.now() for seen in term.seen}
