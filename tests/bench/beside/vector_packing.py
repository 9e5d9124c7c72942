"""Cutting stock as vector packing of one dimension: pyvpsolver builds the graph, HiGHS solves it.

pyvpsolver (BSD) is a general-purpose vector-packing library: it makes an arc-flow graph, folds
what looks alike in it, and leaves the flow to any integer solver.

References:
    F. Brandao, J. P. Pedroso, "Bin packing and related problems: general arc-flow formulation with
    graph compression", Computers & Operations Research 69 (2016) 56-67.
"""

import importlib
import os
import sys
from pathlib import Path

import numpy

from tests.bench.beside.answer import Answer, Deadline
from tests.bench.beside.flow import LEFT_OVER, Graph, by_flow
from tests.bench.cutting_stock import CuttingStock


def by_vector_packing(instance: CuttingStock, seconds: float) -> Answer:
    """Return what is found and proved within a time, the folding of the graph counted."""
    deadline = Deadline(seconds)
    return by_flow(instance, folded(instance), deadline)


def folded(instance: CuttingStock) -> Graph:
    """Return the folded graph of an instance."""
    # Its programs stand beside the interpreter.
    os.environ["PATH"] = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    library = importlib.import_module("pyvpsolver")
    library.VPSolver.set_verbose(False)
    lengths = [[length] for length, _ in instance.lengths]
    demands = [demand for _, demand in instance.lengths]
    packing = library.VBP([instance.stick], lengths, demands)
    drawn = library.AFG(packing).graph()
    numbers = {node: number for number, node in enumerate(sorted(drawn.V, key=str))}
    first, last = numbers["S"], numbers["T"]
    arcs = [
        (numbers[tail], numbers[head], LEFT_OVER if kind == drawn.LOSS else kind)
        for tail, head, kind in drawn.A
        if numbers[head] != first
    ]
    tails, heads, kinds = numpy.array(arcs, dtype=numpy.int32).T
    return Graph(tails, heads, kinds, first, last)
