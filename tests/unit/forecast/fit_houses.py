"""Windows and doors of one section and quirk, read as a house document, and their chances."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

from longpoint.errors import Severity
from longpoint.forecast.budget.house_budget import house_budget
from longpoint.forecast.budget.records import ErrorBudget, ErrorName
from longpoint.forecast.chances import Imagined, tally_faces
from longpoint.forecast.face_lines import FaceLines, WeighedFace, weighed_face
from longpoint.forecast.fitup.frame import SLOTS, Slot
from longpoint.forecast.fitup.lines import Respect, fit_lines
from longpoint.forecast.lines import LineTally
from longpoint.forecast.planned_face import LEGS, PlannedFace, planned_faces
from longpoint.forecast.terms import Effect, FrameErrors, frame_errors
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.solvers.numpy_lines import NumpyLines
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from tests import house_documents

ENGINE = NumpyLines()
SEED = 5


def house_of(
    openings: Sequence[dict[str, Any]],
    *,
    face_mm: float = 70.0,
    gap_mm: float = 0.5,
    quirk_mm: float = 4.5,
) -> House:
    """Read a house of one section, its saw not proved; quirks may be out by 2 mm or 0.4 of them."""
    room_mm = min(2.0, 0.4 * quirk_mm)
    document = house_documents.house(
        openings=list(openings),
        saws={"S1": {"kerf": 2.4, "end_trim": 10}},
        profiles={
            "OG57": {"face": face_mm, "thickness": 18},
            "SK95": {"face": 95, "thickness": 16},
        },
    )
    document["defaults"] |= {
        "quirk": quirk_mm,
        "quirk_band": [quirk_mm - room_mm, quirk_mm + room_mm],
        "max_gap": gap_mm,
    }
    result = read_house(document)
    assert not [f for f in result.findings if f.severity is Severity.STOP]
    return result.house


def window(width_mm: float, height_mm: float, mark: str = "W1") -> dict[str, Any]:
    """A window of which one width and one height are read."""
    nothing: dict[str, object] = dict.fromkeys(house_documents.SIZE)
    return house_documents.window(
        **{**nothing, "width": width_mm, "height": height_mm, "mark": mark}
    )


def door(width_mm: float, height_mm: float) -> dict[str, Any]:
    """A door of which one width and one height are read."""
    nothing = dict.fromkeys(("top", "bottom", "left", "right"))
    return house_documents.door(**{**nothing, "width": width_mm, "height": height_mm})


def in_plane(house: House) -> tuple[FaceLines, ...]:
    """Return the faces of a house with the lines of their fit alone."""
    openings, _ = fit_openings(house)
    return tuple(
        FaceLines(face=face, lines=((), (), fit_lines(face.frame, face.limits, Respect.IN_PLANE)))
        for face in planned_faces(house, Shapes(openings=openings), frozenset())
    )


def nailed(found: FaceLines, room_mm: float) -> FaceLines:
    """Return a window whose legs are nailed so hard that they only give by so much."""
    frame = found.face.frame
    sides = tuple(
        replace(side, quirk_in_mm=room_mm, quirk_out_mm=room_mm) if index in LEGS else side
        for index, side in enumerate(frame.sides)
    )
    face = replace(found.face, frame=replace(frame, sides=sides))
    lines = fit_lines(face.frame, face.limits, Respect.IN_PLANE)
    return FaceLines(face=face, lines=((), (), lines))


def with_saw(
    house: House, scale_deg: float, fence_deg: float, bias_deg: float = 0.0
) -> ErrorBudget:
    """Return the budget of a house whose openings are square, its saw out by so much."""
    return (
        house_budget(house)
        .changed(ErrorName.SAW_SCALE, u=scale_deg, bias=bias_deg)
        .changed(ErrorName.SAW_FENCE, u=fence_deg)
        .changed(ErrorName.LEAN, u=0.0)
    )


def biased(house: House, bias_deg: float) -> ErrorBudget:
    """Return the budget of a house all of whose cuts are past their angle by so much."""
    return with_saw(house, 0.0, 0.10, bias_deg)


def mean_read(face: PlannedFace, errors: FrameErrors, taper_mm: float) -> FrameErrors:
    """Return errors of a face for which the mean of two sides was read.

    Where one width stands for two sides, the program takes it as one of them and lets the other be
    longer or shorter. If it was their mean, a tapered opening is out by half as much at each side.
    """
    tapers = {
        "top as long as bottom": tapered(face, taper_mm / 4.0, 0.0),
        "right as long as left": tapered(face, 0.0, taper_mm / 4.0),
    }
    return replace(
        errors,
        terms=tuple(replace(t, effect=tapers.get(t.name, t.effect)) for t in errors.terms),
    )


def tapered(face: PlannedFace, across_mm: float, up_mm: float) -> Effect:
    """Return what moves of each corner make: outwards at two of them, inwards at the others."""
    return face.reveal_off(
        (
            (across_mm, up_mm),
            (-across_mm, -up_mm),
            (across_mm, up_mm),
            (-across_mm, -up_mm),
        )
    )


def leaning(face: PlannedFace, by_mm: float) -> Effect:
    """Return what a reveal that leans to the right by so much over its height makes."""
    half = by_mm / 2.0
    return face.reveal_off(((-half, 0.0), (-half, 0.0), (half, 0.0), (half, 0.0)))


def longer(face: PlannedFace, by_mm: Sequence[float]) -> Effect:
    """Return what pieces longer by so much make, half at each end."""
    slots = [0.0] * (SLOTS * len(face.frame.sides))
    for side, size in enumerate(by_mm):
        slots[SLOTS * side + Slot.LENGTH_START] = size / 2.0
        slots[SLOTS * side + Slot.LENGTH_END] = size / 2.0
    return tuple(slots)


def tallied(weighed: Iterable[WeighedFace], draws: int) -> LineTally:
    """Return how often each of some faces fits."""
    return tally_faces(tuple(weighed), Imagined(engine=ENGINE, draws=draws, seed=SEED))


def chances(weighed: Iterable[WeighedFace], draws: int) -> list[float]:
    """Return the share of draws in which each of some faces fits."""
    tally = tallied(weighed, draws)
    return [opening.fits[-1] / draws for opening in tally.openings]


def weighed_with(
    house: House,
    found: FaceLines,
    budget: ErrorBudget,
    *known: Effect,
    is_mean_read: bool = True,
) -> WeighedFace:
    """Return a face's lines over what it may be out by, with more of it known."""
    errors = frame_errors(found.face, budget, house)
    if is_mean_read:
        errors = mean_read(found.face, errors, budget.u(ErrorName.TAPER))
    total = tuple(map(math.fsum, zip(errors.known, *known, strict=True)))
    return weighed_face(found, replace(errors, known=total))
