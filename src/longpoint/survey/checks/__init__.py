"""What is wrong with the readings as they were written down, before any geometry.

In: a `House`. Out: findings. One file for each kind of fault, each a pure function of the house.
"""

from longpoint.errors import Finding
from longpoint.survey.checks.accept import accepted
from longpoint.survey.checks.arches import check_arches
from longpoint.survey.checks.batches import check_batches
from longpoint.survey.checks.bow import check_bow
from longpoint.survey.checks.impossible import check_impossible
from longpoint.survey.checks.lean_step import check_lean_step
from longpoint.survey.checks.off_siblings import check_off_siblings
from longpoint.survey.checks.opposite_sides import check_opposite_sides
from longpoint.survey.checks.outside_sense import check_outside_sense
from longpoint.survey.checks.plane import check_plane
from longpoint.survey.checks.repeats import check_repeats
from longpoint.survey.checks.rows_swapped import check_nominals
from longpoint.survey.checks.same_readings import check_same_readings
from longpoint.survey.checks.tape_shift import check_tape_shift
from longpoint.survey.house import House

__all__ = ["accepted", "check_survey"]

CHECKS = (
    check_batches,
    check_outside_sense,
    check_impossible,
    check_repeats,
    check_opposite_sides,
    check_bow,
    check_same_readings,
    check_nominals,
    check_off_siblings,
    check_tape_shift,
    check_lean_step,
    check_plane,
    check_arches,
)


def check_survey(house: House) -> tuple[Finding, ...]:
    """Return everything that the readings by themselves say is wrong or worth knowing.

    Args:
        house: The house as read.

    Returns:
        Findings, the gravest kinds first; each stands by itself, and none stops another.
    """
    return tuple(finding for check in CHECKS for finding in check(house))
