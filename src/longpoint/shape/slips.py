"""What is said of readings that don't close."""

from collections.abc import Iterator
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_tenth
from longpoint.shape.fitted import FittedOpening, Residual
from longpoint.shape.least_squares import as_normal
from longpoint.shape.opening_fit import faces_of
from longpoint.shape.proposals import FAR_LESS_LIKELY, Proposal, propose
from longpoint.shape.swapped_diagonals import check_diagonals
from longpoint.shape.unread_side import unread_side_finding
from longpoint.speech.said import joined, say
from longpoint.survey.checks.opposite_sides import may_be_raked
from longpoint.survey.checks.siblings import Siblings, all_siblings
from longpoint.survey.digits import said
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import DIAGONALS, SIDES, OpeningReadings

LOOK_AT: Final = 3.0
"""Readings that miss by more standard uncertainties than this close poorly, which is a warning.

A careful hand does so about 4 times in 1000 (`docs/explanation/alarms.md`), a hurried one oftener.
"""

HOLD_AT: Final = 4.0
"""From about here on a slip is likelier than a shaky hand, and the opening is held.

Odds: one opening in a hundred with a slip (assumed), shared among some sixty slips of six readings,
against noise as unlikely as 4 standard uncertainties: 1/6000 to exp(-8), about 1 to 2; at 4.2 even.
"""

MOST_PROPOSALS: Final = 3


def check_closure(house: House, openings: tuple[FittedOpening, ...]) -> tuple[Finding, ...]:
    """Return what is to be said of openings whose readings don't belong together.

    Args:
        house: The house as read.
        openings: Its fitted openings, each face by itself.

    Returns:
        A stop for every face that doesn't close, a warning where it closes poorly, a stop where a
        gauge says that the diagonals are swapped, and a note where sides far apart close and so
        are real.
    """
    fitted = {(f.mark, f.face): f for f in openings}
    siblings = all_siblings(house)
    findings: list[Finding] = []
    for opening in house.openings:
        if opening.outline is not None:
            continue
        for face, readings in faces_of(opening):
            found = fitted.get((opening.mark, face))
            alike = siblings.get(opening.mark)
            if found is not None:
                findings.extend(_check_face(house, opening, readings, found, alike))
            else:
                findings.extend(_no_shape_but(house, opening, readings, alike))
    return tuple(dict.fromkeys(findings))


def _check_face(
    house: House,
    opening: Opening,
    readings: OpeningReadings,
    fitted: FittedOpening,
    siblings: Siblings | None,
) -> Iterator[Finding]:
    if fitted.unread is not None and not opening.raked:
        yield unread_side_finding(house, fitted, fitted.unread)
    misclosure = fitted.misclosure
    if misclosure is None:
        return
    if misclosure.normalised > HOLD_AT:
        proposals = propose(house, opening, readings, siblings)
        yield _misclosure(house, opening, fitted, proposals)
        return
    if misclosure.normalised > LOOK_AT:
        yield _closes_poorly(house, opening, fitted)
    yield from check_diagonals(house, opening, readings)
    if not opening.raked and may_be_raked(readings):
        yield _raked(house, opening, readings)


def _no_shape_but(
    house: House, opening: Opening, readings: OpeningReadings, siblings: Siblings | None
) -> Iterator[Finding]:
    """Yield the slips that would give a shape to readings that describe none."""
    proposals = propose(house, opening, readings, siblings)
    if not proposals:
        return
    units = house.units
    figures = joined(
        ", ",
        (
            say(
                "{place} {value}",
                place=r.place.value,
                value=format_length(r.value_mm, units),
            )
            for r in readings.lengths
        ),
    )
    yield Finding(
        code="misclosure",
        severity=Severity.STOP,
        place=opening.mark,
        read=say("Read: {figures} {units}.", figures=figures, units=units.value),
        wrong=say(
            "They can't belong to one flat four-sided opening, but with one slip they would."
        ),
        do=_perhaps(house, proposals),
    )


def _misclosure(
    house: House, opening: Opening, fitted: FittedOpening, proposals: tuple[Proposal, ...]
) -> Finding:
    return Finding(
        code="misclosure",
        severity=Severity.STOP,
        place=opening.mark,
        read=_figures(house, fitted),
        wrong=say(
            "They can't belong to one flat four-sided opening: by the others the {should_be}.",
            should_be=_should_be(house, fitted),
        ),
        do=_what_to_do(house, fitted, proposals),
    )


def _closes_poorly(house: House, opening: Opening, fitted: FittedOpening) -> Finding:
    return Finding(
        code="closes-poorly",
        severity=Severity.WARNING,
        place=opening.mark,
        read=_figures(house, fitted),
        wrong=say(
            "They close poorly: by the others the {should_be}; more likely a "
            "reading taken in a hurry than a slip.",
            should_be=_should_be(house, fitted),
        ),
        do=say("Read one diagonal again if you are there; the shape is the best fit of them all."),
    )


