"""The tables of the page on calibration."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.forecast.records import Verdict
from tests.calibration.judged import (
    FEWEST_HOUSES,
    TWO_SIDED,
    Judged,
    JudgedHouse,
    Office,
    brier,
    by_tenth,
    false_batch,
    judged_houses,
    mean,
    openings_of,
    share,
)
from tests.calibration.taught import (
    FEWEST_FRAMES,
    MOST_FRAMES,
    Taught,
    taught_crews,
)
from tests.calibration.tried import (
    CUT_AGAIN,
    ByVerdict,
    Tried,
    by_verdict,
    tried_steps,
)
from tests.simulated_houses import (
    World,
)

WORLDS: Final = {
    "as supposed": World(),
    "saws twice as far out": World(saw_times=2.0),
    "a hook bent by 1 mm on every inside reading": World(hook_mm=1.0),
    "reveals bowed by 1.2 instead of 0.4": World(reveal_bow_mm=1.2),
    "another tape at the saw, both class II as written": World(tapes=2),
    "the same, but both class III": World(tapes=2, true_class="III"),
    "a piece's own bow felt in its quirk too": World(quirk_feels_bow=True),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Counts:
    """How much is drawn for the tables."""

    houses: int = 500
    worlds: int = 100
    crews: int = 60
    verdicts: int = 60
    steps: int = 100


def tables(counts: Counts) -> str:
    """Return all tables of the page, as Markdown."""
    office = Office()
    inside = judged_houses(office, counts.houses)
    worlds = {name: judged_houses(office, counts.worlds, world) for name, world in WORLDS.items()}
    return "\n\n".join(
        (
            reliability_table(inside),
            house_table(inside),
            verdict_table(by_verdict(office, counts.verdicts)),
            worlds_table(worlds),
            crews_table(taught_crews(office, counts.crews), counts.crews),
            steps_table(tried_steps(office, counts.steps)),
        )
    )


def reliability_table(houses: Sequence[JudgedHouse]) -> str:
    judged = openings_of(houses)
    lines = [
        f"**Said and seen.** {len(judged)} openings of {len(houses)} houses, by the chance given. "
        "Within: what seen less said may be by luck of the draw, 95 times in 100.",
        "",
        "| chance given | openings | houses | said, mean | seen | off | within |",
        "| --- | --- | --- | --- | --- | --- | --- |",
    ]
    named = {
        f"{tenth / 10:.1f} to {(tenth + 1) / 10:.1f}": s for tenth, s in by_tenth(judged).items()
    }
    for name, s in (*named.items(), ("all", share(judged))):
        within = f"±{TWO_SIDED * s.u:.3f}" if s.clusters >= FEWEST_HOUSES else "too few"
        lines.append(
            f"| {name} | {s.count} | {s.clusters} | {s.said:.3f} | {s.seen:.3f} "
            f"| {s.off:+.3f} | {within} |"
        )
    return "\n".join(lines)


def house_table(houses: Sequence[JudgedHouse]) -> str:
    judged = openings_of(houses)
    safe = false_batch(judged)
    lines = [
        "**Whole houses.**",
        "",
        "| | said | seen |",
        "| --- | --- | --- |",
        f"| misfits a house | {mean(h.misfits_mean for h in houses):.2f} "
        f"| {mean(h.misfits for h in houses):.2f} |",
        "| houses with no more misfits than the figure that nine in ten keep | at least 0.90 "
        f"| {mean(h.misfits <= h.misfits_p90 for h in houses):.2f} |",
    ]
    for low, high in ((0.0, 0.1), (0.1, 0.3), (0.3, 0.5), (0.5, 0.7), (0.7, 1.01)):
        some = [h for h in houses if low <= h.all_fit < high]
        if some:
            u = math.sqrt(sum(h.all_fit * (1.0 - h.all_fit) for h in some)) / len(some)
            lines.append(
                f"| every opening fits, {low:g} to {min(high, 1.0):g} given ({len(some)} houses) "
                f"| {mean(h.all_fit for h in some):.2f} "
                f"| {mean(h.misfits == 0 for h in some):.2f} ± {TWO_SIDED * u:.2f} |"
            )
    lines += [
        f"| said to be safe with the rest, and didn't fit ({safe.count} openings; 0.10 allowed) "
        f"| {1.0 - safe.said:.3f} | {1.0 - safe.seen:.3f} ± {TWO_SIDED * safe.u:.3f} |",
        "",
        f"Mean squared error of the chances (Brier): {brier(judged):.4f}; one chance for all would "
        f"have {_base_rate(judged):.4f}. Held, their readings in doubt: "
        f"{sum(h.held for h in houses)} openings.",
    ]
    return "\n".join(lines)


def verdict_table(found: Mapping[Verdict, ByVerdict]) -> str:
    total = sum(v.openings for v in found.values())
    lines = [
        f"**Verdicts.** {total} openings, cut as they stood, no step taken.",
        "",
        "| verdict | share | fitted |",
        "| --- | --- | --- |",
    ]
    for verdict, v in found.items():
        fitted = "-" if verdict is Verdict.HOLD else f"{v.fitted / v.openings:.2f}"
        lines.append(f"| `{verdict.value}` | {v.openings / total:.2f} | {fitted} |")
    return "\n".join(lines)


def worlds_table(worlds: Mapping[str, Sequence[JudgedHouse]]) -> str:
    houses = len(next(iter(worlds.values())))
    lines = [
        f"**Where the truth is another.** The same {houses} houses in every row, forecast as ever.",
        "",
        "| truth | said | seen | off | within | safe, and didn't fit (0.10 allowed) | Brier |",
        "| --- | --- | --- | --- | --- | --- | --- |",
    ]
    for name, judged in ((n, openings_of(h)) for n, h in worlds.items()):
        s, safe = share(judged), false_batch(judged)
        lines.append(
            f"| {name} | {s.said:.3f} | {s.seen:.3f} | {s.off:+.3f} | ±{TWO_SIDED * s.u:.3f} "
            f"| {1.0 - safe.seen:.3f} ± {TWO_SIDED * safe.u:.3f} | {brier(judged):.3f} |"
        )
    return "\n".join(lines)


def crews_table(taught: Taught, crews: int) -> str:
    lines = [
        f"**Crews that learn.** {crews} crews, each with its own saw, tape and hand; "
        f"{len(taught.after)} openings done after {FEWEST_FRAMES} to {MOST_FRAMES} windows were "
        "written down.",
        "",
        "| forecast by | said | seen | off | within | safe, and didn't fit (0.10 allowed) "
        "| called safe | Brier |",
        "| --- | --- | --- | --- | --- | --- | --- | --- |",
    ]
    for name, judged in (("our figures", taught.before), ("their own", taught.after)):
        s, safe = share(judged), false_batch(judged)
        lines.append(
            f"| {name} | {s.said:.3f} | {s.seen:.3f} | {s.off:+.3f} | ±{TWO_SIDED * s.u:.3f} "
            f"| {1.0 - safe.seen:.3f} ± {TWO_SIDED * safe.u:.3f} | {safe.count / len(judged):.2f} "
            f"| {brier(judged):.3f} |"
        )
    return "\n".join(lines)


def steps_table(tried: Mapping[str, Tried]) -> str:
    lines = [
        f"**One more step.** {tried['none'].openings} openings under the threshold, of houses with "
        f"a proved saw and small quirks, each cut {CUT_AGAIN} times over.",
        "",
        "| step | didn't fit | minutes spent | refitting saved, min | saved a minute |",
        "| --- | --- | --- | --- | --- |",
    ]
    names = {"none": "none", "random": "any one of those on offer", "advised": "the one advised"}
    for way, name in names.items():
        t = tried[way]
        each = f"{t.saved_min / t.minutes:.2f}" if t.minutes else "-"
        lines.append(
            f"| {name} | {t.misfit:.3f} | {t.minutes:.2f} "
            f"| {t.saved_min:.2f} ± {TWO_SIDED * t.u_saved_min:.2f} | {each} |"
        )
    return "\n".join(lines)


def _base_rate(judged: Sequence[Judged]) -> float:
    seen = mean(o.fits for o in judged)
    return seen * (1.0 - seen)
