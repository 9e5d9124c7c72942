"""Adapters of the ports through which the core solves programs.

In: a `LinearProblem`. Out: a `LinearSolution`. `installed.linear_solver` picks the one there is.
"""