def _figures(house: House, fitted: FittedOpening) -> str:
    units = house.units
    face = say(" (face {face})", face=fitted.face) if fitted.face else ""
    tapes = joined(
        ", ",
        (
            say("{r} {read}", r=r.name, read=format_length(r.read, units))
            for r in fitted.residuals
            if r.name in _TAPE_NAMES
        ),
    )
    return say("Read{face}: {tapes} {units}.", face=face, tapes=tapes, units=units.value)


def _should_be(house: House, fitted: FittedOpening) -> str:
    against = _against(fitted)
    should_mm = against.read - against.residual / max(against.redundancy, 1e-6)
    if against.name not in _TAPE_NAMES:
        return say(
            "{against} should be {should_mm:.1f}, not {read:.1f} degrees",
            against=against.name,
            should_mm=should_mm,
            read=against.read,
        )
    return say(
        "{named} should be {should}, not {read}",
        named=_named(against.name),
        should=format_tenth(should_mm, house.units),
        read=format_length(against.read, house.units),
    )


def _perhaps(house: House, proposals: tuple[Proposal, ...]) -> str:
    units = house.units
    likely = joined(
        say(", or "),
        (
            say(
                "{place} {value} should be {said}",
                place=p.reading.place.value,
                value=format_length(p.reading.value_mm, units),
                said=said(p.slip, units),
            )
            for p in proposals[:MOST_PROPOSALS]
        ),
    )
    first = proposals[0].reading.place.value
    return say(
        "Perhaps {likely}: read the {named} again first; nothing was changed.",
        likely=likely,
        named=_named(first),
    )


def _what_to_do(house: House, fitted: FittedOpening, proposals: tuple[Proposal, ...]) -> str:
    if proposals:
        return _perhaps(house, proposals)
    odd = _standing_out(fitted)
    if odd is not None:
        return say(
            "The {named} stands out from the rest: read it again first.",
            named=_named(odd.name),
        )
    tapes = sum(r.name in _TAPE_NAMES for r in fitted.residuals)
    return say(
        "Any one of the {counts} may be the wrong one: read the diagonals again "
        "first, then the sides.",
        counts=_COUNTS.get(tapes, str(tapes)),
    )


def _against(fitted: FittedOpening) -> Residual:
    """Return the reading whose predicted value is told: the falling diagonal, or the worst."""
    last = next((r for r in fitted.residuals if r.name == DIAGONALS[1].value), None)
    worst = _standing_out(fitted)
    if worst is not None:
        return worst
    if last is not None and last.redundancy > 1e-6:
        return last
    return max(fitted.residuals, key=lambda r: abs(r.over_u))


def _standing_out(fitted: FittedOpening) -> Residual | None:
    """Return the one reading that is blamed, None when the residuals can't tell.

    References:
        Leaving one reading out lowers chi-squared by its standardised residual squared; so the
        next best is exp((first - next) / 2) times less likely.
    """
    misclosure = fitted.misclosure
    if misclosure is None or misclosure.spare < 2:
        return None
    ranked = sorted(fitted.residuals, key=lambda r: abs(r.over_u), reverse=True)
    first, second = ranked[0].over_u ** 2, ranked[1].over_u ** 2
    rest = as_normal(max(0.0, misclosure.chi_squared - first), misclosure.spare - 1)
    return ranked[0] if first - second > FAR_LESS_LIKELY and rest < LOOK_AT else None


def _raked(house: House, opening: Opening, readings: OpeningReadings) -> Finding:
    units = house.units
    figures = joined(
        ", ",
        (
            say("{place} {value}", place=place.value, value=format_length(value_mm, units))
            for place in SIDES
            if (value_mm := readings.side_mm(place)) is not None
        ),
    )
    return Finding(
        code="raked-head",
        severity=Severity.NOTE,
        place=opening.mark,
        read=say("Read: {figures} {units}.", figures=figures, units=units.value),
        wrong=say(
            "Opposite sides are far apart, but both diagonals agree with them: "
            "it is taken as a raked opening."
        ),
        do=say("Say raked = true for it to have this settled."),
    )


def _named(name: str) -> str:
    return say("{name} diagonal", name=name) if name in _DIAGONAL_NAMES else name


_DIAGONAL_NAMES: Final = frozenset(place.value for place in DIAGONALS)
_TAPE_NAMES: Final = frozenset(place.value for place in (*SIDES, *DIAGONALS)) | {"width", "height"}
_COUNTS: Final = {4: "four", 5: "five", 6: "six"}
