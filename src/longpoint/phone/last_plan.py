"""The house planned last: each cut at the saw, and its sheets, ask for it again."""

import json
from collections.abc import Callable, Sequence
from dataclasses import asdict

from longpoint.house_plan import HousePlan
from longpoint.phone.messages import Document, Said


class LastPlan:
    """Remembers one plan, as the same readings have the same plan; nothing depends on it."""

    def __init__(self) -> None:
        self._of = ""
        self._plan: HousePlan | None = None

    def of(
        self,
        document: Document,
        held: Sequence[Said],
        make: Callable[[], HousePlan],
        *,
        with_outlook: bool,
    ) -> HousePlan:
        """Return the plan of a house, made only where it isn't the one made last.

        Args:
            document: The house.
            held: What is held beforehand.
            make: Makes the plan.
            with_outlook: A plan without forecast won't do; one with it always does, as the
                forecast changes nothing that is cut.
        """
        asked = json.dumps([document, [asdict(said) for said in held]], default=str)
        plan = self._plan
        if plan is None or asked != self._of or (with_outlook and plan.outlook is None):
            plan = make()
            self._of, self._plan = asked, plan
        return plan
