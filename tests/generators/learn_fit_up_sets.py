"""Learn the sets of rows that rule fit-ups, and print the module that keeps them.

Run `python -m tests.generators.learn_fit_up_sets` from the checkout; it takes some half an hour.
Exact programmes of drawn errors in drawn frames give the sets; a greedy cover keeps those that
bring the ratio by the list nearest to the exact one. A ratio grows in step with the errors, so
every draw counts, whatever its size.
"""

import math
import sys
import textwrap
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import FrameRow, frame_rows
from longpoint.forecast.fitup.known_sets import letters_of
from longpoint.forecast.fitup.mirrored_sets import RowSet, images, tightness
from longpoint.forecast.fitup.respect import Respect, rows_of
from longpoint.solvers.highs import HighsSolver
from tests.fit_up_draws import (
    Floats,
    Set,
    drawn_errors,
    drawn_limits,
    drawn_sets,
    drawn_spreads,
    error_matrix,
)

NEAR = (0.6, 1.7)
"""Ratios that count: those of errors which, a little larger or smaller, are at the limit."""
FAR = 0.25
"""A ratio by the list that is further off than this, as a logarithm, is just missed."""
MOST_CANDIDATES = 3000


@dataclass(frozen=True)
class Family:
    """One list to learn."""

    is_closed: bool
    respect: Respect
    bounds: tuple[float, float]
    frames: int
    keep: int


FAMILIES = (
    Family(True, Respect.IN_PLANE, (0.0, 1.0), 40, 240),
    Family(True, Respect.IN_PLANE, (1.0, 1.4), 40, 240),
    Family(True, Respect.IN_PLANE, (1.4, 1.9), 40, 220),
    Family(True, Respect.IN_PLANE, (1.9, 2.5), 40, 200),
    Family(True, Respect.IN_PLANE, (2.5, 4.5), 40, 110),
    Family(True, Respect.IN_PLANE, (4.5, math.inf), 40, 90),
    Family(True, Respect.GAPS, (0.0, math.inf), 40, 30),
    Family(True, Respect.QUIRK, (0.0, math.inf), 40, 60),
    Family(False, Respect.IN_PLANE, (0.0, math.inf), 60, 80),
    Family(False, Respect.GAPS, (0.0, math.inf), 30, 10),
    Family(False, Respect.QUIRK, (0.0, math.inf), 30, 15),
)


@dataclass(frozen=True)
class Solved:
    """Draws of one frame with their exact ratios."""

    rows: tuple[FrameRow, ...]
    off: Floats
    ratio: Floats


HEAD = '''"""Sets of rows in letters, as `tests/generators/learn_fit_up_sets.py` printed them."""

from typing import Final, NamedTuple


class Learned(NamedTuple):
    """What was learned about one kind of frame in one respect.

    Attributes:
        is_closed: True for four sides with four joints, False for three sides with two.
        respect: Respect that the rows are counted in.
        least: Least room of a quirk against the gap allowed that it was learned for.
        letters: A word per set, a letter per row.
    """

    is_closed: bool
    respect: str
    least: float
    letters: str


LEARNED: Final = ('''


def main() -> None:
    found = [(family, learned(family, seed)) for seed, family in enumerate(FAMILIES)]
    print(module_text(found))  # noqa: T201


def module_text(found: Iterable[tuple[Family, list[RowSet]]]) -> str:
    """Return the module that keeps what was learned."""
    lines = [HEAD]
    for family, kept in found:
        words = textwrap.wrap(" ".join(map(letters_of, kept)), width=84)
        lines += [
            "    Learned(",
            f"        is_closed={family.is_closed},",
            f'        respect="{family.respect.value}",',
            f"        least={family.bounds[0]:.1f},",
            "        letters=(",
            *(f'            "{words_of_line} "' for words_of_line in words),
            "        ),",
            "    ),",
        ]
    return "\n".join([*lines, ")"])


def learned(family: Family, seed: int, draws: int = 180) -> list[RowSet]:
    """Return the sets kept for a family, the most telling first."""
    rng = np.random.default_rng(seed)
    seen: Counter[RowSet] = Counter()
    solved = [solve_frame(chosen, family, draws, seen, rng) for chosen in sets_within(family, rng)]
    candidates = [rows for rows, _ in seen.most_common(MOST_CANDIDATES)]
    kept = cover(reaches(solved, candidates, family), family.keep)
    return [candidates[k] for k in kept]


def sets_within(family: Family, rng: np.random.Generator) -> Iterable[tuple[Set, Solved]]:
    found = 0
    while found < family.frames:
        (drawn,) = drawn_sets(1, rng, is_door=not family.is_closed)
        if family.is_closed and drawn.width_mm < drawn.height_mm:
            # A tall frame is looked up lying down.
            continue
        rows = frame_rows(drawn.frame(), drawn_limits(rng))
        if family.bounds[0] <= tightness(rows) < family.bounds[1]:
            found += 1
            chosen = rows_of(rows, family.respect)
            yield drawn, Solved(rows=chosen, off=np.empty(0), ratio=np.empty(0))


