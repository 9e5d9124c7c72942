"""The true shape of an opening from what the tape, level and gauge showed."""

from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import Finding, Severity, ShapeError
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.shape.arch_fit import fit_arch
from longpoint.shape.fitted import (
    FittedOpening,
    FittedOutline,
    Four,
    Residual,
    ShapeSource,
    UnreadSide,
)
from longpoint.shape.network import Network, Sighting, fit_network
from longpoint.shape.outline_findings import outline_findings
from longpoint.shape.outline_fit import fit_outline
from longpoint.shape.point import interior_angles_deg, side_lengths_mm
from longpoint.shape.sightings import (
    SQUARE,
    assumptions,
    first_guess,
    gauge_sightings,
    level_assumption,
    tape_sightings,
)
from longpoint.shape.unread_side import unread_side
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.instruments import Tape
from longpoint.survey.openings import Opening
from longpoint.survey.outlines import OutlineReadings
from longpoint.survey.readings import OpeningReadings, Place

GAUGE_LIMIT: Final = 3.5
"""A gauge further off than so many of its standard uncertainties is left out and said."""

MOST_APART_MM: Final = 15.0
"""Opposite sides further apart than this need a diagonal: our limit.

15 mm over a metre turn a side by 0.86 degrees, and sides alone can't tell which of the two.
"""

FLATTEST_DEG: Final = 175.0
"""A corner flatter than this is no corner of a four-sided opening."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningFit:
    """The fit of one face, and the gauge reading that was left out of it, if any."""

    fitted: FittedOpening
    left_out: tuple[Residual, ...] = ()


def fit_opening(mark: str, readings: OpeningReadings, tape: Tape, *, face: str = "") -> OpeningFit:
    """Return the shape of one face of an opening, fitted to its readings by least squares.

    Every reading weighs by the private part of its uncertainty; what the tape is out by on all of
    them together changes the size, not the fit, and is added to the doubt of the result. A gauge
    that contradicts a tape which closes by itself is left out and returned; what is assumed of a
    side that wasn't read is given up where the readings contradict it.

    Args:
        mark: Mark of the opening.
        readings: What was read of this face.
        tape: The tape that read it.
        face: "a" or "b" where both faces are trimmed.

    Returns:
        The fit, with what had to be assumed in plain words.

    Raises:
        ShapeError: The readings leave the shape open, or describe none.

    References:
        Weighted least squares on sides and diagonals; corners by propagation of covariance.
    """
    tape_seen = tape_sightings(readings, tape)
    start = first_guess(readings)
    angles = readings.angles
    left_out: tuple[Residual, ...] = ()
    unread: UnreadSide | None = None
    while True:
        gauges = (*gauge_sightings(angles), *level_assumption(angles))
        seen: tuple[Sighting, ...] = (*tape_seen, *gauges)
        assumed = tuple(a for a in assumptions(start, seen) if a.is_needed or unread is None)
        network = fit_network(start, (*seen, *assumed))
        odd = _contradicting_gauge(network)
        if odd is not None:
            left_out = (*left_out, odd)
            angles = tuple(a for a in angles if a.gauge.value != odd.name)
        elif unread is None and (found := unread_side(network)) is not None:
            unread = found
        else:
            break
    said = tuple(a.name for a in assumed)
    fitted = replace(_fitted(mark, face, network, tape, said), unread=unread)
    return OpeningFit(fitted=fitted, left_out=left_out)


def fit_openings(house: House) -> tuple[tuple[FittedOpening, ...], tuple[Finding, ...]]:
    """Fit every face of every opening of a house; trouble in one never stops the others."""
    fitted: list[FittedOpening] = []
    findings: list[Finding] = []
    for opening in house.openings:
        if opening.outline is not None:
            told, said = fit_told_outline(house, opening)
            fitted += [told] if isinstance(told, FittedOpening) else []
            findings += said if has_four_sides(opening.outline) else ()
            continue
        for face, readings in faces_of(opening):
            try:
                fit = fit_opening(opening.mark, readings, house.tape(readings.tape), face=face)
            except ShapeError as error:
                findings.append(_no_shape(opening.mark, error))
                continue
            shape, said = fit_arch(house, opening, fit.fitted)
            fitted.append(shape)
            findings += (*_said(house, opening.mark, fit, readings), *said)
    return tuple(fitted), tuple(dict.fromkeys(findings))


def fit_outlines(house: House) -> tuple[tuple[FittedOutline, ...], tuple[Finding, ...]]:
    """Fit every opening told by corners, or sides and angles, that hasn't four sides."""
    fitted: list[FittedOutline] = []
    findings: list[Finding] = []
    for opening in house.openings:
        if opening.outline is None or has_four_sides(opening.outline):
            continue
        shape, said = fit_told_outline(house, opening)
        fitted += [shape] if isinstance(shape, FittedOutline) else []
        findings += said
    return tuple(fitted), tuple(findings)


