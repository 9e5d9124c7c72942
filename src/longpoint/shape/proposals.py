"""The slips that would mend readings that don't close.

Six tapes of four corners have one to spare: a slip is detected, never located. So every slip of
any one reading that would close the loop again is tried, and the plausible ones are proposed. A
proposal is never applied.
"""

from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import ShapeError
from longpoint.shape.opening_fit import fit_opening
from longpoint.shape.plausible import Plausible
from longpoint.shape.sightings import ENDS
from longpoint.shape.six_readings import SIX, normalised_misclosure
from longpoint.survey.checks.opposite_sides import may_be_raked
from longpoint.survey.checks.siblings import Siblings
from longpoint.survey.digits import Slip, slips_of
from longpoint.survey.house import House
from longpoint.survey.instruments import Tape
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Reading

MENDED: Final = 2.5
"""A slip mends the loop when it then closes within so many standard uncertainties; 2 would lose
one right proposal in twenty."""

BELIEVABLE: Final = 20.0
"""A proposal with a higher penalty leaves an opening that nobody would believe."""

FAR_LESS_LIKELY: Final = 9.2
"""What is a hundred times less likely than the best is left out: 2 ln 100."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """One reading that may be a slip, and what it would then be.

    Attributes:
        reading: The reading as written.
        slip: What it may have been meant to be.
        normalised: How well the loop closes with it.
        penalty: How unlikely it is, beside the others; smaller is likelier.
    """

    reading: Reading
    slip: Slip
    normalised: float
    penalty: float


def propose(
    house: House,
    opening: Opening,
    readings: OpeningReadings,
    siblings: Siblings | None = None,
) -> tuple[Proposal, ...]:
    """Return the slips of one reading that would close the loop again, the likeliest first.

    Args:
        house: The house, for its unit and tapes.
        opening: The opening.
        readings: What was read of this face.
        siblings: Openings like it, which make a proposal more or less plausible.

    Returns:
        Proposals that close and are plausible beside the opposite side, the lean, the middle
        readings and the siblings; none a hundred times less likely than the first.
    """
    if not readings.angles and not _has_six(readings):
        return ()
    tape = house.tape(readings.tape)
    plausible = Plausible(opening=opening, looks_raked=may_be_raked(readings), siblings=siblings)
    found = []
    for reading in readings.lengths:
        if reading.place not in ENDS or len(readings.at(reading.place)) > 1:
            continue
        for slip in slips_of(reading, house.units):
            changed = _changed(readings, reading, slip.value_mm)
            if not plausible.allows(changed, reading.place) or not _may_close(changed, tape):
                continue
            normalised = _normalised(changed, tape)
            if normalised is not None and normalised < MENDED:
                found.append(
                    Proposal(
                        reading=reading,
                        slip=slip,
                        normalised=normalised,
                        penalty=plausible.penalty(changed, reading.place, slip) + normalised**2,
                    )
                )
    found.sort(key=lambda p: p.penalty)
    most = min(BELIEVABLE, found[0].penalty + FAR_LESS_LIKELY) if found else 0.0
    return tuple(p for p in found if p.penalty < most)


def _may_close(readings: OpeningReadings, tape: Tape) -> bool:
    """Tell nearly, and generously, whether readings close; true where six aren't there to tell."""
    if not _has_six(readings):
        return True
    lengths_mm = {p: readings.mean_mm(p) or 0.0 for p in SIX}
    u_mm = {p: tape.private_u_mm(len(readings.at(p))) for p in SIX}
    normalised = normalised_misclosure(lengths_mm, u_mm)
    return normalised is not None and normalised < MENDED + 1.0


def _has_six(readings: OpeningReadings) -> bool:
    """Tell whether four sides and two diagonals were read: fewer have nothing to spare."""
    return all(readings.at(place) for place in SIX)


def _changed(readings: OpeningReadings, reading: Reading, value_mm: float) -> OpeningReadings:
    return replace(
        readings,
        lengths=tuple(
            replace(r, value_mm=value_mm) if r is reading else r for r in readings.lengths
        ),
    )


def _normalised(readings: OpeningReadings, tape: Tape) -> float | None:
    try:
        fit = fit_opening("", readings, tape)
    except ShapeError:
        return None
    misclosure = fit.fitted.misclosure
    return None if misclosure is None else misclosure.normalised
