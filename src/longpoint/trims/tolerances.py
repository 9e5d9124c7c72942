"""Published tolerances that a fix-out is judged by, as data.

None of them is the law: they are guides, warranty rules and customs, and what the contract says
comes first. They differ from place to place and from edition to edition, so each limit carries its
edition, its clause and the time after handover for which it holds. A guide that gives no number for
a subject says nothing, and then so does this module: no limit of another guide stands in for it.

Facts are given in our own words. How each is known stands in `Tolerance.standing`; what is only
remembered is left out of every answer unless it is asked for.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.quantities.length import MM_PER_INCH
from longpoint.speech.said import joined, say

ALWAYS: Final = (-1.0, math.inf)
ANY_HEIGHT: Final = (0.0, math.inf)
NOT_THE_LAW: Final = say("This is a guide, not the law; what your contract says comes first.")


class Jurisdiction(StrEnum):
    """Whose guide it is."""

    NEW_SOUTH_WALES = "au-nsw"
    VICTORIA = "au-vic"
    UNITED_KINGDOM = "uk"
    UNITED_STATES = "us"


class Subject(StrEnum):
    """What is judged."""

    JOINT_GAP = "gap at a mitre, butt or other joint of mouldings"
    SKIRTING_GAP = "gap between skirting and floor"
    WALL_PLUMB = "wall out of plumb over its height"
    STOREY_PLUMB = "wall out of plumb within one storey"
    WALL_FLATNESS = "wall off a 2 m straight edge"


class Standing(StrEnum):
    """How a limit is known."""

    READ = "read"
    """Read in a copy of the source, or where it is quoted; `Guide.note` says which."""
    REMEMBERED = "remembered"
    """From memory: not to be quoted before it is read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Guide:
    """One edition of one guide.

    Attributes:
        jurisdiction: Where it is used.
        name: Its name.
        edition: Its year; "undated" where the copy bears none.
        standing: How its limits are known.
        note: More on how they are known; may be empty.
    """

    jurisdiction: Jurisdiction
    name: str
    edition: str
    standing: Standing = Standing.READ
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tolerance:
    """One limit of one guide.

    Attributes:
        guide: The guide and its edition.
        clause: Its clause; empty where it isn't known.
        subject: What is judged.
        limit_mm: Largest value that passes; None where the guide asks for good work in words only.
        condition: What it hangs on, in plain words; may be empty.
        months: Holds later than the first and up to the second month after handover, which is
            itself month 0.
        heights_mm: Holds for walls higher than the first and up to the second height.
        bare_floor_only: Holds for floors without a covering only.
    """

    guide: Guide
    clause: str = ""
    subject: Subject
    limit_mm: float | None
    condition: str = ""
    months: tuple[float, float] = ALWAYS
    heights_mm: tuple[float, float] = ANY_HEIGHT
    bare_floor_only: bool = False

    @property
    def standing(self) -> Standing:
        """How the limit is known."""
        return self.guide.standing

    @property
    def source(self) -> str:
        """The guide, its edition and clause, as quoted."""
        parts = (self.guide.name, self.guide.edition, self.clause)
        return joined(" ", (part for part in parts if part))

    def holds(self, month: float, height_mm: float | None, *, on_bare_floor: bool) -> bool:
        """Tell whether the limit holds at a time and place; a height not given matches any."""
        is_in_time = self.months[0] < month <= self.months[1]
        over_mm, to_mm = self.heights_mm
        is_in_height = height_mm is None or over_mm < height_mm <= to_mm
        return is_in_time and is_in_height and (on_bare_floor or not self.bare_floor_only)


