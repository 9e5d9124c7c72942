"""A milestone as the text that is kept of it."""

import json
from typing import Any

from longpoint.store.records import Milestone, MilestoneKind


def milestone_text(milestone: Milestone) -> str:
    """Return a milestone as text, without its number."""
    said: dict[str, Any] = {
        "house": milestone.house,
        "kind": milestone.kind.value,
        "at": milestone.at,
        "after": milestone.after,
        "code": milestone.code,
        "said": dict(milestone.said),
    }
    return json.dumps(said, sort_keys=True, separators=(",", ":"), allow_nan=False)


def read_milestone(number: int, text: str) -> Milestone:
    """Return the milestone of a text that was checked against its sum.

    Example:
        >>> plan = Milestone(house="h", kind=MilestoneKind.PLAN, at="", after=3, code="K", said={})
        >>> read_milestone(0, milestone_text(plan)) == plan
        True
    """
    found = json.loads(text)
    return Milestone(number=number, **{**found, "kind": MilestoneKind(found["kind"])})
