"""Cutting stock by the nester of this project."""

from longpoint.solvers.installed import linear_solver
from tests.bench.beside.answer import Answer
from tests.bench.cutting_stock import CuttingStock, check, planned, within


def by_longpoint(instance: CuttingStock, seconds: float) -> Answer:
    """Return what the nester finds and proves; it ends its search when the time is up."""
    plan = planned(instance, linear_solver(), within(seconds, instance.stick))
    check(instance, plan)
    sticks = tuple(
        tuple(int(laid.piece.partition("-")[0]) for laid in stick.laid) for stick in plan.sticks
    )
    return Answer(sticks=sticks, bound=round(plan.proof.lower_bound))
