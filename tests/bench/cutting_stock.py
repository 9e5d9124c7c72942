"""Plain one-dimensional cutting stock through the nester: square ends, no kerf, one length.

The text format of the public collections: number of lengths, length of the stick, then one line
with a length and its demand each. A length unit of the instance is one hundredth here, so that
nothing is rounded.
"""

import time
from dataclasses import dataclass, replace
from pathlib import Path

from longpoint.linear.port import LinearSolver
from longpoint.sticks.effort import STANDARD, Effort
from longpoint.sticks.lay.bars import Bar, Bars
from longpoint.sticks.lay.demand import PER_MM, Demand, End
from longpoint.sticks.lay.laying import Workload, workload
from longpoint.sticks.plan import StickSource
from longpoint.sticks.profile_plan import ProfilePlan, plan_profile

_GRID_STEPS = 10_000
_SQUARE = End(lean=0, lean_mm=0.0, kerf=0)


@dataclass(frozen=True, slots=True, kw_only=True)
class CuttingStock:
    """One instance.

    Attributes:
        name: Its name.
        stick: Length of every stick.
        lengths: (length, demand) pairs.
    """

    name: str
    stick: int
    lengths: tuple[tuple[int, int], ...]


def read_cutting_stock(path: Path) -> CuttingStock:
    """Return the instance in a file of the public collections' format.

    Raises:
        ValueError: It is none.
    """
    try:
        count, stick, *rest = map(int, path.read_text(encoding="ascii").split())
    except ValueError as error:
        raise ValueError(f"{path}: whole numbers are wanted, two at least: {error}") from None
    if len(rest) != 2 * count:
        raise ValueError(f"{path}: {count} lengths are announced, {len(rest) / 2:g} follow.")
    pairs = tuple(zip(rest[::2], rest[1::2], strict=True))
    if not all(0 < length <= stick and demand > 0 for length, demand in pairs):
        raise ValueError(f"{path}: a length is over {stick} or not over 0, or nothing is wanted.")
    return CuttingStock(name=path.stem, stick=stick, lengths=pairs)


def planned(instance: CuttingStock, solver: LinearSolver | None, effort: Effort) -> ProfilePlan:
    """Return the plan of an instance, made as that of any profile; its cost counts sticks."""
    return plan_profile(instance.name, *work_and_bars(instance), solver, effort)


def work_and_bars(instance: CuttingStock) -> tuple[Workload, Bars]:
    """Return the pieces and the sticks of an instance, as the nester takes them."""
    demands = [
        Demand(
            mark=f"{length}-{copy}",
            mid=length,
            low=length,
            left=_SQUARE,
            right=_SQUARE,
            can_turn=False,
        )
        for length, demand in sorted(instance.lengths, reverse=True)
        for copy in range(demand)
    ]
    bar = Bar(
        length=instance.stick,
        length_mm=instance.stick / PER_MM,
        trim=0,
        cost=1,
        count=None,
        source=StickSource.STOCK,
    )
    return workload(demands), Bars(bars=(bar,), unit="m", per_unit=1)


def within(seconds: float, stick: int = 0) -> Effort:
    """Return an effort for whole lengths that ends about so long from now.

    The search begins on a coarser grid where a stick is very long; bounds are always made on a fine
    one.
    """
    end = time.perf_counter() + seconds
    grid = max(1, stick // _GRID_STEPS)
    return replace(
        STANDARD, grid=grid, dives=16, seconds=seconds, stop=lambda: time.perf_counter() > end
    )


def check(instance: CuttingStock, plan: ProfilePlan) -> None:
    """Make sure, by lengths and marks alone, that a plan gives every length and fits its sticks.

    Raises:
        ValueError: It doesn't.
    """
    left = dict(instance.lengths)
    for stick in plan.sticks:
        lengths = [int(laid.piece.partition("-")[0]) for laid in stick.laid]
        if sum(lengths) > instance.stick:
            raise ValueError(f"{instance.name}: stick {stick.name} is too full.")
        for length in lengths:
            left[length] -= 1
    if any(left.values()):
        raise ValueError(f"{instance.name}: pieces are missing or cut too often.")
    if plan.proof.cost != len(plan.sticks) or plan.proof.lower_bound > plan.proof.cost:
        raise ValueError(f"{instance.name}: the plan says {plan.proof}.")
