"""The step advised, tried against one taken at random; and what each verdict came to."""

import cmath
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

import numpy as np

from longpoint.forecast.records import FREE, Step, Verdict
from longpoint.forecast.verdicts import advise
from longpoint.forecast.what_ifs import BEVEL_U_DEG
from longpoint.forecast.worth import Worth, steps_worth
from tests.calibration.judged import (
    DRAWS,
    SEED,
    Office,
    Planned,
    judged_house,
    planned,
)
from tests.simulated_houses import (
    SIX,
    Reads,
    TrueHouse,
    built_errors,
    draw_house,
    first_readings,
    tape_shows,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """What a way of choosing one more step came to, at openings under the threshold.

    Attributes:
        openings: How many.
        misfit: Share that didn't fit, after the step.
        minutes: Spent on the step, mean.
        saved_min: Refitting saved against no step at all, mean.
        u_saved_min: Its standard error by houses.
    """

    openings: int
    misfit: float
    minutes: float
    saved_min: float
    u_saved_min: float


CUT_AGAIN: Final = 25
"""Each opening is cut so many times over, so that its share of misfits is known."""

WORTH_DRAWS: Final = 5 * DRAWS
"""What a step would bring is drawn five times less often than is asked for."""

SMALL_QUIRKS_MM: Final = (2.5, 3.0)

Change = tuple[Step | None, float]


def tried_steps(office: Office, houses: int, seed: int = SEED + 1) -> dict[str, Tried]:
    """Return what the advised step, and any one of those offered, saves against none.

    Houses with a proved saw; in each the openings under the threshold. Whatever is read, the better
    of the two ways of setting the saw is then taken, as the forecast sees it.
    """
    found: dict[str, list[tuple[int, float, float, float]]] = {}
    for number in range(houses):
        true = _tight_house(seed, number)
        reads = first_readings(true)
        plan = planned(office, true, reads)
        offered = _offered(office, plan)
        if not offered:
            continue
        rng = true.stream(6)
        random = {mark: some[rng.integers(len(some))] for mark, some in offered.items()}
        ways: dict[str, dict[str, Change]] = {
            "none": dict.fromkeys(offered, (None, 0.0)),
            "random": random,
            "advised": {mark: some[0] for mark, some in offered.items()},
        }
        misfits = {way: _misfits(office, true, reads, steps) for way, steps in ways.items()}
        for way, steps in ways.items():
            for mark in offered:
                if all(mark in shares for shares in misfits.values()):
                    saved = misfits["none"][mark] - misfits[way][mark]
                    refit_min = plan.house.crew.refit_min
                    found.setdefault(way, []).append(
                        (number, misfits[way][mark], steps[mark][1], refit_min * saved)
                    )
    return {way: _tried(cases) for way, cases in found.items()}


def _tight_house(seed: int, number: int) -> TrueHouse:
    """Draw a house with a proved saw and small quirks, in which readings matter."""
    rng = np.random.default_rng((seed, number, 4))
    true = draw_house(seed, number)
    openings = tuple(replace(o, quirk_mm=float(rng.choice(SMALL_QUIRKS_MM))) for o in true.openings)
    scale_deg, fence_deg = 0.03 * rng.standard_normal(2)
    crew = replace(true.crew, scale_deg=scale_deg, fence_deg=fence_deg)
    return replace(true, is_proved=True, openings=openings, crew=crew)


def _tried(cases: Sequence[tuple[int, float, float, float]]) -> Tried:
    count = len(cases)
    saved = math.fsum(c[3] for c in cases) / count
    sums: dict[int, float] = {}
    for number, _, _, minutes in cases:
        sums[number] = sums.get(number, 0.0) + minutes - saved
    return Tried(
        openings=count,
        misfit=math.fsum(c[1] for c in cases) / count,
        minutes=math.fsum(c[2] for c in cases) / count,
        saved_min=saved,
        u_saved_min=math.sqrt(math.fsum(s * s for s in sums.values())) / count,
    )


def _offered(office: Office, plan: Planned) -> dict[str, list[Change]]:
    """Return for each opening under the threshold the steps that take time, the best first."""
    return {
        mark: [(w.step, w.minutes) for w in worths if w.step not in (*FREE, Step.PROOF)]
        for mark, worths in _worths(office, plan).items()
    }


def _worths(office: Office, plan: Planned) -> dict[str, tuple[Worth, ...]]:
    under = [
        (lines, said)
        for lines, said in zip(plan.lines, plan.forecast.faces, strict=True)
        if said.chances.fits < plan.house.crew.sure
    ]
    if not under:
        return {}
    imagined = replace(office.imagined, draws=WORTH_DRAWS)
    worths = steps_worth(plan.house, under, plan.forecast.budget, imagined)
    marks = (lines.face.opening.mark for lines, _ in under)
    return dict(zip(marks, worths, strict=True))


def _misfits(
    office: Office, true: TrueHouse, reads: Reads, steps: Mapping[str, Change]
) -> dict[str, float]:
    """Return the share of misfits of some openings, each after its step."""
    rng = true.stream(5)
    again = {m: _read_again(true, m, own, steps.get(m), rng) for m, own in reads.items()}
    best: dict[str, tuple[float, float]] = {}
    for mitres in ("as-read", "at-stop"):
        plan = planned(office, replace(true, mitres=mitres), again)
        for lines, said in zip(plan.lines, plan.forecast.faces, strict=True):
            mark, chance = said.mark, said.chances.fits
            if mark not in steps or chance < best.get(mark, (-1.0, 0.0))[0]:
                continue
            stream = np.random.default_rng((true.seed, true.number, int(mark[1:]), 8))
            done = _done(true, mark, steps[mark][0])
            errors = np.array(
                [
                    built_errors(done, lines.face, plan.pieces_of(lines.face), stream)
                    for _ in range(CUT_AGAIN)
                ]
            )
            ratios = (errors @ np.array(lines.lines[-1]).T).max(axis=1)
            best[mark] = (chance, float((ratios > 1.0).mean()))
    return {mark: misfit for mark, (_, misfit) in best.items()}


def _done(true: TrueHouse, mark: str, step: Step | None) -> TrueHouse:
    """Return the truth of one opening after a step that is no reading of its shape."""
    if step is Step.STOP_BLOCK:
        return replace(true, crew=replace(true.crew, cut_mm=0.15))
    if step is not Step.STRAIGHTEDGE:
        return true
    left = 0.15 / true.world.reveal_bow_mm
    openings = tuple(
        replace(o, bow_mm=tuple(left * x for x in o.bow_mm)) if o.mark == mark else o
        for o in true.openings
    )
    return replace(true, openings=openings)


def _read_again(
    true: TrueHouse,
    mark: str,
    own: Mapping[str, Any],
    change: Change | None,
    rng: np.random.Generator,
) -> dict[str, Any]:
    """Return the readings of an opening after a step."""
    step = change[0] if change else None
    new = {place: tape_shows(true, mark, place, rng) for place in SIX}
    match step:
        case Step.DIAGONALS:
            return {**own, "rising": new["rising"], "falling": new["falling"]}
        case Step.OTHER_SIDE:
            sides = {"bottom": own["width"], "left": own["height"]}
            return {**sides, "top": new["top"], "right": new["right"]}
        case Step.REPEAT:
            again = {place: tape_shows(true, mark, place, rng) for place in own}
            return {place: [own[place], again[place]] for place in own}
        case Step.BEVEL:
            bl, br, _, tl = true.opening(mark).corners
            corner_deg = math.degrees(cmath.phase((tl - bl) / (br - bl)))
            shown_deg = round(corner_deg + BEVEL_U_DEG * rng.standard_normal(), 1)
            return {**own, "bevel": {"bl": shown_deg}, "bevel_u": BEVEL_U_DEG}
        case _:
            return dict(own)


@dataclass(frozen=True, slots=True, kw_only=True)
class ByVerdict:
    """How many openings got a verdict, and how many of them fitted when cut as they stood."""

    openings: int
    fitted: int


def by_verdict(office: Office, houses: int, seed: int = SEED) -> dict[Verdict, ByVerdict]:
    """Return the verdicts on openings of houses, and what came of them without any step."""
    found: dict[Verdict, list[bool]] = {verdict: [] for verdict in Verdict}
    for number in range(houses):
        true = draw_house(seed, number)
        plan = planned(office, true)
        fits = {
            face.opening.mark: judged.fits
            for face, judged in zip(plan.faces, judged_house(office, true).openings, strict=True)
        }
        held = frozenset(o.mark for o in true.openings) - fits.keys()
        for advice in advise(plan.house, plan.forecast, _worths(office, plan), held):
            found[advice.verdict].append(fits.get(advice.mark, False))
    return {v: ByVerdict(openings=len(f), fitted=sum(f)) for v, f in found.items() if f}
