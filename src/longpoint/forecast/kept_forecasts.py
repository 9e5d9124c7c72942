"""Forecasts beside what came of them, kept with a crew's figures so that their word can be held."""

from dataclasses import dataclass
from typing import Final

from longpoint.forecast.budget.house_budget import house_budget
from longpoint.forecast.built_frames import frame_mark
from longpoint.forecast.chances import Imagined, forecast_faces
from longpoint.forecast.face_lines import FaceLines
from longpoint.forecast.fitup.lines import Respect, fit_lines
from longpoint.forecast.learned_lines import learned_lines
from longpoint.forecast.learning.calibration import Outcome
from longpoint.forecast.learning.setup import Learned
from longpoint.forecast.on_the_wall import as_built_of, joint_corners
from longpoint.forecast.planned_face import PlannedFace, planned_faces
from longpoint.linear.port import LinearSolver
from longpoint.shape.fitted import Shapes
from longpoint.survey.house import House

_AS_WRITTEN: Final = 1e-6
"""A reading of a limit as it is written must not fail by its last bit."""
_NO_ENDS: Final = (None, None)


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptForecast:
    """One set's forecast, made without its own gaps, and what came of it.

    Attributes:
        mark: House, mark, face and readings of the set.
        outcome: Its chance of fitting, and whether it did.
    """

    mark: str
    outcome: Outcome


def kept_forecasts(
    kept: tuple[KeptForecast, ...],
    house: House,
    shapes: Shapes,
    learned: Learned,
    imagined: Imagined,
    solver: LinearSolver | None = None,
) -> tuple[KeptForecast, ...]:
    """Return forecasts and what came of them, with those of one more house behind.

    Args:
        kept: Those of before. A set among them keeps its forecast: by now its own gaps are in the
            crew's figures, and a new one would be hindsight. What came of it is taken as read last.
        house: The house.
        shapes: Its fitted shapes.
        learned: What the crew knew before this house.
        imagined: By whom and how often it is drawn.
        solver: For frames whose lines aren't known beforehand; None: the built-in one.

    Returns:
        One for each set of which every joint was read.
    """
    came = {
        frame_mark(house, face): (face, fitted)
        for face in planned_faces(house, shapes, frozenset())
        if (fitted := fitted_as_built(face)) is not None
    }
    before = {each.mark: each for each in kept}
    new = {mark: face for mark, (face, _) in came.items() if mark not in before}
    budget = house_budget(house, learned_lines(learned, house))
    forecast = forecast_faces(
        house,
        tuple(_fit_alone(face, solver, imagined) for face in new.values()),
        budget,
        imagined,
    )
    chances = {mark: each.outcome.chance for mark, each in before.items()}
    chances |= dict(zip(new, (each.chances.fits for each in forecast.faces), strict=True))
    now = {
        mark: KeptForecast(
            mark=mark, outcome=Outcome(house=house.name, chance=chances[mark], closed=fitted)
        )
        for mark, (_, fitted) in came.items()
    }
    return tuple({**before, **now}.values())


def _fit_alone(face: PlannedFace, solver: LinearSolver | None, imagined: Imagined) -> FaceLines:
    """Return the lines of a face in the one respect that is asked for."""
    lines = fit_lines(face.frame, face.limits, Respect.IN_PLANE, solver, imagined.weigh)
    return FaceLines(face=face, lines=((), (), lines))


def fitted_as_built(face: PlannedFace) -> bool | None:
    """Tell whether a set fitted: joints within the limit, quirks as far as read within the band.

    Returns:
        None where nothing was written down, or a joint's heel or toe wasn't read.
    """
    as_built = as_built_of(face)
    if as_built is None:
        return None
    joints = [as_built.gaps[corner] for corner in joint_corners(face)]
    gaps_mm = [e for j in joints for e in (_NO_ENDS if j is None else (j.heel_mm, j.toe_mm))]
    if any(gap_mm is None for gap_mm in gaps_mm):
        # Were a set counted as soon as one joint is seen to stand open, and left out otherwise,
        # those that failed would be counted more often than those that fitted.
        return None
    limit_mm = face.limits.gap_mm + _AS_WRITTEN
    closes = all(gap_mm is None or gap_mm <= limit_mm for gap_mm in gaps_mm)
    least_mm, most_mm = face.opening.quirk_band_mm
    along = as_built.quirks.anticlockwise()
    quirks_mm = [q for side in face.side_index for q in along[side] if q is not None]
    return closes and all(
        least_mm - _AS_WRITTEN <= quirk_mm <= most_mm + _AS_WRITTEN for quirk_mm in quirks_mm
    )


def kept_entry(kept: KeptForecast) -> dict[str, object]:
    """Return one forecast as an entry of a crew's figures."""
    outcome = kept.outcome
    return {
        "mark": kept.mark,
        "house": outcome.house,
        "chance": outcome.chance,
        "fitted": outcome.closed,
    }


def read_kept(entry: object) -> KeptForecast | None:
    """Return one forecast from an entry; None where it is none."""
    match entry:
        case {"mark": str(mark), "house": str(house), "chance": chance, "fitted": bool(fitted)}:
            if isinstance(chance, bool) or not isinstance(chance, int | float):
                return None
            if not 0.0 <= chance <= 1.0:
                return None
            outcome = Outcome(house=house, chance=float(chance), closed=fitted)
            return KeptForecast(mark=mark, outcome=outcome)
        case _:
            return None
