"""What is to be said of an opening of another shape."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, Severity, ShapeError
from longpoint.quantities.formatting import format_angle, format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.shape.network import Angle, Network, fit_network, is_determined
from longpoint.shape.outline_fit import OutlineFit, fit_outline
from longpoint.shape.outline_sightings import CORNER_U_DEG
from longpoint.shape.room_doubt import HOLD_AT, Doubt, Suspect, doubt_of
from longpoint.survey.checks.wall_slips import NEAR_SLIP_MM, guess_slip, slip_words
from longpoint.survey.house import House
from longpoint.survey.outlines import OutlineReadings

MOST_NAMED: Final = 3
"""So many suspects are named at most."""

MOST_CHANGE: Final = 0.5
"""No reading is said to be out by a larger part of itself: our limit."""

LOOSE_DEG: Final = 1.0
"""A corner known no better than this needs another reading: our limit."""


def outline_findings(
    house: House, mark: str, outline: OutlineReadings, fit: OutlineFit
) -> tuple[Finding, ...]:
    """Return what is to be said of one shape: that it doesn't close, or that nothing checks it."""
    if fit.network is None:
        return (_corners_unchecked(house, mark, fit),)
    doubt = doubt_of(fit.network)
    said = [*_loose(mark, fit)]
    if doubt is not None:
        doubt = _mended(fit.network, doubt)
        said.insert(0, _misclosure(house, mark, outline, fit.network, doubt))
    if fit.network.misclosure() is None:
        said.append(
            Finding(
                code="nothing-checks",
                severity=Severity.NOTE,
                place=mark,
                read=f"Read: {', '.join(s.name for s in fit.network.sightings)}.",
                wrong="They give the shape, but nothing checks them: a slip would not show.",
                do="Read one more corner, or a length across.",
            )
        )
    return tuple(said)


def _corners_unchecked(house: House, mark: str, fit: OutlineFit) -> Finding:
    count = len(fit.fitted.corners)
    sides = ", ".join(format_length(side_mm, house.units) for side_mm in fit.fitted.side_mm)
    return Finding(
        code="nothing-checks",
        severity=Severity.NOTE,
        place=mark,
        read=f"Its {count} corners were read, across and up.",
        wrong="They give the shape, but nothing checks them: a slip would not show.",
        do=f"Hold the tape against the sides, anticlockwise from the bottom: {sides} "
        f"{house.units.value}.",
    )


def _loose(mark: str, fit: OutlineFit) -> Iterator[Finding]:
    u_deg = max(fit.fitted.corner_u_deg)
    if u_deg <= LOOSE_DEG:
        return
    number = fit.fitted.corner_u_deg.index(u_deg) + 1
    yield Finding(
        code="outline-loose",
        severity=Severity.WARNING,
        place=mark,
        read=f"Corner {number} comes out at {format_angle(fit.fitted.corner_deg[number - 1])} "
        f"degrees, give or take {u_deg:.1f}.",
        wrong="What was read hardly fixes it: a mitre cut to it may stand well open.",
        do=f"Read corner {number} with a gauge, or a length across from a corner beside it.",
    )


def _misclosure(
    house: House, mark: str, outline: OutlineReadings, network: Network, doubt: Doubt
) -> Finding:
    holds = doubt.strength >= HOLD_AT
    named = _believable(doubt.suspects)[:MOST_NAMED]
    shifted = _list_started_elsewhere(house, outline)
    first = shifted or (
        f"Most likely {_figure(house, named[0])}"
        if doubt.stands_out
        else f"{' or '.join(_figure(house, s) for s in named)} would explain it"
    )
    again = f"Read {', then '.join(_named(s) for s in named)} again"
    return Finding(
        code="misclosure" if holds else "closes-poorly",
        severity=Severity.STOP if holds else Severity.WARNING,
        place=mark,
        read=f"Read: {_read(house.units, network)}.",
        wrong=f"They can't belong to one flat shape of {len(outline.sides_mm)} sides"
        f"{_sum_words(outline)}: {first}."
        if holds
        else f"They close poorly{_sum_words(outline)}: {first}.",
        do="Write the corners in that order, or read them again; nothing was changed."
        if shifted
        else f"{again}; nothing was changed."
        if holds
        else f"{again} if you are there; the shape is the best fit of them all.",
    )


def _mended(network: Network, doubt: Doubt) -> Doubt:
    """Return the doubt with what a reading that stands out should be, by the fit without it."""
    if not doubt.stands_out:
        return doubt
    wrong = doubt.suspects[0]
    rest = tuple(s for s in network.sightings if s is not wrong.sighting)
    if not is_determined(network.corners, rest):
        return doubt
    without = fit_network(network.corners, rest)
    mended, _ = wrong.sighting.predict(without.corners, without.turn_deg)
    return replace(doubt, suspects=(replace(wrong, mended=mended),))


def _believable(suspects: tuple[Suspect, ...]) -> tuple[Suspect, ...]:
    """Leave out what no slip explains: a length that would have to change by more than half."""
    kept = tuple(
        s for s in suspects if abs(s.mended - s.sighting.read) <= MOST_CHANGE * s.sighting.read
    )
    return kept or suspects


def _list_started_elsewhere(house: House, outline: OutlineReadings) -> str:
    """Return what explains all corners at once: their list begins one corner early or late."""
    angles = outline.angles_deg
    if len(angles) < len(outline.sides_mm):
        return ""
    for turned, number in (((*angles[1:], angles[0]), 1), ((angles[-1], *angles[:-1]), 3)):
        try:
            fit = fit_outline("", replace(outline, angles_deg=turned), house.tape(outline.tape))
        except ShapeError:
            continue
        if fit.network is not None and doubt_of(fit.network) is None:
            return (
                f"with their list beginning at corner {number} instead of corner 2 (between side "
                "1-2 and side 2-3) they close"
            )
    return ""


def _read(units: Units, network: Network) -> str:
    return ", ".join(
        f"{s.name} {format_angle(s.read)} degrees"
        if isinstance(s, Angle)
        else f"{s.name} {format_with_unit(s.read, units)}"
        for s in network.sightings
    )


def _sum_words(outline: OutlineReadings) -> str:
    """Return what the corners add up to, where all were read and that alone is too far off."""
    count = len(outline.sides_mm)
    needed_deg = 180.0 * (count - 2)
    off_deg = sum(outline.angles_deg) - needed_deg
    if len(outline.angles_deg) < count or abs(off_deg) <= 3.0 * CORNER_U_DEG * count**0.5:
        return ""
    return (
        f" (the corners add up to {sum(outline.angles_deg):.1f} degrees, where {needed_deg:.0f} "
        "go round)"
    )


def _figure(house: House, suspect: Suspect) -> str:
    if isinstance(suspect.sighting, Angle):
        return (
            f"{_named(suspect)} {format_angle(suspect.sighting.read)} should be "
            f"{format_angle(suspect.mended)} degrees"
        )
    slip = guess_slip(
        suspect.sighting.read,
        suspect.mended,
        house.units,
        near_mm=max(NEAR_SLIP_MM, 2.0 * suspect.mended_u),
    )
    why = f" ({slip_words(slip, house.units)}?)" if slip is not None else ""
    return (
        f"{_named(suspect)} {format_length(suspect.sighting.read, house.units)} should be "
        f"{format_length(suspect.mended, house.units)}{why}"
    )


def _named(suspect: Suspect) -> str:
    return suspect.sighting.name
