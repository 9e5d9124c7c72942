"""How an opening could turn out: each further reading, each other way of cutting it."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import PieceError, ShapeError
from longpoint.forecast.budget.house_budget import STOP_BLOCK_MM, is_saw_open, proved_saw
from longpoint.forecast.budget.records import ErrorBudget, ErrorName
from longpoint.forecast.face_lines import FaceLines, WeighedFace, weighed_face
from longpoint.forecast.planned_face import PlannedFace, planned_face
from longpoint.forecast.records import Step
from longpoint.forecast.terms import frame_errors
from longpoint.shape.fitted import ShapeSource, SourceKind
from longpoint.shape.opening_fit import fit_opening
from longpoint.shape.point import Point, interior_angles_deg
from longpoint.shape.sightings import ENDS, SQUARE
from longpoint.survey.house import House
from longpoint.survey.openings import Method, Mitres
from longpoint.survey.readings import (
    BEVELS,
    DIAGONALS,
    SIDES,
    AngleReading,
    Gauge,
    OpeningReadings,
    Place,
    Reading,
)

BEVEL_U_DEG: Final = 0.15
"""Of a corner read with care with a bevel gauge; assumed."""

STRAIGHTEDGE_BOW_MM: Final = 0.15
"""Left of a reveal's bow once a straightedge was laid to it; assumed."""

_NODES: Final = ((0.0, 2.0 / 3.0), (math.sqrt(3.0), 1.0 / 3.0))
"""Gauss-Hermite for a standard normal, three points; a lean to either side does the same."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One way it can turn out after a step, and how likely that is."""

    step: Step
    weight: float
    choices: tuple[WeighedFace, ...]


def quick_cases(house: House, found: FaceLines, budget: ErrorBudget) -> Iterable[Case]:
    """Yield what needs no further reading: a proof of the saw, the other way of setting it."""
    if is_saw_open(house, budget):
        yield _with_budget(house, found, Step.PROOF, proved_saw(budget))
    yield from _way_cases(house, found, budget)


def reading_cases(house: House, found: FaceLines, budget: ErrorBudget) -> Iterable[Case]:
    """Yield what a further reading, a stop block or a straightedge would make of a face."""
    readings = found.face.readings
    if not house.crew.stop_block and found.face.opening.method is not Method.IN_PLACE:
        with_block = budget.changed(ErrorName.MARK_AND_CUT, u=STOP_BLOCK_MM)
        yield _with_budget(house, found, Step.STOP_BLOCK, with_block)
    if not readings.at(Place.MIDDLE_WIDTH):
        with_edge = budget.changed(ErrorName.REVEAL_BOW, u=STRAIGHTEDGE_BOW_MM)
        yield _with_budget(house, found, Step.STRAIGHTEDGE, with_edge)
    if found.face.opening.outline is not None:
        return
    repeated = replace(readings, lengths=readings.lengths * 2)
    yield from _read_cases(house, found, budget, Step.REPEAT, repeated, ())
    for step, added, cleared in _further_readings(found.face):
        yield from _read_cases(house, found, budget, step, added, cleared)


def _with_budget(house: House, found: FaceLines, step: Step, budget: ErrorBudget) -> Case:
    choice = weighed_face(found, frame_errors(found.face, budget, house))
    return Case(step=step, weight=1.0, choices=(choice,))


def _way_cases(house: House, found: FaceLines, budget: ErrorBudget) -> Iterable[Case]:
    """Yield the other way of setting the saw, where the two differ."""
    if found.face.opening.method is not Method.BATCH:
        return
    for step, mitres in (
        (Step.LEAVE_AT_STOP, Mitres.AT_STOP),
        (Step.SET_AS_READ, Mitres.AS_READ),
    ):
        if mitres is found.face.opening.mitres:
            continue
        other = _cut(house, found.face, found.face.readings, mitres)
        if other is not None and any(not end.is_at_stop for end in (*found.face.ends, *other.ends)):
            yield Case(step=step, weight=1.0, choices=(_again(house, found, other, budget),))


