"""Crews drawn at random, each with a saw of its own, who read every gap of every frame they fit."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from random import Random
from statistics import fmean

from longpoint.forecast.learning.as_built import BuiltFrame, mitre_length_mm
from longpoint.forecast.learning.belief import Belief, belief_of
from longpoint.forecast.learning.setup import ANGLE_PRIOR, Learned, learn
from longpoint.forecast.learning.setup_key import SetupKey
from longpoint.survey.as_built import JointRead

FACE_MM = 70.0
BIAS_DEG = 0.10
CUT_DEG = 0.05
CUT_LOG_SD = 0.4
FEELER_MM = 0.05

KEY = SetupKey(saw="S1", setting="as bought", blade="first", tape="T1", mode="hook pushed")


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnCrew:
    """A saw that cuts past its angle, and how much its cuts differ."""

    over_cut_deg: float
    cut_deg: float


def drawn_crew(draw: Random) -> DrawnCrew:
    return DrawnCrew(
        over_cut_deg=draw.gauss(0.0, BIAS_DEG),
        cut_deg=CUT_DEG * math.exp(draw.gauss(0.0, CUT_LOG_SD)),
    )


def drawn_frame(
    draw: Random, crew: DrawnCrew, mark: str, *, feeler_mm: float = FEELER_MM, dialled: float = 0.0
) -> BuiltFrame:
    """A frame fitted up anyhow: pieces turned and pushed at random, gaps then read by feeler."""
    m = mitre_length_mm(FACE_MM, 45.0)
    cuts = [math.radians(draw.gauss(crew.over_cut_deg - dialled, crew.cut_deg)) for _ in range(8)]
    turns = [draw.gauss(0.0, 0.002) for _ in range(4)]
    gaps = []
    for corner in range(4):
        cut = cuts[2 * corner] + cuts[2 * corner + 1]
        difference = m * (cut + turns[corner - 1] - turns[corner])
        pushed = draw.gauss(0.1, 0.1)
        heel_mm, toe_mm = pushed + difference / 2.0, pushed - difference / 2.0
        gaps.append(
            JointRead(
                heel_mm=heel_mm + draw.gauss(0.0, feeler_mm),
                toe_mm=toe_mm + draw.gauss(0.0, feeler_mm),
            )
        )
    return BuiltFrame(
        mark=mark, key=KEY, mitre_length_mm=(m,) * 4, gaps=tuple(gaps), dialled_deg=dialled
    )


def frames_of(draw: Random, crew: DrawnCrew, start: int = 1) -> Iterator[BuiltFrame]:
    number = start
    while True:
        yield drawn_frame(draw, crew, f"W{number}")
        number += 1


def saw_belief(learned: Learned, prior_of: Belief) -> Belief:
    term = learned.term(KEY.angle)
    return prior_of if term is None else term.belief


@dataclass(frozen=True, slots=True, kw_only=True)
class Count:
    """What crews knew of their saws after so many frames."""

    rmse_deg: float
    held: float


def learning_counts(crews: int, seed: int, after: tuple[int, ...]) -> dict[int, Count]:
    """How far off crews were after so many frames, and how often the next frame was within."""
    start = belief_of(ANGLE_PRIOR)
    off: dict[int, list[float]] = {n: [] for n in after}
    held: dict[int, list[bool]] = {n: [] for n in after}
    draw = Random(seed)
    for _ in range(crews):
        crew = drawn_crew(draw)
        made = frames_of(draw, crew)
        learned, known = Learned(), 0
        for n in after:
            learned, _notes = learn([next(made) for _ in range(n - known)], learned)
            known = n
            belief = saw_belief(learned, start)
            other, _notes = learn([drawn_frame(draw, crew, "next")])
            term = other.term(KEY.angle)
            assert term is not None
            low, high = belief.next_within(0.9)
            off[n].append(belief.mean - crew.over_cut_deg)
            held[n].append(low <= term.seen[0].value <= high)
    return {
        n: Count(rmse_deg=math.sqrt(fmean(x * x for x in off[n])), held=fmean(held[n]))
        for n in after
    }


def reset_counts(crews: int, seed: int) -> tuple[float, float]:
    """How far off crews are five frames after the stop was moved: history kept, and set anew."""
    draw = Random(seed)
    kept: list[float] = []
    anew: list[float] = []
    for _ in range(crews):
        before, then = drawn_crew(draw), drawn_crew(draw)
        made, later = frames_of(draw, before), frames_of(draw, then, start=101)
        learned, _ = learn([next(made) for _ in range(20)])
        five = [next(later) for _ in range(5)]
        for history, offs in ((learned, kept), (learned.set_anew(KEY.angle), anew)):
            term = learn(five, history)[0].term(KEY.angle)
            assert term is not None
            offs.append(term.belief.mean - then.over_cut_deg)
    return math.sqrt(fmean(x * x for x in kept)), math.sqrt(fmean(x * x for x in anew))
