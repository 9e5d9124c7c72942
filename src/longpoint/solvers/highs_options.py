"""How HiGHS is told to work, wherever it runs: one thread, fixed seed, no gap left."""

from typing import Final

from longpoint.linear.port import LinearProblem

_LEAST_TOLERANCE: Final = 1e-10
"""HiGHS takes none below."""


def highs_options(problem: LinearProblem) -> dict[str, int | float | str]:
    """Return the options of HiGHS for a problem, by the names that HiGHS gives them.

    Example:
        >>> highs_options(LinearProblem(columns=(), rows=(), integral=True, node_limit=9))
        {'threads': 1, 'random_seed': 0, 'mip_rel_gap': 0.0, 'mip_max_nodes': 9}
    """
    options: dict[str, int | float | str] = {"threads": 1, "random_seed": 0}
    if problem.integral:
        options |= {"mip_rel_gap": 0.0}
        if problem.node_limit is not None:
            options["mip_max_nodes"] = problem.node_limit
        if problem.enough is not None:
            options["objective_target"] = problem.enough
        return options
    # The masters are small and already lean: presolve costs more than it saves.
    options["presolve"] = "off"
    if problem.tolerance is not None:
        exact = max(problem.tolerance, _LEAST_TOLERANCE)
        options |= {"dual_feasibility_tolerance": exact, "ipm_optimality_tolerance": exact / 10}
    if problem.central:
        options |= {"solver": "ipm", "run_crossover": "off"}
    return options
