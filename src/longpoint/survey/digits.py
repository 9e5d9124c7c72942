"""What a figure may have been meant to be: the slips of pen, eye and tape.

A slip is proposed, never applied: the carpenter reads again.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.errors import QuantityError
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.length import MM_PER_INCH, Units, parse_length
from longpoint.speech.said import say
from longpoint.survey.readings import Reading


class SlipKind(StrEnum):
    """How a figure went wrong."""

    DIGITS_SWAPPED = "digits swapped"
    UPSIDE_DOWN = "6 and 9 upside down"
    MARK_MISCOUNTED = "mark miscounted"
    STARTED_FURTHER_ON = "tape started further on"


COMMONNESS: Final = {
    SlipKind.DIGITS_SWAPPED: 1.0,
    SlipKind.MARK_MISCOUNTED: 0.5,
    SlipKind.UPSIDE_DOWN: 0.25,
    SlipKind.STARTED_FURTHER_ON: 0.25,
}
"""How often each happens beside a swap of digits; assumed, no count was found. It only ranks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """One thing a reading may have been meant to be.

    Attributes:
        value_mm: What it would be without the slip.
        kind: How it went wrong.
        words: The slip in plain words ("digits swapped").
    """

    value_mm: float
    kind: SlipKind
    words: str


def slips_of(reading: Reading, units: Units) -> tuple[Slip, ...]:
    """Return what a reading may have been meant to be, worked on the figure as written.

    Args:
        reading: The reading; its written figure may hold more than its value, where a known
            offset of the tape was taken off.
        units: Unit of the house.

    Returns:
        Slips without repeats, the commonest kind first.
    """
    try:
        written_mm = parse_length(reading.written, units)
    except QuantityError:
        written_mm = reading.value_mm
    taken_off_mm = written_mm - reading.value_mm
    return tuple(
        Slip(value_mm=s.value_mm - taken_off_mm, kind=s.kind, words=s.words)
        for s in slips(written_mm, units)
        if s.value_mm > taken_off_mm
    )


def slips(written_mm: float, units: Units) -> tuple[Slip, ...]:
    """Return what a written length may have been meant to be.

    Args:
        written_mm: The length as written. >= 0. [mm]
        units: Unit in which its digits stand.

    Returns:
        Slips without repeats of a value, the commonest kind first.

    Example:
        >>> [s.value_mm for s in slips(1187.0, Units.MM) if s.kind is SlipKind.DIGITS_SWAPPED]
        [1817.0, 1178.0]
        >>> [s.value_mm for s in slips(609.5, Units.MM) if s.kind is SlipKind.UPSIDE_DOWN]
        [909.5, 606.5]
    """
    unit_mm = 1.0 if units is Units.MM else MM_PER_INCH
    marks = _MM_MARKS if units is Units.MM else _INCH_MARKS
    whole, rest_mm = _whole_and_rest(written_mm, unit_mm)
    found: dict[float, Slip] = {}
    for value, kind, words in (
        *((v, SlipKind.DIGITS_SWAPPED, say("digits swapped")) for v in _swapped(whole)),
        *_marks(whole, marks),
        *((v, SlipKind.UPSIDE_DOWN, say("6 and 9 read upside down")) for v in _turned(whole)),
    ):
        value_mm = value * unit_mm + rest_mm
        found.setdefault(round(value_mm, 6), Slip(value_mm=value_mm, kind=kind, words=words))
    if units is Units.MM and written_mm > MM_PER_INCH:
        burnt_mm = written_mm - MM_PER_INCH
        found.setdefault(
            round(burnt_mm, 6),
            Slip(
                value_mm=burnt_mm,
                kind=SlipKind.STARTED_FURTHER_ON,
                words=say("tape started at the 1 inch mark"),
            ),
        )
    return tuple(sorted(found.values(), key=lambda s: -COMMONNESS[s.kind]))


_Marks = tuple[tuple[int, SlipKind, str], ...]

_MM_MARKS: Final[_Marks] = (
    (10, SlipKind.MARK_MISCOUNTED, say("one centimetre mark miscounted")),
    (-10, SlipKind.MARK_MISCOUNTED, say("one centimetre mark miscounted")),
    (-100, SlipKind.STARTED_FURTHER_ON, say("tape started at the 100 mark")),
    (100, SlipKind.MARK_MISCOUNTED, say("a hundred lost")),
)

_INCH_MARKS: Final[_Marks] = (
    (1, SlipKind.MARK_MISCOUNTED, say("one inch miscounted")),
    (-1, SlipKind.STARTED_FURTHER_ON, say("tape started at the 1 inch mark")),
    (12, SlipKind.MARK_MISCOUNTED, say("a foot lost")),
    (-12, SlipKind.MARK_MISCOUNTED, say("a foot too many")),
)


def said(slip: Slip, units: Units) -> str:
    """Return a slip as it is proposed.

    Example:
        >>> said(slips(1187.0, Units.MM)[1], Units.MM)
        '1178 mm (digits swapped)'
    """
    return say(
        "{value} ({words})",
        value=format_with_unit(slip.value_mm, units),
        words=slip.words,
    )


def _whole_and_rest(written_mm: float, unit_mm: float) -> tuple[int, float]:
    whole = int(written_mm / unit_mm + 1e-9)
    return whole, written_mm - whole * unit_mm


def _swapped(whole: int) -> Iterator[int]:
    """Yield the number with each two neighbouring digits swapped."""
    digits = str(whole)
    for i in range(len(digits) - 1):
        if digits[i] != digits[i + 1] and not (i == 0 and digits[1] == "0"):
            yield int(digits[:i] + digits[i + 1] + digits[i] + digits[i + 2 :])


def _turned(whole: int) -> Iterator[int]:
    """Yield the number with each 6 or 9 turned upside down."""
    digits = str(whole)
    for i, digit in enumerate(digits):
        if digit in "69":
            yield int(digits[:i] + ("9" if digit == "6" else "6") + digits[i + 1 :])


def _marks(whole: int, marks: _Marks) -> Iterator[tuple[int, SlipKind, str]]:
    for step, kind, words in marks:
        if whole + step > 0:
            yield whole + step, kind, words