def _further_readings(
    face: PlannedFace,
) -> Iterable[tuple[Step, OpeningReadings, tuple[ShapeSource, ...]]]:
    """Yield readings that aren't taken yet, as they would show, and which assumptions they end."""
    assumed = {s.name: s for s in face.fitted.sources if s.kind is SourceKind.ASSUMPTION}
    square = tuple(s for name, s in assumed.items() if name == SQUARE)
    if any(not face.readings.at(place) for place in DIAGONALS):
        yield Step.DIAGONALS, _with_places(face, DIAGONALS), square
    if square:
        gauge = AngleReading(gauge=Gauge.BEVEL_BL, value_deg=90.0, u_deg=BEVEL_U_DEG)
        angles = (*face.readings.angles, gauge)
        yield Step.BEVEL, replace(face.readings, angles=angles), square
    tapers = tuple(s for name, s in assumed.items() if "as long as" in name)
    if tapers:
        yield Step.OTHER_SIDE, _with_places(face, SIDES), tapers


def _with_places(face: PlannedFace, places: Iterable[Place]) -> OpeningReadings:
    """Return the readings with some places added; four sides stand for one width and height."""
    wanted = tuple(places)
    replaced = (Place.WIDTH, Place.HEIGHT) if set(wanted) & set(SIDES) else ()
    kept = tuple(r for r in face.readings.lengths if r.place not in replaced)
    read = {r.place for r in kept}
    added = tuple(
        Reading(place=place, value_mm=1.0, written="") for place in wanted if place not in read
    )
    return replace(face.readings, lengths=(*kept, *added))


def _read_cases(
    house: House,
    found: FaceLines,
    budget: ErrorBudget,
    step: Step,
    readings: OpeningReadings,
    cleared: tuple[ShapeSource, ...],
) -> Iterable[Case]:
    """Yield the ways in which readings still to be taken can turn out."""
    face = found.face
    for out, weight in _NODES if cleared else ((0.0, 1.0),):
        corners = _true_corners(face, budget, cleared, out)
        shown = _as_they_would_show(readings, corners)
        choices = []
        for mitres in _ways(face):
            cut = _cut(house, face, shown, mitres)
            if cut is not None:
                choices.append(_again(house, found, cut, budget))
        if choices:
            yield Case(step=step, weight=weight, choices=tuple(choices))


def _again(house: House, found: FaceLines, face: PlannedFace, budget: ErrorBudget) -> WeighedFace:
    """Return another way of cutting a face over the lines of the first: they hardly differ."""
    return weighed_face(replace(found, face=face), frame_errors(face, budget, house))


def _ways(face: PlannedFace) -> tuple[Mitres, ...]:
    return tuple(Mitres) if face.opening.method is Method.BATCH else (face.opening.mitres,)


def _true_corners(
    face: PlannedFace, budget: ErrorBudget, cleared: tuple[ShapeSource, ...], out: float
) -> tuple[Point, ...]:
    """Return the corners of an opening whose assumptions are out by so many of their doubts."""
    corners = face.fitted.corners
    for source in cleared:
        wide = budget.u(ErrorName.LEAN) / 1.5 if source.name == SQUARE else 1.0
        size = out * source.u * wide / math.sqrt(len(cleared))
        corners = tuple(  # type: ignore[assignment]
            p.moved(-size * dx, -size * dy)
            for p, (dx, dy) in zip(corners, source.moves_mm, strict=True)
        )
    return corners


def _as_they_would_show(readings: OpeningReadings, corners: tuple[Point, ...]) -> OpeningReadings:
    """Return the readings as they would come out, without error, of an opening."""
    lengths = tuple(
        replace(r, value_mm=corners[ENDS[r.place][0]].distance_mm(corners[ENDS[r.place][1]]))
        if r.place in ENDS
        else r
        for r in readings.lengths
    )
    inside_deg = interior_angles_deg(corners)
    angles = tuple(
        replace(a, value_deg=inside_deg[BEVELS.index(a.gauge)]) if a.gauge in BEVELS else a
        for a in readings.angles
    )
    return replace(readings, lengths=lengths, angles=angles)


def _cut(
    house: House, face: PlannedFace, readings: OpeningReadings, mitres: Mitres
) -> PlannedFace | None:
    """Return the face as it would be cut to some readings; None where nothing fits them."""
    opening = replace(face.opening, mitres=mitres)
    try:
        if opening.outline is not None:
            return planned_face(house, opening, face.fitted, readings)
        fit = fit_opening(opening.mark, readings, house.tape(readings.tape), face=face.fitted.face)
        return planned_face(house, opening, fit.fitted, readings)
    except (ShapeError, PieceError):
        return None
