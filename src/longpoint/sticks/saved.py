"""What a plan saves against every plan that takes each piece as a rectangle, at least.

Many plan by long points: every piece is a rectangle as long as its longest edge, and a cut takes
kerf / cos of its angle. That wastes the triangle beside every mitre; pieces of a reversible
section, turned end for end, share it. What is compared is our plan with a bound, not with another
plan: no plan by long points, however good, costs less than the bound. So what is claimed is
proved, and may be less than what is really saved.
"""

from collections.abc import Sequence
from dataclasses import replace

from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.bound import floor_of, simple_bound
from longpoint.sticks.lay.demand import Demand, End
from longpoint.sticks.lay.laying import Workload, workload
from longpoint.sticks.plan import Proof, Saved


def saved(work: Workload, bars: Bars, proof: Proof, *, all_placed: bool = True) -> Saved:
    """Return what the plan of a profile saves at least.

    Args:
        work: Its pieces.
        bars: The sticks that could be opened.
        proof: What the plan costs.
        all_placed: Whether every piece is on a stick; a plan that leaves some out saves nothing.
    """
    can_turn = any(work.can_turn)
    bound = long_point_bound(work.demands, bars) if can_turn and all_placed else 0
    return Saved(
        profile=proof.profile,
        can_turn=can_turn,
        cost=proof.cost,
        long_point_bound=bound / bars.per_unit,
        unit=proof.unit,
    )


def long_point_bound(demands: Sequence[Demand], bars: Bars) -> int:
    """Return a cost that no plan by long points undercuts, in the whole units of `bars`.

    A piece whose ends lean the same way is taken at its edges' length, which is less than a
    rectangle round it: the bound is no higher than it may be.
    """
    work = workload([_rectangle(demand) for demand in demands])
    return simple_bound(floor_of(work, bars.bars), bars)


def _rectangle(demand: Demand) -> Demand:
    longer = abs(demand.right.lean - demand.left.lean)
    return replace(
        demand,
        mid=demand.mid + longer,
        low=demand.low + longer,
        left=_square(demand.left),
        right=_square(demand.right),
        can_turn=False,
    )


def _square(end: End) -> End:
    return replace(end, lean=0, lean_mm=0.0)
