"""What is worth doing before an opening is cut: each further reading, and what it would bring."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

from longpoint.errors import PieceError, ShapeError
from longpoint.forecast.budget.house_budget import STOP_BLOCK_MM, proved_saw
from longpoint.forecast.budget.records import ErrorBudget, ErrorName
from longpoint.forecast.chances import Imagined, tally_faces
from longpoint.forecast.face_lines import FaceLines, WeighedFace, weighed_face
from longpoint.forecast.planned_face import PlannedFace, planned_face
from longpoint.forecast.terms import frame_errors
from longpoint.shape.fitted import ShapeSource, SourceKind
from longpoint.shape.opening_fit import fit_opening
from longpoint.shape.point import Point, interior_angles_deg
from longpoint.shape.sightings import ENDS, SQUARE
from longpoint.survey.crew import ReadingMinutes
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

FEWER: Final = 5
"""What-if figures are drawn so many times less often than the forecast itself."""

BEVEL_U_DEG: Final = 0.15
"""Of a corner read with care with a bevel gauge; assumed."""

STRAIGHTEDGE_BOW_MM: Final = 0.15
"""Left of a reveal's bow once a straightedge was laid to it; assumed."""

_NODES: Final = ((0.0, 8.0 / 15.0), (1.355626, 0.444152), (2.856970, 0.022515))
"""Gauss-Hermite for a standard normal, five points; a lean to the right does what one left does."""


class Step(StrEnum):
    """What can still be done before the saw starts."""

    PROOF = "prove the saw on four offcuts"
    DIAGONALS = "read both diagonals"
    OTHER_SIDE = "read the other width and the other height"
    BEVEL = "read one corner with a bevel gauge"
    REPEAT = "read the same again"
    STOP_BLOCK = "cut pairs against a stop block"
    STRAIGHTEDGE = "lay a straightedge along the sides"
    LEAVE_AT_STOP = "leave the saw at its 45 stop"
    SET_AS_READ = "set the saw to the angles read"