def solve_frame(
    chosen: tuple[Set, Solved],
    family: Family,
    draws: int,
    seen: Counter[RowSet],
    rng: np.random.Generator,
) -> Solved:
    """Solve draws of one frame, and count the sets of rows that rule them."""
    drawn, blank = chosen
    frame = drawn.frame()
    solver = HighsSolver()
    kept: list[Floats] = []
    ratios: list[float] = []
    matrix = error_matrix(blank.rows)
    for _ in range(draws * 4):
        scale = rng.uniform(0.5, 1.8)
        errors = drawn_errors(frame, drawn_spreads(rng), 1, rng)[0] * scale
        fit = best_fit_up(blank.rows, tuple(errors), solver)
        if not NEAR[0] < fit.ratio < NEAR[1]:
            continue
        kept.append(matrix @ errors)
        ratios.append(fit.ratio)
        support = tuple(i for i, weight in enumerate(fit.weights) if weight > 1e-9)
        seen[min(images(support, is_closed=family.is_closed, respect=family.respect))] += 1
        if len(kept) == draws:
            break
    return Solved(rows=blank.rows, off=np.array(kept), ratio=np.array(ratios))


def reaches(solved: Sequence[Solved], candidates: Sequence[RowSet], family: Family) -> Floats:
    """Return how near each candidate with its images comes to each exact ratio, 0 to FAR."""
    owners: list[int] = []
    sets: list[RowSet] = []
    for k, candidate in enumerate(candidates):
        found = images(candidate, is_closed=family.is_closed, respect=family.respect)
        sets += found
        owners += [k] * len(found)
    blocks = []
    for one in solved:
        if not len(one.ratio):
            continue
        by_list = one.off @ weighed(one.rows, sets).T
        near = FAR + np.log(np.maximum(by_list / one.ratio[:, None], 1e-9))
        block = np.zeros((len(one.ratio), len(candidates)), dtype=np.float32)
        np.maximum.at(block.T, owners, near.T)
        blocks.append(block)
    return np.vstack(blocks)


def weighed(rows: Sequence[FrameRow], sets: Sequence[RowSet]) -> Floats:
    """Return the weights of many sets of rows at once, noughts where there are none, (sets, rows).

    The same as `row_weights`, which is quick enough for a list but not for all candidates.
    """
    system = np.vstack([np.array([row.moves for row in rows]).T, [row.limit_mm for row in rows]])
    system[:-1] /= np.abs(system[:-1]).max(axis=1, keepdims=True)
    wanted = np.zeros(len(system))
    wanted[-1] = 1.0
    found = np.zeros((len(sets), len(rows)))
    by_size: dict[int, list[int]] = {}
    for index, chosen in enumerate(sets):
        by_size.setdefault(len(chosen), []).append(index)
    for indices in by_size.values():
        chosen_rows = np.array([sets[i] for i in indices])
        part = system[:, chosen_rows].transpose(1, 0, 2)
        # By singular values, so that sets with more than one answer can be left out.
        u, sizes, vt = np.linalg.svd(part, full_matrices=False)
        over = (u.transpose(0, 2, 1) @ wanted) / np.maximum(sizes, 1e-12)
        weights = (vt.transpose(0, 2, 1) @ over[:, :, None])[:, :, 0]
        left = np.abs(np.einsum("sij,sj->si", part, weights) - wanted).max(axis=1)
        least = -1e-7 * np.maximum(1.0, weights.max(axis=1))
        is_good = (sizes[:, -1] > 1e-7) & (left < 1e-6) & (weights.min(axis=1) > least)
        good = np.array(indices)[is_good]
        found[good[:, None], chosen_rows[is_good]] = np.maximum(weights[is_good], 0.0)
    return found


def cover(near: Floats, most: int) -> list[int]:
    """Return candidates, each the one that brings the list nearest to the exact ratios."""
    best = np.zeros(len(near), dtype=np.float32)
    kept: list[int] = []
    while len(kept) < most:
        gain = sum(
            np.maximum(near[a : a + 2000] - best[a : a + 2000, None], 0.0).sum(axis=0)
            for a in range(0, len(near), 2000)
        )
        k = int(gain.argmax())
        if gain[k] < 1e-3:
            break
        kept.append(k)
        best = np.maximum(best, near[:, k])
    short = FAR - best
    pool = FAR - near.max(axis=1)
    print(  # noqa: T201
        f"# {len(near)} draws, {near.shape[1]} candidates: mean short {short.mean():.4f}, "
        f"of all {pool.mean():.4f}, over 1 %: {(short > 0.01).mean():.3f}",
        file=sys.stderr,
        flush=True,
    )
    return kept


if __name__ == "__main__":
    main()