def fit_told_outline(
    house: House, opening: Opening
) -> tuple[FittedOpening | FittedOutline | None, tuple[Finding, ...]]:
    """Return the shape of an opening told otherwise than by four sides, None where it has none.

    A second face is its mirror, and is mirrored where its pieces are made.
    """
    if opening.outline is None:
        return None, ()
    face = "" if opening.faces == 1 else "a"
    tape = house.tape(opening.outline.tape)
    try:
        fit = fit_outline(opening.mark, opening.outline, tape, face=face)
    except ShapeError as error:
        return None, (_no_shape(opening.mark, error),)
    return fit.fitted, outline_findings(house, opening.mark, opening.outline, fit)


def has_four_sides(outline: OutlineReadings) -> bool:
    """Tell whether a shape told by corners or sides has four of them."""
    return 4 in (len(outline.corners), len(outline.sides_mm))


def faces_of(opening: Opening) -> tuple[tuple[str, OpeningReadings], ...]:
    """Return the faces of an opening that were read by themselves: ("", r), or ("a", r), ("b", r).

    A second face without readings of its own is the mirror of the first, and is mirrored where its
    pieces are made.
    """
    if opening.faces == 1:
        return (("", opening.readings),)
    if opening.readings_b is None:
        return (("a", opening.readings),)
    return (("a", opening.readings), ("b", opening.readings_b))


def mirrored(fitted: FittedOpening) -> FittedOpening:
    """Return the shape as seen from the other side of the wall: left and right change places."""
    bl, br, tr, tl = fitted.corners
    width_mm = br.x_mm
    corners = tuple(p._replace(x_mm=width_mm - p.x_mm) for p in (br, bl, tl, tr))
    angle, u, side, side_u = (
        fitted.corner_deg,
        fitted.corner_u_deg,
        fitted.side_mm,
        fitted.side_u_mm,
    )
    return replace(
        fitted,
        face="b",
        corners=(corners[0], corners[1], corners[2], corners[3]),
        corner_deg=Four(angle.second, angle.first, angle.fourth, angle.third),
        corner_u_deg=Four(u.second, u.first, u.fourth, u.third),
        side_mm=Four(side.first, side.fourth, side.third, side.second),
        side_u_mm=Four(side_u.first, side_u.fourth, side_u.third, side_u.second),
        level_deg=None if fitted.level_deg is None else -fitted.level_deg,
        sources=tuple(_mirrored_source(source) for source in fitted.sources),
    )


def _mirrored_source(source: ShapeSource) -> ShapeSource:
    bl, br, tr, tl = ((-dx, dy) for dx, dy in source.moves_mm)
    return replace(source, moves_mm=(br, bl, tl, tr))


def _contradicting_gauge(network: Network) -> Residual | None:
    """Return the worst gauge reading when it contradicts the rest, else None."""
    tape_names = {place.value for place in Place}
    tape_worst = max(
        (abs(r.over_u) for r in network.residuals() if r.name in tape_names), default=0.0
    )
    worst = max(
        (r for r in network.residuals() if r.name not in tape_names),
        key=lambda r: abs(r.over_u),
        default=None,
    )
    if worst is None or abs(worst.over_u) <= max(GAUGE_LIMIT, tape_worst):
        return None
    return worst


