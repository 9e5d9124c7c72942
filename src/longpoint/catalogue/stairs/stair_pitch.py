"""How steep a stair is: by tape from its rise and going, by gauge, and whether the two agree."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean
from typing import Final

from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding, PieceError, Severity
from longpoint.quantities.formatting import format_angle, format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.keys import Key, Kind

PITCH_DIFFERS: Final = "pitch-differs"
PITCH_UNEVEN: Final = "pitch-uneven"
PITCH_BY_GAUGE: Final = "pitch-by-gauge"
NOSING_ODD: Final = "nosing-odd"

SAME_PITCH_DEG: Final = 0.3
"""Tape and gauge may differ by this much: our limit, no source."""

UNEVEN_PITCH_DEG: Final = 0.6
"""Readings of the gauge further apart don't belong to one straight line: our limit, no source."""

ODD_NOSING_MM: Final = 3.0
"""A step further off the others is worth another look: our limit, no source."""

STEEPEST_DEG: Final = 60.0
"""Steeper is a ladder."""

CLIMBS: Final = Key(
    name="climbs",
    kind=Kind.CHOICE,
    meaning=say("To which side the stair climbs, facing its wall."),
    example="right",
    default="right",
    left_out="right",
    choices=("left", "right"),
)

PITCH_KEYS: Final = (
    Key(
        name="pitch",
        kind=Kind.ANGLES,
        meaning=say("Pitch by angle gauge on the string, in degrees, at several places."),
        example=[38.0, 38.1, 37.9],
        left_out=say("by tape alone"),
        low=1.0,
        high=STEEPEST_DEG,
    ),
    Key(
        name="risers",
        kind=Kind.COUNT,
        meaning=say("How many risers from floor to landing."),
        example=13,
        left_out=say("the pitch is by gauge alone"),
        low=1.0,
        high=50.0,
    ),
    Key(
        name="total_rise",
        kind=Kind.READING,
        meaning=say("Plumb from the floor to the landing's floor."),
        example=2357,
        left_out=say("the pitch is by gauge alone"),
        above=True,
    ),
    Key(
        name="going",
        kind=Kind.READING,
        meaning=say("Level from the face of one riser to the next."),
        example=232,
        left_out=say("from the nosings, where they were read"),
        above=True,
    ),
    Key(
        name="nosings",
        kind=Kind.READINGS,
        meaning=say("From nosing to nosing, along the slope, step by step."),
        example=[294, 294, 295],
        left_out=say("not read"),
        above=True,
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class StairPitch:
    """How steep a stair is.

    Attributes:
        pitch_deg: The pitch to work by: by tape where that was read.
        gauge_deg: Mean of the gauge's readings; None where there are none.
        rise_mm: One riser; None where it wasn't read.
        going_mm: One going; None where it wasn't read.
        step_mm: From nosing to nosing along the slope; None where it follows from nothing.
    """

    pitch_deg: float
    gauge_deg: float | None = None
    rise_mm: float | None = None
    going_mm: float | None = None
    step_mm: float | None = None

    @property
    def is_by_tape(self) -> bool:
        """Tell whether the pitch comes from the tape."""
        return self.rise_mm is not None and self.going_mm is not None


def stair_pitch(asked: Asked) -> StairPitch:
    """Return how steep the stair of an entry is.

    Raises:
        PieceError: Neither the tape's nor the gauge's readings are there, or they give no stair.
    """
    gauges: Sequence[float] = asked.get("pitch", ())
    nosings: Sequence[float] = asked.get("nosings", ())
    gauge_deg = fmean(gauges) if gauges else None
    rise_mm = _rise_mm(asked)
    going_mm: float | None = asked.get("going")
    if rise_mm is not None and going_mm is None and nosings:
        going_mm = _going_mm(asked, rise_mm, fmean(nosings))
    if rise_mm is not None and going_mm is not None:
        pitch_deg = math.degrees(math.atan2(rise_mm, going_mm))
        step_mm = math.hypot(rise_mm, going_mm)
        if pitch_deg > STEEPEST_DEG:
            raise _no_stair(asked, rise_mm, going_mm)
        return StairPitch(
            pitch_deg=pitch_deg,
            gauge_deg=gauge_deg,
            rise_mm=rise_mm,
            going_mm=going_mm,
            step_mm=step_mm,
        )
    if gauge_deg is None:
        raise PieceError(
            say("{mark} is written without a pitch.", mark=asked.mark),
            say("Neither the gauge's readings nor risers, total rise and going are there."),
            say("Write risers, total_rise and going; write pitch as well, to compare."),
        )
    return StairPitch(
        pitch_deg=gauge_deg,
        gauge_deg=gauge_deg,
        rise_mm=rise_mm,
        step_mm=fmean(nosings) if nosings else None,
    )


def pitch_findings(asked: Asked, stair: StairPitch) -> tuple[Finding, ...]:
    """Return how tape and gauge agree on the pitch, and which steps stand out of the line."""
    findings = [
        *_gauge_findings(asked, stair),
        *_uneven_findings(asked),
        *_nosing_findings(asked, stair),
    ]
    if not stair.is_by_tape:
        findings.append(
            Finding(
                code=PITCH_BY_GAUGE,
                severity=Severity.NOTE,
                place=asked.mark,
                read=say(
                    "The pitch of {mark} is {pitch} by gauge.",
                    mark=asked.mark,
                    pitch=format_angle(stair.pitch_deg),
                ),
                wrong=say("No rise and going were read to prove it."),
                do=say(
                    "Write risers, total_rise and going: a tape over the whole "
                    "stair knows its pitch better than a gauge on one step."
                ),
            )
        )
    return tuple(findings)


def _rise_mm(asked: Asked) -> float | None:
    risers, total_mm = asked.get("risers"), asked.get("total_rise")
    return None if risers is None or total_mm is None else total_mm / risers


def _going_mm(asked: Asked, rise_mm: float, step_mm: float) -> float:
    if step_mm <= rise_mm:
        raise PieceError(
            say(
                "{mark} has risers of {rise} and nosings {step} apart along the slope.",
                mark=asked.mark,
                rise=format_with_unit(rise_mm, asked.units),
                step=format_with_unit(step_mm, asked.units),
            ),
            say("Nosings can't be nearer to each other than one riser is high."),
            say("Read both again."),
        )
    return math.sqrt(step_mm**2 - rise_mm**2)


def _no_stair(asked: Asked, rise_mm: float, going_mm: float) -> PieceError:
    return PieceError(
        say(
            "{mark} has risers of {rise} and goings of {going}.",
            mark=asked.mark,
            rise=format_with_unit(rise_mm, asked.units),
            going=format_with_unit(going_mm, asked.units),
        ),
        say(
            "That is steeper than {steepest} degrees, which is a ladder.",
            steepest=format_angle(STEEPEST_DEG),
        ),
        say("Look at the number of risers, then read total rise and going again."),
    )


def _gauge_findings(asked: Asked, stair: StairPitch) -> list[Finding]:
    gauge_deg = stair.gauge_deg
    if gauge_deg is None or not stair.is_by_tape:
        return []
    if abs(gauge_deg - stair.pitch_deg) <= SAME_PITCH_DEG:
        return []
    tape = format_angle(stair.pitch_deg)
    return [
        Finding(
            code=PITCH_DIFFERS,
            severity=Severity.WARNING,
            place=asked.mark,
            read=say(
                "The gauge reads {gauge} on the stair of {mark}; rise and going give {tape}.",
                gauge=format_angle(gauge_deg),
                mark=asked.mark,
                tape=tape,
            ),
            wrong=say(
                "They differ by {gauge}. The tape goes over the whole stair, so {tape} was used.",
                gauge=format_angle(abs(gauge_deg - stair.pitch_deg)),
                tape=tape,
            ),
            do=say(
                "Look whether the gauge stood on a bump or a single worn step, and "
                "count the risers again."
            ),
        )
    ]


def _uneven_findings(asked: Asked) -> list[Finding]:
    gauges: Sequence[float] = asked.get("pitch", ())
    if not gauges or max(gauges) - min(gauges) <= UNEVEN_PITCH_DEG:
        return []
    return [
        Finding(
            code=PITCH_UNEVEN,
            severity=Severity.WARNING,
            place=asked.mark,
            read=say(
                "The gauge reads from {gauges} to {gauges_2} along the stair of {mark}.",
                gauges=format_angle(min(gauges)),
                gauges_2=format_angle(max(gauges)),
                mark=asked.mark,
            ),
            wrong=say("A straight board doesn't lie on a line that changes its slope so much."),
            do=say(
                "Hold a straight edge or a string along it: where it is hollow or "
                "bowed the board has to be scribed, and its ends cut to the pitch "
                "there."
            ),
        )
    ]


def _nosing_findings(asked: Asked, stair: StairPitch) -> list[Finding]:
    nosings: Sequence[float] = asked.get("nosings", ())
    if len(nosings) < 2:
        return []
    mean_mm = stair.step_mm if stair.is_by_tape and stair.step_mm else fmean(nosings)
    odd = [
        (number, step_mm)
        for number, step_mm in enumerate(nosings, start=1)
        if abs(step_mm - mean_mm) > ODD_NOSING_MM
    ]
    if not odd:
        return []
    said = joined(
        ", ", (say("{mm} at step {n}", mm=format_length(mm, asked.units), n=n) for n, mm in odd[:4])
    )
    return [
        Finding(
            code=NOSING_ODD,
            severity=Severity.WARNING,
            place=asked.mark,
            read=say(
                "Nosing to nosing is {mean} on the stair of {mark}, but {said}.",
                mean=format_with_unit(mean_mm, asked.units),
                mark=asked.mark,
                said=said,
            ),
            wrong=say("Either that was misread, or the nosings don't lie in one line there."),
            do=say(
                "Read it again; hold a straight edge over the nosings before you cut to their line."
            ),
        )
    ]
