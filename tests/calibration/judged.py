"""Simulated houses planned, forecast, built and judged."""

import math
from collections.abc import Callable, Iterable, Sequence
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass, replace
from typing import Final
from unittest.mock import patch

from longpoint.errors import held_places
from longpoint.forecast.budget.house_budget import house_budget
from longpoint.forecast.budget.records import BudgetLine
from longpoint.forecast.chances import Imagined, forecast_faces
from longpoint.forecast.face_lines import FaceLines
from longpoint.forecast.fitup.lines import FitLine, fit_lines
from longpoint.forecast.fitup.respect import Respect
from longpoint.forecast.planned_face import PlannedFace, planned_faces
from longpoint.forecast.records import HouseForecast
from longpoint.linear.port import LinearSolver
from longpoint.pieces.openings import plan_openings
from longpoint.pieces.piece import Piece
from longpoint.pipeline import check_house
from longpoint.solvers.highs import HighsSolver
from longpoint.solvers.numpy_lines import NumpyLines
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from tests.simulated_houses import (
    BUILDING,
    Reads,
    TrueHouse,
    TrueOpening,
    World,
    built_errors,
    document,
    draw_house,
    first_readings,
    fit_ratio,
)

DRAWS: Final = 2000
"""Of each forecast: its chances are then within about a hundredth of those of endless draws."""

SEED: Final = 7
FEWEST_HOUSES: Final = 30
"""From fewer houses no standard error is given."""

TWO_SIDED: Final = 1.96
"""95 in 100 of a normal error lie within so many of its standard errors."""