FREE: Final = (Step.LEAVE_AT_STOP, Step.SET_AS_READ)
"""The other way of setting the saw: it takes no time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Worth:
    """What one step would bring to one face; model output.

    Attributes:
        step: The step.
        minutes: What it takes at this opening.
        before: Chance of a fit as it stands.
        after: The same once it is done.
        saved_min: Refitting time it is expected to save; of a reading against the better of the
            two ways of setting the saw, which cost nothing.
    """

    step: Step
    minutes: float
    before: float
    after: float
    saved_min: float

    @property
    def saved_per_minute(self) -> float:
        """Refitting time saved per minute spent; infinite for what takes no time."""
        return self.saved_min / self.minutes if self.minutes else math.inf


@dataclass(frozen=True, slots=True, kw_only=True)
class _Case:
    """One way it can turn out after a step, and how likely that is."""

    step: Step
    weight: float
    choices: tuple[WeighedFace, ...]


def steps_worth(
    house: House, found: Sequence[FaceLines], budget: ErrorBudget, imagined: Imagined
) -> tuple[tuple[Worth, ...], ...]:
    """Return what each step would bring to each of some faces, the best first.

    A reading that isn't taken yet can turn out many ways; for each, the better of cutting to it
    and of leaving the saw at its stop is taken, and they are averaged.

    Args:
        house: Gives tapes, and the crew's minutes.
        found: The faces in question, with their lines.
        budget: What readings, marks and cuts may be out by.
        imagined: How the house is imagined.

    Returns:
        For each face its steps, (n,).
    """
    fewer = replace(imagined, draws=max(1, imagined.draws // FEWER))
    found = [each.in_plane() for each in found]
    cases = [tuple(_cases(house, each, budget)) for each in found]
    flat = [choice for face in cases for case in face for choice in case.choices]
    now = [weighed_face(each, frame_errors(each.face, budget, house)) for each in found]
    tally = tally_faces((*now, *flat), fewer)
    chances = [opening.together / fewer.draws for opening in tally.openings]
    before, later = chances[: len(found)], iter(chances[len(found) :])
    sharing = max(1, len(house.openings))
    worths = []
    for chance, face in zip(before, cases, strict=True):
        after: dict[Step, float] = {}
        for case in face:
            best = max(next(later) for _ in case.choices)
            after[case.step] = after.get(case.step, 0.0) + case.weight * best
        worths.append(_ranked(house, chance, after, sharing))
    return tuple(worths)


def _ranked(
    house: House, before: float, after: dict[Step, float], sharing: int
) -> tuple[Worth, ...]:
    """Return steps by what they save per minute; one that takes no time comes by what it brings."""
    misfit_min = house.crew.refit_min + house.crew.spoiled_min
    at_best = max(before, *(after[way] for way in FREE if way in after), 0.0)
    worths = []
    for step, chance in after.items():
        minutes = _minutes(step, house.crew.minutes, sharing)
        saved = misfit_min * (chance - (before if step in FREE else at_best))
        worths.append(
            Worth(
                step=step,
                minutes=minutes,
                before=before,
                after=chance,
                saved_min=saved,
            )
        )
    return tuple(sorted(worths, key=lambda w: (-w.saved_per_minute, -w.after)))


def _minutes(step: Step, minutes: ReadingMinutes, sharing: int) -> float:
    match step:
        case Step.PROOF:
            return minutes.proof / sharing
        case Step.DIAGONALS:
            return minutes.diagonals
        case Step.OTHER_SIDE:
            return minutes.other_side
        case Step.BEVEL:
            return minutes.bevel
        case Step.REPEAT:
            return minutes.repeat
        case Step.STOP_BLOCK:
            return minutes.stop_block
        case Step.STRAIGHTEDGE:
            return minutes.straightedge
        case Step.LEAVE_AT_STOP | Step.SET_AS_READ:
            return 0.0


def _cases(house: House, found: FaceLines, budget: ErrorBudget) -> Iterable[_Case]:
    yield from _budget_cases(house, found, budget)
    yield from _way_cases(house, found, budget)
    readings = found.face.readings
    yield from _read_cases(
        house, found, budget, Step.REPEAT, replace(readings, lengths=readings.lengths * 2), ()
    )
    for step, added, cleared in _further_readings(found.face):
        yield from _read_cases(house, found, budget, step, added, cleared)


def _budget_cases(house: House, found: FaceLines, budget: ErrorBudget) -> Iterable[_Case]:
    """Yield the steps that change no reading, only what pieces are out by."""
    changed = (
        (Step.PROOF, proved_saw(budget), not house.saw.is_proved),
        (
            Step.STOP_BLOCK,
            budget.changed(ErrorName.MARK_AND_CUT, u=STOP_BLOCK_MM),
            not house.crew.stop_block and found.face.opening.method is not Method.IN_PLACE,
        ),
        (
            Step.STRAIGHTEDGE,
            budget.changed(ErrorName.REVEAL_BOW, u=STRAIGHTEDGE_BOW_MM),
            not found.face.readings.at(Place.MIDDLE_WIDTH),
        ),
    )
    for step, after, is_open in changed:
        if is_open:
            yield _Case(
                step=step,
                weight=1.0,
                choices=(weighed_face(found, frame_errors(found.face, after, house)),),
            )


def _way_cases(house: House, found: FaceLines, budget: ErrorBudget) -> Iterable[_Case]:
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
            yield _Case(step=step, weight=1.0, choices=(_again(house, found, other, budget),))


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
) -> Iterable[_Case]:
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
            yield _Case(step=step, weight=weight, choices=tuple(choices))


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
        fit = fit_opening(opening.mark, readings, house.tape(readings.tape), face=face.fitted.face)
        return planned_face(house, opening, fit.fitted, readings)
    except (ShapeError, PieceError):
        return None
