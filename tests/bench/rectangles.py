"""The long-point rule, to compare with: every piece a rectangle, every joint a slanting cut."""

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from longpoint.linear.port import LinearSolver
from longpoint.pieces.piece import Piece
from longpoint.sticks.effort import Effort
from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.lay.demand import Demand, End, profile_demand, round_up
from longpoint.sticks.lay.laying import workload
from longpoint.sticks.plan import Proof
from longpoint.sticks.profile_plan import plan_profile
from longpoint.survey.house import House

_MITRE_DEG: Final = 45.0


def planned_as_rectangles(
    pieces: Sequence[Piece], house: House, solver: LinearSolver | None, effort: Effort
) -> Proof:
    """Return how good a plan is that lays each piece by its longest edge, kerf / cos 45 between.

    Args:
        pieces: Pieces of one profile.
        house: Its stock and saw.
        solver: As for any plan.
        effort: As for any plan.
    """
    profile = house.profile(pieces[0].profile)
    exact = profile_demand(pieces, profile, house.saw.kerf_mm)
    kerf = round_up(house.saw.kerf_mm / math.cos(math.radians(_MITRE_DEG)))
    work = workload([as_rectangle(demand, kerf) for demand in exact.demands])
    bars = bars_of(profile.name, house.stock, house.offcuts, house.saw)
    return plan_profile(profile.name, work, bars, solver, effort).proof


def as_rectangle(demand: Demand, kerf: int) -> Demand:
    """Return a piece as the rectangle from its first point to its last. [0.01 mm]"""
    outer = demand.left.tip + demand.right.tip
    square = End(lean=0, lean_mm=0.0, kerf=kerf)
    return replace(
        demand,
        mid=demand.mid + outer,
        low=demand.low + outer - 2,
        left=square,
        right=square,
        can_turn=False,
    )
