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
from longpoint.speech.said import joined, say
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
                read=say(
                    "Read: {sightings}.",
                    sightings=joined(", ", (s.name for s in fit.network.sightings)),
                ),
                wrong=say("They give the shape, but nothing checks them: a slip would not show."),
                do=say("Read one more corner, or a length across."),
            )
        )
    return tuple(said)


def _corners_unchecked(house: House, mark: str, fit: OutlineFit) -> Finding:
    count = len(fit.fitted.corners)
    sides = joined(", ", (format_length(side_mm, house.units) for side_mm in fit.fitted.side_mm))
    return Finding(
        code="nothing-checks",
        severity=Severity.NOTE,
        place=mark,
        read=say("Its {count} corners were read, across and up.", count=count),
        wrong=say("They give the shape, but nothing checks them: a slip would not show."),
        do=say(
            "Hold the tape against the sides, anticlockwise from the bottom: {sides} {units}.",
            sides=sides,
            units=house.units.value,
        ),
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
        read=say(
            "Corner {number} comes out at {corner} degrees, give or take {u_deg:.1f}.",
            number=number,
            corner=format_angle(fit.fitted.corner_deg[number - 1]),
            u_deg=u_deg,
        ),
        wrong=say("What was read hardly fixes it: a mitre cut to it may stand well open."),
        do=say(
            "Read corner {number} with a gauge, or a length across from a corner beside it.",
            number=number,
        ),
    )


def _misclosure(
    house: House, mark: str, outline: OutlineReadings, network: Network, doubt: Doubt
) -> Finding:
    holds = doubt.strength >= HOLD_AT
    named = _believable(doubt.suspects)[:MOST_NAMED]
    shifted = _list_started_elsewhere(house, outline)
    first = shifted or (
        say("Most likely {figure}", figure=_figure(house, named[0]))
        if doubt.stands_out
        else say(
            "{named} would explain it",
            named=joined(say(" or "), (_figure(house, s) for s in named)),
        )
    )
    again = say(
        "Read {named} again",
        named=joined(say(", then "), (_named(s) for s in named)),
    )
    return Finding(
        code="misclosure" if holds else "closes-poorly",
        severity=Severity.STOP if holds else Severity.WARNING,
        place=mark,
        read=say("Read: {read}.", read=_read(house.units, network)),
        wrong=say(
            "They can't belong to one flat shape of {sides_mm} sides{sum}: {first}.",
            sides_mm=len(outline.sides_mm),
            sum=_sum_words(outline),
            first=first,
        )
        if holds
        else say("They close poorly{sum}: {first}.", sum=_sum_words(outline), first=first),
        do=say("Write the corners in that order, or read them again; nothing was changed.")
        if shifted
        else say("{again}; nothing was changed.", again=again)
        if holds
        else say(
            "{again} if you are there; the shape is the best fit of them all.",
            again=again,
        ),
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
            return say(
                "with their list beginning at corner {number} instead of corner 2 "
                "(between side 1-2 and side 2-3) they close",
                number=number,
            )
    return ""


def _read(units: Units, network: Network) -> str:
    return joined(
        ", ",
        (
            say("{s} {read} degrees", s=s.name, read=format_angle(s.read))
            if isinstance(s, Angle)
            else say("{s} {read}", s=s.name, read=format_with_unit(s.read, units))
            for s in network.sightings
        ),
    )


def _sum_words(outline: OutlineReadings) -> str:
    """Return what the corners add up to, where all were read and that alone is too far off."""
    count = len(outline.sides_mm)
    needed_deg = 180.0 * (count - 2)
    off_deg = sum(outline.angles_deg) - needed_deg
    if len(outline.angles_deg) < count or abs(off_deg) <= 3.0 * CORNER_U_DEG * count**0.5:
        return ""
    return say(
        " (the corners add up to {angles_deg:.1f} degrees, where {needed_deg:.0f} go round)",
        angles_deg=sum(outline.angles_deg),
        needed_deg=needed_deg,
    )


def _figure(house: House, suspect: Suspect) -> str:
    if isinstance(suspect.sighting, Angle):
        return say(
            "{named} {read} should be {mended} degrees",
            named=_named(suspect),
            read=format_angle(suspect.sighting.read),
            mended=format_angle(suspect.mended),
        )
    slip = guess_slip(
        suspect.sighting.read,
        suspect.mended,
        house.units,
        near_mm=max(NEAR_SLIP_MM, 2.0 * suspect.mended_u),
    )
    why = say(" ({slip}?)", slip=slip_words(slip, house.units)) if slip is not None else ""
    return say(
        "{named} {read} should be {mended}{why}",
        named=_named(suspect),
        read=format_length(suspect.sighting.read, house.units),
        mended=format_length(suspect.mended, house.units),
        why=why,
    )


def _named(suspect: Suspect) -> str:
    return suspect.sighting.name
