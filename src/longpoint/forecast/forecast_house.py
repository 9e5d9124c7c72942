"""Will it close: the forecast of a whole house, and what to do before the saw starts."""

from collections.abc import Sequence
from dataclasses import dataclass

from longpoint.forecast.budget.house_budget import house_budget, is_saw_open, proved_saw
from longpoint.forecast.budget.records import BudgetLine, ErrorBudget
from longpoint.forecast.chances import Imagined, forecast_faces
from longpoint.forecast.face_lines import FaceLines, face_lines
from longpoint.forecast.house_season import HouseSeason, house_season
from longpoint.forecast.planned_face import planned_faces
from longpoint.forecast.records import FaceForecast, HouseForecast
from longpoint.forecast.verdicts import Advice, advise
from longpoint.forecast.worth import Worth, steps_worth
from longpoint.linear.port import LinearSolver
from longpoint.shape.fitted import Shapes
from longpoint.survey.house import House


@dataclass(frozen=True, slots=True, kw_only=True)
class Outlook:
    """What a house cut in one batch comes to, and what to do about it.

    Attributes:
        forecast: As it stands.
        if_proved: The same once the saw is proved; None when it is.
        advice: For every opening, in the order of the house.
        season: What the seasons will do to its joints.
    """

    forecast: HouseForecast
    if_proved: HouseForecast | None
    advice: tuple[Advice, ...]
    season: HouseSeason

    def advice_on(self, mark: str) -> Advice | None:
        """Return the advice on an opening."""
        return next((a for a in self.advice if a.mark == mark), None)


def forecast_house(
    house: House,
    shapes: Shapes,
    held: frozenset[str],
    imagined: Imagined,
    *,
    solver: LinearSolver | None = None,
    learned: tuple[BudgetLine, ...] = (),
) -> Outlook:
    """Return how likely each opening is to fit, and what to do with it.

    Args:
        house: The house.
        shapes: Its fitted shapes.
        held: Marks that get no lengths, and no forecast.
        imagined: By whom and how often it is drawn.
        solver: For frames whose lines aren't known beforehand; None: the built-in one.
        learned: What the crew's finished work says of its saw and tape.

    Returns:
        Model output: the same for the same readings on every platform.
    """
    budget = house_budget(house, learned)
    found = tuple(
        face_lines(face, solver, imagined.weigh) for face in planned_faces(house, shapes, held)
    )
    forecast = forecast_faces(house, found, budget, imagined, solver)
    worths = _worths(house, found, forecast, budget, imagined)
    if_proved = None
    if is_saw_open(house, budget):
        if_proved = forecast_faces(house, found, proved_saw(budget), imagined, solver)
    return Outlook(
        forecast=forecast,
        if_proved=if_proved,
        advice=advise(house, forecast, worths, held),
        season=house_season(house),
    )


def _worths(
    house: House,
    found: Sequence[FaceLines],
    forecast: HouseForecast,
    budget: ErrorBudget,
    imagined: Imagined,
) -> dict[str, tuple[Worth, ...]]:
    """Return what helps each opening that is under the crew's threshold, at its worse face."""
    doubtful: dict[str, tuple[float, FaceLines, FaceForecast]] = {}
    for each, face in zip(found, forecast.faces, strict=True):
        chance = face.chances.fits
        if chance < house.crew.sure and (
            face.mark not in doubtful or chance < doubtful[face.mark][0]
        ):
            doubtful[face.mark] = (chance, each, face)
    if not doubtful:
        return {}
    steps = steps_worth(
        house, tuple((each, face) for _, each, face in doubtful.values()), budget, imagined
    )
    return dict(zip(doubtful, steps, strict=True))
