"""What is to be said of skirting along a stair."""

from collections.abc import Sequence
from statistics import fmean
from typing import Final

from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding, PieceError, Severity
from longpoint.quantities.formatting import (
    format_angle,
    format_length,
    format_tenth,
    format_unit,
    format_with_unit,
)
from longpoint.speech.said import joined, say
from longpoint.survey.profiles import Profile
from longpoint.survey.rooms import Run, RunEnd
from longpoint.trims.skirting_joints import plumb_height_mm

RAKE_PLUMB_STEP: Final = "rake-plumb-step"
RAKE_LENGTH_WORKED_OUT: Final = "rake-length-worked-out"
RAKE_DIFFERS: Final = "rake-differs"

SAME_RAKE_DEG: Final = 0.3
"""A run's rake and the stair's pitch may differ by this much: our limit, no source."""


def heights_differ(asked: Asked, level: Profile, pitch_deg: float) -> PieceError:
    """Return the refusal of a joint that halves the pitch between boards of two heights."""
    units = asked.units
    own_mm = asked.profile.width_mm
    plumb_mm = plumb_height_mm(own_mm, pitch_deg)
    flush = (
        say(' or write foot and head = "plumb": these two heights meet there')
        if abs(plumb_mm - level.width_mm) <= 1.0
        else ""
    )
    return PieceError(
        say(
            "{mark} is {own} high, the level skirting {width}.",
            mark=asked.mark,
            own=format_with_unit(own_mm, units),
            width=format_with_unit(level.width_mm, units),
        ),
        say("A joint that halves the pitch closes only between boards of one height."),
        say("Use one profile for both{flush}.", flush=flush),
    )


def plumb_step(asked: Asked, ends: Sequence[str], high_mm: float, level: Profile) -> Finding:
    """Return the warning that a plumb cut leaves a step between a raked and a level board."""
    units = asked.units
    step_mm = high_mm - level.width_mm
    return Finding(
        code=RAKE_PLUMB_STEP,
        severity=Severity.WARNING,
        place=asked.mark,
        read=say(
            "{mark} is cut plumb at the {ends}: it stands {high} {units} high "
            "there, the level skirting {width}.",
            mark=asked.mark,
            ends=joined(say(" and "), ends),
            high=format_tenth(high_mm, units),
            units=format_unit(units),
            width=format_with_unit(level.width_mm, units),
        ),
        wrong=say(
            "They can't be flush: the tops step by {step}.",
            step=format_tenth(abs(step_mm), units),
        ),
        do=say(
            "Cut both to half the pitch instead (bisect), use level skirting {high} "
            "high, or let the step stand against a block.",
            high=format_tenth(high_mm, units),
        ),
    )


def length_worked_out(asked: Asked, length_mm: float, u_mm: float) -> Finding:
    """Return the warning that a raked board's length follows from risers and goings."""
    units = asked.units
    nosings: Sequence[float] = asked.get("nosings", ())
    by_nosings = (
        say(
            "; {nosings} readings from nosing to nosing make it {asked}",
            nosings=len(nosings),
            asked=format_length(asked.get("risers") * fmean(nosings), units),
        )
        if nosings
        else ""
    )
    return Finding(
        code=RAKE_LENGTH_WORKED_OUT,
        severity=Severity.WARNING,
        place=asked.mark,
        read=say(
            "The length of {mark} was not read along the slope; from risers and "
            "going it is {length}{by_nosings}.",
            mark=asked.mark,
            length=format_with_unit(length_mm, units),
            by_nosings=by_nosings,
        ),
        wrong=say(
            "That is good to about {u}: what one going is out by counts once a step.",
            u=format_length(2.0 * u_mm, units),
        ),
        do=say(
            "Mark where the lower edges meet at foot and head, read from one to the "
            "other, and write it as length before you cut the second end."
        ),
    )


def runs_disagree(asked: Asked, pitch_deg: float) -> tuple[Finding, ...]:
    """Return a warning for every run of the room whose rake isn't this stair's pitch."""
    findings = []
    for run in asked.house.runs:
        if not run.room or run.room != asked.entry.room:
            continue
        for rake_deg in _rakes_deg(run):
            if abs(abs(rake_deg) - pitch_deg) > SAME_RAKE_DEG:
                findings.append(_rake_differs(asked, run, rake_deg, pitch_deg))
    return tuple(findings)


def _rakes_deg(run: Run) -> tuple[float, ...]:
    ends = ((run.left, run.left_rake_deg), (run.right, run.right_rake_deg))
    return tuple(deg for kind, deg in ends if kind is RunEnd.RAKE and deg is not None)


def _rake_differs(asked: Asked, run: Run, rake_deg: float, pitch_deg: float) -> Finding:
    halves = (format_angle(abs(rake_deg) / 2.0), format_angle(pitch_deg / 2.0))
    return Finding(
        code=RAKE_DIFFERS,
        severity=Severity.WARNING,
        place=asked.mark,
        read=say(
            "Run {mark} has a rake of {rake}; the stair of {mark_2} has a pitch of {pitch}.",
            mark=run.mark,
            rake=format_angle(abs(rake_deg)),
            mark_2=asked.mark,
            pitch=format_angle(pitch_deg),
        ),
        wrong=say(
            "The two ends of one joint would be cut {halves} and {halves_2}, so it opens.",
            halves=halves[0],
            halves_2=halves[1],
        ),
        do=say(
            "Write {pitch} at the run, or find out which of the two is wrong.",
            pitch=format_angle(pitch_deg),
        ),
    )