_NSW_2017: Final = Guide(
    jurisdiction=Jurisdiction.NEW_SOUTH_WALES,
    name="NSW Guide to Standards and Tolerances",
    edition="2017",
    note=say("read as quoted in inspection reports; five copies agree"),
)
_VICTORIA_2015: Final = Guide(
    jurisdiction=Jurisdiction.VICTORIA,
    name="Victorian Guide to Standards and Tolerances",
    edition="2015",
    standing=Standing.REMEMBERED,
    note=say("the NSW guide grew out of this one; the figures were not read in it"),
)
_UK_MANUAL_2014: Final = Guide(
    jurisdiction=Jurisdiction.UNITED_KINGDOM,
    name="UK warranty technical manual V7",
    edition="2014",
)
_NHBC_2019: Final = Guide(
    jurisdiction=Jurisdiction.UNITED_KINGDOM, name="NHBC Standards", edition="2019"
)
_NHBC_2020: Final = Guide(
    jurisdiction=Jurisdiction.UNITED_KINGDOM, name="NHBC Standards", edition="2020"
)
_US_MANUAL: Final = Guide(
    jurisdiction=Jurisdiction.UNITED_STATES,
    name="US builder's limited warranty manual, trim",
    edition="undated",
)
_NAHB: Final = Guide(
    jurisdiction=Jurisdiction.UNITED_STATES,
    name="NAHB Residential Construction Performance Guidelines",
    edition="undated",
    standing=Standing.REMEMBERED,
    note=say("neither the clause nor the figure was read in it"),
)

_JOINT: Final = Subject.JOINT_GAP
_SKIRTING: Final = Subject.SKIRTING_GAP
_PLUMB: Final = Subject.WALL_PLUMB
_STOREY: Final = Subject.STOREY_PLUMB
_FLAT: Final = Subject.WALL_FLATNESS

_EIGHTH_MM: Final = MM_PER_INCH / 8.0
_NO_GAP: Final = say("at handover, unless agreed in writing")
_IN_SIGHT: Final = say("where it shows from a normal place to stand")


def _limit(
    guide: Guide,
    clause: str,
    subject: Subject,
    limit_mm: float | None,
    condition: str = "",
    *,
    months: tuple[float, float] = ALWAYS,
    heights_mm: tuple[float, float] = ANY_HEIGHT,
    bare_floor_only: bool = False,
) -> Tolerance:
    """Return one limit, so that the table below stays a table."""
    return Tolerance(
        guide=guide,
        clause=clause,
        subject=subject,
        limit_mm=limit_mm,
        condition=condition,
        months=months,
        heights_mm=heights_mm,
        bare_floor_only=bare_floor_only,
    )


TOLERANCES: Final = (
    _limit(_NSW_2017, "cl. 11.1", _JOINT, 0.0, _NO_GAP, months=(-1.0, 0.0)),
    _limit(_NSW_2017, "cl. 11.1", _JOINT, 1.0, _IN_SIGHT, months=(0.0, 12.0)),
    _limit(_NSW_2017, "cl. 11.1", _JOINT, 2.0, _IN_SIGHT, months=(12.0, math.inf)),
    _limit(_NSW_2017, "cl. 11.1", _SKIRTING, 2.0, _IN_SIGHT, months=(-1.0, 24.0)),
    _limit(_VICTORIA_2015, "s. 11", _JOINT, 1.0, months=(0.0, 12.0)),
    _limit(_VICTORIA_2015, "s. 11", _JOINT, 2.0, months=(12.0, math.inf)),
    _limit(_UK_MANUAL_2014, "ch. 1", _STOREY, 10.0, "masonry"),
    _limit(_UK_MANUAL_2014, "ch. 1", _PLUMB, 20.0, "masonry"),
    _limit(_NHBC_2019, "cl. 9.1.3", _SKIRTING, 5.0, say("no floor covering"), bare_floor_only=True),
    _limit(_NHBC_2019, "cl. 9.1.3", _PLUMB, 8.0, heights_mm=(0.0, 2500.0)),
    _limit(_NHBC_2019, "cl. 9.1.3", _PLUMB, 12.0, heights_mm=(2500.0, math.inf)),
    _limit(_NHBC_2019, "cl. 9.1.3", _FLAT, 5.0, say("plastered or dry-lined")),
    _limit(_NHBC_2020, "cl. 9.1.3", _PLUMB, 8.0, heights_mm=(0.0, 3000.0)),
    _limit(_NHBC_2020, "cl. 9.1.3", _PLUMB, 12.0, heights_mm=(3000.0, math.inf)),
    _limit(_NHBC_2020, "cl. 9.1.3", _STOREY, 8.0, heights_mm=(3000.0, math.inf)),
    _limit(_NHBC_2020, "cl. 9.1.3", _FLAT, 3.0, say("plastered or dry-lined")),
    _limit(_NHBC_2020, "cl. 9.4.4", _JOINT, None, say("joints tight and neat, margin even")),
    _limit(_US_MANUAL, "", _JOINT, _EIGHTH_MM, say("put right once"), months=(-1.0, 12.0)),
    _limit(_NAHB, "", _JOINT, _EIGHTH_MM),
)


