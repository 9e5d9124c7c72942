"""What is said of one thing that was read more than once."""

from collections.abc import Callable, Iterable, Sequence
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, say
from longpoint.survey.digits import Slip, SlipKind

REPEATS_DISAGREE: Final = "repeats-disagree"
READING_LEFT_OUT: Final = "reading-left-out"

SLIP_WORDS: Final = {
    SlipKind.DIGITS_SWAPPED: say("perhaps by digits swapped"),
    SlipKind.UPSIDE_DOWN: say("perhaps by a 6 and a 9 read upside down"),
    SlipKind.MARK_MISCOUNTED: say("perhaps by a mark miscounted"),
    SlipKind.STARTED_FURTHER_ON: say("perhaps by a tape that started further on"),
}
"""What may have happened, at the end of a sentence that says how far readings are apart."""


def agreeing_slip(
    values_mm: Sequence[float], slips: Sequence[Iterable[Slip]], apart_mm: float
) -> SlipKind | None:
    """Return the kind of slip that would make several lengths agree; None where there is none.

    Which of them it befell isn't told: digits swapped back are digits swapped.

    Args:
        values_mm: The lengths.
        slips: What each of them may have been meant to be.
        apart_mm: How far two that agree may be apart.
    """
    for index, meant in enumerate(slips):
        others = [*values_mm[:index], *values_mm[index + 1 :]]
        for slip in meant:
            if all(abs(slip.value_mm - other_mm) <= apart_mm for other_mm in others):
                return slip.kind
    return None


def figures_of(values: Sequence[float], figure: Callable[[float], str]) -> str:
    """Return readings in a row."""
    return joined(say(" and "), map(figure, values))


def length_figures(lengths_mm: Sequence[float], units: Units) -> str:
    """Return lengths in a row, without their unit."""
    return figures_of(lengths_mm, lambda length_mm: format_length(length_mm, units))


def disagree_finding(
    place: str,
    read: str,
    apart: str,
    severity: Severity,
    again: str,
    slip: SlipKind | None = None,
) -> Finding:
    """Return the finding of readings that contradict each other.

    Args:
        place: Where it is said.
        read: What was read, a whole sentence.
        apart: How far the readings are apart, with the unit.
        severity: How bad that is.
        again: What to read again, without a full stop.
        slip: By what slip they may be apart.
    """
    return Finding(
        code=REPEATS_DISAGREE,
        severity=severity,
        place=place,
        read=read,
        wrong=say(
            "They are {most} apart, more than a careful hand leaves; {slip}.",
            most=apart,
            slip=SLIP_WORDS[slip],
        )
        if slip
        else say("They are {most} apart, more than a careful hand leaves.", most=apart),
        do=say("{again}.", again=again),
    )


def left_out_finding(place: str, read: str, stay: str, left: str) -> Finding:
    """Return the note that a third reading has decided.

    Args:
        place: Where it is said.
        read: What was read, a whole sentence.
        stay: The figures that stand.
        left: Those that don't.
    """
    return Finding(
        code=READING_LEFT_OUT,
        severity=Severity.NOTE,
        place=place,
        read=read,
        wrong=say("{stay} agree, so {left} is left out.", stay=stay, left=left),
        do=say("Nothing, if it was a slip; else read it once more."),
    )
