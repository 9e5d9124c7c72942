"""What is worth doing before an opening is cut: each further reading, and what it would bring."""

import math
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.forecast.budget.records import Cause, ErrorBudget
from longpoint.forecast.chances import Imagined, tally_faces
from longpoint.forecast.face_lines import FaceLines, weighed_face
from longpoint.forecast.records import FREE, FaceForecast, Step
from longpoint.forecast.terms import frame_errors
from longpoint.forecast.what_ifs import Case, quick_cases, reading_cases
from longpoint.survey.crew import ReadingMinutes
from longpoint.survey.house import House

MAIN_SHARE: Final = 0.5
"""A cause with more than half of the doubt is the main one."""

FEWER: Final = 5
"""What-if figures are drawn so many times less often than the forecast itself."""


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


def steps_worth(
    house: House,
    doubtful: Sequence[tuple[FaceLines, FaceForecast]],
    budget: ErrorBudget,
    imagined: Imagined,
) -> tuple[tuple[Worth, ...], ...]:
    """Return what each step would bring to each of some faces, the best first.

    A reading that isn't taken yet can turn out many ways; for each, the better of cutting to it
    and of leaving the saw at its stop is taken, and they are averaged. Where a proof of the saw is
    enough, and the saw is most of the doubt, readings are left for the plan after it.

    Args:
        house: Gives tapes, and the crew's minutes.
        doubtful: The faces in question, with their forecasts.
        budget: What readings, marks and cuts may be out by.
        imagined: How the house is imagined.

    Returns:
        For each face its steps, (n,).
    """
    fewer = replace(imagined, draws=max(1, imagined.draws // FEWER))
    faces = [(found.in_plane(), forecast) for found, forecast in doubtful]
    first = _after(
        house, budget, [list(quick_cases(house, f, budget)) for f, _ in faces], faces, fewer
    )
    open_still = [
        index
        for index, ((_, forecast), after) in enumerate(zip(faces, first, strict=True))
        if not _proof_is_enough(house, forecast, after)
    ]
    later = _after(
        house,
        budget,
        [list(reading_cases(house, faces[i][0], budget)) for i in open_still],
        [faces[i] for i in open_still],
        fewer,
    )
    for index, more in zip(open_still, later, strict=True):
        first[index] |= more
    sharing = max(1, len(house.openings))
    return tuple(
        _ranked(house, forecast.chances.fits, after, sharing)
        for (_, forecast), after in zip(faces, first, strict=True)
    )


def _proof_is_enough(house: House, forecast: FaceForecast, after: dict[Step, float]) -> bool:
    most = forecast.causes[0] if forecast.causes else None
    return (
        most is not None
        and most.cause is Cause.SAW
        and most.share > MAIN_SHARE
        and after.get(Step.PROOF, 0.0) >= house.crew.sure
    )


def _after(
    house: House,
    budget: ErrorBudget,
    cases: Sequence[Sequence[Case]],
    faces: Sequence[tuple[FaceLines, FaceForecast]],
    imagined: Imagined,
) -> list[dict[Step, float]]:
    """Return the chance of a fit after each step, for each face.

    What draws say of the change is added to the forecast itself, which rests on more of them.
    """
    now = [weighed_face(found, frame_errors(found.face, budget, house)) for found, _ in faces]
    flat = [choice for face in cases for case in face for choice in case.choices]
    tally = tally_faces((*now, *flat), imagined)
    chances = [opening.together / imagined.draws for opening in tally.openings]
    drawn = iter(chances[len(now) :])
    found = []
    for before, (_, forecast), face in zip(chances, faces, cases, strict=False):
        after: dict[Step, float] = defaultdict(float)
        for case in face:
            after[case.step] += case.weight * max(next(drawn) for _ in case.choices)
        gains = {
            step: (chance - before) * (1.0 - forecast.taken_back) for step, chance in after.items()
        }
        fits = forecast.chances.fits
        found.append({step: min(1.0, max(0.0, fits + gain)) for step, gain in gains.items()})
    return found


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