def _fitted(
    mark: str, face: str, network: Network, tape: Tape, assumed: tuple[str, ...]
) -> FittedOpening:
    corners = network.corners
    corner_deg = interior_angles_deg(corners)
    if any(not 180.0 - FLATTEST_DEG < angle < FLATTEST_DEG for angle in corner_deg):
        raise ShapeError(
            say("The sides and diagonals of this opening were put together."),
            say("They make no four-sided opening: a corner comes out flat or turned inside out."),
            say("Read all four sides and both diagonals again."),
        )
    tape_names = {place.value for place in Place}
    shared = tuple(
        tape.shared_u_mm(s.read) if s.name in tape_names else 0.0 for s in network.sightings
    )
    sides = ((0, 1), (1, 2), (2, 3), (3, 0))
    has_level = any(name.startswith(("plumb", "level")) for name in _names(network))
    return FittedOpening(
        mark=mark,
        face=face,
        corners=(corners[0], corners[1], corners[2], corners[3]),
        corner_deg=Four(*corner_deg),
        corner_u_deg=Four(
            *(network.angle_u_deg(i, (i - 1) % 4, (i + 1) % 4, shared) for i in range(4))
        ),
        side_mm=Four(*side_lengths_mm(corners)),
        side_u_mm=Four(*(network.length_u_mm(i, j, shared) for i, j in sides)),
        level_deg=network.turn_deg if has_level else None,
        residuals=network.residuals(),
        misclosure=network.misclosure(Place.FALLING.value),
        assumed=assumed,
        sources=network.sources(),
    )


def _names(network: Network) -> tuple[str, ...]:
    return tuple(s.name for s in network.sightings)


def _no_shape(mark: str, error: ShapeError) -> Finding:
    return Finding(
        code="no-shape",
        severity=Severity.STOP,
        place=mark,
        read=error.read,
        wrong=error.wrong,
        do=error.do,
    )


def _said(
    house: House, mark: str, fit: OpeningFit, readings: OpeningReadings
) -> tuple[Finding, ...]:
    said = []
    apart_mm = _most_apart_mm(readings)
    if SQUARE in fit.fitted.assumed and apart_mm > MOST_APART_MM:
        said.append(_diagonal_missing(house, mark, readings, apart_mm))
    elif fit.fitted.assumed:
        said.append(
            Finding(
                code="shape-assumed",
                severity=Severity.NOTE,
                place=mark,
                read=say(
                    "Read: {residuals}.",
                    residuals=joined(", ", (r.name for r in fit.fitted.residuals)),
                ),
                wrong=say("Assumed: {assumed}.", assumed=joined("; ", fit.fitted.assumed)),
                do=say("Read the missing sides and both diagonals to be sure."),
            )
        )
    elif fit.fitted.misclosure is None and fit.fitted.unread is None:
        said.append(
            Finding(
                code="nothing-checks",
                severity=Severity.NOTE,
                place=mark,
                read=say(
                    "Read: {residuals}.",
                    residuals=joined(", ", (r.name for r in fit.fitted.residuals)),
                ),
                wrong=say("They give the shape, but nothing checks them: a slip would not show."),
                do=say("Read the other diagonal as well."),
            )
        )
    said.extend(
        Finding(
            code="gauge-disagrees",
            severity=Severity.WARNING,
            place=mark,
            read=say(
                "The angle gauge at {odd} disagrees with the tape by {apart_deg:.1f} degrees.",
                odd=odd.name,
                apart_deg=_apart_deg(odd),
            ),
            wrong=say("The tape closes without it, so the shape is taken from the tape alone."),
            do=say("Was the gauge held off the lining? Read that angle again before cutting."),
        )
        for odd in fit.left_out
    )
    return tuple(said)


def _most_apart_mm(readings: OpeningReadings) -> float:
    return max(
        (
            abs(one_mm - other_mm)
            for one, other in ((Place.TOP, Place.BOTTOM), (Place.LEFT, Place.RIGHT))
            if (one_mm := readings.side_mm(one)) is not None
            and (other_mm := readings.side_mm(other)) is not None
        ),
        default=0.0,
    )


def _diagonal_missing(
    house: House, mark: str, readings: OpeningReadings, apart_mm: float
) -> Finding:
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
    return Finding(
        code="diagonal-missing",
        severity=Severity.STOP,
        place=mark,
        read=say(
            "Read: {figures} {units}, and no diagonal.",
            figures=figures,
            units=units.value,
        ),
        wrong=say(
            "Opposite sides differ by {apart} (our limit here is {most_apart}), "
            "and sides alone leave the corners free.",
            apart=format_with_unit(apart_mm, units),
            most_apart=format_with_unit(MOST_APART_MM, units),
        ),
        do=say("Read at least one diagonal, both to be sure."),
    )


def _apart_deg(odd: Residual) -> float:
    """Return what the rest of the readings say this one is out by."""
    return abs(odd.residual / odd.redundancy) if odd.redundancy > 1e-6 else abs(odd.residual)
