"""Which offcut of the rack is meant, where several are equally long."""

from collections import defaultdict, deque
from collections.abc import Sequence
from dataclasses import replace

from longpoint.sticks.plan import CutPlan, StickSource
from longpoint.survey.profiles import Offcut


def with_labels(plan: CutPlan, offcuts: Sequence[Offcut]) -> CutPlan:
    """Return the plan with the label of an offcut at each stick that is one.

    Of offcuts of one profile and length the first listed are taken first; the rack lists its
    oldest first.

    Args:
        plan: A plan that uses no more offcuts than there are.
        offcuts: The offcuts it was made with.
    """
    waiting: defaultdict[tuple[str, float], deque[str]] = defaultdict(deque)
    for offcut in offcuts:
        waiting[(offcut.profile, offcut.length_mm)].extend([offcut.label] * offcut.count)
    sticks = tuple(
        replace(stick, label=waiting[(stick.profile, stick.length_mm)].popleft())
        if stick.source is StickSource.OFFCUT
        else stick
        for stick in plan.sticks
    )
    return replace(plan, sticks=sticks)