class Office:
    """Plans and forecasts houses; keeps the lines of frames that it has seen.

    Openings of one drawing differ by a few millimetres, which doesn't show in their lines. Fits of
    tight quirks are confirmed by exact programmes only where that is asked for: it takes most of a
    second for each opening, and what it takes back is a fraction of a hundredth on the mean.
    """

    def __init__(self, draws: int = DRAWS, *, is_confirming: bool = False) -> None:
        self.is_confirming = is_confirming
        self.solver: LinearSolver = HighsSolver()
        self.imagined = Imagined(engine=NumpyLines(), draws=draws)
        self._lines: dict[object, tuple[FitLine, ...]] = {}

    def confirming(self) -> AbstractContextManager[object]:
        """Return in what a forecast is made: with or without its exact programmes."""
        if self.is_confirming:
            return nullcontext()
        return patch("longpoint.forecast.chances.misses", return_value=0.0)

    def lines(self, true: TrueOpening, face: PlannedFace) -> FaceLines:
        """Return a face with the lines of a fit in its plane."""
        key = (true.nominal_mm, true.is_door, true.face_mm, true.quirk_mm, true.gap_mm)
        if key not in self._lines:
            self._lines[key] = fit_lines(face.frame, face.limits, Respect.IN_PLANE, self.solver)
        return FaceLines(face=face, lines=((), (), self._lines[key]))


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A simulated house as planned by what was read of it.

    Attributes:
        house: As read back.
        faces: Those that get pieces.
        pieces: What stands on the sheets.
    """

    house: House
    faces: tuple[PlannedFace, ...]
    pieces: tuple[Piece, ...]

    def pieces_of(self, face: PlannedFace) -> tuple[Piece, ...]:
        return tuple(p for p in self.pieces if p.opening == face.opening.mark)


def drawn_up(true: TrueHouse, reads: Reads | None = None) -> Drawing:
    """Plan a house by what is read of it."""
    survey = read_house(document(true, first_readings(true) if reads is None else reads))
    shapes, found = check_house(survey)
    held, house = held_places(found), survey.house
    return Drawing(
        house=house,
        faces=planned_faces(house, shapes, held),
        pieces=plan_openings(house, shapes, held)[0],
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """A simulated house as planned, with what was said of its faces."""

    drawing: Drawing
    lines: tuple[FaceLines, ...]
    forecast: HouseForecast

    @property
    def house(self) -> House:
        return self.drawing.house

    @property
    def faces(self) -> tuple[PlannedFace, ...]:
        return self.drawing.faces

    def pieces_of(self, face: PlannedFace) -> tuple[Piece, ...]:
        return self.drawing.pieces_of(face)


Learn = Callable[[House], tuple[BudgetLine, ...]]


def planned(
    office: Office, true: TrueHouse, reads: Reads | None = None, learn: Learn | None = None
) -> Planned:
    """Plan and forecast a house by what is read of it."""
    drawing = drawn_up(true, reads)
    house = drawing.house
    lines = tuple(office.lines(true.opening(f.opening.mark), f) for f in drawing.faces)
    budget = house_budget(house, learn(house) if learn else ())
    with office.confirming():
        forecast = forecast_faces(house, lines, budget, office.imagined, office.solver)
    return Planned(drawing=drawing, lines=lines, forecast=forecast)


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """One opening: the chance that was given to it, and whether it fitted.

    Attributes:
        cluster: Its house or crew: what happens within one isn't independent.
        chance: As forecast.
        fits: As built.
        is_batch: True when it was said to be safe to cut with the rest.
    """

    cluster: int
    chance: float
    fits: bool
    is_batch: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedHouse:
    """One house: its forecast, and what became of its openings."""

    openings: tuple[Judged, ...]
    all_fit: float
    misfits_mean: float
    misfits_p90: int
    held: int

    @property
    def misfits(self) -> int:
        return sum(not o.fits for o in self.openings)


def judged_house(
    office: Office, true: TrueHouse, learn: Learn | None = None, cluster: int | None = None
) -> JudgedHouse:
    """Forecast a house, then build it, each opening judged by an exact programme."""
    plan = planned(office, true, learn=learn)
    rng = true.stream(BUILDING)
    openings = []
    for face, said in zip(plan.faces, plan.forecast.faces, strict=True):
        errors = built_errors(true, face, plan.pieces_of(face), rng)
        openings.append(
            Judged(
                cluster=true.number if cluster is None else cluster,
                chance=said.chances.fits,
                fits=fit_ratio(face, errors, office.solver) <= 1.0,
                is_batch=said.chances.fits >= plan.house.crew.sure,
            )
        )
    return JudgedHouse(
        openings=tuple(openings),
        all_fit=plan.forecast.all_fit,
        misfits_mean=plan.forecast.misfits_mean,
        misfits_p90=plan.forecast.misfits_p90,
        held=len(true.openings) - len(plan.faces),
    )


def judged_houses(
    office: Office, houses: int, world: World | None = None, seed: int = SEED
) -> tuple[JudgedHouse, ...]:
    """Return what was forecast for houses of one world, and what became of them."""
    return tuple(judged_house(office, draw_house(seed, n, world)) for n in range(houses))


def openings_of(houses: Iterable[JudgedHouse]) -> tuple[Judged, ...]:
    return tuple(o for house in houses for o in house.openings)


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """A share of openings, with its standard error by clusters.

    Attributes:
        count: Of how many.
        clusters: From how many houses or crews.
        said: Mean of the chances given.
        seen: Share that fitted.
        u: Standard error of seen less said.
    """

    count: int
    clusters: int
    said: float
    seen: float
    u: float

    @property
    def off(self) -> float:
        return self.seen - self.said


def share(judged: Sequence[Judged]) -> Share:
    """Return what was said and seen of some openings.

    References:
        Errors of one house go together, those of two houses don't: the variance of a mean of n is
        the sum over houses of the squared sum of their errors less the mean, over n^2 (the
        cluster-robust 'sandwich').
    """
    count = len(judged)
    said, seen = mean(o.chance for o in judged), mean(o.fits for o in judged)
    errors: dict[int, float] = {}
    for o in judged:
        errors[o.cluster] = errors.get(o.cluster, 0.0) + o.fits - o.chance - (seen - said)
    clusters = len(errors)
    spare = clusters / (clusters - 1) if clusters > 1 else 1.0
    return Share(
        count=count,
        clusters=clusters,
        said=said,
        seen=seen,
        u=math.sqrt(spare * math.fsum(e * e for e in errors.values())) / count,
    )


def by_tenth(judged: Iterable[Judged]) -> dict[int, Share]:
    """Return said and seen by tenths of the chance given; 9 holds 0.9 to 1."""
    tenths: dict[int, list[Judged]] = {}
    for o in judged:
        tenths.setdefault(min(9, int(10.0 * o.chance)), []).append(o)
    return {tenth: share(tenths[tenth]) for tenth in sorted(tenths)}


def brier(judged: Sequence[Judged]) -> float:
    """Return the mean squared error of the chances; 0 for a seer, 0.25 for a tossed coin."""
    return math.fsum((o.chance - o.fits) ** 2 for o in judged) / len(judged)


def false_batch(judged: Iterable[Judged]) -> Share:
    """Return the share of openings said to be safe, as `said` and `seen` of a fit.

    Its `u` is that of the share seen.
    """
    safe = [o for o in judged if o.is_batch]
    seen = sum(o.fits for o in safe) / len(safe)
    return replace(share(safe), u=share([replace(o, chance=seen) for o in safe]).u)


def mean(values: Iterable[float]) -> float:
    """Return the mean of some values."""
    found = list(values)
    return math.fsum(found) / len(found)
