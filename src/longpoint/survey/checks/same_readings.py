"""Two openings with the same figures: one of them is written down twice."""

from collections import Counter
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.speech.said import say
from longpoint.survey.checks.batches import batched
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import Place

FEWEST: Final = 4
"""Fewer equal readings than this may well be chance."""

SURE: Final = 6
"""Six equal readings of two openings have next to no chance where each opening is its own.

Of a thousand pairs of doors made to one size, one agrees in four 1 mm readings; of twenty thousand,
one in six (60 000 pairs drawn with the spreads of `docs/explanation/alarms.md`).
"""


def check_same_readings(house: House) -> tuple[Finding, ...]:
    """Return a finding for every opening whose readings all stand at an earlier one as well.

    Openings made alike may agree by chance: there it is a note at most.
    """
    findings = []
    earlier: list[Opening] = []
    for opening in batched(house).openings:
        twin = next((other for other in earlier if _is_same(other, opening)), None)
        if twin is None:
            earlier.append(opening)
            continue
        severity = _severity(twin, opening)
        if severity is not None:
            findings.append(_same(twin, opening, severity))
    return tuple(findings)


def _figures(opening: Opening) -> Counter[tuple[Place, float]]:
    return Counter((r.place, round(r.value_mm, 3)) for r in opening.readings.lengths)


def _is_same(one: Opening, other: Opening) -> bool:
    figures = _figures(one)
    return len(figures) >= FEWEST and figures == _figures(other)


def _severity(one: Opening, other: Opening) -> Severity | None:
    is_sure = len(_figures(other)) >= SURE
    if _are_made_alike(one, other):
        return Severity.NOTE if is_sure else None
    return Severity.STOP if is_sure else Severity.WARNING


def _are_made_alike(one: Opening, other: Opening) -> bool:
    has_batch = bool(one.batch) and one.batch == other.batch
    has_nominal = one.nominal is not None and one.nominal == other.nominal
    return has_batch or has_nominal


def _same(one: Opening, other: Opening, severity: Severity) -> Finding:
    count = len(_figures(other))
    do = {
        Severity.STOP: say(
            "Say which it is: {mark} is not counted in the order until then.",
            mark=other.mark,
        ),
        Severity.WARNING: say("Make sure that {mark} was read by itself.", mark=other.mark),
        Severity.NOTE: say(
            "They are made alike, so it may be chance; look at the notebook once more."
        ),
    }[severity]
    return Finding(
        code="same-readings",
        severity=severity,
        place=other.mark,
        read=say(
            "{mark} is the same as {mark_2} in all {count} readings.",
            mark=other.mark,
            mark_2=one.mark,
            count=count,
        ),
        wrong=say("The same opening written twice, or the wrong page?"),
        do=do,
    )