def tolerances(
    jurisdiction: Jurisdiction, edition: str = "", *, remembered: bool = False
) -> tuple[Tolerance, ...]:
    """Return the limits of the guides used in one place.

    Args:
        jurisdiction: Where.
        edition: Year of the edition; empty for every edition.
        remembered: True to have those known from memory only as well.

    Returns:
        Limits in the order of `TOLERANCES`; none when no such edition is held.

    Example:
        >>> [t.limit_mm for t in tolerances(Jurisdiction.NEW_SOUTH_WALES, "2017")]
        [0.0, 1.0, 2.0, 2.0]
        >>> tolerances(Jurisdiction.VICTORIA)
        ()
    """
    return tuple(
        t
        for t in TOLERANCES
        if t.guide.jurisdiction is jurisdiction
        and (not edition or t.guide.edition == edition)
        and (remembered or t.standing is Standing.READ)
    )


class Outcome(StrEnum):
    """What a guide says of one thing measured."""

    PASSES = "passes"
    FAILS = "fails"
    NO_NUMBER = "no number"
    """The guide asks for good work in words, or says nothing of it at that time and place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What a guide says, and by which limit.

    Attributes:
        outcome: Passes, fails, or no number.
        measured_mm: What was judged.
        by: The limit that decided; the wording without a number; None when nothing holds.
    """

    outcome: Outcome
    measured_mm: float
    by: Tolerance | None = None

    def __str__(self) -> str:
        """Return the verdict in plain words, with its source."""
        if self.by is None:
            return say("None of these guides says anything of it.")
        wording = say(" ({condition})", condition=self.by.condition) if self.by.condition else ""
        if self.by.limit_mm is None:
            return say(
                "{source} gives no number{wording}. {not_the_law}",
                source=self.by.source,
                wording=wording,
                not_the_law=NOT_THE_LAW,
            )
        return say(
            "{measured_mm:.2f} mm {outcome} by {source}: {limit_mm:.2f} mm at "
            "most{wording}. {not_the_law}",
            measured_mm=self.measured_mm,
            outcome=self.outcome.value,
            source=self.by.source,
            limit_mm=self.by.limit_mm,
            wording=wording,
            not_the_law=NOT_THE_LAW,
        )


def verdict(
    subject: Subject,
    measured_mm: float,
    among: Iterable[Tolerance],
    *,
    month: float = 0.0,
    height_mm: float | None = None,
    on_bare_floor: bool = False,
) -> Verdict:
    """Return what the guides say of one thing measured.

    Args:
        subject: What was measured.
        measured_mm: Gap, or distance off plumb or flat. >= 0.
        among: Limits to judge by, one guide's or several; the strictest that holds decides.
        month: Months since handover; 0 at handover. >= 0.
        height_mm: Height of the wall, where walls are judged; None when it isn't known, and then
            the limits of every height are taken to hold.
        on_bare_floor: True where the floor has no covering.

    Returns:
        The verdict, and the limit that decided.

    Example:
        >>> guide = tolerances(Jurisdiction.NEW_SOUTH_WALES, "2017")
        >>> [verdict(Subject.JOINT_GAP, 1.2, guide, month=m).outcome.value for m in (0, 6, 18)]
        ['fails', 'fails', 'passes']
    """
    holding = [
        t
        for t in among
        if t.subject is subject and t.holds(month, height_mm, on_bare_floor=on_bare_floor)
    ]
    numbered = [(t.limit_mm, t) for t in holding if t.limit_mm is not None]
    if not numbered:
        return Verdict(
            outcome=Outcome.NO_NUMBER,
            measured_mm=measured_mm,
            by=holding[0] if holding else None,
        )
    limit_mm, strictest = min(numbered, key=lambda pair: pair[0])
    is_within = measured_mm <= limit_mm + 1e-9
    return Verdict(
        outcome=Outcome.PASSES if is_within else Outcome.FAILS,
        measured_mm=measured_mm,
        by=strictest,
    )
