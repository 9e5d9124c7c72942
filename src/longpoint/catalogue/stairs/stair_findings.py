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
        ' or write foot and head = "plumb": these two heights meet there'
        if abs(plumb_mm - level.width_mm) <= 1.0
        else ""
    )
    return PieceError(
        f"{asked.mark} is {format_with_unit(own_mm, units)} high, the level skirting "
        f"{format_with_unit(level.width_mm, units)}.",
        "A joint that halves the pitch closes only between boards of one height.",
        f"Use one profile for both{flush}.",
    )


def plumb_step(asked: Asked, ends: Sequence[str], high_mm: float, level: Profile) -> Finding:
    """Return the warning that a plumb cut leaves a step between a raked and a level board."""
    units = asked.units
    step_mm = high_mm - level.width_mm
    return Finding(
        code=RAKE_PLUMB_STEP,
        severity=Severity.WARNING,
        place=asked.mark,
        read=f"{asked.mark} is cut plumb at the {' and '.join(ends)}: it stands "
        f"{format_tenth(high_mm, units)} {format_unit(units)} high there, the level skirting "
        f"{format_with_unit(level.width_mm, units)}.",
        wrong=f"They can't be flush: the tops step by {format_tenth(abs(step_mm), units)}.",
        do=f"Cut both to half the pitch instead (bisect), use level skirting "
        f"{format_tenth(high_mm, units)} high, or let the step stand against a block.",
    )


def length_worked_out(asked: Asked, length_mm: float, u_mm: float) -> Finding:
    """Return the warning that a raked board's length follows from risers and goings."""
    units = asked.units
    nosings: Sequence[float] = asked.get("nosings", ())
    by_nosings = (
        f"; {len(nosings)} readings from nosing to nosing make it "
        f"{format_length(asked.get('risers') * fmean(nosings), units)}"
        if nosings
        else ""
    )
    return Finding(
        code=RAKE_LENGTH_WORKED_OUT,
        severity=Severity.WARNING,
        place=asked.mark,
        read=f"The length of {asked.mark} was not read along the slope; from risers and going it "
        f"is {format_with_unit(length_mm, units)}{by_nosings}.",
        wrong=f"That is good to about {format_length(2.0 * u_mm, units)}: what one going is out "
        "by counts once a step.",
        do="Mark where the lower edges meet at foot and head, read from one to the other, and "
        "write it as length before you cut the second end.",
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
        read=f"Run {run.mark} has a rake of {format_angle(abs(rake_deg))}; the stair of "
        f"{asked.mark} has a pitch of {format_angle(pitch_deg)}.",
        wrong=f"The two ends of one joint would be cut {halves[0]} and {halves[1]}, so it opens.",
        do=f"Write {format_angle(pitch_deg)} at the run, or find out which of the two is wrong.",
    )
