"""Cutting stock by constraint programming: OR-Tools CP-SAT, one worker.

How many of each length lie on each stick; sticks opened in order; the plan by first fit as a hint.
"""

import importlib
import math
from itertools import pairwise

from tests.bench.beside.answer import Answer, Deadline, first_fit, least_by_length
from tests.bench.cutting_stock import CuttingStock


def by_cp_sat(instance: CuttingStock, seconds: float) -> Answer:
    """Return what CP-SAT finds and proves within a time."""
    deadline = Deadline(seconds)
    cp_model = importlib.import_module("ortools.sat.python.cp_model")
    hint = first_fit(instance)
    least = least_by_length(instance)
    model = cp_model.CpModel()
    opened = [model.new_bool_var("") for _ in hint]
    laid = [
        [model.new_int_var(0, min(demand, instance.stick // length), "") for _ in hint]
        for length, demand in instance.lengths
    ]
    for number, is_open in enumerate(opened):
        lengths = sum(
            length * row[number] for (length, _), row in zip(instance.lengths, laid, strict=True)
        )
        model.add(lengths <= instance.stick * is_open)
        model.add_hint(is_open, 1)
        for (length, _), row in zip(instance.lengths, laid, strict=True):
            model.add_hint(row[number], hint[number].count(length))
    for (_, demand), row in zip(instance.lengths, laid, strict=True):
        model.add(sum(row) == demand)
    for before, after in pairwise(opened):
        model.add(before >= after)
    model.add(sum(opened) >= least)
    model.minimize(sum(opened))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 0
    solver.parameters.max_time_in_seconds = deadline.left
    ended = solver.solve(model)
    bound = max(least, math.ceil(solver.best_objective_bound - 1e-6))
    if ended not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Answer(bound=least)
    sticks = [
        tuple(
            length
            for (length, _), row in zip(instance.lengths, laid, strict=True)
            for _ in range(solver.value(row[number]))
        )
        for number in range(len(hint))
    ]
    return Answer(sticks=tuple(stick for stick in sticks if stick), bound=bound)
