"""Cutting stock as a flow along the stick: nodes are positions, arcs are pieces; HiGHS solves it.

References:
    J. M. Valerio de Carvalho, "Exact solution of bin-packing problems using column generation and
    branch-and-bound", Annals of Operations Research 86 (1999) 629-659: the flow, and its reduction
    by laying the longest piece first.
"""

import numpy
from numpy.typing import NDArray

from tests.bench.beside.answer import Answer, Deadline
from tests.bench.beside.flow import LEFT_OVER, Graph, Numbers, by_flow
from tests.bench.cutting_stock import CuttingStock


def by_arc_flow(instance: CuttingStock, seconds: float) -> Answer:
    """Return what HiGHS finds and proves of the flow within a time."""
    deadline = Deadline(seconds)
    return by_flow(instance, positions(instance), deadline)


def positions(instance: CuttingStock) -> Graph:
    """Return the graph whose nodes are the sums that can be reached, longest piece first."""
    reached = numpy.zeros(instance.stick + 1, dtype=bool)
    reached[0] = True
    tails, heads, kinds = list[Numbers](), list[Numbers](), list[Numbers]()
    order = sorted(range(len(instance.lengths)), key=lambda kind: -instance.lengths[kind][0])
    for kind in order:
        length, demand = instance.lengths[kind]
        here = _tails(reached, length, demand)
        reached[here + length] = True
        tails.append(here)
        heads.append(here + length)
        kinds.append(numpy.full_like(here, kind))
    ends = numpy.flatnonzero(reached).astype(numpy.int32)
    ends = ends[(ends > 0) & (ends < instance.stick)]
    tails.append(ends)
    heads.append(numpy.full_like(ends, instance.stick))
    kinds.append(numpy.full_like(ends, LEFT_OVER))
    joined = [numpy.concatenate(parts) for parts in (tails, heads, kinds)]
    return Graph(joined[0], joined[1], joined[2], first=0, last=instance.stick)


def _tails(reached: NDArray[numpy.bool_], length: int, demand: int) -> Numbers:
    """Return where pieces of one length may begin: up to `demand` of them one after the other."""
    begins = numpy.zeros(len(reached), dtype=bool)
    here = numpy.flatnonzero(reached[: len(reached) - length])
    for _ in range(demand):
        here = here[~begins[here]]
        if not len(here):
            break
        begins[here] = True
        here = here + length
        here = here[here + length < len(reached)]
    return numpy.flatnonzero(begins).astype(numpy.int32)
