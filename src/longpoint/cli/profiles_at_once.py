"""The profiles of one house planned at once, each by a process of its own."""

import contextlib
import os
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.cli.workers import shared_out
from longpoint.linear.port import LinearSolver
from longpoint.solvers.installed import linear_solver
from longpoint.sticks.effort import Effort
from longpoint.sticks.profile_plan import ProfileJob, ProfilePlan, one_by_one

MANY: Final = 30
"""Pieces from which a profile mostly takes longer than its process takes to be there."""


@dataclass(frozen=True, slots=True)
class Task:
    """What a process is handed."""

    job: ProfileJob
    effort: Effort


def at_once(
    jobs: Sequence[ProfileJob], solver: LinearSolver | None, effort: Effort
) -> list[ProfilePlan]:
    """Return the plan of each job: those of many pieces at once, if there are two and two cores.

    The plans are those of `one_by_one`, since no profile knows of another.

    Args:
        jobs: The profiles.
        solver: None: without one, here as in the processes, which take the one that is installed.
        effort: Limits, as counts; what it stops by is asked in the processes.

    Raises:
        LongpointError: As `plan_profile`.
    """
    many = [job for job in jobs if len(job.work.mid) >= MANY]
    cores = os.cpu_count() or 1
    if solver is None or min(len(many), cores) < 2:
        return one_by_one(jobs, solver, effort)
    many.sort(key=lambda job: -len(job.work.mid))
    tasks = [Task(job, effort) for job in many]
    made = dict[str, ProfilePlan]()
    # Where no process can be started, as without a folder to write to, all are left.
    with contextlib.suppress(OSError):
        for done in shared_out(tasks, _planned, cores):
            if done.answer is not None:
                made[tasks[done.place].job.profile] = done.answer
    # The small ones, and what a process was killed over: an error is then raised here.
    left = [job for job in jobs if job.profile not in made]
    made |= {plan.proof.profile: plan for plan in one_by_one(left, solver, effort)}
    return [made[job.profile] for job in jobs]


def _planned(task: Task) -> ProfilePlan | None:
    try:
        return one_by_one([task.job], linear_solver(), task.effort)[0]
    except Exception:  # raised again where it can be told, by who asked
        return None
