"""What a forecast says."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.forecast.budget.records import Cause, ErrorBudget


class Verdict(StrEnum):
    """What to do with an opening before the saw starts."""

    BATCH = "batch"
    """Cut it with the rest."""
    READ_FIRST = "read-first"
    """One more reading makes it safe."""
    PROVE_SAW = "prove-saw"
    """The saw is what makes it unsafe: prove it on offcuts first."""
    CUT_LONG = "cut-long"
    """Cut the head long and fit it on the wall."""
    HOLD = "hold"
    """Its readings are in doubt."""


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
class Chances:
    """How likely one face is to fit at its first fitting; model output, 0 to 1.

    Attributes:
        gaps: Every joint closes to the limit and its edges meet, whatever that asks of the quirk.
        quirk: Every quirk stays in its band, whatever that leaves of the gaps.
        fits: Both at once: what is meant by a fit.
        faces: Faces of neighbours are level within the limit at every joint.
        all: Fits, and the faces are level.
        first_order: Of the fit, by formula: a quick look, most often too hopeful.
    """

    gaps: float
    quirk: float
    fits: float
    faces: float
    all: float
    first_order: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CauseShare:
    """What part of the doubt comes from one cause, 0 to 1."""

    cause: Cause
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FaceForecast:
    """The forecast of one face of one opening.

    Attributes:
        mark: Mark of the opening.
        face: "a" or "b" where both are trimmed, else "".
        chances: How likely it is to fit.
        causes: What most of its doubt comes from, the largest first.
        taken_back: Share of the fits that exact programmes didn't confirm; the chances are after
            it was taken off. Looked for only where a quirk has little room.
    """

    mark: str
    face: str
    chances: Chances
    causes: tuple[CauseShare, ...]
    taken_back: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ProfileMisfits:
    """How many faces trimmed in one profile don't fit.

    Attributes:
        profile: Name of the profile.
        chances: Item k: chance that exactly k don't; one item more than faces. They add up to 1.
    """

    profile: str
    chances: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseForecast:
    """The forecast of a house cut in one batch.

    Attributes:
        faces: In the order of the house.
        all_fit: Chance that every face fits.
        misfits_mean: How many don't, on average.
        misfits_p90: Nine times out of ten no more than so many don't.
        draws: How many houses were imagined.
        seed: Seed of the draws.
        budget: What was supposed of readings, marks and cuts.
        by_profile: The misfits of each profile.
    """

    faces: tuple[FaceForecast, ...]
    all_fit: float
    misfits_mean: float
    misfits_p90: int
    draws: int
    seed: int
    budget: ErrorBudget
    by_profile: tuple[ProfileMisfits, ...] = ()
