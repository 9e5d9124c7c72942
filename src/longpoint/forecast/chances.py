"""How likely the openings of a house are to fit when all is cut in one batch."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.forecast.budget.records import ErrorBudget
from longpoint.forecast.exact_share import misses
from longpoint.forecast.face_lines import (
    FaceLines,
    WeighedFace,
    cause_shares,
    first_look,
    line_opening,
    step_opening,
    weighed_face,
)
from longpoint.forecast.fitup.weighing import Weigher, weighed_lines
from longpoint.forecast.lines import LineEngine, LineHouse, LineTally, OpeningTally
from longpoint.forecast.records import Chances, FaceForecast, HouseForecast, ProfileMisfits
from longpoint.forecast.recut_counts import convolved
from longpoint.forecast.terms import frame_errors
from longpoint.linear.port import LinearSolver
from longpoint.linear.simplex import SimplexSolver
from longpoint.survey.house import House

SEED: Final = 20_260
DRAWS: Final = 20_000
"""Chances are then within 0.4 of a hundredth, two times in three, of those of endless draws."""

MOST_OF_TEN: Final = 0.9


@dataclass(frozen=True, slots=True, kw_only=True)
class Imagined:
    """How a house is imagined.

    Attributes:
        engine: Draws and judges.
        weigh: Weighs the rows of its frames.
        draws: How many houses.
        seed: Of the draws.
    """

    engine: LineEngine
    weigh: Weigher = weighed_lines
    draws: int = DRAWS
    seed: int = SEED


def forecast_faces(
    house: House,
    faces: Sequence[FaceLines],
    budget: ErrorBudget,
    imagined: Imagined,
    solver: LinearSolver | None = None,
) -> HouseForecast:
    """Return the forecast of a house: each face by itself, and all of them at once.

    What the house shares (the saw, a tape's hook) is drawn once for each imagined house, so that
    a batch goes right or wrong as a batch.

    Args:
        house: The house.
        faces: The faces that get pieces, with their lines.
        budget: What readings, marks and cuts may be out by.
        imagined: By whom and how often it is drawn.
        solver: Confirms fits where a quirk has little room; None: the built-in one.
    """
    errors = tuple(frame_errors(found.face, budget, house) for found in faces)
    taken_back = tuple(
        misses(found, off, solver or SimplexSolver(), seed=imagined.seed)
        for found, off in zip(faces, errors, strict=True)
    )
    weighed = tuple(weighed_face(found, off) for found, off in zip(faces, errors, strict=True))
    tally = tally_faces(weighed, imagined)
    steps = imagined.engine.tally(
        LineHouse(
            openings=tuple(step_opening(found, budget) for found in faces),
            shared=(),
            draws=imagined.draws,
            seed=imagined.seed + 1,
        )
    )
    forecasts = tuple(
        _face_forecast(found, each, fit, step.fits[0] / imagined.draws, imagined.draws, back)
        for found, each, fit, step, back in zip(
            faces, weighed, tally.openings, steps.openings, taken_back, strict=True
        )
    )
    more = math.fsum(
        opening.together / imagined.draws * back
        for opening, back in zip(tally.openings, taken_back, strict=True)
    )
    mean = sum(k * n for k, n in enumerate(tally.misfits)) / imagined.draws
    return HouseForecast(
        faces=forecasts,
        all_fit=tally.misfits[0] / imagined.draws * math.prod(1.0 - back for back in taken_back),
        misfits_mean=mean + more,
        misfits_p90=min(len(faces), _p90(tally) + round(more)),
        draws=imagined.draws,
        seed=imagined.seed,
        budget=budget,
        by_profile=_by_profile(faces, weighed, tally, taken_back, imagined),
    )


def _by_profile(
    faces: Sequence[FaceLines],
    weighed: Sequence[WeighedFace],
    tally: LineTally,
    taken_back: Sequence[float],
    imagined: Imagined,
) -> tuple[ProfileMisfits, ...]:
    """Return how many faces of each profile don't fit; a face in two profiles counts in both."""
    used: dict[str, list[int]] = {}
    for index, found in enumerate(faces):
        for name in dict.fromkeys(profile.name for profile in found.face.trim.profiles):
            used.setdefault(name, []).append(index)
    misfits = []
    for name, indexes in used.items():
        is_all = len(indexes) == len(faces)
        ours = tally if is_all else tally_faces([weighed[i] for i in indexes], imagined)
        chances = [count / imagined.draws for count in ours.misfits]
        also = [
            opening.together / imagined.draws * taken_back[index]
            for opening, index in zip(ours.openings, indexes, strict=True)
        ]
        more = convolved(chances, *([1.0 - chance, chance] for chance in also if chance))
        misfits.append(ProfileMisfits(profile=name, chances=more[: len(indexes) + 1]))
    return tuple(misfits)


def _face_forecast(
    found: FaceLines,
    weighed: WeighedFace,
    fit: OpeningTally,
    level: float,
    draws: int,
    taken_back: float,
) -> FaceForecast:
    gaps, quirk, _ = (count / draws for count in fit.fits)
    fits = fit.together / draws * (1.0 - taken_back)
    return FaceForecast(
        mark=found.face.opening.mark,
        face=found.face.fitted.face,
        chances=Chances(
            gaps=gaps,
            quirk=quirk,
            fits=fits,
            faces=level,
            all=fits * level,
            first_order=first_look(weighed),
        ),
        causes=cause_shares(weighed),
        taken_back=taken_back,
    )


def tally_faces(weighed: Sequence[WeighedFace], imagined: Imagined) -> LineTally:
    """Return in how many imagined houses each face fits, and how many faces don't at once."""
    spreads = {term.name: term.spread for face in weighed for term in face.terms if term.is_shared}
    return imagined.engine.tally(
        LineHouse(
            openings=tuple(line_opening(face, tuple(spreads)) for face in weighed),
            shared=tuple(spreads.values()),
            draws=imagined.draws,
            seed=imagined.seed,
        )
    )


def _p90(tally: LineTally) -> int:
    reached = 0
    for count, draws in enumerate(tally.misfits):
        reached += draws
        if reached >= MOST_OF_TEN * tally.draws:
            return count
    return len(tally.misfits) - 1
