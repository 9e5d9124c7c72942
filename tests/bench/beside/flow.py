"""Sticks as paths through a graph, chosen by HiGHS: arcs are pieces, or what is left over."""

import importlib
import math
from collections import defaultdict
from dataclasses import dataclass

import numpy
from numpy.typing import NDArray

from tests.bench.beside.answer import Answer, Deadline, least_by_length
from tests.bench.cutting_stock import CuttingStock

Numbers = NDArray[numpy.int32]
LEFT_OVER = -1


@dataclass(frozen=True, slots=True)
class Graph:
    """Every path from the first node to the last is what a stick may hold.

    Attributes:
        tails: Node that each arc leaves.
        heads: Node that it comes to.
        kinds: Number of its length in the instance, or `LEFT_OVER`.
        first: Node at which every stick begins.
        last: Node at which it ends.
    """

    tails: Numbers
    heads: Numbers
    kinds: Numbers
    first: int
    last: int


def by_flow(instance: CuttingStock, graph: Graph, deadline: Deadline) -> Answer:
    """Return the fewest paths that hold every length as often as is asked."""
    highspy = importlib.import_module("highspy")
    highs = highspy.Highs()
    highs.silent()
    for option, value in {
        "threads": 1,
        "random_seed": 0,
        "mip_rel_gap": 0.0,
        "time_limit": deadline.left,
    }.items():
        highs.setOptionValue(option, value)
    highs.passModel(_model(highspy, instance, graph))
    highs.setOptionValue("time_limit", deadline.left)
    highs.run()
    info = highs.getInfo()
    least = least_by_length(instance)
    bound = least
    if math.isfinite(info.mip_dual_bound):
        bound = max(least, math.ceil(info.mip_dual_bound - 1e-6))
    if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return Answer(bound=bound)
    flow = numpy.rint(numpy.array(highs.getSolution().col_value)).astype(int)
    return Answer(sticks=_paths(instance, graph, flow), bound=bound)


def _model(highspy: object, instance: CuttingStock, graph: Graph) -> object:
    """Nodes keep their flow, but for the first and the last; lengths keep their demand."""
    nodes, places = numpy.unique(numpy.concatenate((graph.tails, graph.heads)), return_inverse=True)
    arcs, kinds = len(graph.tails), len(instance.lengths)
    tails, heads = places[:arcs], places[arcs:]
    demands = numpy.array([demand for _, demand in instance.lengths], dtype=float)
    is_end = (nodes == graph.first) | (nodes == graph.last)
    is_piece = graph.kinds != LEFT_OVER
    # Three entries to a column at most: out of its tail, into its head, its length.
    rows = numpy.stack((tails, heads, len(nodes) + graph.kinds), axis=1)
    values = numpy.broadcast_to(numpy.array([-1.0, 1.0, 1.0]), rows.shape)
    kept = numpy.stack((~is_end[tails], ~is_end[heads], is_piece), axis=1)
    begins = graph.tails == graph.first
    model = highspy.HighsLp()  # type: ignore[attr-defined]
    model.num_col_, model.num_row_ = arcs, len(nodes) + kinds
    model.col_cost_ = begins.astype(float)
    model.col_lower_ = numpy.zeros(arcs)
    most = numpy.where(is_piece, demands[graph.kinds], demands.sum())
    model.col_upper_ = most
    model.row_lower_ = numpy.concatenate((numpy.zeros(len(nodes)), demands))
    model.row_upper_ = numpy.concatenate(
        (numpy.zeros(len(nodes)), numpy.full(kinds, highspy.kHighsInf))  # type: ignore[attr-defined]
    )
    matrix = model.a_matrix_
    matrix.format_ = highspy.MatrixFormat.kColwise  # type: ignore[attr-defined]
    matrix.start_ = numpy.concatenate(([0], numpy.cumsum(kept.sum(axis=1)))).astype(numpy.int32)
    matrix.index_ = rows[kept].astype(numpy.int32)
    matrix.value_ = values[kept]
    model.integrality_ = [highspy.HighsVarType.kInteger] * arcs  # type: ignore[attr-defined]
    return model


def _paths(
    instance: CuttingStock, graph: Graph, flow: NDArray[numpy.int_]
) -> tuple[tuple[int, ...], ...]:
    leaving = defaultdict[int, list[list[int]]](list)
    for arc in numpy.flatnonzero(flow):
        tail, head, kind = (int(part[arc]) for part in (graph.tails, graph.heads, graph.kinds))
        leaving[tail].append([int(flow[arc]), head, kind])
    sticks = list[tuple[int, ...]]()
    while leaving[graph.first]:
        node, lengths = graph.first, list[int]()
        while node != graph.last:
            arc_left = leaving[node][-1]
            arc_left[0] -= 1
            if not arc_left[0]:
                leaving[node].pop()
            node = arc_left[1]
            if arc_left[2] != LEFT_OVER:
                lengths.append(instance.lengths[arc_left[2]][0])
        sticks.append(tuple(lengths))
    return tuple(sticks)
