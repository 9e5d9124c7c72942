"""Picks the solver that is installed."""

from longpoint.linear.port import LinearSolver
from longpoint.solvers.highs import HighsSolver


def linear_solver() -> LinearSolver | None:
    """Return a solver, or None where none is installed; plans are then made without."""
    if not HighsSolver.is_installed():
        return None
    try:
        return HighsSolver()
    except ImportError:
        # Installed, but what it needs is broken or gone: plans are made without.
        return None
