"""Cutting stock by the nester of this project."""

from dataclasses import replace

from longpoint.solvers import linear_solver
from longpoint.sticks.effort import STANDARD
from tests.bench.beside.answer import Answer
from tests.bench.cutting_stock import CuttingStock, check, planned


def by_longpoint(instance: CuttingStock, seconds: float) -> Answer:
    """Return what the nester finds and proves; the time limits each call of its solver."""
    plan = planned(instance, linear_solver(), replace(STANDARD, grid=1, seconds=seconds))
    check(instance, plan)
    sticks = tuple(
        tuple(int(laid.piece.partition("-")[0]) for laid in stick.laid) for stick in plan.sticks
    )
    return Answer(sticks=sticks, bound=round(plan.proof.lower_bound))
